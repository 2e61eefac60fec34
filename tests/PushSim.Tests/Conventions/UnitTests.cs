using System.Reflection;
using System.Xml.Linq;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Conventions;

/// <summary>Every public double and recorded series of the engine says its unit in square brackets.</summary>
public class UnitTests
{
    private static readonly Assembly s_engine = typeof(Simulator).Assembly;

    private static readonly Dictionary<string, string> s_docs = XDocument.Load(Path.ChangeExtension(s_engine.Location, ".xml"))
        .Descendants("member")
        .ToDictionary(m => (string)m.Attribute("name")!, m => m.ToString());

    public static TheoryData<string> Members()
    {
        TheoryData<string> rows = [];
        foreach (Type type in s_engine.GetExportedTypes().Where(t => t.GetInterfaces().All(i => !i.Name.StartsWith("IReal", StringComparison.Ordinal))))
        {
            string name = type.FullName!.Replace('+', '.');
            foreach (PropertyInfo property in type.GetProperties().Where(p => p.DeclaringType == type && IsNumber(p.PropertyType)))
            {
                ParameterInfo[] index = property.GetIndexParameters();
                rows.Add("P:" + name + "." + property.Name + (index.Length > 0 ? $"({string.Join(',', index.Select(i => i.ParameterType))})" : ""));
            }

            foreach (FieldInfo field in type.GetFields().Where(f => f.DeclaringType == type && IsNumber(f.FieldType) && !f.IsSpecialName))
            {
                rows.Add("F:" + name + "." + field.Name);
            }
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Members))]
    public void A_double_has_its_unit(string member)
    {
        string text = s_docs[member];
        Assert.Contains("[", text, StringComparison.Ordinal);
        Assert.Contains("]", text, StringComparison.Ordinal);
    }

    private static bool IsNumber(Type type) => type == typeof(double) || type == typeof(double?) || type == typeof(double[]) || type == typeof(Series);
}

using System.Reflection;
using CsCheck;
using PushSim.Analysis.FitBySimulation;
using PushSim.Powertrain;
using PushSim.Scenarios.Estimates;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Toml;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;
using PushSim.Words.Fits;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Rows of the key table that carry a value of a record: what is put is got, what is written is read, and no number of a record is forgotten.</summary>
public class KeyRowTests
{
    private const string OfData = "made of MotorData, whose rows they are";
    private const string OfWheel = "of the wheel and the chassis, never of the tyre's table";
    private const string OfTyre = "of TyreSettings, whose rows they are";
    private const string NoKey = "no file sets it";

    private static readonly Dictionary<(Type Record, string Property), string> s_withoutRow = new()
    {
        [(typeof(NumericsSettings), nameof(NumericsSettings.IsAskedFor))] = "whether method or tolerance stand in the file",
        [(typeof(MotorSettings), nameof(MotorSettings.TorqueConstant))] = OfData,
        [(typeof(MotorSettings), nameof(MotorSettings.Resistance))] = OfData,
        [(typeof(MotorSettings), nameof(MotorSettings.FrictionTorque))] = OfData,
        [(typeof(MotorSettings), nameof(MotorSettings.ViscousFriction))] = OfData,
        [(typeof(MotorSettings), nameof(MotorSettings.BrushDrop))] = OfData,
        [(typeof(MotorData), nameof(MotorData.GearEfficiency))] = "of the drive, or by stages",
        [(typeof(TyreData), nameof(TyreData.Radius))] = OfWheel,
        [(typeof(TyreData), nameof(TyreData.Load))] = OfWheel,
        [(typeof(TyreData), nameof(TyreData.CarriedLoad))] = OfWheel,
        [(typeof(TyreData), nameof(TyreData.CarriedMass))] = OfWheel,
        [(typeof(TyreData), nameof(TyreData.StaticFriction))] = OfTyre,
        [(typeof(TyreData), nameof(TyreData.TreadArea))] = OfTyre,
        [(typeof(TyreData), nameof(TyreData.Rebound))] = OfTyre,
        [(typeof(TyreData), nameof(TyreData.LoadExponent))] = OfTyre,
        [(typeof(TyreData), nameof(TyreData.BodyStiffness))] = OfTyre,
        [(typeof(TyreData), nameof(TyreData.VerticalStiffness))] = OfTyre,
        [(typeof(TyreData), nameof(TyreData.TreadMass))] = OfTyre,
        [(typeof(WheelSettings), nameof(WheelSettings.IsSkid))] = "decides what else the wheel needs, so it is read first",
        [(typeof(WheelSettings), nameof(WheelSettings.InitialFouling))] = NoKey,
        [(typeof(FloorSettings), nameof(FloorSettings.Gravity))] = NoKey,
        [(typeof(NumericsSettings), nameof(NumericsSettings.MaxEvaluationsPerSecond))] = NoKey,
    };

    // half of it; the cover's, as its width and density; a number known by its man
    private static readonly HashSet<string> s_otherWords = ["wheel.diameter", "tyre.tread_thickness", "tyre.poisson_ratio"];

    private static IEnumerable<object> Blanks => typeof(Blank).GetFields(BindingFlags.Static | BindingFlags.Public).Where(f => f.IsInitOnly).Select(f => f.GetValue(null)!);

    /// <summary>Every record and every table that has a row of it.</summary>
    public static TheoryData<string, string> Tables => [.. Blanks.SelectMany(b => SectionsOf(b).Select(s => (b.GetType().Name, s)))];

    public static TheoryData<string> Records => [.. Blanks.Select(b => b.GetType().Name)];

    [Theory]
    [MemberData(nameof(Tables))]
    public void What_is_put_is_got_and_nothing_else_changes(string record, string section) => Call(nameof(PutIsGot), record, section);

    [Theory]
    [MemberData(nameof(Tables))]
    public void What_is_written_is_read(string record, string section) => Call(nameof(WrittenIsRead), record, section);

    [Theory]
    [MemberData(nameof(Records))]
    public void Every_number_of_a_record_has_one_row(string record)
    {
        object blank = Of(record);
        Type type = blank.GetType();
        string[][] changed = [.. SectionsOf(blank).Select(s => (string[])Call(nameof(PropertiesOf), record, s)!)];
        Assert.NotEmpty(changed);
        Assert.All(changed, c => Assert.Equal(c.Distinct(), c));
        string[] numbers = [.. Settable(type).Where(p => (Nullable.GetUnderlyingType(p.PropertyType) ?? p.PropertyType) is { IsPrimitive: true }).Select(p => p.Name)];
        string[] without = [.. numbers.Except(changed.SelectMany(c => c))];
        Assert.Equal(s_withoutRow.Keys.Where(k => k.Record == type).Select(k => k.Property).Order(StringComparer.Ordinal), without.Order(StringComparer.Ordinal));
    }

    // file and engine speak of one thing in one word; a property may say more
    [Theory]
    [MemberData(nameof(Tables))]
    public void A_property_has_the_words_of_its_key(string record, string section) => Call(nameof(Named), record, section);

    // the engine cannot know the rows of files, so this holds its names and numbers to them
    [Fact]
    public void Every_number_of_a_fit_is_one_row_of_a_tyre() => Assert.All(TestParameter.All, p =>
    {
        KeyDefinition key = KeyTable.In("tyre").Single(k => p.Key == k.Name || p.Key.StartsWith(k.Name + "_", StringComparison.Ordinal));
        Assert.Equal(SimulationFitWords.Unit(p), KeyText.SiUnit(key));
        KeyRow<TyreSettings> row = key.Row<TyreSettings>()!;
        Assert.Equal(0.37, p.Of(row.Put(Blank.Tyre, 0.37)));
        Assert.Equal(row.Put(Blank.Tyre, 0.37), p.Put(Blank.Tyre, 0.37));
    });

    private static void PutIsGot<T>(T blank, string section)
    {
        (KeyDefinition Key, KeyRow<T>? Row)[] rows = [.. KeyTable.Rows<T>(section).Where(r => r.Row is not null)];
        Gen.Double.Unit.Array[rows.Length].Sample(
            u => Assert.All(rows.Zip(u), r =>
            {
                double value = Between(r.First.Key, r.Second);
                T put = r.First.Row!.Put(blank, value);
                double got = r.First.Row.Get(put)!.Value;
                Assert.True(Math.Abs(got - value) <= 4e-16 * Math.Abs(value), $"{section}.{r.First.Key.Name}: {value:R} came back as {got:R}");
                Assert.InRange(Changed(blank!, put!).Length, 0, 1);
            }),
            seed: "0000KOIPUTGOT",
            iter: 100);
    }

    private static void WrittenIsRead<T>(T blank, string section)
    {
        KeyDefinition[] keys = [.. KeyTable.Rows<T>(section).Where(r => r.Row is not null).Select(r => r.Key)];
        Gen.Select(Gen.Double.Unit.Array[keys.Length], Gen.Int[2, 12]).Sample(
            (u, digits) =>
            {
                T record = keys.Zip(u).Aggregate(blank, (r, k) => k.First.Row<T>()!.Put(r, Between(k.First, k.Second)));
                string text = string.Concat(keys.Select(k => KeyLine.Of(k, record, digits) + "\n"));
                var context = new ReadContext(new ReadOptions());
                var table = new Section(context, section, TomlTree.Parse(context, new SourceFile("file", text))!);
                T read = keys.Where(k => k.Row<T>()!.IsReadApart).Aggregate(table.Fill(blank), (r, k) => table.Put(r, k.Name));
                Assert.All(keys, k =>
                {
                    (double wrote, double got) = (k.Row<T>()!.Get(record)!.Value, k.Row<T>()!.Get(read)!.Value);
                    double most = (0.5001 * Math.Pow(10.0, 1 - digits) * Math.Abs(wrote - k.Unit.Offset)) + (1e-15 * Math.Abs(k.Unit.Offset));
                    Assert.True(k.Kind == KeyKind.Quantity ? Math.Abs(got - wrote) <= most : got == wrote, $"{KeyLine.Of(k, record, digits)} of {wrote:R} reads as {got:R}");
                    Assert.Equal(KeyLine.Of(k, record, digits), KeyLine.Of(k, read, digits));
                });
            },
            seed: "0000KOIWRIRED",
            iter: 100);
    }

    private static void Named<T>(T blank, string section) => Assert.All(
        KeyTable.Rows<T>(section).Where(r => r.Row is not null).Select(r => r.Key.Name).Zip(PropertiesOf(blank, section)).Where(p => !s_otherWords.Contains($"{section}.{p.First}")),
        p => Assert.Contains(p.First.Replace("_", "", StringComparison.Ordinal), p.Second, StringComparison.OrdinalIgnoreCase));

    private static string[] PropertiesOf<T>(T blank, string section) =>
        [.. KeyTable.Rows<T>(section).Where(r => r.Row is not null).Select(r => Assert.Single(Changed(blank!, r.Row!.Put(blank, Other(r.Key, r.Row.Get(blank)))!)))];

    // a value that a key allows, from a number of 0 to 1
    private static double Between(KeyDefinition key, double u) => key.Kind switch
    {
        KeyKind.Flag => Math.Round(u),
        KeyKind.Whole => Math.Round(key.Min + (u * (key.Max - key.Min))),
        _ when key.Min > 0.0 => Math.Clamp(key.Min * Math.Pow(key.Max / key.Min, u), key.Min, key.Max),
        _ => key.Min + (u * (key.Max - key.Min)),
    };

    private static double Other(KeyDefinition key, double? now) => key.Kind switch { KeyKind.Flag => 1.0 - now!.Value, KeyKind.Whole => 7.0, _ => 0.37 };

    private static string[] Changed(object before, object after) => [.. Settable(before.GetType()).Where(p => !Equals(p.GetValue(before), p.GetValue(after))).Select(p => p.Name)];

    private static IEnumerable<PropertyInfo> Settable(Type type) => type.GetProperties().Where(p => p.SetMethod is not null);

    private static object Of(string record) => Blanks.Single(b => b.GetType().Name == record);

    private static string[] SectionsOf(object blank) => (string[])typeof(KeyRowTests).GetMethod(nameof(Sections), BindingFlags.Static | BindingFlags.NonPublic)!.MakeGenericMethod(blank.GetType()).Invoke(null, [])!;

    private static string[] Sections<T>() => [.. KeyTable.All.Where(k => k.Row<T>() is not null).Select(k => k.Section).Distinct()];

    private static object? Call(string method, string record, string section)
    {
        object blank = Of(record);
        return typeof(KeyRowTests).GetMethod(method, BindingFlags.Static | BindingFlags.NonPublic)!.MakeGenericMethod(blank.GetType()).Invoke(null, BindingFlags.DoNotWrapExceptions, null, [blank, section], null);
    }
}

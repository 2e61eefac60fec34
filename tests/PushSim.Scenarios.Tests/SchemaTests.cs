using System.Reflection;
using System.Text.RegularExpressions;
using CsCheck;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Units;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>The schemas, checked by an independent validator of draft 4 (package NJsonSchema).</summary>
public class SchemaTests
{
    // What only a reader sees: ranges of texts with units, and what one part of a file says about another.
    private static readonly string[] Unseen =
    [
        "\"mass\" is 800 kg, outside", "missing \"mass\"", "outside the allowed range|slope_x = \"89 deg\"", "the centre of mass lies", "is above static friction", "say the same thing", "must rise", "there is no ", "has no inertia",
        "there is already a", "would share the columns", "heats up, but has no", "gives all of it", "is not determined", "turns no wheel", "is already in drive", "is a skid", "ratios for", "already on controller", "no motor", "has no controller",
        "must be said", "falls with charge", "this path", "is not there", "is a folder", "has no area", "needs a tether", "missing \"turn\"", "missing \"reverse_at\"", "not between", "the run ends", "not finite",
    ];

    private static readonly Dictionary<FileKind, NJsonSchema.JsonSchema> Schemas =
        Enum.GetValues<FileKind>().ToDictionary(f => f, f => NJsonSchema.JsonSchema.FromJsonAsync(Keys.JsonSchema.Make(f)).GetAwaiter().GetResult());

    public static TheoryData<string> Files => [.. ShippedFileTests.Scenarios.Select(s => s.Data).Concat(ShippedFileTests.Robots.Select(r => "robots/" + r.Data))];

    public static TheoryData<string, string, string> WrongRobots => Wrong(nameof(WrongFileTests.A_mistake_in_a_robot_is_found_where_it_stands));

    public static TheoryData<string, string, string> WrongScenarios => Wrong(nameof(WrongFileTests.A_mistake_in_a_scenario_is_found_where_it_stands));

    [Theory]
    [InlineData(FileKind.Robot)]
    [InlineData(FileKind.Scenario)]
    [InlineData(FileKind.Garage)]
    public void The_shipped_schema_is_up_to_date(FileKind file)
    {
        string name = Keys.JsonSchema.FileName(file);
        Generated.Expect($"src/PushSim.Scenarios/Schemas/{name}", Keys.JsonSchema.Make(file));
        Assert.SkipWhen(Generated.IsRewritten, "the next build takes it into the program");
        Assert.Equal(Keys.JsonSchema.Make(file), Keys.JsonSchema.Shipped(file).ReplaceLineEndings("\n"));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_shipped_file_passes(string file) =>
        Assert.Empty(Complaints(file.StartsWith("robots/", StringComparison.Ordinal) ? FileKind.Robot : FileKind.Scenario, File.ReadAllText(Path.Combine(Generated.Root(), "scenarios", file))));

    [Fact]
    public void The_starter_files_of_the_command_new_pass()
    {
        string[] files = Directory.GetFiles(Path.Combine(Generated.Root(), "src", "PushSim.Cli", "New", "Templates"), "*.toml");
        Assert.NotEmpty(files);
        Assert.All(files, f =>
        {
            FileKind kind = Path.GetFileName(f) == "robot.toml" ? FileKind.Robot : FileKind.Scenario;
            Assert.Empty(Complaints(kind, File.ReadAllText(f)));
            Assert.StartsWith($"#:schema ./{Keys.JsonSchema.FileName(kind)}\n", File.ReadAllText(f));
        });
    }

    [Fact]
    public void The_small_files_pass()
    {
        Assert.Empty(Complaints(FileKind.Robot, SmallFiles.Robot));
        Assert.Empty(Complaints(FileKind.Scenario, SmallFiles.Scenario));
    }

    [Fact]
    public void A_robot_is_no_scenario_and_no_file_is_empty()
    {
        Assert.NotEmpty(Complaints(FileKind.Scenario, SmallFiles.Robot));
        Assert.NotEmpty(Complaints(FileKind.Robot, SmallFiles.Scenario));
        Assert.NotEmpty(Complaints(FileKind.Robot, "# nothing\n"));
        Assert.NotEmpty(Complaints(FileKind.Scenario, "# nothing\n"));
    }

    // The reader finds each of these mistakes (WrongFileTests); the schema must find all but those that no schema can see.
    [Theory]
    [MemberData(nameof(WrongRobots))]
    public void A_mistake_in_a_robot_is_rejected(string old, string by, string message) => ExpectSeen(FileKind.Robot, SmallFiles.With(SmallFiles.Robot, old, by), by, message);

    [Theory]
    [MemberData(nameof(WrongScenarios))]
    public void A_mistake_in_a_scenario_is_rejected(string old, string by, string message) => ExpectSeen(FileKind.Scenario, SmallFiles.With(SmallFiles.Scenario, old, by), by, message);

    [Fact]
    public void Most_of_the_mistakes_are_seen()
    {
        int seen = WrongRobots.Concat(WrongScenarios).Count(w => !IsUnseen(w.Data.Item2, w.Data.Item3));
        Assert.InRange(seen, 30, int.MaxValue);
        Assert.All(Unseen, u => Assert.Contains(WrongRobots.Concat(WrongScenarios), w => IsMeant(u, w.Data.Item2, w.Data.Item3)));
    }

    [Theory]
    [MemberData(nameof(UnitAliasTests.Texts), MemberType = typeof(UnitAliasTests))]
    public void The_pattern_takes_every_text_that_the_reader_takes(object dimension, string text) => Assert.Matches(UnitPattern.Of((Dimension)dimension), text);

    [Theory]
    [InlineData(Dimension.Length, "48")]
    [InlineData(Dimension.Length, "48 g")]
    [InlineData(Dimension.Length, "1,5 mm")]
    [InlineData(Dimension.Length, "1 500 mm")]
    [InlineData(Dimension.Length, "5 MM")]
    [InlineData(Dimension.Length, "mm")]
    [InlineData(Dimension.Length, "")]
    [InlineData(Dimension.Length, "nan mm")]
    [InlineData(Dimension.Length, "5 mm ±")]
    [InlineData(Dimension.Length, "5 mm ± -1 mm")]
    [InlineData(Dimension.Length, "5 mm ± 1 g")]
    [InlineData(Dimension.Length, "5 ± 1")]
    [InlineData(Dimension.Length, "5 ± 10 %")]
    [InlineData(Dimension.Length, "0x10 mm")]
    [InlineData(Dimension.Ratio, "0.85 N")]
    [InlineData(Dimension.Resistance, "3 MH")]
    [InlineData(Dimension.Torque, "151 gf..cm")]
    public void Reader_and_pattern_both_refuse(object dimension, string text)
    {
        Assert.False(Quantity.TryParse(text, (Dimension)dimension, out _, out _, out _));
        Assert.DoesNotMatch(UnitPattern.Of((Dimension)dimension), text);
    }

    [Theory]
    [InlineData("0.85 ± 0.05", Dimension.Ratio)]
    [InlineData("0.85 +/- 0.05", Dimension.Ratio)]
    [InlineData("0.8 ± 10 %", Dimension.Ratio)]
    [InlineData("70 % ± 5 %", Dimension.Ratio)]
    [InlineData("350 g ± 2 %", Dimension.Mass)]
    [InlineData("350 ± 7 g", Dimension.Mass)]
    [InlineData("350 g ± 7", Dimension.Mass)]
    [InlineData("20 °C ± 5 K", Dimension.Temperature)]
    [InlineData(" 20°C+-5K ", Dimension.Temperature)]
    public void Reader_and_pattern_both_take_tolerances(string text, object dimension)
    {
        Assert.True(Quantity.TryParse(text, (Dimension)dimension, out _, out _, out _));
        Assert.Matches(UnitPattern.Of((Dimension)dimension), text);
    }

    // numbers, signs, units of the right and of other families, put together at random: reader and pattern must agree
    [Fact]
    public void Reader_and_pattern_agree_on_random_texts()
    {
        string[] numbers = ["1", "-0.5", "+2.", ".5", "1e-3", "\u22122E+2", "1,5", "", "e5", "nan", "1 2"];
        // without blanks: the reader drops them, so that "m s" is its ms; the pattern does not
        string[] units = [.. Enum.GetValues<Dimension>().SelectMany(UnitTable.Spellings).Where(u => !u.Contains(' ')).Distinct(), "", "furlong", "MM"];
        string[] signs = ["", "", " ± ", "±", " +/- ", "+-", " -/+ "];
        Gen<string> quantity = Gen.Select(OneOf(numbers), OneOf("", " "), OneOf(units), (n, blank, u) => n + blank + u);
        Dictionary<Dimension, Regex> patterns = Enum.GetValues<Dimension>().ToDictionary(d => d, d => new Regex(UnitPattern.Of(d)));
        int right = 0;
        Gen.Select(Gen.Enum<Dimension>(), quantity, OneOf(signs), quantity, Gen.Int[0, 999], Gen.Int[0, 3]).Sample(
            (dimension, first, sign, second, pick, mix) =>
            {
                // half of each with the dimension's own units, or few would be right
                string[] own = [.. UnitTable.Spellings(dimension)];
                string text = (mix % 2 == 0 ? "2 " + own[pick % own.Length] : first) + sign + (sign.Length == 0 ? "" : mix < 2 ? "1" + own[(pick / 7) % own.Length] : second);
                bool isRead = Quantity.TryParse(text, dimension, out _, out _, out _);
                right += isRead ? 1 : 0;
                Assert.True(isRead == patterns[dimension].IsMatch(text), $"{dimension}: {text}");
            },
            seed: "0000KOIPe3P2",
            iter: 20_000,
            threads: 1);
        Assert.InRange(right, 4000, 16_000);
    }

    private static Gen<string> OneOf(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static TheoryData<string, string, string> Wrong(string method)
    {
        TheoryData<string, string, string> data = [];
        foreach (InlineDataAttribute row in typeof(WrongFileTests).GetMethod(method)!.GetCustomAttributes<InlineDataAttribute>())
        {
            data.Add((string)row.Data[0]!, (string)row.Data[1]!, (string)row.Data[4]!);
        }

        return data;
    }

    private static bool IsUnseen(string by, string message) => Unseen.Any(u => IsMeant(u, by, message));

    // an entry is a piece of the message, or the message and the edit when the message alone does not tell a text from a bare number
    private static bool IsMeant(string entry, string by, string message) => message.Contains(entry, StringComparison.Ordinal) || entry == $"{message}|{by}";

    private static void ExpectSeen(FileKind file, string toml, string by, string message)
    {
        // no TOML at all, or a date or an infinity, which JSON has not: the plug-in's parser complains
        if (TreeJson.Of(toml) is null)
        {
            return;
        }

        Assert.Equal(!IsUnseen(by, message), Complaints(file, toml).Count > 0);
    }

    private static List<string> Complaints(FileKind file, string toml) =>
        [.. Schemas[file].Validate(Assert.IsType<string>(TreeJson.Of(toml))).Select(e => e.ToString())];
}

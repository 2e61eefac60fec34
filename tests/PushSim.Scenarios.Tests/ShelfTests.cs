using PushSim.Analysis.Wear;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Scenarios.Tests;

public class ShelfTests
{
    private const string OwnTyre = """
        static_friction = "1.0 ± 0.1"
        kinetic_friction = 0.8
        body_stiffness = "2 N/mm"
        body_damping = "2 N s/m"
        tread_mass = "4 g"
        vertical_stiffness = "8 N/mm"
        wear = "200 mm3"
        """;

    public static TheoryData<string> Materials => [.. PartShelf.Tyres.Parts.Select(m => m.Name)];

    [Fact]
    public void Materials_stand_by_class_and_each_class_has_some()
    {
        Assert.InRange(PartShelf.Tyres.Parts.Count, 24, 40);
        Assert.All(PartShelf.Tyres.Parts, m => Assert.DoesNotContain(",", m.Name));
        string[] classes = [.. PartShelf.Tyres.Parts.Select(m => m.Name.Split(' ')[0])];
        string[] runs = [.. classes.Where((c, i) => i == 0 || classes[i - 1] != c)];
        Assert.Equal(["printed", "cast", "sheet", "moulded", "coated"], runs);
        Assert.All(runs, r => Assert.True(classes.Count(c => c == r) >= 5, r));
    }

    // a name, alias or old name means one part of its kind, in capitals or not
    [Fact]
    public void No_name_means_two_parts()
    {
        Assert.All(PartShelf.All, shelf => Assert.All(shelf.Parts, part => Assert.All(part.Names.Concat(part.OldNames), name =>
        {
            Assert.Single(shelf.Parts.SelectMany(p => p.Names.Concat(p.OldNames)), n => string.Equals(n, name, StringComparison.OrdinalIgnoreCase));
            Assert.Same(part, shelf.Find(name.ToUpperInvariant()));
        })));
        Assert.All(PartShelf.Tyres.Parts, part => Assert.NotEmpty(part.Aliases));
    }

    [Theory]
    [InlineData("pla", "printed PLA")]
    [InlineData("tpu 95a", "printed TPU 95A")]
    [InlineData("silicone", "cast silicone 30A")]
    [InlineData("urethane", "cast polyurethane 60A")]
    [InlineData("EVA", "sheet EVA foam")]
    [InlineData("foam", "sheet EVA foam")]
    [InlineData("neoprene", "sheet neoprene sponge 2C2")]
    [InlineData("rubber", "moulded natural rubber 60A")]
    [InlineData("Latex", "coated latex on foam")]
    public void A_robot_file_takes_a_builders_word(string word, string name)
    {
        ReadResult read = Read($"shelf = \"{word}\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"");
        Assert.Empty(read.Problems);
        Assert.Contains(read.Notes, n => n.Contains($"from the shelf's \"{name}\"", StringComparison.Ordinal));
    }

    // names of the first shelf; lists leave them out
    [Theory]
    [InlineData("hard printed plastic", "printed PLA")]
    [InlineData("printed elastomer, solid", "printed TPU 85A")]
    [InlineData("solid soft elastomer", "moulded natural rubber 60A")]
    [InlineData("solid soft elastomer, treaded", "moulded SBR 60A treaded")]
    [InlineData("foamed elastomer, soft", "sheet foamed TPU 0.12")]
    [InlineData("foamed elastomer, soft, knobbly", "sheet foamed TPU 0.12")]
    [InlineData("foamed elastomer, firm", "sheet foamed TPU 0.19")]
    [InlineData("craft foam, closed-cell", "sheet EVA foam")]
    [InlineData("neoprene foam", "sheet neoprene sponge 2C2")]
    [InlineData("cast urethane, soft", "cast polyurethane 40A")]
    [InlineData("cast urethane, firm", "cast polyurethane 80A")]
    [InlineData("silicone", "cast silicone 30A")]
    [InlineData("natural-rubber coating on soft foam", "coated latex on foam")]
    [InlineData("thin wrong coating on soft foam", "coated paint on foam")]
    public void Old_names_still_read(string old, string name)
    {
        Assert.Equal(name, PartShelf.Tyres.Find(old)?.Name);
        Assert.Empty(Read($"shelf = \"{old}\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"").Problems);
        Assert.DoesNotContain(PartShelf.Tyres.Parts, p => p.Name == old);
    }

    // modulus of a hardness: Gent, Rubber Chemistry and Technology 31, 1958 (from memory)
    [Fact]
    public void Materials_stand_by_class_and_in_each_from_soft_to_hard()
    {
        string[] classes = ["printed", "cast", "sheet", "moulded", "coated"];
        static double Modulus(ShelfPart p) => p.Find("modulus")?.Value ?? (p.Find("shore_a")!.Value!.Value is var s ? 1e6 * 0.0981 * (56.0 + (7.66 * s)) / (0.137505 * (254.0 - (2.54 * s))) : double.NaN);
        Assert.Equal(PartShelf.Tyres.Parts.OrderBy(p => Array.IndexOf(classes, p.Name.Split(' ')[0])).ThenBy(Modulus).Select(p => p.Name), PartShelf.Tyres.Parts.Select(p => p.Name));
    }

    // friction grows as a polymer of one make gets softer
    [Theory]
    [InlineData("cast silicone 30A", "cast silicone 20A", "cast silicone 10A")]
    [InlineData("cast polyurethane 80A", "cast polyurethane 60A", "cast polyurethane 40A")]
    [InlineData("printed TPU 95A", "printed TPU 85A", "printed TPU 85A low infill")]
    [InlineData("sheet foamed TPU 0.19", "sheet foamed TPU 0.15", "sheet foamed TPU 0.12")]
    public void Softer_grips_more(string hard, string middle, string soft)
    {
        Assert.All(new[] { "static_friction", "kinetic_friction" }, key =>
        {
            double[] found = [.. new[] { hard, middle, soft }.Select(n => PartShelf.Tyres.Find(n)!.Find(key)!.Value!.Value)];
            Assert.Equal(found.Order().Distinct(), found);
        });
    }

    [Theory]
    [MemberData(nameof(Materials))]
    public void Every_number_says_where_it_comes_from(string name)
    {
        ShelfPart part = PartShelf.Tyres.Find(name)!;
        Assert.EndsWith(".", part.About);
        Assert.All(part.Numbers, n => Assert.NotEqual("", n.Source));

        // an estimate or a rule of the trade carries its width
        Assert.All(part.Numbers.Where(n => n.Origin != ShelfOrigin.Source && n.Value > 0.0 && n.Key != "poisson_ratio"), n => Assert.True(n.Tolerance > 0.0, n.Key));
        Assert.All(new[] { "static_friction", "kinetic_friction", "density", "rebound", "wear", "dusty_friction", "fouling_distance" }, key => Assert.NotNull(part.Find(key)?.Value));
    }

    // A material and two sizes are enough, on any robot of the class; no warning of unusual values either
    [Theory]
    [MemberData(nameof(Materials))]
    public void A_robot_file_can_refer_to_it(string name)
    {
        ReadResult read = Read($"shelf = \"{name}\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"");
        Assert.Empty(read.Problems);
        TyreSettings tyre = read.Robot!.Wheels[0].Tyre;
        ShelfPart part = PartShelf.Tyres.Find(name)!;
        Assert.Equal(part.Find("static_friction")!.Value!.Value, tyre.StaticFriction);
        Assert.Equal(part.Find("wear")!.Value!.Value / 400.0, tyre.SpecificWear, 1e-18);
        Assert.Equal(part.Find("density")!.Value, tyre.CoverDensity);
        Assert.Equal(0.02, tyre.CoverWidth);
        Assert.Contains(read.Notes, n => n.Contains("body stiffness", StringComparison.Ordinal));
        Assert.Contains(read.Notes, n => n.Contains($"from the shelf's \"{name}\"", StringComparison.Ordinal));
        Assert.Equal(part.Numbers.Count, read.Derived.Count(d => d.Text.Contains("from the shelf's", StringComparison.Ordinal)));
        Assert.All(read.Derived, d => Assert.NotEqual("", d.Error));
    }

    [Fact]
    public void Own_values_stand_and_displace_what_says_the_same()
    {
        ReadResult read = Read("shelf = \"moulded natural rubber 60A\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"\nkinetic_friction = 0.7\nmodulus = \"5 MPa\"\nvertical_stiffness = \"60 N/mm\"");
        Assert.Empty(read.Problems);
        TyreSettings tyre = read.Robot!.Wheels[0].Tyre;
        Assert.Equal(0.7, tyre.KineticFriction);
        Assert.Equal(0.95, tyre.StaticFriction);
        Assert.Equal(60e3, tyre.VerticalStiffness, 1e-6);
        Assert.Contains(read.Notes, n => n.Contains("modulus 5 MPa", StringComparison.Ordinal));
        Assert.DoesNotContain(read.Inputs, i => i.Key.EndsWith("shore_a", StringComparison.Ordinal));

        // and the other way: an own hardness replaces the shelf's modulus
        read = Read("shelf = \"printed TPU 85A\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"\nshore_a = 70");
        Assert.Contains(read.Notes, n => n.Contains("Shore 70 A", StringComparison.Ordinal));
    }

    // Foam 25 mm thick and 50 mm wide under 33 N each has hardly more pressure than the usual size under 3 N, so hardly less friction; the absolute load alone
    // would take 30 % of it.
    [Fact]
    public void A_heavy_robot_on_wide_tyres_keeps_its_grip()
    {
        const string Wide = "shelf = \"sheet foamed TPU 0.19\"\nwidth = \"50 mm\"\ntread_thickness = \"20 mm\"\n";
        ReadResult read = Heavy(Wide);
        TyreSettings tyre = read.Robot!.Wheels[0].Tyre;
        Assert.InRange(Math.Pow(33.0 / tyre.ReferenceLoad, -tyre.LoadExponent), 0.85, 1.0);
        DerivedValue told = Assert.Single(read.Derived, d => d.Text.Contains("reference load", StringComparison.Ordinal));
        Assert.Contains("mean pressure", told.Text, StringComparison.Ordinal);
        Assert.StartsWith("a factor of 2", told.Error, StringComparison.Ordinal);

        // a load of its own stands, and friction that does not depend on load needs none
        read = Heavy(Wide + "reference_load = \"4 N\"\n");
        Assert.Equal(4.0, read.Robot!.Wheels[0].Tyre.ReferenceLoad);
        Assert.DoesNotContain(read.Derived, d => d.Text.Contains("reference load", StringComparison.Ordinal));
        Assert.Equal(new TyreSettings { Name = "", StaticFriction = 1, KineticFriction = 1, BodyStiffness = 1, BodyDamping = 1, TreadMass = 1, VerticalStiffness = 1 }.ReferenceLoad, Heavy(Wide + "load_exponent = 0\n").Robot!.Wheels[0].Tyre.ReferenceLoad);
    }

    [Fact]
    public void Tolerances_of_the_shelf_are_inputs_like_those_of_the_file()
    {
        ReadResult read = Read("shelf = \"silicone\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"");
        InputRow row = Assert.Single(read.Inputs, i => i.Key == "tyre.foam.static_friction");
        Assert.Equal((1.15, 0.25), (row.Value!.Value, row.Tolerance));
        Assert.Equal(9, row.Line - 1);
    }

    [Fact]
    public void An_unknown_material_gets_the_nearest_name()
    {
        Problem problem = Assert.Single(Read("shelf = \"silicon\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"").Problems, p => p.Message.Contains("shelf", StringComparison.Ordinal));
        Assert.Contains("did you mean \"silicone\"?", problem.Help);
        Assert.Equal(Severity.Error, problem.Severity);
    }

    [Fact]
    public void A_scenario_can_swap_the_material_of_a_robot()
    {
        string robot = WithTyre("shelf = \"silicone\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"");
        using var files = new SmallFiles(robot, SmallFiles.With(SmallFiles.Scenario, "[floor]", "[override]\n\"tyre.foam.shelf\" = \"sheet neoprene sponge 2C2\"\n[floor]"));
        ReadResult read = ScenarioReader.Read(files.ScenarioPath);
        Assert.Empty(read.Problems);
        Assert.Equal(1.0, read.Robot!.Wheels[0].Tyre.StaticFriction);
    }

    [Fact]
    public void For_the_ranking_all_tyres_become_one_material_and_keep_their_sizes()
    {
        using var files = new SmallFiles();
        ReadResult read = ScenarioReader.Read(files.ScenarioPath, new ReadOptions { TyreMaterial = "silicone" });
        Assert.DoesNotContain(read.Problems, p => p.Severity == Severity.Error);
        Assert.All(read.Robot!.Wheels, w => Assert.Equal(1.15, w.Tyre.StaticFriction));
        Assert.Contains(read.Notes, n => n.Contains("width 20 mm assumed", StringComparison.Ordinal));
    }

    [Fact]
    public void Tyre_life_arrives_in_si()
    {
        using var files = new SmallFiles(scenario: SmallFiles.Scenario + "[tyre_life]\nmatch = \"2 min\"\nruns = 7\nclean_every = 3\ncleaning = \"80 %\"\ngrip_loss = \"15 %\"\n");
        ReadResult read = ScenarioReader.Read(files.ScenarioPath);
        Assert.Empty(read.Problems);
        Assert.Equal(new TyreLifeSettings { MatchTime = 120.0, Runs = 7, CleanEvery = 3, CleaningShare = 0.8, GripLoss = 0.15 }, read.Scenario!.TyreLife);
    }

    // Ranges read at makers' pages: polyester TPU 20 to 30 mm3; good outsole rubber at most 150, sports soles below 80. EVA 150 to 400 from memory.
    [Theory]
    [InlineData("printed TPU 85A", 20.0, 30.0)]
    [InlineData("moulded natural rubber 60A", 40.0, 150.0)]
    [InlineData("sheet EVA foam", 150.0, 400.0)]
    public void Wear_figures_lie_in_the_printed_ranges(string name, double least, double most) =>
        Assert.InRange(1e9 * PartShelf.Tyres.Find(name)!.Find("wear")!.Value!.Value, least, most);

    // Common practice, no source; plausibility bands only: knobs over half of a foam's face pull about 10 % less than the smooth foam on a smooth board, a hard
    // film over it 40 % less
    [Theory]
    [InlineData("sheet foamed TPU 0.12", "tread_area = \"55 %\"", 0.85, 0.95)]
    [InlineData("coated paint on foam", "", 0.5, 0.7)]
    public void Against_smooth_foam_the_trades_readings_are_plausible(string name, string line, double least, double most)
    {
        static double Friction(string material, string line) => GripSeries.SlidingFriction(Tyre(material, line), 3.0);
        Assert.InRange(Friction(name, line) / Friction("sheet foamed TPU 0.12", ""), least, most);
    }

    // Stiffness of every material's cover over a mesh of contact lengths: k_t/k_n of the stuck strip, and k = pi E* w/(2 (ln(h/a) + c - 1/2)) within 4 % up to
    // a/h 0.2. Limits by Johnson, Contact Mechanics, ch. 5 (from memory), ratios and c computed here by an independent solution
    [Theory]
    [InlineData(0.05, 0.865, 0.619)]
    [InlineData(0.1, 0.836, 0.549)]
    [InlineData(0.2, 0.794, 0.453)]
    [InlineData(0.5, 0.707, 0.284)]
    [InlineData(1.0, 0.631, 0.160)]
    public void Derived_stiffness_of_every_material_follows_the_layer_solution(double ratio, double foam, double solid)
    {
        const double R = 0.026, H = 0.008, W = 0.02;
        int count = 0;
        foreach (ShelfPart part in PartShelf.Tyres.Parts)
        {
            CoverMaterial material = (CoverMaterial)Array.IndexOf(["rubber", "silicone", "polyurethane", "printed", "closed-cell foam", "open-cell foam"], part.Find("material")!.Text);
            double nu = part.Find("poisson_ratio")?.Value ?? CoverMaterialFacts.Of(material).Poisson;
            if (nu is not (0.0 or 0.5))
            {
                continue;
            }

            double e = part.Find("modulus")?.Value ?? CoverModulus.FromShoreA(part.Find("shore_a")!.Value!.Value);
            CoverContact c = AtRatio(ratio);
            Assert.Equal(nu == 0.0 ? foam : solid, c.TangentialStiffness / c.NormalStiffness, 0.006);
            if (ratio <= 0.2)
            {
                double plane = e / (1.0 - (nu * nu));
                double expected = Math.PI * plane * W / (2.0 * (Math.Log(1.0 / ratio) + (nu == 0.0 ? 0.8209 : 0.2169) - 0.5));
                Assert.Equal(1.0, c.NormalStiffness / expected, 0.04);
            }

            count++;

            CoverContact AtRatio(double wanted)
            {
                (double low, double high) = (1e-12 * e, 1e3 * e);
                for (int i = 0; i < 200; i++)
                {
                    double middle = Math.Sqrt(low * high);
                    bool isBelow = CoverContact.Solve(middle, R, H, W, e, nu) is CoverContact c && c.HalfLength < wanted * H;
                    (low, high) = isBelow ? (middle, high) : (low, middle);
                }

                return CoverContact.Solve(low, R, H, W, e, nu)!;
            }
        }

        Assert.InRange(count, 9, PartShelf.Tyres.Parts.Count);
    }

    private static TyreSettings Tyre(string material, string line) => Read($"shelf = \"{material}\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"\n{line}").Robot!.Wheels[0].Tyre;

    private static string WithTyre(string lines) => SmallFiles.With(SmallFiles.Robot, OwnTyre.ReplaceLineEndings("\n"), lines);

    // 13.6 kg on wheels of 140 mm
    private static ReadResult Heavy(string lines)
    {
        using var files = new SmallFiles(WithTyre(lines).Replace("\"800 g\"", "\"13.6 kg\"", StringComparison.Ordinal).Replace("diameter = \"50 mm\"", "diameter = \"140 mm\"", StringComparison.Ordinal));
        return ScenarioReader.Check(files.RobotPath);
    }

    private static ReadResult Read(string lines)
    {
        using var files = new SmallFiles(WithTyre(lines));
        return ScenarioReader.Check(files.RobotPath);
    }
}

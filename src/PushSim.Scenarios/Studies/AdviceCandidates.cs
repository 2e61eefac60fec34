using PushSim.Contact;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;
using PushSim.Tyres;

namespace PushSim.Scenarios.Studies;

/// <summary>The changes that a garage, the shelf and the robot itself offer.</summary>
internal static class AdviceCandidates
{
    // A cell's mass per capacity: 3.7 V at about 150 W h/kg (estimate; packs of small robots) [g/(A h)].
    private const double GramsPerAmpereHour = 25.0;

    // A printed ramp across the nose (estimate) [g].
    private const double RampGrams = 20.0;

    // Magnet force that is tried [N], and its mass (estimate) [g].
    private const double MagnetForce = 5.0, MagnetGrams = 15.0;

    private const double SpareGrams = 5.0;
    private const int MostOfShelf = 6;

    /// <summary>All of them.</summary>
    public static IReadOnlyList<AdviceChange> Of(ReadOptions options, RobotSettings robot, ReadResult read, SeasonStudy? season, double? limit, ScenarioSettings scene, bool isSteel)
    {
        var context = new ReadContext(options);
        Dictionary<string, (double? Price, double? Grams)> prices = Prices(context);
        List<AdviceChange> all = [.. Tyres(context, robot, read, prices), .. Motors(robot, read, prices)];
        foreach (double f in new[] { 0.6, 0.75, 1.35, 1.7 })
        {
            all.Add(new AdviceChange("ratio", FormattableString.Invariant($"gear ratio times {f:0.##}{Ratio(robot, f)}")) { Grams = 0.0, Made = r => Geared(r, f) });
        }

        if (robot.Battery is { } pack)
        {
            double cell = GramsPerAmpereHour * pack.Capacity / 3600.0;
            foreach (int more in new[] { -1, 1 }.Where(m => pack.Cells + m >= 1))
            {
                all.Add(new AdviceChange("cells", $"{pack.Cells + more} cells in place of {pack.Cells}") { Grams = more * cell, Price = more < 0 ? 0.0 : Priced(prices, "cell"), Made = r => Heavier(Celled(r, more), 1e-3 * more * cell, r.Chassis.CentreOfMassX) });
            }
        }

        double room = limit is double most ? 1000.0 * (most - robot.Chassis.Mass) : 0.0;
        if (room >= SpareGrams)
        {
            double reach = 0.35 * robot.Chassis.Length;
            foreach ((string where, double x) in new[] { ("in front", reach), ("in the middle", 0.0), ("at the back", -reach) })
            {
                all.Add(new AdviceChange("mass", FormattableString.Invariant($"{room:0} g of ballast {where}")) { Place = where, Grams = room, Price = 0.0, Made = r => Heavier(r, 1e-3 * room, x) });
            }
        }

        foreach (double x in new[] { 0.010, -0.010 })
        {
            all.Add(new AdviceChange("balance", FormattableString.Invariant($"centre of mass {1000.0 * Math.Abs(x):0} mm {(x > 0.0 ? "forward" : "back")}")) { Place = x > 0.0 ? "forward" : "back", Grams = 0.0, Price = 0.0, Made = r => r with { Chassis = r.Chassis with { CentreOfMassX = r.Chassis.CentreOfMassX + x } } });
        }

        if (robot.Outline is null)
        {
            all.Add(new AdviceChange("ramp", "a ramp of 35 degrees at the nose") { Grams = RampGrams, Price = 0.0, Made = r => Heavier(Ramped(r), 1e-3 * RampGrams, 0.5 * r.Chassis.Length) });
        }

        // on wood it would only weigh
        if (isSteel || robot.Chassis.Downforce > 0.0)
        {
            all.Add(new AdviceChange("magnet", FormattableString.Invariant($"{(robot.Chassis.Downforce > 0.0 ? "a magnet stronger by" : "a magnet of")} {MagnetForce:0} N")) { Grams = MagnetGrams, Made = r => Heavier(r with { Chassis = r.Chassis with { Downforce = r.Chassis.Downforce + MagnetForce } }, 1e-3 * MagnetGrams, 0.0) });
        }

        all.Add(new AdviceChange("throttle", "80 % throttle") { Grams = 0.0, Price = 0.0, Set = [("manoeuvre.throttle", "0.8")] });
        all.Add(new AdviceChange("throttle", "throttle built up over 0.2 s") { Grams = 0.0, Price = 0.0, Set = [("manoeuvre.ramp", "0.2 s")] });
        if (scene.Floor.Dust > 0.0)
        {
            all.Add(new AdviceChange("wiping", "the board wiped clean of dust") { Grams = 0.0, Price = 0.0, Set = [("floor.dust", "0")] });
        }

        all.AddRange(Dusty(robot, season));
        return all;
    }

    private static Dictionary<string, (double? Price, double? Grams)> Prices(ReadContext context)
    {
        Dictionary<string, (double?, double?)> prices = new(StringComparer.OrdinalIgnoreCase);
        foreach (TomlTable p in context.OfGarage("price"))
        {
            if (p.Find("part")?.Value is TomlText part)
            {
                prices[part.Value.Trim()] = (p.Find("price")?.Value is TomlNumber n ? n.Value : null, 1000.0 * Of(p, "mass", Dimension.Mass));
            }
        }

        foreach (TomlTable t in context.OfGarage("tyre"))
        {
            if (t.Find("name")?.Value is TomlText name && t.Find("price")?.Value is TomlNumber own)
            {
                prices[name.Value.Trim()] = (own.Value, null);
            }
        }

        return prices;
    }

    private static double? Priced(Dictionary<string, (double? Price, double? Grams)> prices, string part) => prices.TryGetValue(part, out (double? Price, double? Grams) p) ? p.Price : null;

    private static IEnumerable<AdviceChange> Tyres(ReadContext context, RobotSettings robot, ReadResult read, Dictionary<string, (double? Price, double? Grams)> prices)
    {
        WheelSettings[] driven = [.. robot.Wheels.Where(w => !w.IsSkid)];
        string[] worn = [.. driven.Select(w => w.Tyre.Name).Distinct()];
        foreach (TomlTable tyre in context.OfGarage("tyre"))
        {
            string name = (tyre.Find("name")?.Value as TomlText)?.Value.Trim() ?? "";
            if (name.Length == 0 || worn.Contains(name))
            {
                continue;
            }

            double? mass = Of(tyre, "wheel_mass", Dimension.Mass);
            double? old = read.Inputs.FirstOrDefault(i => i.Key == $"wheel.{driven[0].Name}.mass")?.Value;
            double? more = driven.Length * (mass - old);
            string? diameter = (tyre.Find("diameter")?.Value as TomlText)?.Value;
            yield return new AdviceChange("tyre", $"tyre {name} of the garage")
            {
                Grams = 1000.0 * more, Price = driven.Length * Priced(prices, name), Made = more is double kg ? r => Heavier(r, kg, r.Chassis.CentreOfMassX) : null,
                Set = [.. driven.SelectMany(w => new[] { ($"wheel.{w.Name}.tyre", name) }.Concat(diameter is null ? [] : [($"wheel.{w.Name}.diameter", diameter)]))],
            };
        }

        foreach (ShelfPart part in PartShelf.Tyres.Parts.OrderByDescending(p => p.Find("static_friction")?.Value ?? 0.0).Take(MostOfShelf))
        {
            yield return new AdviceChange("tyre", $"tyres of {part.Name}, same size") { Price = driven.Length * Priced(prices, part.Name), Material = part.Name };
        }
    }

    // motors of the shelf where the file takes one of it; else only a stronger winding can be put in
    private static IEnumerable<AdviceChange> Motors(RobotSettings robot, ReadResult read, Dictionary<string, (double? Price, double? Grams)> prices)
    {
        InputRow[] named = [.. read.Inputs.Where(i => i.Key.StartsWith("motor.", StringComparison.Ordinal) && i.Key.EndsWith(".shelf", StringComparison.Ordinal))];
        int count = robot.Drives.Sum(d => d.Motors.Count);
        if (named.Length == 1 && PartShelf.Motors.Find(named[0].Text.Trim('"')) is ShelfPart own)
        {
            double volt = own.Find("voltage")?.Value ?? 12.0;
            (double? Price, double? Grams) now = prices.GetValueOrDefault(own.Name);
            foreach (ShelfPart other in PartShelf.Motors.Parts.Where(m => m != own && Math.Abs((m.Find("voltage")?.Value ?? 0.0) - volt) < 1.0 && m.Name.Contains("brushed", StringComparison.Ordinal) == own.Name.Contains("brushed", StringComparison.Ordinal)))
            {
                (double? Price, double? Grams) then = prices.GetValueOrDefault(other.Name);
                double? more = count * (then.Grams - now.Grams);
                yield return new AdviceChange("motor", $"motor {other.Name}") { Set = [(named[0].Key, other.Name)], Price = count * then.Price, Grams = more, Made = more is double g ? r => Heavier(r, 1e-3 * g, r.Chassis.CentreOfMassX) : null };
            }
        }

        yield return new AdviceChange("motor", "motors of 30 % more stall torque, as fast") { Made = r => Analysis.Meaning.MeaningFinder.Stronger(r, 1.3) };
    }

    // what skipping the cloth would cost, by the readings of the tyre that it wears
    private static IEnumerable<AdviceChange> Dusty(RobotSettings robot, SeasonStudy? season)
    {
        string name = robot.Wheels.First(w => !w.IsSkid).Tyre.Name;
        Analysis.Season.SeasonGroup? wiped = season?.First?.Groups.FirstOrDefault(g => g.Tyre.Equals(name, StringComparison.OrdinalIgnoreCase) && g.State.EndsWith("wiped", StringComparison.Ordinal));
        Analysis.Season.SeasonGroup? dusty = season?.First?.Groups.FirstOrDefault(g => g.Tyre.Equals(name, StringComparison.OrdinalIgnoreCase) && g.State.EndsWith("dusty", StringComparison.Ordinal));
        if (wiped is not null && dusty is not null)
        {
            double left = dusty.Friction.Value / wiped.Friction.Value;
            yield return new AdviceChange("wiping", FormattableString.Invariant($"not wiping (tyre {name} keeps {100.0 * left:0} % of its grip)")) { Grams = 0.0, Price = 0.0, Made = r => Gripping(r, name, left) };
        }
    }

    private static double? Of(TomlTable table, string key, Dimension dimension) => table.Find(key)?.Value is TomlText t && Quantity.TryParse(t.Value, dimension, out Quantity q, out _, out _) ? q.Value : null;

    private static string Ratio(RobotSettings robot, double factor) => robot.Drives.SelectMany(d => d.Motors.Select(m => m.Ratio)).Distinct().ToArray() is [double one] ? FormattableString.Invariant($" ({one:0.#} to {factor * one:0.#})") : "";

    private static RobotSettings Geared(RobotSettings r, double f) => r with { Drives = [.. r.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (m.Motor, m.Ratio * f))] })] };

    private static RobotSettings Celled(RobotSettings r, int more) => r.Battery is not { } b ? r : r with { Battery = b with { Cells = b.Cells + more, Resistance = b.Resistance * (b.Cells + more) / b.Cells, CutOffVoltage = b.CutOffVoltage * (b.Cells + more) / b.Cells } };

    private static RobotSettings Heavier(RobotSettings r, double kilogram, double x)
    {
        double mass = r.Chassis.Mass + kilogram;
        return r with { Chassis = r.Chassis with { Mass = mass, CentreOfMassX = ((r.Chassis.Mass * r.Chassis.CentreOfMassX) + (kilogram * x)) / mass } };
    }

    private static RobotSettings Ramped(RobotSettings r)
    {
        OutlineSettings box = r.OutlineOrBox;
        double top = Math.Min(0.6 * r.Chassis.Height, 0.3 * r.Chassis.Length);
        return r with { Outline = box with { Faces = [new FaceSettings(0.001, top, 35.0 * Math.PI / 180.0), .. box.Faces.Skip(1)] } };
    }

    private static RobotSettings Gripping(RobotSettings r, string tyre, double f) =>
        r with { Wheels = [.. r.Wheels.Select(w => w.Tyre.Name != tyre ? w : w with { Tyre = w.Tyre with { StaticFriction = w.Tyre.StaticFriction * f, KineticFriction = w.Tyre.KineticFriction * f } })] };
}

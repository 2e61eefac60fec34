using PushSim.Powertrain;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Robots;

/// <summary>Reads a robot's [battery].</summary>
internal static class BatteryReader
{
    private const int MostCellPoints = 24;

    public static BatterySettings Read(Section s)
    {
        _ = s.Text("shelf");
        IReadOnlyList<(double Charge, double Voltage)>? table = s.Curve("cell_voltage", MostCellPoints, 0.0, 1.0, 0.5, 10.0);
        if (table is null && !s.Has("cell_voltage"))
        {
            table = CellCurves.HobbyChart;
            s.Context.Note("battery: rest voltage of a lithium polymer cell by a common hobby chart, 4.20 V full", "about 0.03 V a cell between charts, estimate");
        }

        for (int i = 1; i < (table?.Count ?? 0); i++)
        {
            if (table![i].Voltage < table[i - 1].Voltage)
            {
                s.Context.Error(s.PlaceOf("cell_voltage"), "the cell's voltage falls with charge", "voltage must not fall from one point to the next");
                break;
            }
        }

        return s.Fill(Blank.Battery with { CellVoltage = table ?? [(0.0, 3.7)] }, ("capacity", b => b with { Resistance = Resistance(s) }));
    }

    // As given, else from two loads [ohm]; NaN if neither is there or right.
    private static double Resistance(Section s)
    {
        string[] keys = ["first_load_current", "first_load_voltage", "second_load_current", "second_load_voltage"];
        double?[] v = [.. keys.Select(s.Number)];
        string[] missing = [.. keys.Where(k => !s.Has(k))];
        if (s.Number("resistance") is double given)
        {
            return given;
        }

        if (missing.Length > 0)
        {
            string lacks = missing.Length == keys.Length ? "missing \"resistance\" in battery" : $"missing \"{missing[0]}\" in battery, so the two loads give no resistance";
            s.Missing([.. keys, "resistance"], lacks, "add resistance = \"150 mohm\" (inner resistance of the whole pack with its leads), two loads (" + string.Join(", ", keys) + "), or shelf = \"lithium polymer, 30C and up\" by its C number");
            return double.NaN;
        }

        if (v.Any(x => double.IsNaN(x!.Value)))
        {
            return double.NaN;
        }

        BatteryFromLoads r = BatteryFromLoads.Solve(v[0]!.Value, v[1]!.Value, v[2]!.Value, v[3]!.Value);
        string loads = FormattableString.Invariant($"{v[1]:G4} V at {v[0]:G3} A and {v[3]:G4} V at {v[2]:G3} A");
        if (!(r.Resistance > 0.0))
        {
            string why = v[0] == v[2] ? "the currents are the same" : "the voltage does not fall with the current";
            s.Context.Error(s.PlaceOf("second_load_voltage"), $"{loads} give no resistance: {why}", "read current and voltage together, under a light and a heavy load");
            return double.NaN;
        }

        s.Context.Note(FormattableString.Invariant($"battery: resistance {1e3 * r.Resistance:G3} mohm from {loads}; without load that is {r.RestVoltage:G4} V"), "that of the two voltages over the difference of the currents; it hangs on how long the load lasts");
        return r.Resistance;
    }
}

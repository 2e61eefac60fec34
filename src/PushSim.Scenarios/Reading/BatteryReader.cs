using PushSim.Powertrain;

namespace PushSim.Scenarios.Reading;

/// <summary>Reads a robot's [battery].</summary>
internal static class BatteryReader
{
    private const int MostCellPoints = 24;

    public static BatterySettings Read(Section s)
    {
        IReadOnlyList<(double, double)>? table = s.Curve("cell_voltage", MostCellPoints, 0.0, 1.0, 0.5, 10.0);
        if (table is null && !s.Has("cell_voltage"))
        {
            table = CellCurves.HobbyChart;
            s.Context.Notes.Add("battery: rest voltage of a lithium polymer cell by a common hobby chart, 4.20 V full");
        }

        for (int i = 1; i < (table?.Count ?? 0); i++)
        {
            if (table![i].Item2 < table[i - 1].Item2)
            {
                s.Context.Error(s.PlaceOf("cell_voltage"), "the cell's voltage falls with charge", "voltage must not fall from one point to the next");
                break;
            }
        }

        return new BatterySettings
        {
            Cells = s.Whole("cells", 1),
            CellVoltage = table ?? [(0.0, 3.7)],
            Resistance = s.Required("resistance"),
            Capacity = s.Required("capacity"),
            InitialCharge = s.Or("charge", 1.0),
            CutOffVoltage = s.Or("cut_off", 0.0),
        };
    }
}

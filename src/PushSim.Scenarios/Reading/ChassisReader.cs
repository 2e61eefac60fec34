using PushSim.Chassis;

namespace PushSim.Scenarios.Reading;

/// <summary>Reads a robot's [chassis].</summary>
internal static class ChassisReader
{
    public static ChassisSettings Read(Section s)
    {
        Section? centre = s.Table("centre_of_mass");
        Section? down = s.Table("downforce");
        var chassis = new ChassisSettings
        {
            Mass = s.Required("mass"),
            Length = s.Required("length"),
            Width = s.Required("width"),
            Height = s.Required("height"),
            CentreOfMassX = centre?.Or("x", 0.0) ?? 0.0,
            CentreOfMassY = centre?.Or("y", 0.0) ?? 0.0,
            CentreOfMassHeight = centre?.Required("height") ?? double.NaN,
            RollInertia = s.Number("roll_inertia"),
            PitchInertia = s.Number("pitch_inertia"),
            YawInertia = s.Number("yaw_inertia"),
            Downforce = down?.Required("force") ?? 0.0,
            DownforceX = down?.Or("x", 0.0) ?? 0.0,
            DownforceY = down?.Or("y", 0.0) ?? 0.0,
        };
        if (chassis.RollInertia is null || chassis.PitchInertia is null || chassis.YawInertia is null)
        {
            s.Context.Notes.Add("moments of inertia that are not given are estimated from the body box (a uniform block)");
        }

        return chassis;
    }
}

using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Scenarios.Estimates;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Scenarios.Keys;

/// <summary>Records of which nothing was read yet: the engine's defaults, and NaN for what a file must give.</summary>
internal static class Blank
{
    private const double No = double.NaN;

    public static readonly ChassisSettings Chassis = new() { Mass = No, CentreOfMassHeight = No, Length = No, Width = No, Height = No };
    public static readonly TyreSettings Tyre = new()
    {
        Name = "", StaticFriction = No, KineticFriction = No, BodyStiffness = No, BodyDamping = No, TreadMass = No, VerticalStiffness = No,
    };
    public static readonly TyreData TyreData = new() { Name = "" };
    public static readonly WheelSettings Wheel = new() { Name = "", X = No, Y = No, Radius = No, SpinInertia = No, Tyre = Tyre };
    public static readonly MotorSettings Motor = new() { Name = "", TorqueConstant = No, Resistance = No };
    public static readonly MotorData MotorData = new() { Name = "" };
    public static readonly DriveSettings Drive = new() { Name = "", Wheels = [] };
    public static readonly ControllerSettings Controller = new() { Name = "", Motors = [], Side = CommandSide.Left };
    public static readonly BatterySettings Battery = new() { Cells = 1, CellVoltage = [], Resistance = No, Capacity = No };
    public static readonly FloorSettings Floor = new();
    public static readonly FloorPatch Patch = new(No, No, No, No, No);
    public static readonly TetherSettings Tether = new() { HookX = No, HookHeight = No, AnchorX = No, AnchorHeight = No, Stiffness = No };
    public static readonly LoadCellSettings Cell = new();
    public static readonly ManoeuvreSettings Manoeuvre = new() { Kind = ManoeuvreKind.Hold, Commands = [], EndTime = No };
    public static readonly DriverSettings Driver = new();
    public static readonly CommandPoint Point = new(No, 0.0, 0.0);
    public static readonly ShoveSettings Shove = new();
    public static readonly WallSettings Wall = new(No, No, No, No);
    public static readonly ContactSettings Contact = new();
    public static readonly TyreLifeSettings TyreLife = new();
    public static readonly NumericsSettings Numerics = new();
}

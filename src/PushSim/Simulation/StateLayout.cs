using PushSim.Powertrain;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>Where each state stands in the flat vector: body, drives, optional slow states, ledger integrals, then the implicit
/// ones: deflections, treads and bristles of all tyres, bristles of drives, those of the body on the floor. States that are off are absent, so they cost nothing.</summary>
internal sealed record StateLayout
{
    public const int X = 0, Y = 1, Heading = 2, U = 3, V = 4, YawRate = 5;
    public const int Heave = 6, Pitch = 7, Roll = 8, HeaveRate = 9, PitchRate = 10, RollRate = 11;
    private const int FirstFree = 12;

    public StateLayout(ScenarioSettings scenario)
    {
        RobotSettings robot = scenario.Robot;
        int next = FirstFree;
        List<int> fouling = [], wear = [], frictionWork = [], controllerHeat = [], motorHeat = [], spin = [], driveBristle = [];
        FirstDrive = next;
        next += robot.Drives.Count;
        Charge = robot.Battery is null ? -1 : next++;
        bool isFed = robot.Controllers.Count > 0;
        SlowVoltage = isFed && robot.Battery is { SlowResistance: > 0.0 } ? next++ : -1;
        BatteryHeat = isFed && robot.Battery is { HeatCapacity: > 0.0 } ? next++ : -1;
        Anchor = scenario.Tether is null ? -1 : next++;
        DriverSettings driver = scenario.Manoeuvre.Driver;
        HeadingHold = driver.HeadingHold > 0.0 && isFed ? next++ : -1;
        Steering = driver.Steering > 0.0 && isFed ? next : -1;
        next += Steering < 0 ? 0 : DriverEquations<R1>.SteeringStates;
        Easing = driver.EaseTo < 1.0 && isFed ? next : -1;
        next += Easing < 0 ? 0 : DriverEquations<R1>.EasingStates;
        foreach (WheelSettings wheel in robot.Wheels)
        {
            bool hasDust = wheel.Tyre.FoulingDistance > 0.0 && scenario.Floor.Dust > 0.0;
            fouling.Add(hasDust ? next++ : -1);
        }

        foreach (WheelSettings wheel in robot.Wheels)
        {
            bool hasWear = wheel.Tyre.SpecificWear > 0.0;
            wear.Add(hasWear ? next++ : -1);
            frictionWork.Add(hasWear ? next++ : -1);
        }

        foreach (ControllerSettings controller in robot.Controllers)
        {
            controllerHeat.Add(controller.ThermalResistance > 0.0 ? next++ : -1);
            foreach ((int drive, int motor) in controller.Motors)
            {
                bool hasHeat = robot.Drives[drive].Motors[motor].Motor.WindingToCaseThermalResistance > 0.0;
                motorHeat.Add(hasHeat ? next : -1);
                next += hasHeat ? 2 : 0;
            }
        }

        FirstLedger = next;
        next += LedgerIndex.Count;
        ExplicitCount = next;
        Wheels = robot.Wheels.Count;
        Block = 2 * robot.Wheels.Count;
        foreach (WheelSettings wheel in robot.Wheels)
        {
            spin.Add(wheel.Tyre.SpinRadius > 0.0 ? Block++ : -1);
        }

        next += 3 * Block;
        foreach (DriveSettings drive in robot.Drives)
        {
            bool hasFriction = drive.FrictionTorque > 0.0 || drive.HoldTorque > 0.0
                || drive.Motors.Any(m => m.Motor.FrictionTorque > 0.0 || drive.GearEfficiency < 1.0);
            driveBristle.Add(hasFriction ? next++ : -1);
        }

        FloorBristle = next;
        next += Contact.ContactFriction.Bristles;
        Count = next;
        (Fouling, Wear, FrictionWork, Spin) = (new([.. fouling]), new([.. wear]), new([.. frictionWork]), new([.. spin]));
        (ControllerHeat, MotorHeat, DriveBristle) = (new([.. controllerHeat]), new([.. motorHeat]), new([.. driveBristle]));
    }

    /// <summary>Index of the first drive's spin; the others follow.</summary>
    public int FirstDrive { get; }

    /// <summary>Index of the charge taken [A s]; -1 without battery.</summary>
    public int Charge { get; }

    /// <summary>Index of the voltage of the battery's slow branch [V]; -1 when off.</summary>
    public int SlowVoltage { get; }

    /// <summary>Index of the battery's temperature [degree Celsius]; -1 when off.</summary>
    public int BatteryHeat { get; }

    /// <summary>Index of the anchor's floor x [m]; -1 without tether.</summary>
    public int Anchor { get; }

    /// <summary>Index of heading hold's turn command [1]; -1 when off.</summary>
    public int HeadingHold { get; }

    /// <summary>Index of the first of the driver's states of steering: three seen angles [rad] and the turn command [1]; -1 when nobody steers.</summary>
    public int Steering { get; }

    /// <summary>Index of the time without ground gained [s]; the share of the throttle that is gone [1] follows; -1 when off.</summary>
    public int Easing { get; }

    /// <summary>Whether anything bends the commands.</summary>
    public bool HasDriver => HeadingHold >= 0 || Steering >= 0 || Easing >= 0;

    /// <summary>Per wheel, -1 when off.</summary>
    public ShapeList<int> Fouling { get; }

    /// <summary>Per wheel, -1 when off.</summary>
    public ShapeList<int> Wear { get; }

    /// <summary>Energy each tread has lost on the floor [J]; per wheel, -1 where wear is off.</summary>
    public ShapeList<int> FrictionWork { get; }

    /// <summary>Per controller, -1 when off.</summary>
    public ShapeList<int> ControllerHeat { get; }

    /// <summary>Per motor in controller order, index of the winding (the case follows), -1 when off.</summary>
    public ShapeList<int> MotorHeat { get; }

    /// <summary>First of the ledger's integrals.</summary>
    public int FirstLedger { get; }

    /// <summary>Number of explicit states.</summary>
    public int ExplicitCount { get; }

    /// <summary>Number of wheels [1].</summary>
    public int Wheels { get; }

    /// <summary>Length of each block of the tyres' states, deflections, treads and bristles [1].</summary>
    public int Block { get; }

    /// <summary>Per wheel, place of its turning patch in each block; -1 without one.</summary>
    public ShapeList<int> Spin { get; }

    /// <summary>First index after the tyres' states.</summary>
    public int AfterTyres => ExplicitCount + (3 * Block);

    /// <summary>Index of a tyre's deflection q_x; q_y follows.</summary>
    public int Deflection(int wheel) => ExplicitCount + (2 * wheel);

    /// <summary>Index of a tread's velocity v_x; v_y follows.</summary>
    public int Tread(int wheel) => ExplicitCount + Block + (2 * wheel);

    /// <summary>Index of a tread's bristle z_x; z_y follows.</summary>
    public int Bristle(int wheel) => ExplicitCount + (2 * Block) + (2 * wheel);

    /// <summary>Per drive, index of its friction bristle, -1 without friction.</summary>
    public ShapeList<int> DriveBristle { get; }

    /// <summary>Index of the first of three bristles of the body on the floor.</summary>
    public int FloorBristle { get; }

    /// <summary>Number of all states.</summary>
    public int Count { get; }
}

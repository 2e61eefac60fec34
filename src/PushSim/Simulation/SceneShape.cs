using PushSim.Powertrain;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>What two scenes must have in common to run side by side in lanes: everything of the equations that is no number.</summary>
internal sealed record SceneShape(ShapeList<RobotShape> Robots, ShapeList<ContactShape> Contacts);

/// <summary>What is no number of a robot: where its states stand, and the shapes of its parts.</summary>
internal sealed record RobotShape(
    StateLayout Layout,
    ShapeList<WheelShape> Wheels,
    ShapeList<DriveShape> Drives,
    ShapeList<MotorShape> Motors,
    ShapeList<ControllerShape> Controllers,
    BatteryShape? Battery,
    bool HasTether,
    int Patches,
    ShapeList<int> Underside);

/// <summary>What is no number of a contact: whose it is, -1 for a wall, and the shapes of both bodies.</summary>
internal sealed record ContactShape(int First, int Second, (ShapeList<int> A, ShapeList<int> B) Bodies);

namespace PushSim.Analysis.Fit;

/// <summary>What tells what set a measured pull.</summary>
public enum PullReason
{
    /// <summary>The robot was dragged.</summary>
    Dragged,

    /// <summary>The wheels were seen turning.</summary>
    WheelsTurned,

    /// <summary>The wheels were seen standing.</summary>
    WheelsStood,

    /// <summary>Nothing: neither the motors nor the turning of the wheels are known.</summary>
    NoRobot,

    /// <summary>Nothing: the force is above what the robot file's motors can give.</summary>
    Inconsistent,

    /// <summary>The load of the battery.</summary>
    Battery,

    /// <summary>The motors could give far more.</summary>
    FarBelowMotors,

    /// <summary>Nothing: the force is too near to the motors' one.</summary>
    NearMotors,

    /// <summary>The force is the motors' one.</summary>
    AtMotors,
}

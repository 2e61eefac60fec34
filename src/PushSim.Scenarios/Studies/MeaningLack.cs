namespace PushSim.Scenarios.Studies;

/// <summary>Why fitted tyres cannot be put on a robot.</summary>
public enum MeaningLack
{
    /// <summary>The robot has no battery or no controllers.</summary>
    Drive,

    /// <summary>A shove needs a robot file, and a scenario was given.</summary>
    RobotFile,
}

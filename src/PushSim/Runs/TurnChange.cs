namespace PushSim.Runs;

/// <summary>What of a robot is changed to help its turn.</summary>
public enum TurnChange
{
    /// <summary>The wheelbase [mm].</summary>
    Wheelbase,

    /// <summary>The track [mm].</summary>
    Track,

    /// <summary>How far the centre of mass lies ahead of the middle of the wheelbase [mm].</summary>
    CentreOfMass,

    /// <summary>How high the centre of mass lies, of an arc [mm].</summary>
    CentreOfMassHeight,

    /// <summary>Friction of the front tyres [1].</summary>
    FrontFriction,

    /// <summary>Friction of the rear tyres [1].</summary>
    RearFriction,

    /// <summary>Friction of all tyres [1].</summary>
    Friction,

    /// <summary>The gear ratio [1].</summary>
    GearRatio,

    /// <summary>The current limit of each controller [A].</summary>
    CurrentLimit,
}

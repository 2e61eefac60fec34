namespace PushSim.Analysis.Sweep;

/// <summary>What is wrong with the text of a sweep's input.</summary>
public enum SweepFaultKind
{
    /// <summary>It is not KEY=FROM..TO or KEY=A,B,C.</summary>
    Form,

    /// <summary>It is no range of two different numbers.</summary>
    Range,

    /// <summary>Its range has two units.</summary>
    Units,

    /// <summary>Its list has an empty place.</summary>
    EmptyPlace,

    /// <summary>Its list is longer than allowed.</summary>
    TooMany,
}

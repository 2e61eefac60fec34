namespace PushSim.Analysis.Sweep;

/// <summary>What is wrong with the text of a sweep's input.</summary>
public enum SweepFaultKind
{
    /// <summary>It is not KEY=FROM..TO, KEY=A,B,C or KEY=["A, B", C].</summary>
    Form,

    /// <summary>It is no range of two different numbers.</summary>
    Range,

    /// <summary>Its range has two units.</summary>
    Units,

    /// <summary>Its range has a dash or a word in place of two dots; the text is the range as it should be written.</summary>
    Dash,

    /// <summary>Its list has an empty place.</summary>
    EmptyPlace,

    /// <summary>Its list opens with a bracket that is not closed at the end.</summary>
    Bracket,

    /// <summary>A quote in its list is not closed, or something stands behind it.</summary>
    Quote,

    /// <summary>A range or list stands beside another text of the same key, where each is one whole value.</summary>
    Again,

    /// <summary>Its list is longer than allowed.</summary>
    TooMany,
}

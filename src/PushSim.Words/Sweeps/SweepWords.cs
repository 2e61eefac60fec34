using PushSim.Analysis.Sweep;

namespace PushSim.Words.Sweeps;

/// <summary>What is said of a sweep's inputs.</summary>
public static class SweepWords
{
    /// <summary>What is wrong with the text of an input.</summary>
    /// <param name="fault">The fault.</param>
    public static string Of(SweepFault fault) => fault.Kind switch
    {
        SweepFaultKind.Form => $"\"{fault.Text}\" is not KEY=FROM..TO or KEY=A,B,C",
        SweepFaultKind.Range => $"\"{fault.Text}\" is no range of two different numbers",
        SweepFaultKind.Units => $"\"{fault.Text}\" has two units; write both ends in one",
        SweepFaultKind.EmptyPlace => $"\"{fault.Text}\" has an empty place in its list",
        _ => $"more than {SweepInput.MostPoints} values for {fault.Text}",
    };
}

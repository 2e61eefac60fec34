namespace PushSim.Words.Terms;

/// <summary>Sentences about parts that more than one answer warns with.</summary>
internal static class PartWords
{
    /// <summary>Of a motor without sensors.</summary>
    public static string Sensorless(string motor) => $"motor {motor} is sensorless: what it does at standstill under load is not predicted";

    /// <summary>Of a battery below its cut-off: "the battery falls to 9.5 V, below ...".</summary>
    /// <param name="voltage">What it falls to [V].</param>
    /// <param name="cutOff">The cut-off [V].</param>
    public static string BelowCutOff(double voltage, double cutOff) => Text($"the battery falls to {PlainNumber.Apart(voltage, cutOff)} V, below its cut-off of {cutOff:0.0} V");
}

namespace PushSim.Files;

/// <summary>What a source has to say.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="Arrival">When, since the start of the bench [s].</param>
/// <param name="Bytes">What came; empty but for bytes.</param>
/// <param name="Text">What is wrong; empty if nothing is.</param>
public sealed record SourceNews(SourceNewsKind Kind, double Arrival, byte[] Bytes, string Text = "");

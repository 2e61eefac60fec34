namespace PushSim.Workbench.Wire;

/// <summary>What a log of pulls says.</summary>
internal sealed record LogMessage(string Sentence, string Reason, string Sure, string Next, IReadOnlyList<LogTyre> Tyres, IReadOnlyList<LogPull> Pulls, LogCurve? Curve, IReadOnlyList<LogCurve> Curves, string Block, IReadOnlyList<string> Notes);

/// <summary>A fitted value, and the row that it may be put into; null for none.</summary>
internal sealed record LogTyre(string Name, string Words, string? Key, string Value);

/// <summary>A pull: seconds of its trace, newton; "tyre", "motor" or "unclear" for what set its force.</summary>
internal sealed record LogPull(string Words, string Verdict, double From, double To, double Peak, double? Sliding, bool LeftOut, string Why, int Curve);

internal sealed record LogCurve(double[] T, double[] F, string Unit, string Name);

internal sealed record UseRequest(string? Key, string? Value);

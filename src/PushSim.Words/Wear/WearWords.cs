namespace PushSim.Words.Wear;

/// <summary>What wear and dust numbers cannot do; belongs beside them wherever they are shown.</summary>
public static class WearWords
{
    /// <summary>Of wear.</summary>
    public const string Limits =
        "Wear numbers rank, they do not forecast: they carry the drum test of ISO 4649 (fresh grade-60 abrasive, 10 N) over to your board by "
        + "one factor for how abrasive it is, which nobody has measured; the standard itself infers no service life from it. Left out: heat, edges, tearing of knobs, dust between tread and board.";

    /// <summary>Of grip over many runs.</summary>
    public const string GripLimits =
        "Dust numbers are estimates: no table holds small tyres on dusty painted board. The board's dust is taken as the same in every run, and tread picks it up by sliding only.";
}

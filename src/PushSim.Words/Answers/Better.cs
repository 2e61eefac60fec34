namespace PushSim.Words.Answers;

/// <summary>Which way an answer is better, as most builders would say.</summary>
public enum Better
{
    /// <summary>Neither way: it only tells.</summary>
    Neither,

    /// <summary>More is better.</summary>
    More,

    /// <summary>Less is better.</summary>
    Less,
}

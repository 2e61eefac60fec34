using PushSim.Analysis.Chance;
using PushSim.Runs;

namespace PushSim.Analysis.Sweep;

/// <summary>One point of a sweep.</summary>
/// <param name="Place">Number of the value of each input, from 0 [1].</param>
/// <param name="Answers">Asked quantities; null where one does not apply or the run failed.</param>
/// <param name="Odds">Outcomes of drawn matches; null if none were asked.</param>
/// <param name="Failed">Why the run failed; null if it did not.</param>
/// <param name="HasTipped">True if a robot tipped or lost the floor, which ended the run.</param>
/// <param name="IsBouncing">True if the robot bounced on its tether, so that its mean pull is no steady one.</param>
/// <param name="Shove">Who won, of a shove.</param>
public sealed record SweepPoint(int[] Place, double?[] Answers, Tally? Odds, RunStop? Failed, bool HasTipped = false, bool IsBouncing = false, ShoveOutcome? Shove = null);

using PushSim.Analysis.Limits;
using PushSim.Binding;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

/// <summary>
/// What is said to bind a steady pull does: a tenth more of it adds to the pull. Over random robots in the state of their file and in every state of heat and charge that the
/// limits tell. PUSHSIM_BINDING_ROBOTS sets another count than the one below.
/// </summary>
public class SteadyBindingTests(ITestOutputHelper output)
{
    private const int UsualCount = 200;

    [Fact]
    public void More_of_what_binds_a_pull_adds_to_it()
    {
        int count = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_BINDING_ROBOTS"), out int n) ? n : UsualCount;
        int states = 0;
        int[] named = new int[BindingRule.Kinds];
        List<string> wrong = [];
        for (int seed = 0; seed < count; seed++)
        {
            ScenarioSettings s = SceneBuilder.InCanonicalOrder(PullAgreementTests.Pull(RandomRobots.Scenario(seed).Robot));
            foreach (LimitCondition condition in Conditions)
            {
                LimitState state = LimitFinder.State("", s, condition, LimitFinder.Hook(s));
                states += state.Status == PullStatus.Found ? 1 : 0;
                foreach (BoundBy bound in state.Bound)
                {
                    named[(int)bound.Kind]++;
                    if (!(bound.GainPercent > 0.0))
                    {
                        wrong.Add(FormattableString.Invariant($"seed {seed}, charge {condition.Charge}, winding {condition.WindingTemperature}: {bound.Kind} {bound.GainPercent:0.0000} % of {state.Pull:0.0000} N, {string.Join(", ", state.Bound.Select(b => FormattableString.Invariant($"{b.Kind} {b.GainPercent:0.0000} %")))}"));
                    }
                }
            }
        }

        output.WriteLine($"seeds 0 to {count - 1}: {states} steady pulls, named {string.Join(", ", named.Select((k, i) => $"{(BindingKind)i} {k}"))}");
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {named.Sum()}:\n" + string.Join("\n", wrong));
        Assert.True(states > 4 * count, $"only {states} steady pulls");
    }

    private static LimitCondition[] Conditions =>
    [
        new(), new() { Charge = 1.0 }, new() { Charge = 1.0, WindingTemperature = LimitFinder.Warm }, new() { Charge = 0.8 }, new() { Charge = 0.8, WindingTemperature = LimitFinder.Warm },
    ];
}

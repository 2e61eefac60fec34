using PushSim.Analysis.Limits;
using PushSim.Binding;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

/// <summary>
/// The limits and a run name the same at the same moment: over random robots in a pull test that settles, as in <see cref="PullAgreementTests"/>, what binds each wheel at the end of
/// the run is what binds it in the steady pull, in the run's own temperatures and charge. PUSHSIM_BINDING_PULLS sets another count than the one below.
/// </summary>
public class BindingAgreementTests(ITestOutputHelper output)
{
    private const int UsualCount = 40;

    // Difference of the two largest shares below which their order is not compared [1].
    private const double Near = 0.1;

    [Fact]
    public void The_last_moments_of_a_pull_test_are_bound_by_what_binds_the_steady_pull()
    {
        int wanted = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_BINDING_PULLS"), out int n) ? n : UsualCount;
        int compared = 0, skipped = 0, ordered = 0;
        Dictionary<string, int> seen = [];
        List<string> wrong = [];
        for (int seed = 0; compared < wanted; seed++)
        {
            ScenarioSettings scenario = PullAgreementTests.Pull(PullAgreementTests.Straight(SteadyBindingTests.Weakened(seed)), PullAgreementTests.Creep);
            RunResult run = Simulator.Run(scenario);
            if (run.Status != RunStatus.Finished || run.Answers.Chatter is not null || PullAgreementTests.Swing(run) > PullAgreementTests.SlideAndStop
                || PullAgreementTests.Drift(run) > PullAgreementTests.Settled)
            {
                skipped++;
                continue;
            }

            LimitCondition now = PullAgreementTests.Condition(run, run.Time.Length - 1);
            if (LimitFinder.Pull(run.Scenario, now) is not { IsMixed: false })
            {
                skipped++;
                continue;
            }

            compared++;
            LimitState state = LimitFinder.State(LimitStateKind.AsInFile, run.Scenario, now, LimitFinder.Hook(run.Scenario));
            int last = run.Time.Length - 1;
            BindingMoments[] driven = [.. run.Bindings.Where(b => b.IsDriven)];
            IReadOnlyList<(BindingKind Kind, double Share)> shares = BindingSpans.Over(run.Time, driven, last, last)!.Kinds;
            string own = string.Join(' ', shares.Select(k => k.Kind).Order());
            string steady = string.Join(' ', state.Bound.Select(b => b.Kind).Order());
            seen[own] = seen.GetValueOrDefault(own) + 1;
            bool isClear = shares.Count == 1 || shares[0].Share - shares[1].Share > Near;
            ordered += isClear && shares.Count > 1 ? 1 : 0;
            if (own != steady || (isClear && state.Binding != shares[0].Kind))
            {
                wrong.Add(FormattableString.Invariant($"seed {seed}: run {string.Join(", ", shares.Select(k => FormattableString.Invariant($"{k.Kind} {k.Share:0.000}")))}, pull {run.Trace.Tether!.Force[^1]:0.0000} N; limits {string.Join(", ", state.Bound.Select(b => FormattableString.Invariant($"{b.Kind} {b.GainPercent:0.00} %")))}, {state.Pull:0.0000} N; wheels {string.Join(' ', driven.Select(d => d.Kinds[last]))}, {string.Join(' ', driven.Select(d => d.Force[last].ToString("0.00", System.Globalization.CultureInfo.InvariantCulture)))}"));
            }
        }

        output.WriteLine($"{compared} robots compared, {skipped} left out; {string.Join(", ", seen.Select(s => $"{s.Key}: {s.Value}"))}; {ordered} with an order");
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {compared}:\n" + string.Join("\n", wrong));
        Assert.True(seen.Count > 2, string.Join(", ", seen.Keys));
    }
}

using System.Reflection;
using PushSim.Analysis.Fit;
using PushSim.Analysis.Limits;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Words.Fits;
using PushSim.Words.Limits;
using PushSim.Words.Runs;
using PushSim.Words.Terms;
using Xunit;

namespace PushSim.Tests.Conventions;

/// <summary>Every kind that the engine tells of has a sentence of its own.</summary>
public class WordsTests
{
    [Fact]
    public void Every_warning_of_a_run_has_its_sentence() => Told<RunWarning>(WarningWords.Of);

    [Fact]
    public void Every_warning_of_limits_has_its_sentence()
    {
        LimitResult report = LimitFinder.Find(TestRobots.Pull());
        Told<LimitWarning>(w => Assert.Single(LimitWarnings.Of(report with { Warnings = [w] })));
    }

    [Fact]
    public void Every_doubt_about_a_robot_has_its_sentence()
    {
        Told<Implausible>(PlausibilityWords.Of);
        Assert.Equal("it never gets over its first metre; check motors, gear ratios, mass, skids and slope", PlausibilityWords.Of(new Implausible.Late(null)));
    }

    [Fact]
    public void Every_warning_of_pulls_has_its_sentence()
    {
        TyreFit fit = PullFit.OfReadings("soft", [1.0, 1.1], [], GripLoad.Fixed(2.0), null, isDrag: false);
        Told<PullWarning>(w => Assert.Single(PullWords.Warnings(fit with { Warnings = [w] })));
    }

    [Fact]
    public void Every_stop_has_its_sentence() =>
        Told(Enum.GetValues<RunStopKind>().Select(k => RunWords.Cause(new RunStop(k, 1.0) { Robot = TestRobots.FourWheels(), Refusal = "refused", Upset = Upset.NoseUp })));

    [Fact]
    public void Every_reason_of_a_pull_has_its_sentence() =>
        Told(Enum.GetValues<PullReason>().Select(r => PullWords.Reason(new PullCause(null, false, 1.0, r) { Stall = new StallForce(2.0, 2.0, 1.0, 12.0, 11.0) })));

    private static void Told<T>(Func<T, string> words) => Told(typeof(T).GetNestedTypes().Select(t => words((T)Made(t))));

    private static void Told(IEnumerable<string> sentences)
    {
        string[] all = [.. sentences];
        Assert.NotEmpty(all);
        Assert.All(all, s => Assert.NotEqual("", s));
        Assert.Equal(all.Length, all.Distinct().Count());
    }

    private static object Made(Type type) => type.GetConstructors()[0] is ConstructorInfo c ? c.Invoke([.. c.GetParameters().Select(p => Value(p.ParameterType))]) : throw new MissingMethodException();

    private static object Value(Type type) =>
        type == typeof(string) ? "x"
        : type == typeof(double) || type == typeof(double?) ? 1.5
        : type == typeof(int) ? 2
        : type == typeof(bool) ? true
        : type == typeof(IReadOnlyList<WheelAir>) ? new[] { (WheelAir)Made(typeof(WheelAir)) }
        : type == typeof(IReadOnlyList<string>) ? new[] { "x" }
        : type == typeof(IReadOnlyList<(Wiring, WheelLoss)>) ? new[] { (Wiring.Series, WheelLoss.Lifted) }
        : type.IsEnum ? Enum.GetValues(type).GetValue(0)!
        : Made(type.IsAbstract ? type.GetNestedTypes()[0] : type);
}

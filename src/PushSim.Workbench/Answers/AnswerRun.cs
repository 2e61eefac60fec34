namespace PushSim.Workbench.Answers;

/// <summary>The run that answers a change: at the accuracy of drawn matches, since a page that follows a slider has no time for more; the closer look comes after it.</summary>
internal static class AnswerRun
{
    // Samples of a history that a page can show [1/s].
    private const double SampleRate = 500.0;

    /// <summary>The run.</summary>
    /// <param name="scenario">Checked settings.</param>
    /// <param name="cancel">Stops it.</param>
    public static RunResult Fast(ScenarioSettings scenario, CancellationToken cancel)
    {
        NumericsSettings draws = scenario.Numerics.ForDraws();
        return Simulator.Run(scenario with { Numerics = draws with { Precision = Precision.Double, SampleRate = Math.Min(SampleRate, draws.SampleRate) } }, cancel);
    }
}

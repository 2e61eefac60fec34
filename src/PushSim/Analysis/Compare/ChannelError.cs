namespace PushSim.Analysis.Compare;

/// <summary>How far a run is off one quantity of a log.</summary>
/// <param name="Channel">The quantity.</param>
/// <param name="Model">The run's own values at the log's times, NaN after its end [unit of the channel].</param>
/// <param name="Rms">Root of the mean square of the differences [unit of the channel].</param>
/// <param name="Worst">Greatest difference, run less log, with its sign [unit of the channel].</param>
/// <param name="WorstAt">When [s].</param>
/// <param name="Spread">Greatest less least measured value [unit of the channel].</param>
public sealed record ChannelError(Channel Channel, double[] Model, double Rms, double Worst, double WorstAt, double Spread)
{
    /// <summary>Rms as a share of the spread [1]; NaN for a constant.</summary>
    public double Share => Spread > 0.0 ? Rms / Spread : double.NaN;
}

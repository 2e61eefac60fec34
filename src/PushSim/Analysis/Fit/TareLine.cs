using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>What the cell reads of the slack chain about a pull: a straight line through the slack before and after it, so that a drift is seen; a constant if only one side is there.</summary>
internal sealed class TareLine
{
    private readonly double _level;
    private readonly LineFit? _line;
    private readonly double _unit;
    private readonly double _remaining;

    private TareLine(double level, LineFit? line, double unit, double remaining, double freedom)
    {
        (_level, _line, _unit, _remaining, Freedom) = (level, line, unit, remaining, freedom);
    }

    /// <summary>Degrees of freedom of its variance [1].</summary>
    public double Freedom { get; }

    /// <summary>Whether a drift was seen and taken out.</summary>
    public bool SeesDrift => _line is not null;

    /// <summary>A tare that is known.</summary>
    public static TareLine Known(double level) => new(level, null, 0.0, 0.0, double.PositiveInfinity);

    /// <summary>Through the slack samples of both sides; each side may be empty, not both.</summary>
    public static TareLine Through(List<double> timeBefore, List<double> before, List<double> timeAfter, List<double> after, double step)
    {
        List<double> t = [.. timeBefore, .. timeAfter];
        List<double> y = [.. before, .. after];
        LineFit? line = before.Count > 2 && after.Count > 2 ? LineFit.Of(t, y) : null;
        double level = Sample.Mean(y);
        double[] residuals = [.. y.Select((v, i) => v - (line?.At(t[i]) ?? level))];
        double effective = Autocorrelation.EffectiveCount(residuals);
        double freedom = Math.Max(1.0, effective - (line is null ? 1.0 : 2.0));
        double variance = y.Count > 2 ? residuals.Sum(r => r * r) / Math.Max(1, y.Count - (line is null ? 1 : 2)) : 0.0;

        // scaled so that leverage times it is the variance of the line
        double unit = variance * y.Count / effective;
        return new TareLine(level, line, line is null ? unit / y.Count : unit, Quantisation.VarianceOfMean(step, Math.Sqrt(variance)), freedom);
    }

    /// <summary>Reading of the slack chain [N].</summary>
    public double At(double time) => _line?.At(time) ?? _level;

    /// <summary>Variance of that from noise, and what remains of the cell's steps [N^2].</summary>
    public (double Noise, double Steps) VarianceAt(double time) => (_unit * (_line?.LeverageAt(time) ?? 1.0), _remaining);
}

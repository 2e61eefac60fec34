using PushSim.Analysis.Season;

namespace PushSim.Tests.Analysis;

/// <summary>
/// A season of readings with known truth: 30 days, six tyres, a wiped and a dusty board, two loads, a robot that is heavier from day 15 on, a cell whose gain wanders between calibrations and drifts over
/// the evening as it warms. Two tyres are pulled in series of twelve from a wiped board on. All numbers are invented.
/// </summary>
internal sealed class MadeUpSeason
{
    private const int Days = 30;
    private const int Tyres = 6;
    private const double Scatter = 0.02;
    private const double DaySpread = 0.03;
    private const double WarmUp = 0.01;
    private const double Wander = 0.003;
    private const int Calibrated = 5;
    private const double Reference = 13.3;

    private readonly Random _random;

    public MadeUpSeason(int seed)
    {
        _random = new Random(seed);
        for (int i = 0; i < Tyres; i++)
        {
            Friction[i] = Between(0.4, 1.1);
            Dusty[i] = Between(0.6, 0.85);
            Exponent[i] = Between(0.0, 0.2);
            Fouled[i] = Between(0.5, 0.8);
            Scale[i] = Between(3.0, 6.0);
        }

        Pulls = Make();
    }

    public double[] Friction { get; } = new double[Tyres];

    public double[] Dusty { get; } = new double[Tyres];

    public double[] Exponent { get; } = new double[Tyres];

    public double[] Fouled { get; } = new double[Tyres];

    public double[] Scale { get; } = new double[Tyres];

    public List<SeasonPull> Pulls { get; }

    /// <summary>True friction of a tyre in a state at a load.</summary>
    public double Truth(string tyre, string state, double load)
    {
        int i = tyre[1] - '0';
        return Friction[i] * Math.Pow(load / Reference, -Exponent[i]) * (state == "dusty" ? Dusty[i] : 1.0);
    }

    public static bool IsSeries(int tyre) => tyre < 2;

    private List<SeasonPull> Make()
    {
        List<SeasonPull> all = [];
        double gain = 0.0;
        for (int day = 0; day < Days; day++)
        {
            gain = day % Calibrated == 0 ? 0.0 : gain + (Wander * Normal());
            double today = gain + (DaySpread * Normal());
            double warm = WarmUp * Normal();
            double mass = day < 15 ? 13.3 : 15.5;
            List<(int Tyre, string State, double Load, double Count)> due = [];
            foreach (int tyre in Enumerable.Range(0, Tyres).OrderBy(_ => _random.Next()).Take(3))
            {
                foreach (double load in new[] { mass, mass + 4.0 })
                {
                    due.Add((tyre, "wiped", load, 0.0));
                    due.Add((tyre, "dusty", load, 0.0));
                }
            }

            due = [.. due.OrderBy(_ => _random.Next())];
            if (day % 5 == 2)
            {
                due.AddRange(Enumerable.Range(0, 2).SelectMany(t => Enumerable.Range(0, 12).Select(n => (t, "wiped", mass, (double)n))));
            }

            for (int k = 0; k < due.Count; k++)
            {
                (int tyre, string state, double load, double count) = due[k];
                double left = state == "wiped" && IsSeries(tyre) ? Fading.Left(Fouled[tyre], Scale[tyre], count) : 1.0;
                double log = today + (warm * ((k / (double)due.Count) - 0.5)) + (Scatter * Normal());
                all.Add(new SeasonPull($"t{tyre}", state, day, load, load * Truth($"t{tyre}", state, load) * left * Math.Exp(log)) { Count = state == "wiped" ? count : null });
            }
        }

        return all;
    }

    private double Between(double low, double high) => low + ((high - low) * _random.NextDouble());

    private double Normal() => Math.Sqrt(-2.0 * Math.Log(1.0 - _random.NextDouble())) * Math.Cos(2.0 * Math.PI * _random.NextDouble());
}

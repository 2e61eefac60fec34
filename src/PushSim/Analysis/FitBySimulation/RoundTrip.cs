using MathNet.Numerics.LinearAlgebra;
using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>
/// From what pulls show to the law of the tyre, and back: the engine repeats the test, a cell of the same rate, filter, noise and steps reads it, and the same reader finds breakaway and sliding in
/// that log. With x the logarithms of the tyre's static and kinetic friction and y those of what is read,
/// <code>
/// x &lt;- x + J^-1 (y measured - y simulated),   J = dy/dx
/// u^2 = u^2(pulls, through J^-1) + sum over what the file may be off of its change of x^2,   to each end by itself
/// </code>
/// (JCGM 100, 5.1.3, note 2: sensitivities by experiment). So the speed at which the tyre slides, the mass that is set moving and a slow cell are taken out. A fit that does not
/// come back through the engine is not taken.
/// </summary>
public static class RoundTrip
{
    // Readings of one run by cells of other phase and noise, whose mean counts [1].
    private const int Cells = 12;

    // Step of a derivative, and the greatest step of a search, in the logarithm of a friction [1].
    private const double Difference = 0.02;
    private const double MostStep = 0.25;
    private const int Steps = 5;

    // A search rests where a reading comes back to within this share [1]; further off than this the trip has failed.
    private const double Rest = 5e-4;
    private const double Failed = 0.01;

    // Share of a change of kinetic friction that the sliding shows, below which the tyre slides too slowly to tell it [1].
    private const double LeastTold = 0.2;

    // Static over kinetic friction of a tyre whose breakaway is not seen, and a factor that it is known within: estimates [1].
    private const double UnseenRatio = 1.15;
    private const double UnseenFactor = 1.15;

    // Half-widths, two standard deviations, of what the file may be off: slip speed within a factor of two, stiffness and damping of the body and renewal by rolling within 1.5 (estimates,
    // common practice, no source), winding and motor constant by what motors of a kind differ [1].
    private const double SlipSpeedFactor = 2.0;
    private const double BodyFactor = 1.5;
    private const double Resistance = 0.10;
    private const double TorqueConstant = 0.05;

    private const int Seed = 20_240_501;

    /// <summary>What the tyre's law must be for the engine to show what the pulls show; null where the tyre is not known to have set the pulls, or there are no logs.</summary>
    /// <param name="test">The test as it was done: robot, floor, tether and manoeuvre.</param>
    /// <param name="fit">What the logs show.</param>
    /// <param name="load">Load on the tyres under test.</param>
    /// <param name="cancel">Stops the runs.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static TripResult? Of(ScenarioSettings test, TyreFit fit, GripLoad load, CancellationToken cancel = default)
    {
        if (test.Tether is null || fit.Cause.IsLowerBound || fit.Sliding is not { } sliding || fit.Traces.Count == 0)
        {
            return null;
        }

        try
        {
            return Trips(test, fit, sliding, load, cancel);
        }
        catch (SimulationException)
        {
            return new TripResult { IsLost = true, AtSpeed = sliding };
        }
    }

    private static TripResult Trips(ScenarioSettings test, TyreFit fit, Interval sliding, GripLoad load, CancellationToken cancel)
    {
        var cell = ReadingCell.Of(fit.Traces, load);
        bool isSeen = !fit.IsBreakawayUnseen;
        double[] aim = [Math.Log(isSeen ? Math.Max(fit.AtRest.Value, sliding.Value) : UnseenRatio * sliding.Value), Math.Log(sliding.Value)];
        var trip = new Trip(new SimulatedTest(test), cell, isSeen, cancel);
        if (trip.Solve(aim, aim, 1.0) is not { } found)
        {
            return new TripResult { IsLost = true, AtSpeed = sliding };
        }

        (double[] x, Matrix<double> slopes) = found;
        if (slopes[1, 1] < LeastTold)
        {
            return new TripResult { IsTooSlow = true, AtSpeed = sliding };
        }

        Matrix<double> inverse = slopes.Inverse();
        double[] random = Random(fit, load, inverse, isSeen, trip.Scatter);
        double[] down = new double[2];
        double[] up = new double[2];
        foreach (double[]? other in new[] { trip.Solve(aim, x, 1.0 / SlipSpeedFactor)?.X, trip.Solve(aim, x, SlipSpeedFactor)?.X })
        {
            if (other is null)
            {
                return new TripResult { IsTooSlow = true, AtSpeed = sliding };
            }

            Add(down, up, [other[0] - x[0], other[1] - x[1]], isTwoSided: false);
        }

        foreach (double[] change in trip.Changes(x, inverse, test))
        {
            Add(down, up, change, isTwoSided: true);
        }

        if (!isSeen)
        {
            Add(down, up, [0.0, slopes[1, 0] / slopes[1, 1] * Math.Log(UnseenFactor)], isTwoSided: true);
        }

        Interval Of(int k, double off)
        {
            double value = Math.Exp(x[k]);
            double low = Math.Exp(x[k] - double.Hypot(random[k], Math.Sqrt(down[k])));
            double high = Math.Exp(x[k] + double.Hypot(random[k], Math.Sqrt(up[k])));
            return new Interval(value, value - double.Hypot(value - low, off * value), value + double.Hypot(high - value, off * value));
        }

        return new TripResult
        {
            Static = isSeen ? Of(0, load.Off) : null,
            Kinetic = Of(1, load.Off),
            AtSpeed = sliding,
            Speed = trip.Speed(x, test, cancel),
            Off = trip.Off,
        };
    }

    // Halves of what the pulls leave open, in the logarithms: Student's over what each pull alone would change, or the intervals of the one pull
    private static double[] Random(TyreFit fit, GripLoad load, Matrix<double> inverse, bool isSeen, double[] scatter)
    {
        FoundPull[] slid = [.. fit.Traces.SelectMany(t => t.Pulls).Where(p => p.Plateau is not null)];
        FoundPull[] seen = [.. fit.Traces.SelectMany(t => t.Pulls).Where(p => p.Quality == BreakawayQuality.Seen)];
        FoundPull[] both = [.. slid.Where(seen.Contains)];
        double[] half = new double[2];
        double own = slid.Length > 1 ? Spread([.. slid.Select(p => Math.Log(load.Friction(p.Plateau!.Value.Value)))]) : Half(slid[0].Plateau!.Value);
        double edge = !isSeen ? 0.0 : seen.Length > 1 ? Spread([.. seen.Select(p => Math.Log(load.Friction(p.Breakaway.Value)))]) : Half(seen[0].Breakaway);
        for (int k = 0; k < 2; k++)
        {
            half[k] = isSeen && both.Length > 1 && both.Length == seen.Length && both.Length == slid.Length
                ? Spread([.. both.Select(p => (inverse[k, 0] * Math.Log(load.Friction(p.Breakaway.Value))) + (inverse[k, 1] * Math.Log(load.Friction(p.Plateau!.Value.Value))))])
                : double.Hypot(inverse[k, 0] * edge, inverse[k, 1] * own);
            half[k] = double.Hypot(half[k], 2.0 * double.Hypot(inverse[k, 0] * scatter[0], inverse[k, 1] * scatter[1]));
        }

        return half;

        static double Spread(double[] y) => Interval.OfMean(y) is { IsBounded: true } i ? 0.5 * (i.High - i.Low) : 0.0;
        static double Half(Interval i) => i.IsBounded ? Math.Max(i.High - i.Value, i.Value - i.Low) / i.Value : 0.0;
    }

    private static void Add(double[] down, double[] up, double[] change, bool isTwoSided)
    {
        for (int k = 0; k < 2; k++)
        {
            double square = change[k] * change[k];
            down[k] += isTwoSided || change[k] < 0.0 ? square : 0.0;
            up[k] += isTwoSided || change[k] > 0.0 ? square : 0.0;
        }
    }

    // The cell that read the log, and what its reader finds in other logs
    private sealed record ReadingCell(double Gap, double Noise, double Step, GripLoad Load)
    {
        public static ReadingCell Of(IReadOnlyList<FoundTrace> traces, GripLoad load)
        {
            double[] gaps = [.. traces.SelectMany(t => t.Trace.Time.Zip(t.Trace.Time.Skip(1), (a, b) => b - a))];
            return new ReadingCell(Math.Max(1e-3, Sample.Quantile(gaps, 0.5)), traces.Average(t => t.Noise), traces.Max(t => t.Step), load);
        }

        // Logarithms of breakaway and sliding as they are read, their scatter from cell to cell; NaN where none is found
        public (double[] Mean, double[] Scatter) Read(ForceHistory force)
        {
            List<double>[] y = [[], []];
            double end = force.Step * (force.Values.Length - 1);
            for (int c = 0; c < Cells; c++)
            {
                var random = new Random(Seed + c);
                double phase = (c + 0.5) / Cells * Gap;
                double[] time = [.. Enumerable.Range(0, Math.Max(0, (int)((end - phase) / Gap))).Select(i => phase + (i * Gap))];
                double Rounded(double f) => Step > 0.0 ? Step * Math.Round(f / Step) : f;
                double Normal() => Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble())) * Math.Cos(2.0 * Math.PI * random.NextDouble());
                FoundTrace found = PullFinder.Find(new ForceTrace { Time = time, Force = [.. time.Select(t => Rounded(force.At(t) + (Noise * Normal())))] }, 0.0);
                if (found.Problem is null && found.Pulls.MaxBy(p => p.PlateauTo - p.PlateauFrom) is { Plateau: { } plateau } pull)
                {
                    y[1].Add(Math.Log(Load.Friction(plateau.Value)));
                    if (pull.Quality == BreakawayQuality.Seen)
                    {
                        y[0].Add(Math.Log(Load.Friction(pull.Breakaway.Value)));
                    }
                }
            }

            double Mean(int k) => y[k].Count > 0 && y[k].All(double.IsFinite) ? Sample.Mean(y[k]) : double.NaN;
            double Error(int k) => y[k].Count > 1 ? Math.Sqrt(Sample.Variance(y[k]) / y[k].Count) : 0.0;
            return ([Mean(0), Mean(1)], [Error(0), Error(1)]);
        }
    }

    // Runs of one test
    private sealed class Trip(SimulatedTest test, ReadingCell cell, bool isSeen, CancellationToken cancel)
    {
        /// <summary>Standard errors of what the cells read, at the last solution [1].</summary>
        public double[] Scatter { get; private set; } = [0.0, 0.0];

        /// <summary>How far the reading is from the measured one at the last solution, as a share [1].</summary>
        public double Off { get; private set; }

        // The frictions whose readings are the aim, and the slopes there; null where none is found
        public (double[] X, Matrix<double> Slopes)? Solve(double[] aim, double[] start, double slipSpeed)
        {
            double[] x = [.. start];
            for (int step = 0; step <= Steps; step++)
            {
                ForceHistory?[] runs = test.Run([Tyre(x, slipSpeed), Tyre([x[0] + Difference, x[1]], slipSpeed), Tyre([x[0], x[1] - Difference], slipSpeed)], test.End, cancel);
                if (runs.Any(r => r is null))
                {
                    return null;
                }

                (double[] y, double[] scatter) = cell.Read(runs[0]!);
                double[] a = cell.Read(runs[1]!).Mean;
                double[] b = cell.Read(runs[2]!).Mean;
                if (!double.IsFinite(y[1] + a[1] + b[1]) || (isSeen && !double.IsFinite(y[0] + a[0] + b[0])))
                {
                    return null;
                }

                Matrix<double> slopes = Matrix<double>.Build.DenseOfArray(new[,]
                {
                    { isSeen ? (a[0] - y[0]) / Difference : 1.0, isSeen ? (y[0] - b[0]) / Difference : 0.0 },
                    { (a[1] - y[1]) / Difference, (y[1] - b[1]) / Difference },
                });
                double[] off = [isSeen ? aim[0] - y[0] : 0.0, aim[1] - y[1]];
                Off = Math.Max(Math.Abs(off[0]), Math.Abs(off[1]));
                Scatter = isSeen ? scatter : [0.0, scatter[1]];
                if (Off < Rest || step == Steps || slopes[1, 1] < 0.5 * LeastTold || Math.Abs(slopes.Determinant()) < 0.02)
                {
                    return Off < Failed || slopes[1, 1] < LeastTold ? (x, slopes) : null;
                }

                Vector<double> change = slopes.Solve(Vector<double>.Build.Dense(off));
                x = [x[0] + Math.Clamp(change[0], -MostStep, MostStep), x[1] + Math.Clamp(change[1], -MostStep, MostStep)];
                x[0] = Math.Max(x[0], x[1] + 1e-3);
            }

            return null;
        }

        // What else the file may be off changes in the frictions
        public IEnumerable<double[]> Changes(double[] x, Matrix<double> inverse, ScenarioSettings scenario)
        {
            TyreSettings tyre = Tyre(x, 1.0);
            ForceHistory?[] runs =
            [
                .. test.Run([tyre, tyre with { BodyStiffness = BodyFactor * tyre.BodyStiffness }, tyre with { BodyDamping = BodyFactor * tyre.BodyDamping }, tyre with { RollingRenewal = BodyFactor * tyre.RollingRenewal }], test.End, cancel),
                .. With(m => m with { Resistance = m.Resistance * (1.0 - Resistance) }),
                .. With(m => m with { TorqueConstant = m.TorqueConstant * (1.0 - TorqueConstant) }),
            ];
            double[][] y = [.. runs.Select(r => r is null ? [double.NaN, double.NaN] : cell.Read(r).Mean)];
            foreach (double[] other in y.Skip(1))
            {
                double edge = isSeen && double.IsFinite(other[0]) ? y[0][0] - other[0] : 0.0;
                double own = double.IsFinite(other[1]) ? y[0][1] - other[1] : 0.0;
                yield return [(inverse[0, 0] * edge) + (inverse[0, 1] * own), (inverse[1, 0] * edge) + (inverse[1, 1] * own)];
            }

            ForceHistory?[] With(Func<Powertrain.MotorSettings, Powertrain.MotorSettings> change)
            {
                RobotSettings robot = scenario.Robot with { Drives = [.. scenario.Robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (change(m.Motor), m.Ratio))] })] };
                return new SimulatedTest(scenario with { Robot = robot }).Run([tyre], test.End, cancel);
            }
        }

        /// <summary>Speed at which the driven wheels slide while the tether holds, the greatest mean of any wheel [m/s].</summary>
        public double Speed(double[] x, ScenarioSettings scenario, CancellationToken stop)
        {
            TyreSettings tyre = Tyre(x, 1.0);
            bool[] isTested = GripLoad.Tested(scenario.Robot);
            RunResult run = Simulator.Run(scenario with { Robot = scenario.Robot with { Wheels = [.. scenario.Robot.Wheels.Select((w, i) => isTested[i] ? w with { Tyre = tyre } : w)] } }, stop);
            double[] force = run.Trace.Tether?.Force.ToArray() ?? [];
            if (force.Length == 0)
            {
                return double.NaN;
            }

            double half = 0.5 * force.Max();
            int[] taut = [.. Enumerable.Range(0, force.Length).Where(i => force[i] > half)];
            int[] late = [.. taut.Skip(2 * taut.Length / 5).SkipLast(taut.Length / 20)];
            return late.Length == 0 ? double.NaN : run.Trace.Wheels.Max(w => late.Average(i => Math.Abs(w.SlipSpeed[i])));
        }

        private TyreSettings Tyre(double[] x, double slipSpeed)
        {
            TyreSettings tyre = test.Tyre.WithFriction(Math.Exp(x[0]), Math.Exp(Math.Min(x[0], x[1])));
            return tyre with { SlipSpeed = slipSpeed * tyre.SlipSpeed };
        }
    }
}

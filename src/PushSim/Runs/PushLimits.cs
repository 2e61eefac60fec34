using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>What limits a robot's push at each moment, out of its history.</summary>
internal static class PushLimits
{
    // Shorter stretches are flicker of a tyre at its grip, and count with their neighbours [s].
    private const double ShortestSpan = 0.02;

    // Current against that of a stall, below which a motor is fast rather than weak [1].
    private const double TopSpeedShare = 0.3;

    /// <summary>The limits from a time on.</summary>
    public static IReadOnlyList<LimitSpan> Find(RunHistory history, double start)
    {
        int first = history.IndexAt(start);
        int length = history.Time.Length - first;
        if (length < 2)
        {
            return [];
        }

        PushLimit[] each = new PushLimit[length];
        Series series = new(history);
        for (int i = 0; i < length; i++)
        {
            each[i] = series.At(first + i);
        }

        return Spans(history.Time, first, Steady(history.Time, first, each));
    }

    // Of a tyre that chatters the limit flickers many times in the shortest stretch: each moment counts as what holds most of the time around it.
    private static PushLimit[] Steady(IReadOnlyList<double> time, int first, PushLimit[] each)
    {
        PushLimit[] steady = new PushLimit[each.Length];
        int[] counts = new int[Enum.GetValues<PushLimit>().Length];
        (int from, int to) = (0, 0);
        for (int i = 0; i < each.Length; i++)
        {
            for (; to < each.Length && time[first + to] <= time[first + i] + ShortestSpan; to++)
            {
                counts[(int)each[to]]++;
            }

            for (; time[first + from] < time[first + i] - ShortestSpan; from++)
            {
                counts[(int)each[from]]--;
            }

            steady[i] = each[i];
            for (int k = 0; k < counts.Length && each[i] != PushLimit.Idle; k++)
            {
                steady[i] = (PushLimit)k != PushLimit.Idle && counts[k] > counts[(int)steady[i]] ? (PushLimit)k : steady[i];
            }
        }

        return steady;
    }

    /// <summary>The limit that held longest since the first touch, or at all if there was none (NaN); null if nothing was commanded.</summary>
    public static PushLimit? Mostly(IReadOnlyList<LimitSpan> spans, double touch)
    {
        double from = double.IsNaN(touch) ? double.NegativeInfinity : touch;
        IGrouping<PushLimit, LimitSpan>? longest = spans.Where(s => s.Limit != PushLimit.Idle && s.To > from).GroupBy(s => s.Limit)
            .MaxBy(g => g.Sum(s => s.To - Math.Max(s.From, from)));
        return longest?.Key;
    }

    /// <summary>Whether the motors, where they were the limit, ran near their top speed rather than near their stall: their current was small against what would flow at a stand.</summary>
    public static bool NearTopSpeed(RunHistory history, IReadOnlyList<LimitSpan> spans, double touch)
    {
        double from = double.IsNaN(touch) ? double.NegativeInfinity : touch;
        Simulation.Series bus = history.Trace.Battery!.Voltage;
        (double current, double stalled) = (0.0, 0.0);
        foreach (LimitSpan span in spans.Where(s => s.Limit == PushLimit.Motors && s.To > from))
        {
            int last = history.IndexAt(span.To);
            for (int i = history.IndexAt(Math.Max(from, span.From)); i <= last; i++)
            {
                foreach ((Powertrain.ControllerSettings c, ControllerTrace trace) in history.Robot.Controllers.Zip(history.Trace.Controllers))
                {
                    double voltage = Math.Abs(trace.Command[i]) * bus[i];
                    double inSeries = c.Motors.Sum(m => history.Robot.Drives[m.Drive].Motors[m.Motor].Motor.Resistance);
                    foreach ((int drive, int motor) in c.Motors)
                    {
                        Powertrain.DriveSettings d = history.Robot.Drives[drive];
                        current += Math.Abs(history.Trace.Motors.First(m => m.Drive == drive && m.Motor == motor).Current[i]);
                        stalled += voltage / (c.Wiring == Powertrain.Wiring.Series ? inSeries : d.Motors[motor].Motor.Resistance);
                    }
                }
            }
        }

        return current < TopSpeedShare * stalled;
    }

    private static List<LimitSpan> Spans(IReadOnlyList<double> time, int first, PushLimit[] each)
    {
        List<LimitSpan> spans = [];
        int from = 0;
        for (int i = 1; i <= each.Length; i++)
        {
            if (i < each.Length && each[i] == each[from])
            {
                continue;
            }

            double end = time[first + Math.Min(i, each.Length - 1)];
            bool isShort = end - time[first + from] < ShortestSpan;
            if (spans.Count > 0 && ((isShort && spans[^1].Limit != PushLimit.Idle) || spans[^1].Limit == each[from]))
            {
                spans[^1] = spans[^1] with { To = end };
            }
            else if (spans.Count > 0 && spans[^1].To - spans[^1].From < ShortestSpan)
            {
                spans[^1] = spans[^1] with { To = end, Limit = each[from] };
            }
            else
            {
                spans.Add(new LimitSpan(time[first + from], end, each[from]));
            }

            from = i;
        }

        return spans;
    }

    private sealed class Series
    {
        private readonly WheelTrace[] _wheels;
        private readonly IReadOnlyList<ControllerTrace> _controllers;
        private readonly BatteryTrace? _battery;
        private readonly bool[] _lifted;

        public Series(RunHistory history)
        {
            RobotSettings robot = history.Robot;
            _wheels = [.. robot.DrivenWheels.Select(w => history.Trace.Wheels[w])];
            _controllers = history.Trace.Controllers;
            _battery = history.Trace.Battery;
            double mean = 0.0;
            for (int i = 0; i < robot.Wheels.Count; i++)
            {
                mean += history.Trace.Wheels[i].Load[0] / robot.Wheels.Count;
            }

            _lifted = new bool[history.Time.Length];
            SteadyLoad[] loads = [.. _wheels.Select(_ => new SteadyLoad(mean))];
            for (int i = 1; i < _lifted.Length; i++)
            {
                for (int w = 0; w < loads.Length; w++)
                {
                    _lifted[i] |= loads[w].IsLifted(_wheels[w].Load[i], history.Time[i] - history.Time[i - 1]);
                }
            }
        }

        public PushLimit At(int i)
        {
            if (_battery is null || _controllers.All(c => c.Command[i] == 0.0))
            {
                return PushLimit.Idle;
            }

            if (_lifted[i])
            {
                return PushLimit.LiftedWheels;
            }

            double load = _wheels.Sum(w => w.Load[i]);
            if (_wheels.Sum(w => w.Sliding[i] >= LimitBounds.AtItsGrip ? w.Load[i] : 0.0) > LimitBounds.BindingShare * load)
            {
                return PushLimit.Tyres;
            }

            if (_controllers.Average(c => c.Limiting[i]) > LimitBounds.BindingShare)
            {
                return PushLimit.Controllers;
            }

            return _battery.Voltage[i] < (1.0 - LimitBounds.BatterySag) * _battery.OpenCircuitVoltage[i] ? PushLimit.Battery : PushLimit.Motors;
        }
    }
}

using PushSim.Powertrain;

namespace PushSim.Simulation;

/// <summary>One controller's command over time, piecewise linear: side mix (throttle -+ turn, scaled to keep the ratio), deadband,
/// slew limit. Built once, so that every jump and kink is known and a step can end on it.</summary>
internal sealed class CommandProfile
{
    // A ramp whose mix is scaled is a ratio of straight lines: cut into this many chords (error under 1e-3 of full command).
    private const int ScaledRampParts = 32;

    private readonly List<(double Start, double Value, double Slope, bool IsZero)> _pieces = [];

    public CommandProfile(ManoeuvreSettings manoeuvre, ControllerSettings controller)
    {
        List<(double Time, double From, double To)> targets = Cut(Targets(manoeuvre, controller.Side), controller.Deadband, manoeuvre.EndTime);
        foreach ((double start, double _, double value, double slope) in Follow(targets, controller.SlewLimit, manoeuvre.EndTime))
        {
            _pieces.Add((start, value, slope, value == 0.0 && slope == 0.0));
        }
    }

    /// <summary>Starts of the pieces [s], rising.</summary>
    public IEnumerable<double> Starts => _pieces.Select(p => p.Start);

    /// <summary>The piece in force from a time on: value at the time [1], slope [1/s], whether it counts as zero.</summary>
    public (double Value, double Slope, bool IsZero) At(double time)
    {
        int i = _pieces.Count - 1;
        while (i > 0 && _pieces[i].Start > time)
        {
            i--;
        }

        (double start, double value, double slope, bool isZero) = _pieces[i];
        return isZero ? (0.0, 0.0, true) : (value + (slope * (time - start)), slope, false);
    }

    // Mixed side command as straight pieces: start time, value there, value at the piece's end.
    private static List<(double Time, double From, double To)> Targets(ManoeuvreSettings manoeuvre, CommandSide side)
    {
        List<(double Time, double From, double To)> pieces = [];
        double throttle = 0.0;
        double turn = 0.0;
        pieces.Add((0.0, 0.0, 0.0));
        double delay = manoeuvre.Driver.ReactionDelay;
        double time = delay;
        foreach (CommandPoint point in manoeuvre.Commands.Select(p => p with { Time = p.Time + delay }))
        {
            if (point.Ramp && point.Time > time)
            {
                // the ramp takes the place of the value held since the point before; before the first one it begins after the delay
                if (pieces[^1].Time == time)
                {
                    pieces.RemoveAt(pieces.Count - 1);
                }

                bool isScaled = Math.Abs(throttle) + Math.Abs(turn) > 1.0 || Math.Abs(point.Throttle) + Math.Abs(point.Turn) > 1.0;
                int parts = isScaled ? ScaledRampParts : 1;
                for (int i = 0; i < parts; i++)
                {
                    double a = (double)i / parts;
                    double b = (double)(i + 1) / parts;
                    pieces.Add((
                        time + (a * (point.Time - time)),
                        Mix(throttle + (a * (point.Throttle - throttle)), turn + (a * (point.Turn - turn)), side),
                        Mix(throttle + (b * (point.Throttle - throttle)), turn + (b * (point.Turn - turn)), side)));
                }
            }

            throttle = point.Throttle;
            turn = point.Turn;
            time = point.Time;
            double now = Mix(throttle, turn, side);
            pieces.Add((time, now, now));
        }

        return pieces;
    }

    private static double Mix(double throttle, double turn, CommandSide side)
    {
        double left = throttle - turn;
        double right = throttle + turn;
        double scale = Math.Max(1.0, Math.Max(Math.Abs(left), Math.Abs(right)));
        return (side == CommandSide.Left ? left : right) / scale;
    }

    // The command that chases the target no faster than the slew limit.
    private static List<(double Start, double End, double Value, double Slope)> Follow(
        List<(double Time, double From, double To)> targets,
        double slew,
        double endTime)
    {
        List<(double Start, double End, double Value, double Slope)> pieces = [];
        double value = targets[0].From;
        for (int i = 0; i < targets.Count; i++)
        {
            (double start, double from, double to) = targets[i];
            double end = i + 1 < targets.Count ? targets[i + 1].Time : Math.Max(endTime, start) + 1.0;
            if (end <= start)
            {
                continue;
            }

            double slope = (to - from) / (end - start);
            if (double.IsPositiveInfinity(slew))
            {
                pieces.Add((start, end, from, slope));
                value = to;
                continue;
            }

            double time = start;
            double gap = from - value;
            if (gap != 0.0)
            {
                double rate = Math.CopySign(slew, gap);
                double closing = rate - slope;
                double meet = gap / closing > 0.0 ? time + (gap / closing) : double.PositiveInfinity;
                double until = Math.Min(end, meet);
                pieces.Add((time, until, value, rate));

                // once met, the target itself: a rounding left over at zero would keep a controller from coasting or locking
                value = meet <= end ? from + (slope * (until - start)) : value + (rate * (until - time));
                time = until;
            }

            if (time < end)
            {
                double own = Math.Clamp(slope, -slew, slew);
                pieces.Add((time, end, value, own));
                value += own * (end - time);
            }
        }

        return pieces;
    }

    // The targets with zero in place of what lies within the deadband; a straight piece is split where it enters or leaves it.
    private static List<(double Time, double From, double To)> Cut(List<(double Time, double From, double To)> targets, double deadband, double endTime)
    {
        List<(double Time, double From, double To)> pieces = [];
        for (int i = 0; i < targets.Count; i++)
        {
            (double start, double from, double to) = targets[i];
            double end = i + 1 < targets.Count ? targets[i + 1].Time : Math.Max(endTime, start) + 1.0;
            List<double> cuts = [start];
            foreach (double level in new[] { -deadband, deadband })
            {
                double t = to == from ? double.NaN : start + ((level - from) / (to - from) * (end - start));
                if (t > start && t < end)
                {
                    cuts.Add(t);
                }
            }

            cuts.Sort();
            cuts.Add(end);
            for (int k = 0; k + 1 < cuts.Count; k++)
            {
                double first = At(cuts[k]);
                double last = At(cuts[k + 1]);
                bool isZero = Math.Abs(0.5 * (first + last)) <= deadband;
                pieces.Add(isZero ? (cuts[k], 0.0, 0.0) : (cuts[k], first, last));
            }

            double At(double t) => t == start ? from : t == end ? to : from + ((to - from) * (t - start) / (end - start));
        }

        return pieces;
    }
}

namespace PushSim.Binding;

/// <summary>From moments to spans: what binds a robot, stretch by stretch.</summary>
public static class BindingSpans
{
    // Shorter stretches are flicker of a tyre at its grip, and count with their neighbours [s].
    private const double ShortestSpan = 0.02;

    private const int Idle = 1 << (int)BindingKind.Nothing;

    /// <summary>The kinds of a robot's driven wheels as a set of bits; those of wheels without force count too, since a wheel at top speed gives none.</summary>
    /// <param name="wheels">Moments of each driven wheel.</param>
    /// <param name="sample">The moment.</param>
    public static int Set(IReadOnlyList<BindingMoments> wheels, int sample)
    {
        int set = 0;
        for (int w = 0; w < wheels.Count; w++)
        {
            set |= 1 << (int)wheels[w].Kinds[sample];
        }

        // some wheels may stand without command while others have one
        return (set & ~Idle) == 0 ? Idle : set & ~Idle;
    }

    /// <summary>The spans from a time on.</summary>
    /// <param name="time">Sample times [s].</param>
    /// <param name="wheels">Moments of each driven wheel.</param>
    /// <param name="first">First sample that counts.</param>
    public static IReadOnlyList<BindingSpan> Find(IReadOnlyList<double> time, IReadOnlyList<BindingMoments> wheels, int first)
    {
        int length = time.Count - first;
        if (length < 2 || wheels.Count == 0)
        {
            return [];
        }

        int[] each = new int[length];
        for (int i = 0; i < length; i++)
        {
            each[i] = Set(wheels, first + i);
        }

        return [.. Join(time, first, Steady(time, first, each)).Select(s => new BindingSpan(time[s.From], time[s.To], Ordered(time, wheels, s.From, s.To, s.Set)))];
    }

    /// <summary>At each sample the kind that sets most of the robot's force, for the shading of a plot.</summary>
    public static IReadOnlyList<BindingKind> Leading(IReadOnlyList<BindingMoments> wheels)
    {
        BindingTally tally = new();
        BindingKind[] leading = new BindingKind[wheels.Count == 0 ? 0 : wheels[0].Kinds.Length];
        for (int i = 0; i < leading.Length; i++)
        {
            tally.Clear();
            foreach (BindingMoments wheel in wheels.Where(w => w.IsDriven))
            {
                tally.Add(wheel.Kinds[i], wheel.Force[i], 1.0);
                tally.AddTime(wheel.Kinds[i] == BindingKind.Lifted, 1.0);
            }

            leading[i] = tally.Leading();
        }

        return leading;
    }

    // Of a tyre that chatters the set flickers many times in the shortest stretch: each moment counts as what holds most of the time around it.
    private static int[] Steady(IReadOnlyList<double> time, int first, int[] each)
    {
        int[] steady = new int[each.Length];
        int[] counts = new int[1 << BindingRule.Kinds];
        (int from, int to) = (0, 0);
        for (int i = 0; i < each.Length; i++)
        {
            for (; to < each.Length && time[first + to] <= time[first + i] + ShortestSpan; to++)
            {
                counts[each[to]]++;
            }

            for (; time[first + from] < time[first + i] - ShortestSpan; from++)
            {
                counts[each[from]]--;
            }

            int most = each[i];
            for (int k = from; k < to && each[i] != Idle; k++)
            {
                most = each[k] != Idle && counts[each[k]] > counts[most] ? each[k] : most;
            }

            steady[i] = most;
        }

        return steady;
    }

    private static List<(int From, int To, int Set)> Join(IReadOnlyList<double> time, int first, int[] each)
    {
        List<(int From, int To, int Set)> spans = [];
        int from = 0;
        for (int i = 1; i <= each.Length; i++)
        {
            if (i < each.Length && each[i] == each[from])
            {
                continue;
            }

            int end = first + Math.Min(i, each.Length - 1);
            bool isShort = time[end] - time[first + from] < ShortestSpan;
            if (spans.Count > 0 && ((isShort && spans[^1].Set != Idle) || spans[^1].Set == each[from]))
            {
                spans[^1] = spans[^1] with { To = end };
            }
            else if (spans.Count > 0 && time[spans[^1].To] - time[spans[^1].From] < ShortestSpan)
            {
                spans[^1] = spans[^1] with { To = end, Set = each[from] };
            }
            else
            {
                spans.Add((first + from, end, each[from]));
            }

            from = i;
        }

        return spans;
    }

    // The kinds of a set by what they set of the span, lifted wheels last
    private static IReadOnlyList<BindingKind> Ordered(IReadOnlyList<double> time, IReadOnlyList<BindingMoments> wheels, int from, int to, int set)
    {
        BindingKind[] kinds = [.. Enumerable.Range(0, BindingRule.Kinds).Where(k => (set & (1 << k)) != 0).Select(k => (BindingKind)k)];
        if (kinds.Length < 2)
        {
            return kinds;
        }

        IReadOnlyList<(BindingKind Kind, double Share)> shares = Over(time, wheels, from, to)?.Kinds ?? [];
        return [.. shares.Select(s => s.Kind).Where(kinds.Contains), .. kinds.Where(k => shares.All(s => s.Kind != k)).OrderBy(k => k == BindingKind.Lifted)];
    }

    /// <summary>What bound over samples from..to, both included; null where nothing was commanded.</summary>
    /// <param name="time">Sample times [s].</param>
    /// <param name="wheels">Moments of each driven wheel.</param>
    /// <param name="from">First sample.</param>
    /// <param name="to">Last sample.</param>
    public static BindingShares? Over(IReadOnlyList<double> time, IReadOnlyList<BindingMoments> wheels, int from, int to)
    {
        BindingTally tally = new();
        for (int i = from; i <= to; i++)
        {
            double span = i > 0 ? time[i] - time[i - 1] : time.Count > 1 ? time[1] - time[0] : 1.0;
            bool isLifted = false;
            foreach (BindingMoments wheel in wheels)
            {
                tally.Add(wheel.Kinds[i], wheel.Force[i], span);
                isLifted |= wheel.Kinds[i] == BindingKind.Lifted;
            }

            tally.AddTime(isLifted, span);
        }

        return tally.Shares();
    }
}

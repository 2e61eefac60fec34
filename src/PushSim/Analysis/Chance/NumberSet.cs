namespace PushSim.Analysis.Chance;

/// <summary>Whole numbers from 0 as a list of ranges: small where they come nearly in order, however many they are.</summary>
public sealed class NumberSet
{
    private readonly List<(long From, long To)> _ranges = [];

    /// <summary>How many there are [1].</summary>
    public long Count { get; private set; }

    /// <summary>A set of its own with the same numbers.</summary>
    public NumberSet Copy()
    {
        var copy = new NumberSet { Count = Count };
        copy._ranges.AddRange(_ranges);
        return copy;
    }

    /// <summary>How many lie below an end [1].</summary>
    /// <param name="end">The end [1].</param>
    public long CountBelow(long end) => _ranges.Sum(r => Math.Max(0, Math.Min(r.To, end) - r.From));

    /// <summary>Whether a number is in it.</summary>
    /// <param name="number">The number [1].</param>
    public bool Contains(long number) => After(number) is int i and > 0 && number < _ranges[i - 1].To;

    /// <summary>Adds a number.</summary>
    /// <param name="number">The number, from 0 [1].</param>
    /// <returns>False if it was there.</returns>
    public bool Add(long number)
    {
        int i = After(number);
        if (i > 0 && number < _ranges[i - 1].To)
        {
            return false;
        }

        bool joinsBefore = i > 0 && _ranges[i - 1].To == number;
        bool joinsAfter = i < _ranges.Count && _ranges[i].From == number + 1;
        if (joinsBefore && joinsAfter)
        {
            _ranges[i - 1] = (_ranges[i - 1].From, _ranges[i].To);
            _ranges.RemoveAt(i);
        }
        else if (joinsBefore)
        {
            _ranges[i - 1] = (_ranges[i - 1].From, number + 1);
        }
        else if (joinsAfter)
        {
            _ranges[i] = (number, _ranges[i].To);
        }
        else
        {
            _ranges.Insert(i, (number, number + 1));
        }

        Count++;
        return true;
    }

    /// <summary>The numbers below an end, in their order.</summary>
    /// <param name="end">The end [1].</param>
    public IEnumerable<long> Below(long end)
    {
        foreach ((long from, long to) in _ranges)
        {
            for (long n = from; n < to && n < end; n++)
            {
                yield return n;
            }
        }
    }

    /// <summary>The first numbers of a range that are not in it.</summary>
    /// <param name="from">First of the range [1].</param>
    /// <param name="to">The one after its last [1].</param>
    /// <param name="most">So many at most [1].</param>
    public long[] Missing(long from, long to, int most)
    {
        List<long> missing = [];
        int i = After(from);
        long at = i > 0 ? Math.Max(from, _ranges[i - 1].To) : from;
        while (at < to && missing.Count < most)
        {
            if (i < _ranges.Count && at == _ranges[i].From)
            {
                at = _ranges[i++].To;
                continue;
            }

            missing.Add(at++);
        }

        return [.. missing];
    }

    // Place of the first range that begins after the number; most numbers belong at the end
    private int After(long number)
    {
        int low = 0;
        int high = _ranges.Count;
        if (high > 0 && _ranges[high - 1].From <= number)
        {
            return high;
        }

        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = _ranges[middle].From <= number ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}

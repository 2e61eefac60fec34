namespace PushSim.Workbench.Designs;

/// <summary>Steps back and forth. Steps of one movement of one value are one.</summary>
internal sealed class History
{
    // Older steps are forgotten [1].
    private const int Most = 200;

    private readonly List<(Design Design, string Words)> _back = [];
    private readonly List<(Design Design, string Words)> _forth = [];
    private string? _moving;

    /// <summary>What a step back undoes; null for none.</summary>
    public string? BackWords => _back.Count > 0 ? _back[^1].Words : null;

    /// <summary>What a step forth does again; null for none.</summary>
    public string? ForthWords => _forth.Count > 0 ? _forth[^1].Words : null;

    /// <summary>A step was taken.</summary>
    /// <param name="from">The design before it.</param>
    /// <param name="to">The design after it.</param>
    /// <param name="name">What was changed.</param>
    /// <param name="words">What it was changed to.</param>
    /// <param name="key">The value's key.</param>
    /// <param name="isDrag">Whether more of the same movement is to come.</param>
    public void Step(Design from, Design to, string name, string words, string key, bool isDrag)
    {
        _forth.Clear();
        if (!ReferenceEquals(from, to))
        {
            if (_moving == key && _back.Count > 0)
            {
                _back[^1] = _back[^1] with { Words = words };
            }
            else
            {
                _back.Add((from, words.Length > 0 ? words : name));
                if (_back.Count > Most)
                {
                    _back.RemoveAt(0);
                }
            }
        }

        _moving = isDrag ? key : null;
    }

    /// <summary>The design one step back; null if there is none.</summary>
    public Design? Back(Design? now) => Go(_back, _forth, now);

    /// <summary>The design one step forth; null if there is none.</summary>
    public Design? Forth(Design? now) => Go(_forth, _back, now);

    /// <summary>Forgets all.</summary>
    public void Clear()
    {
        _back.Clear();
        _forth.Clear();
        _moving = null;
    }

    private Design? Go(List<(Design Design, string Words)> from, List<(Design Design, string Words)> to, Design? now)
    {
        _moving = null;
        if (from.Count == 0 || now is null)
        {
            return null;
        }

        (Design design, string words) = from[^1];
        from.RemoveAt(from.Count - 1);
        to.Add((now, words));
        return design;
    }
}

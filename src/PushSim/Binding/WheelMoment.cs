namespace PushSim.Binding;

/// <summary>One wheel at one moment, as far as it matters to what binds it.</summary>
/// <typeparam name="T">Number type; a vector of lanes is as many moments.</typeparam>
internal struct WheelMoment<T>
    where T : struct, IReal<T>
{
    /// <summary>1 where it has been off the floor for longer than a hop, 0 else [1].</summary>
    public T Lifted;

    /// <summary>1 where its tyre slides at the end of its grip, 0 else; see <see cref="BindingRule.Slides"/> [1].</summary>
    public T Slides;

    /// <summary>Sum of the commands' sizes of the controllers that feed it, a shorted one that brakes a moving wheel as a whole command; 0 where their terminals are open or nothing moves [1].</summary>
    public T Command;

    /// <summary>Share of those controllers that hold the current at their limit, and of those whose limit is folded back [1].</summary>
    public T Limiting, FoldedBack;

    /// <summary>1 where a wheel on another drive in series with it slides, 0 else [1].</summary>
    public T SeriesSlides;

    /// <summary>Battery voltage under load and without [V].</summary>
    public T Bus, OpenCircuit;
}

namespace PushSim.Runs;

/// <summary>Work that the parts of a command share, counted in evaluations of the right-hand side and in no clock's time: what is left out is the same on every machine and for any
/// number of threads. A part has its own limit, fixed beforehand; what it does not use no other part gets.</summary>
/// <param name="allowed">Evaluations that are allowed [1].</param>
/// <param name="cancel">Stops the work.</param>
public sealed class WorkBudget(long allowed, CancellationToken cancel = default)
{
    private readonly WorkBudget? _whole;
    private long _done;

    private WorkBudget(WorkBudget whole, long allowed)
        : this(allowed, whole.Cancel) => _whole = whole;

    /// <summary>Evaluations that are allowed; <see cref="long.MaxValue"/> without a limit [1].</summary>
    public long Allowed { get; } = allowed;

    /// <summary>Stops the work.</summary>
    public CancellationToken Cancel { get; } = cancel;

    /// <summary>Evaluations done, those of its parts among them [1].</summary>
    public long Done => Interlocked.Read(ref _done);

    /// <summary>Is told the evaluations done so far, from several threads; null for none.</summary>
    public Action<long>? Progress { get; init; }

    /// <summary>Whether there is no limit.</summary>
    public bool IsEndless => Allowed == long.MaxValue;

    /// <summary>Evaluations that are left, never negative [1].</summary>
    internal long Left => IsEndless ? long.MaxValue : Math.Max(0, Allowed - Done);

    /// <summary>Work without a limit.</summary>
    /// <param name="cancel">Stops the work.</param>
    public static WorkBudget Endless(CancellationToken cancel = default) => new(long.MaxValue, cancel);

    /// <summary>A part with a share of the allowed work as its own limit.</summary>
    /// <param name="share">The share [1].</param>
    public WorkBudget Part(double share) => new(this, IsEndless ? long.MaxValue : (long)(share * Allowed));

    /// <summary>A part without a limit of its own.</summary>
    public WorkBudget Free() => new(this, long.MaxValue);

    /// <summary>A part with a limit of its own.</summary>
    /// <param name="most">Evaluations that it is allowed; <see cref="long.MaxValue"/> for no limit [1].</param>
    public WorkBudget Limited(long most) => new(this, most);

    /// <summary>Books work that was done.</summary>
    /// <param name="evaluations">Evaluations [1].</param>
    public void Add(long evaluations)
    {
        long done = Interlocked.Add(ref _done, evaluations);
        Progress?.Invoke(done);
        _whole?.Add(evaluations);
    }

    /// <summary>Books an integration that was allowed what was left.</summary>
    /// <param name="report">The integration.</param>
    /// <param name="own">The limit of its own [1].</param>
    /// <exception cref="OutOfWorkException">It would have gone on, but for this limit.</exception>
    internal void Spend(IntegrationOutcome report, long own)
    {
        bool isShort = report.Status == IntegrationStatus.EvaluationCap && Left < own;
        Add(report.Evaluations);
        Cancel.ThrowIfCancellationRequested();
        if (isShort)
        {
            throw new OutOfWorkException();
        }
    }

    /// <summary>Does a part; false if its work came to an end before it was done.</summary>
    /// <param name="work">The part.</param>
    internal static bool Try(Action work)
    {
        try
        {
            work();
            return true;
        }
        catch (OutOfWorkException)
        {
            return false;
        }
    }
}

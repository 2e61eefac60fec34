using PushSim.Files;
using PushSim.Scenarios.Bench;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Studies;
using PushSim.Workbench.Events;

namespace PushSim.Workbench.Bench;

/// <summary>The load cell that the workbench listens to: one at a time.</summary>
internal sealed class CellListener(EventHub hub, string folder) : IDisposable
{
    // As the command's, so that one place has all raw logs
    private const string LogFolder = "pushsim-out/bench";

    private static readonly LogAdvice s_advice = LogAdvice.OfFit with
    {
        Unit = "choose the unit of the readings and listen again", Calibration = "use pushsim bench, which takes a calibration", Reversed = "if the cell is wired the other way round, use pushsim bench --flip", NoSlack = "let the chain hang for a second before the pull",
    };

    // A cell waits no longer for another command to leave the folder [s].
    private const double Patience = 2.0;

    private readonly SemaphoreSlim _turn = new(1);
    private CellRun? _run;

    /// <summary>Listens to a port, and to none besides.</summary>
    /// <param name="port">Its name.</param>
    /// <param name="baud">Bits a second [1/s].</param>
    /// <param name="unit">Unit of force of lines that name none; null: they must.</param>
    /// <param name="known">Weight that is put on first, to scale by [N]; null: none.</param>
    /// <param name="notes">Where good pulls of a raw log go.</param>
    /// <returns>Why not; empty if it listens.</returns>
    public async Task<string> Start(string port, int baud, string? unit, double? known, Func<string, PullNotes?> notes)
    {
        await _turn.WaitAsync().ConfigureAwait(false);
        try
        {
            End();
            var settings = new BenchSettings { Log = new LogOptions { ForceUnit = unit, Advice = s_advice }, Known = known };
            var run = new CellRun(new PortSource(port, baud), port, settings, Begin, notes, m => hub.Send("trace", m, WireContext.Default.TraceMessage));
            string why = await run.Opened.ConfigureAwait(false);
            if (why.Length > 0)
            {
                run.Stop();
                return why;
            }

            _run = run;
            return "";
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>The next quiet second is the tare of the cell that is listened to.</summary>
    /// <returns>Whether there is one.</returns>
    public async Task<bool> Tare()
    {
        await _turn.WaitAsync().ConfigureAwait(false);
        try
        {
            _run?.Tare();
            return _run is not null;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Listens no more.</summary>
    public async Task Stop()
    {
        await _turn.WaitAsync().ConfigureAwait(false);
        try
        {
            End();
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        End();
        _turn.Dispose();
    }

    private RawLog Begin()
    {
        var ask = new LockAsk("the raw logs", "pushsim open", _ => { }, CancellationToken.None) { Wait = Patience };
        using FreshFolder logs = FreshFolder.Open(new FolderAsk(Path.Combine(folder, LogFolder), false, "bench", ask));
        logs.Claim();
        return RawLog.Begin(logs.Path, WallClock.Now);
    }

    private void End()
    {
        _run?.Stop();
        _run = null;
    }
}

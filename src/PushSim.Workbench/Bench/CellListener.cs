using PushSim.Files;
using PushSim.Scenarios.Bench;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Studies;
using PushSim.Workbench.Events;

namespace PushSim.Workbench.Bench;

/// <summary>The load cell that the workbench listens to: one at a time.</summary>
internal sealed class CellListener(EventHub hub) : IDisposable
{
    private static readonly LogAdvice s_advice = LogAdvice.OfFit with
    {
        Unit = "choose the unit of the readings and listen again", Calibration = "use pushsim bench, which takes a calibration", Reversed = "if the cell is wired the other way round, use pushsim bench --flip", NoSlack = "let the chain hang for a second before the pull",
    };

    private readonly SemaphoreSlim _turn = new(1);
    private CellRun? _run;

    /// <summary>Listens to a port, and to none besides.</summary>
    /// <param name="port">Its name.</param>
    /// <param name="baud">Bits a second [1/s].</param>
    /// <param name="unit">Unit of force of lines that name none; null: they must.</param>
    /// <param name="notes">Where good pulls go; null: nowhere.</param>
    /// <returns>Why not; empty if it listens.</returns>
    public async Task<string> Start(string port, int baud, string? unit, PullNotes? notes)
    {
        await _turn.WaitAsync().ConfigureAwait(false);
        try
        {
            End();
            var settings = new BenchSettings { Log = new LogOptions { ForceUnit = unit, Advice = s_advice } };
            var run = new CellRun(new PortSource(port, baud), port, settings, notes, m => hub.Send("trace", m, WireContext.Default.TraceMessage));
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

    private void End()
    {
        _run?.Stop();
        _run = null;
    }
}

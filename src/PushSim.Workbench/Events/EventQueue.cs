namespace PushSim.Workbench.Events;

/// <summary>What one page has not got yet, the newest of each slot.</summary>
internal sealed class EventQueue
{
    private readonly Lock _lock = new();
    private readonly List<(string Slot, string Name, string Data)> _waiting = [];
    private readonly SemaphoreSlim _some = new(0);

    /// <summary>Adds an event, in the place of the last one of its slot.</summary>
    public void Put(string slot, string name, string data)
    {
        lock (_lock)
        {
            _waiting.RemoveAll(w => w.Slot == slot);
            _waiting.Add((slot, name, data));
            if (_some.CurrentCount == 0)
            {
                _some.Release();
            }
        }
    }

    /// <summary>All that waits, after a wait for the first; null if none came in that time.</summary>
    public async Task<IReadOnlyList<(string Slot, string Name, string Data)>?> Take(TimeSpan most, CancellationToken cancel)
    {
        if (!await _some.WaitAsync(most, cancel).ConfigureAwait(false))
        {
            return null;
        }

        lock (_lock)
        {
            (string, string, string)[] all = [.. _waiting];
            _waiting.Clear();
            return all;
        }
    }
}

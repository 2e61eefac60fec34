using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace PushSim.Workbench.Events;

/// <summary>
/// Events for every page that listens. Of one slot a slow page gets the newest only, so that nothing piles up; a page that comes later gets what stands in every slot.
/// </summary>
internal sealed class EventHub
{
    private readonly Lock _lock = new();
    private readonly List<EventQueue> _pages = [];
    private readonly Dictionary<string, (string Name, string Data)> _last = new(StringComparer.Ordinal);

    /// <summary>Told when a page comes or goes.</summary>
    public Action<int>? PagesChanged { get; set; }

    /// <summary>Told of each event, for whoever measures.</summary>
    public Action<string, string>? Sent { get; set; }

    /// <summary>Sends an event.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="message">What it says.</param>
    /// <param name="type">How it is written.</param>
    /// <param name="slot">What of it there is one of: its name unless said.</param>
    /// <param name="isKept">Whether a page that comes later gets it too.</param>
    public void Send<T>(string name, T message, JsonTypeInfo<T> type, string? slot = null, bool isKept = true)
    {
        string data = JsonSerializer.Serialize(message, type);
        lock (_lock)
        {
            if (isKept)
            {
                _last[slot ?? name] = (name, data);
            }

            foreach (EventQueue page in _pages)
            {
                page.Put(slot ?? name, name, data);
            }
        }

        Sent?.Invoke(name, data);
    }

    /// <summary>Forgets what later pages would get, of these names.</summary>
    public void Forget(params ReadOnlySpan<string> names)
    {
        lock (_lock)
        {
            foreach (string name in names)
            {
                foreach (string slot in _last.Where(l => l.Value.Name == name).Select(l => l.Key).ToArray())
                {
                    _last.Remove(slot);
                }
            }
        }
    }

    /// <summary>A page's queue, with all that stands.</summary>
    public EventQueue Listen()
    {
        var page = new EventQueue();
        int pages;
        lock (_lock)
        {
            foreach ((string slot, (string name, string data)) in _last.OrderBy(l => l.Key == "state" ? 0 : 1))
            {
                page.Put(slot, name, data);
            }

            _pages.Add(page);
            pages = _pages.Count;
        }

        PagesChanged?.Invoke(pages);
        return page;
    }

    /// <summary>A page is gone.</summary>
    public void Leave(EventQueue page)
    {
        int pages;
        lock (_lock)
        {
            _pages.Remove(page);
            pages = _pages.Count;
        }

        PagesChanged?.Invoke(pages);
    }
}

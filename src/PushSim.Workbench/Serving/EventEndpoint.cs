using Microsoft.AspNetCore.Http;
using PushSim.Workbench.Events;

namespace PushSim.Workbench.Serving;

/// <summary>The stream of events to one page.</summary>
internal static class EventEndpoint
{
    private static readonly TimeSpan s_beat = TimeSpan.FromSeconds(10);

    /// <summary>Sends events until the page leaves or the workbench ends.</summary>
    public static async Task Send(HttpContext context, EventHub hub, CancellationToken over)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, over);
        EventQueue page = hub.Listen();
        try
        {
            context.Response.ContentType = "text/event-stream; charset=utf-8";
            await Write(context, ": here\n\n", either.Token).ConfigureAwait(false);
            while (!either.IsCancellationRequested)
            {
                IReadOnlyList<(string Slot, string Name, string Data)>? events = await page.Take(s_beat, either.Token).ConfigureAwait(false);
                if (events is null)
                {
                    // a lost connection is noticed by what does not come
                    await Write(context, ": beat\n\n", either.Token).ConfigureAwait(false);
                }

                foreach ((string _, string name, string data) in events ?? [])
                {
                    await Write(context, $"event: {name}\ndata: {data}\n\n", either.Token).ConfigureAwait(false);
                }
            }
        }
        catch (Exception e) when (e is OperationCanceledException or IOException)
        {
            // the page is gone, or we are
        }
        finally
        {
            hub.Leave(page);
        }
    }

    private static async Task Write(HttpContext context, string text, CancellationToken cancel)
    {
        await context.Response.WriteAsync(text, cancel).ConfigureAwait(false);
        await context.Response.Body.FlushAsync(cancel).ConfigureAwait(false);
    }
}

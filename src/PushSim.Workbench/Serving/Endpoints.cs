using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using PushSim.Workbench.Designs;

namespace PushSim.Workbench.Serving;

/// <summary>What the page may ask.</summary>
internal sealed class Endpoints(WorkbenchState state, EventHub hub, WorkbenchOptions options, CancellationToken over)
{
    /// <summary>Puts them in place.</summary>
    public void Map(IEndpointRouteBuilder app)
    {
        Get(app, "/", c => StaticFiles.Send(c, "index.html"));
        Get(app, "/static/{**name}", c => StaticFiles.Send(c, (string?)c.Request.RouteValues["name"] ?? ""));
        Get(app, "/api/events", c => EventEndpoint.Send(c, hub, over));
        Get(app, "/api/state", c => Reply.Json(c, state.Session.Message, WireContext.Default.StateMessage));
        Post(app, "/api/change", Change);
        Post(app, "/api/open", Open);
        Post(app, "/api/undo", c => Step(c, (s, n) => s.Undo(n)));
        Post(app, "/api/redo", c => Step(c, (s, n) => s.Redo(n)));
        Post(app, "/api/pin", c => Step(c, (s, n) => s.Pin(n)));
        Post(app, "/api/unpin", c => Step(c, (s, n) => s.Unpin(n)));
        _ = options;
    }

    private static void Get(IEndpointRouteBuilder app, string pattern, RequestDelegate answer) => app.MapGet(pattern, answer);

    private static void Post(IEndpointRouteBuilder app, string pattern, RequestDelegate answer) => app.MapPost(pattern, answer);

    private Task Step(HttpContext context, Action<Session, long> step) => Reply.Json(context, new NumberReply(state.Do(step)), WireContext.Default.NumberReply);

    private async Task Change(HttpContext context)
    {
        if (await Reply.Read(context, WireContext.Default.ChangeRequest).ConfigureAwait(false) is not { } change)
        {
            return;
        }

        if (change.Key is not { Length: > 0 } key || change.Text is not { Length: <= 4096 } text)
        {
            await Guard.Refuse(context, HttpStatusCode.BadRequest, "a change has a key and a text", "").ConfigureAwait(false);
            return;
        }

        await Reply.Json(context, new NumberReply(state.Change(key, text, change.Drag)), WireContext.Default.NumberReply).ConfigureAwait(false);
    }

    private async Task Open(HttpContext context)
    {
        if (await Reply.Read(context, WireContext.Default.OpenRequest).ConfigureAwait(false) is not { Path: { Length: > 0 } path })
        {
            return;
        }

        Scenarios.Sources.Problem? wrong = await state.Ask((s, n) => s.Open(path, n)).ConfigureAwait(false);
        if (wrong is not null)
        {
            await Guard.Refuse(context, HttpStatusCode.BadRequest, wrong.Message, wrong.Help).ConfigureAwait(false);
            return;
        }

        await Reply.Json(context, state.Session.Message, WireContext.Default.StateMessage).ConfigureAwait(false);
    }
}

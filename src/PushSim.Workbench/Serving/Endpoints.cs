using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using PushSim.Workbench.Events;
using PushSim.Workbench.Start;
using PushSim.Workbench.State;

namespace PushSim.Workbench.Serving;

/// <summary>What the page may ask.</summary>
internal sealed class Endpoints(WorkbenchState state, EventHub hub, WorkbenchOptions options, CancellationToken over)
{
    private readonly HomeFolder _home = new(options.Folder, options.Garage);

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
        Post(app, "/api/save", Save);
        Post(app, "/api/reload", c => Step(c, (s, n) => s.TakeOutside(isTheirs: true, n)));
        Get(app, "/api/text", async c => await Reply.Json(c, await state.Ask((s, _) => s.Text(c.Request.Query["file"].ToString()), isQuiet: true).ConfigureAwait(false), WireContext.Default.TextReply).ConfigureAwait(false));
        Post(app, "/api/mode", Mode);
        Post(app, "/api/strips", Strips);
        Post(app, "/api/closer", c => Step(c, (_, _) => { }));
        Post(app, "/api/matters", c => Step(c, (s, _) => s.AskOrder()));
        Get(app, "/api/home", Home);
        Post(app, "/api/new", New);
        Post(app, "/api/page", Page);
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

    private async Task Mode(HttpContext context)
    {
        if (await Reply.Read(context, WireContext.Default.ModeRequest).ConfigureAwait(false) is not { } mode)
        {
            return;
        }

        if (mode.Mode is not ("match" or "odds"))
        {
            await Guard.Refuse(context, HttpStatusCode.BadRequest, "a mode is match or odds", "").ConfigureAwait(false);
            return;
        }

        await Step(context, (s, n) => s.SetMode(mode.Mode, n)).ConfigureAwait(false);
    }

    private async Task Strips(HttpContext context)
    {
        if (await Reply.Read(context, WireContext.Default.StripsRequest).ConfigureAwait(false) is { } strips)
        {
            string[] keys = [.. (strips.Keys ?? []).Where(k => k is { Length: < 500 }).Distinct().Take(64)];
            await Step(context, (s, _) => s.SetStrips(keys)).ConfigureAwait(false);
        }
    }

    private async Task Save(HttpContext context)
    {
        if (await Reply.Read(context, WireContext.Default.SaveRequest, new SaveRequest(false)).ConfigureAwait(false) is not { } save)
        {
            return;
        }

        try
        {
            (IReadOnlyList<string> saved, ConflictReply? conflict) = await state.Ask((s, n) => s.Save(save.Over, n)).ConfigureAwait(false);
            if (conflict is null)
            {
                await Reply.Json(context, new SavedReply(saved), WireContext.Default.SavedReply).ConfigureAwait(false);
                return;
            }

            context.Response.StatusCode = (int)HttpStatusCode.Conflict;
            await Reply.Json(context, conflict, WireContext.Default.ConflictReply).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Guard.Refuse(context, HttpStatusCode.InsufficientStorage, $"not saved: {e.Message}", "the file is as it was; make room, or save again").ConfigureAwait(false);
        }
    }

    private async Task Open(HttpContext context)
    {
        if (await Reply.Read(context, WireContext.Default.OpenRequest).ConfigureAwait(false) is not { } open)
        {
            return;
        }

        string? path = open.Path;
        if (path?.StartsWith(Examples.Prefix, StringComparison.Ordinal) == true)
        {
            path = Examples.Put(_home.Real, path[Examples.Prefix.Length..]);
        }

        await OpenInside(context, path ?? "").ConfigureAwait(false);
    }

    private async Task OpenInside(HttpContext context, string path)
    {
        if (_home.Inside(path) is not string full)
        {
            await Guard.Refuse(context, HttpStatusCode.BadRequest, "this file does not lie in the folder of the workbench", "start pushsim open in its folder").ConfigureAwait(false);
            return;
        }

        Scenarios.Sources.Problem? wrong = await state.Ask((s, n) => s.Open(full, n)).ConfigureAwait(false);
        if (wrong is not null)
        {
            await Guard.Refuse(context, HttpStatusCode.BadRequest, wrong.Message, wrong.Help).ConfigureAwait(false);
            return;
        }

        await Reply.Json(context, state.Session.Message, WireContext.Default.StateMessage).ConfigureAwait(false);
    }

    private Task Home(HttpContext context) =>
        Reply.Json(context, new HomeReply(_home.Real, _home.Cards(), Examples.Cards, options.Starter is null ? [] : Starter.Rows), WireContext.Default.HomeReply);

    private async Task New(HttpContext context)
    {
        if (options.Starter is not { } files || await Reply.Read(context, WireContext.Default.NewRequest).ConfigureAwait(false) is not { } asked)
        {
            return;
        }

        Dictionary<string, string> rows = (asked.Rows ?? []).Where(r => r is { Key: not null, Text.Length: < 200 }).DistinctBy(r => r.Key).ToDictionary(r => r.Key!, r => r.Text!);
        string? path = new Starter(_home, files).Write(rows, out string wrong, out string key);
        if (path is null)
        {
            await Guard.Refuse(context, HttpStatusCode.BadRequest, wrong, "", key).ConfigureAwait(false);
            return;
        }

        await OpenInside(context, path).ConfigureAwait(false);
    }

    private async Task Page(HttpContext context)
    {
        if (options.Page is not { } page || state.Session.Design is not { } design)
        {
            await Guard.Refuse(context, HttpStatusCode.NotFound, "there is no page of this", "open a scenario").ConfigureAwait(false);
            return;
        }

        try
        {
            string path = await Task.Run(() => page(design.Shown, design.Options, over), over).ConfigureAwait(false);
            await Reply.Json(context, new PageReply(path, null), WireContext.Default.PageReply).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Guard.Refuse(context, HttpStatusCode.InsufficientStorage, $"no page: {e.Message}", "").ConfigureAwait(false);
        }
    }
}

using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using PushSim.Workbench.Bench;
using PushSim.Workbench.State;

namespace PushSim.Workbench.Serving;

/// <summary>What the page may ask of the bench.</summary>
internal sealed class BenchEndpoints(WorkbenchState state, CancellationToken over)
{
    /// <summary>Puts them in place.</summary>
    public void Map(IEndpointRouteBuilder app)
    {
        app.MapPost("/api/log", (RequestDelegate)Log);
        app.MapPost("/api/use", (RequestDelegate)Use);
    }

    private async Task Log(HttpContext context)
    {
        string text;
        try
        {
            using var reader = new StreamReader(context.Request.Body, Encoding.UTF8);
            text = await reader.ReadToEndAsync(context.RequestAborted).ConfigureAwait(false);
        }
        catch (BadHttpRequestException e)
        {
            await Guard.Refuse(context, (HttpStatusCode)e.StatusCode, "this log cannot be read", "a log has 4 MB at most").ConfigureAwait(false);
            return;
        }

        string name = context.Request.Query["name"] is { Count: > 0 } given ? Path.GetFileName(given.ToString()) : "pulls.csv";
        (LogMessage? fitted, Problem? wrong) = await Task.Run(() =>
        {
            LogMessage? message = LogBench.Fit(text, name, state.Session.Design, state.Session.Rows, out Problem? fault, over);
            return (message, fault);
        }, over).ConfigureAwait(false);
        if (fitted is null)
        {
            await Guard.Refuse(context, HttpStatusCode.BadRequest, wrong?.Message ?? "this log gives no fit", wrong?.Help ?? "").ConfigureAwait(false);
            return;
        }

        await Reply.Json(context, fitted, WireContext.Default.LogMessage).ConfigureAwait(false);
    }

    private async Task Use(HttpContext context)
    {
        if (await Reply.Read(context, WireContext.Default.UseRequest).ConfigureAwait(false) is not { } use)
        {
            return;
        }

        if (use.Key is not { Length: > 0 } key || use.Value is not { Length: > 0 and <= 100 } value)
        {
            await Guard.Refuse(context, HttpStatusCode.BadRequest, "a value has a key and a text", "").ConfigureAwait(false);
            return;
        }

        await Reply.Json(context, new NumberReply(state.Change(key, value, isDrag: false)), WireContext.Default.NumberReply).ConfigureAwait(false);
    }
}

using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using PushSim.Files;
using PushSim.Scenarios.Logs;
using PushSim.Workbench.Bench;
using PushSim.Workbench.State;

namespace PushSim.Workbench.Serving;

/// <summary>What the page may ask of the load cell and of the notebook.</summary>
internal sealed class CellEndpoints(WorkbenchState state, CellListener cell, GarageBook book)
{
    // As `bench` takes them [1/s].
    private const int UsualBaud = 115_200;
    private const int LeastBaud = 50;
    private const int MostBaud = 4_000_000;

    // It needs a calibration, for which the page has no field
    private const string Millivolt = "mV";

    // Characters of a name [1].
    private const int Longest = 200;

    /// <summary>Puts them in place.</summary>
    public void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/api/ports", (RequestDelegate)(c => Reply.Json(c, new PortsReply(PortSource.Names()), WireContext.Default.PortsReply)));
        app.MapPost("/api/port", (RequestDelegate)Port);
        app.MapPost("/api/tare", (RequestDelegate)Tare);
        app.MapGet("/api/readings", (RequestDelegate)(c => Reply.Json(c, book.Read(), WireContext.Default.ReadingsReply)));
        app.MapPost("/api/reading", (RequestDelegate)Reading);
    }

    private static Task Refuse(HttpContext context, string message, string help) => Guard.Refuse(context, HttpStatusCode.BadRequest, message, help);

    private async Task Port(HttpContext context)
    {
        if (await Reply.Read(context, WireContext.Default.PortRequest).ConfigureAwait(false) is not { } asked)
        {
            return;
        }

        if (asked.Name is null)
        {
            await cell.Stop().ConfigureAwait(false);
            await Reply.Json(context, new ListeningReply(null), WireContext.Default.ListeningReply).ConfigureAwait(false);
            return;
        }

        int baud = asked.Baud ?? UsualBaud;
        string? unit = asked.Unit is { Length: > 0 } told ? told : null;
        if (asked.Name.Length is 0 or > Longest || asked.Name.Any(char.IsControl))
        {
            await Refuse(context, "this is no name of a port", "choose one of the list").ConfigureAwait(false);
        }
        else if (baud is < LeastBaud or > MostBaud)
        {
            await Refuse(context, string.Create(CultureInfo.InvariantCulture, $"{baud} baud is no rate of a port"), string.Create(CultureInfo.InvariantCulture, $"take {LeastBaud} to {MostBaud}, most boards send at {UsualBaud}")).ConfigureAwait(false);
        }
        else if (unit is not null && (unit == Millivolt || !FitArguments.IsForceUnit(unit)))
        {
            await Refuse(context, $"\"{unit}\" is no unit of force", "take N, gf, kgf, lbf or ozf").ConfigureAwait(false);
        }
        else if (new[] { asked.Tyre, asked.Floor, asked.State }.Any(t => t is { Length: > Longest }))
        {
            await Refuse(context, "this name is too long", "").ConfigureAwait(false);
        }
        else if (KnownOf(asked.Known, out double? known) is { Length: > 0 } bad)
        {
            await Refuse(context, $"known mass: {bad}", "for example 200 g").ConfigureAwait(false);
        }
        else if (asked.Tyre is { Length: > 0 } && book.File is null)
        {
            await Refuse(context, GarageBook.NoGarage.Message, GarageBook.NoGarage.Help).ConfigureAwait(false);
        }
        else if (await cell.Start(asked.Name, baud, unit, known, log => book.NotesOf(asked, state.Session.Design, log)).ConfigureAwait(false) is { Length: > 0 } why)
        {
            await Refuse(context, $"{asked.Name}: {why}", "").ConfigureAwait(false);
        }
        else
        {
            await Reply.Json(context, new ListeningReply(asked.Name), WireContext.Default.ListeningReply).ConfigureAwait(false);
        }
    }

    private static string KnownOf(string? text, out double? newton)
    {
        newton = null;
        if (text is not { Length: > 0 })
        {
            return "";
        }

        if (text.Length > Longest)
        {
            return "this is too long";
        }

        if (!FitArguments.TryForce(text, out double force, out string message))
        {
            return message;
        }

        newton = force;
        return force > 0.0 ? "" : "must be above zero";
    }

    private async Task Tare(HttpContext context)
    {
        if (!await cell.Tare().ConfigureAwait(false))
        {
            await Refuse(context, "no load cell is listened to", "choose a port and listen").ConfigureAwait(false);
            return;
        }

        await Reply.Json(context, new ListeningReply(null), WireContext.Default.ListeningReply).ConfigureAwait(false);
    }

    private async Task Reading(HttpContext context)
    {
        if (await Reply.Read(context, WireContext.Default.ReadingRequest).ConfigureAwait(false) is not { } asked)
        {
            return;
        }

        int added = 0;
        Problem? wrong;
        try
        {
            wrong = await Task.Run(() => book.Add(asked, out added)).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Guard.Refuse(context, HttpStatusCode.InsufficientStorage, $"not noted: {e.Message}", "make room, or try again").ConfigureAwait(false);
            return;
        }

        if (wrong is not null)
        {
            await Refuse(context, wrong.Message, wrong.Help).ConfigureAwait(false);
            return;
        }

        await Reply.Json(context, new ReadingReply(added, book.Read()), WireContext.Default.ReadingReply).ConfigureAwait(false);
    }
}

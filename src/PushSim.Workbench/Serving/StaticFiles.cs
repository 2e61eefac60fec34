using System.Net;
using System.Reflection;
using Microsoft.AspNetCore.Http;
using PushSim.Plotting.Report;

namespace PushSim.Workbench.Serving;

/// <summary>The files of the page, out of the assembly: nothing on the disk is served.</summary>
internal static class StaticFiles
{
    private const string Root = "wwwroot/";

    private static readonly Dictionary<string, string> s_types = new(StringComparer.Ordinal)
    {
        [".html"] = "text/html; charset=utf-8", [".js"] = "text/javascript; charset=utf-8", [".mjs"] = "text/javascript; charset=utf-8", [".css"] = "text/css; charset=utf-8",
        [".svg"] = "image/svg+xml", [".png"] = "image/png", [".txt"] = "text/plain; charset=utf-8", [".json"] = "application/json; charset=utf-8",
    };

    /// <summary>Sends a file of the page.</summary>
    /// <param name="context">The request.</param>
    /// <param name="name">Its path below the page's folder.</param>
    public static async Task Send(HttpContext context, string name)
    {
        byte[]? bytes = ReportAsset.Text(name) is string shared ? Encoding.UTF8.GetBytes(shared) : Bytes(name);
        if (bytes is null || !s_types.TryGetValue(Path.GetExtension(name), out string? type))
        {
            await Guard.Refuse(context, HttpStatusCode.NotFound, "there is no such file", "").ConfigureAwait(false);
            return;
        }

        context.Response.ContentType = type;
        context.Response.ContentLength = bytes.Length;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted).ConfigureAwait(false);
    }

    private static byte[]? Bytes(string name)
    {
        using Stream? stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Root + name);
        if (stream is null)
        {
            return null;
        }

        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}

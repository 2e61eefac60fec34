using System.Net;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace PushSim.Workbench.Serving;

/// <summary>
/// Whom the workbench answers: a browser of this machine that came by the address with the token. Refused: a foreign Host (a name made to point here), a foreign Origin, a missing
/// cookie, a path that climbs, a body that is too large.
/// </summary>
internal sealed class Guard
{
    /// <summary>Largest body of a request [B].</summary>
    public const long MostBytes = 4 << 20;

    // Of a larger body nothing is read [B].
    private const long MostDrained = 16 << 20;

    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private readonly byte[] _token = RandomNumberGenerator.GetBytes(32);
    private readonly string _cookie;
    private readonly int _port;

    /// <param name="port">The port that is listened on; cookies of one machine are shared by all ports, so its name has it.</param>
    public Guard(int port) => (_port, _cookie) = (port, string.Create(CultureInfo.InvariantCulture, $"pushsim-{port}"));

    /// <summary>The token as the address has it.</summary>
    public string Token => Convert.ToHexStringLower(_token);

    /// <summary>Passes a request on, or refuses it.</summary>
    public async Task Pass(HttpContext context, RequestDelegate next)
    {
        HttpRequest request = context.Request;
        IHeaderDictionary headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers.CacheControl = "no-store";

        if (!IsOwn(request.Headers.Host.ToString()))
        {
            await Refuse(context, HttpStatusCode.Forbidden, "this address is not the workbench's", "open the address that pushsim open printed").ConfigureAwait(false);
        }
        else if (request.Headers.Origin is { Count: > 0 } origin && origin.ToString() != $"http://{request.Headers.Host}")
        {
            await Refuse(context, HttpStatusCode.Forbidden, "another page may not use the workbench", "").ConfigureAwait(false);
        }
        else if (IsClimbing(context.Features.Get<IHttpRequestFeature>()?.RawTarget ?? ""))
        {
            await Refuse(context, HttpStatusCode.BadRequest, "this path climbs out of its folder", "").ConfigureAwait(false);
        }
        else if (request.ContentLength > MostBytes)
        {
            await Drain(context).ConfigureAwait(false);
            await Refuse(context, HttpStatusCode.RequestEntityTooLarge, "this is larger than 4 MB", "").ConfigureAwait(false);
        }
        else if (request.Path == "/" && request.Query["token"] is { Count: > 0 } token)
        {
            await Exchange(context, token.ToString()).ConfigureAwait(false);
        }
        else if (!IsToken(request.Cookies[_cookie]))
        {
            await Refuse(context, HttpStatusCode.Unauthorized, "this page is not known here", "open the address that pushsim open printed").ConfigureAwait(false);
        }
        else
        {
            await next(context).ConfigureAwait(false);
        }
    }

    /// <summary>Answers with a fault.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">What kind of fault.</param>
    /// <param name="message">What is wrong.</param>
    /// <param name="help">What to do; may be empty.</param>
    /// <param name="key">The row of a form that it is about; null for none.</param>
    public static async Task Refuse(HttpContext context, HttpStatusCode status, string message, string help, string? key = null)
    {
        context.Response.StatusCode = (int)status;
        await Reply.Json(context, new FaultReply(message, help, key is { Length: > 0 } ? key : null), WireContext.Default.FaultReply).ConfigureAwait(false);
    }

    // a sender that is cut off in the middle never reads why
    private static async Task Drain(HttpContext context)
    {
        if (context.Request.ContentLength > MostDrained || context.Features.Get<IHttpMaxRequestBodySizeFeature>() is not { IsReadOnly: false } limit)
        {
            context.Response.Headers.Connection = "close";
            return;
        }

        limit.MaxRequestBodySize = MostDrained;
        byte[] buffer = new byte[1 << 16];
        while (await context.Request.Body.ReadAsync(buffer, context.RequestAborted).ConfigureAwait(false) > 0)
        {
        }
    }

    private async Task Exchange(HttpContext context, string token)
    {
        if (!IsToken(token))
        {
            await Refuse(context, HttpStatusCode.Unauthorized, "this address is of another start", "open the address that pushsim open printed").ConfigureAwait(false);
            return;
        }

        context.Response.Cookies.Append(_cookie, Token, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" });
        context.Response.Redirect("/");
    }

    // in a time that tells nothing of where it differs
    private bool IsToken(string? text) => text is { Length: 64 } && CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(text), Encoding.ASCII.GetBytes(Token));

    private bool IsOwn(string host) => new[] { "127.0.0.1", "localhost", "[::1]" }.Any(name => host == string.Create(CultureInfo.InvariantCulture, $"{name}:{_port}"));

    // as it was sent: the server takes dots out before anybody sees them
    private static bool IsClimbing(string target)
    {
        string path = target.Split('?')[0];
        for (int i = 0; i < 2; i++)
        {
            path = Uri.UnescapeDataString(path);
        }

        return path.Split('/', '\\').Contains("..") || path.Contains('\0', StringComparison.Ordinal);
    }
}

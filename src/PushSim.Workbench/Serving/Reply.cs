using System.Net;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Http;

namespace PushSim.Workbench.Serving;

/// <summary>Reads and writes JSON by types that are known when it is compiled.</summary>
internal static class Reply
{
    /// <summary>Writes an answer.</summary>
    public static async Task Json<T>(HttpContext context, T value, JsonTypeInfo<T> type)
    {
        byte[] text = JsonSerializer.SerializeToUtf8Bytes(value, type);
        context.Response.ContentType = "application/json; charset=utf-8";
        context.Response.ContentLength = text.Length;
        await context.Response.Body.WriteAsync(text, context.RequestAborted).ConfigureAwait(false);
    }

    /// <summary>Reads a body, or takes what stands for none; null, after a refusal, if it cannot be read.</summary>
    public static async Task<T?> Read<T>(HttpContext context, JsonTypeInfo<T> type, T byDefault)
        where T : class => context.Request.ContentLength is null or 0 ? byDefault : await Read(context, type).ConfigureAwait(false);

    /// <summary>Reads a body; null, after a refusal, if it is none.</summary>
    public static async Task<T?> Read<T>(HttpContext context, JsonTypeInfo<T> type)
        where T : class
    {
        try
        {
            return await JsonSerializer.DeserializeAsync(context.Request.Body, type, context.RequestAborted).ConfigureAwait(false) ?? throw new JsonException("nothing");
        }
        catch (JsonException)
        {
            await Guard.Refuse(context, HttpStatusCode.BadRequest, "this request cannot be read", "").ConfigureAwait(false);
            return null;
        }
        catch (BadHttpRequestException e)
        {
            await Guard.Refuse(context, (HttpStatusCode)e.StatusCode, e.StatusCode == StatusCodes.Status413PayloadTooLarge ? "this is larger than 4 MB" : "this request cannot be read", "").ConfigureAwait(false);
            return null;
        }
    }
}

using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace PushSim.Cli.Tests.Report;

/// <summary>
/// A headless browser driven over its DevTools protocol: starts it, opens pages, sends commands, keeps events. Only what the
/// tests of the report page need.
/// </summary>
internal sealed partial class Browser : IAsyncDisposable
{
    /// <summary>Names that the browser has on the systems it is packaged for.</summary>
    private static readonly string[] s_names = ["chromium", "chromium-browser"];

    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(60);

    private readonly Process _process;
    private readonly DirectoryInfo _profile;
    private readonly ClientWebSocket _socket = new();
    private readonly SemaphoreSlim _sending = new(1);
    private readonly ConcurrentDictionary<int, TaskCompletionSource<JsonNode>> _waiting = new();
    private readonly ConcurrentDictionary<string, ConcurrentQueue<JsonNode>> _events = new();
    private readonly CancellationTokenSource _stop = new();
    private int _last;
    private Task _reading = Task.CompletedTask;

    private Browser(Process process, DirectoryInfo profile) => (_process, _profile) = (process, profile);

    /// <summary>The browser's program: PUSHSIM_CHROMIUM, or the first of its names on the path; null without one.</summary>
    public static string? Find()
    {
        if (Environment.GetEnvironmentVariable("PUSHSIM_CHROMIUM") is { Length: > 0 } given)
        {
            return File.Exists(given) ? given : null;
        }

        IEnumerable<string> folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        return folders.SelectMany(f => s_names.SelectMany(n => new[] { Path.Combine(f, n), Path.Combine(f, n + ".exe") })).FirstOrDefault(File.Exists);
    }

    public static async Task<Browser> StartAsync(string program)
    {
        DirectoryInfo profile = Directory.CreateTempSubdirectory("pushsim-browser-");
        var info = new ProcessStartInfo(program) { RedirectStandardError = true, RedirectStandardOutput = true };

        // no sandbox: tests may run as root, and open only pages they made
        foreach (string argument in new[] { "--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--hide-scrollbars", "--no-first-run", "--disable-background-networking", "--remote-debugging-port=0", "--user-data-dir=" + profile.FullName, "about:blank" })
        {
            info.ArgumentList.Add(argument);
        }

        // it prints where it listens; both pipes are read on, so that they never fill
        var address = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        var process = new Process { StartInfo = info, EnableRaisingEvents = true };
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, line) =>
        {
            if (Listening().Match(line.Data ?? "") is { Success: true } match)
            {
                address.TrySetResult(match.Groups[1].Value);
            }
        };
        process.Exited += (_, _) => address.TrySetException(new InvalidOperationException("the browser ended at once"));
        process.Start();
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        var browser = new Browser(process, profile);
        using var patience = new CancellationTokenSource(s_patience);
        try
        {
            await browser._socket.ConnectAsync(new Uri(await address.Task.WaitAsync(s_patience)), patience.Token);
        }
        catch
        {
            // nothing of it may outlive the tests
            process.Kill(entireProcessTree: true);
            throw;
        }

        browser._reading = browser.ReadAsync();
        return browser;
    }

    /// <summary>Opens an empty page.</summary>
    /// <returns>Its session, for <see cref="SendAsync"/>.</returns>
    public async Task<string> OpenAsync()
    {
        string target = (await SendAsync(null, "Target.createTarget", new { url = "about:blank" }))["targetId"]!.GetValue<string>();
        return (await SendAsync(null, "Target.attachToTarget", new { targetId = target, flatten = true }))["sessionId"]!.GetValue<string>();
    }

    /// <summary>Events of a session so far.</summary>
    public IReadOnlyList<JsonNode> Events(string session) => [.. _events.GetOrAdd(session, _ => [])];

    /// <summary>Sends a command and waits for its result.</summary>
    public async Task<JsonNode> SendAsync(string? session, string method, object? parameters = null)
    {
        int id = Interlocked.Increment(ref _last);
        var answer = new TaskCompletionSource<JsonNode>(TaskCreationOptions.RunContinuationsAsynchronously);
        _waiting[id] = answer;
        var message = new JsonObject { ["id"] = id, ["method"] = method, ["params"] = JsonSerializer.SerializeToNode(parameters ?? new { }) };
        if (session is not null)
        {
            message["sessionId"] = session;
        }

        await _sending.WaitAsync();
        try
        {
            await _socket.SendAsync(Encoding.UTF8.GetBytes(message.ToJsonString()), WebSocketMessageType.Text, true, _stop.Token);
        }
        finally
        {
            _sending.Release();
        }

        return await answer.Task.WaitAsync(s_patience);
    }

    public async ValueTask DisposeAsync()
    {
        try
        {
            await SendAsync(null, "Browser.close");
        }
        catch (Exception e) when (e is WebSocketException or TimeoutException or OperationCanceledException or InvalidOperationException)
        {
            // it is gone already
        }

        await _stop.CancelAsync();
        await _reading;
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(10));
        try
        {
            await _process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            _process.Kill(entireProcessTree: true);
        }

        _socket.Dispose();
        _sending.Dispose();
        _stop.Dispose();
        _process.Dispose();
        try
        {
            _profile.Delete(recursive: true);
        }
        catch (IOException)
        {
            // a last child still writes; the system clears its temporary folder
        }
    }

    private async Task ReadAsync()
    {
        byte[] buffer = new byte[1 << 16];
        using var message = new MemoryStream();
        try
        {
            while (true)
            {
                WebSocketReceiveResult part = await _socket.ReceiveAsync(buffer, _stop.Token);
                if (part.MessageType == WebSocketMessageType.Close)
                {
                    break;
                }

                message.Write(buffer, 0, part.Count);
                if (part.EndOfMessage)
                {
                    Take(JsonNode.Parse(message.ToArray())!);
                    message.SetLength(0);
                }
            }
        }
        catch (Exception e) when (e is WebSocketException or OperationCanceledException)
        {
            // closed
        }

        foreach (TaskCompletionSource<JsonNode> waiting in _waiting.Values)
        {
            waiting.TrySetException(new InvalidOperationException("the browser is gone"));
        }
    }

    private void Take(JsonNode message)
    {
        if (message["id"] is JsonNode id)
        {
            if (_waiting.TryRemove(id.GetValue<int>(), out TaskCompletionSource<JsonNode>? waiting))
            {
                if (message["error"] is JsonNode error)
                {
                    waiting.TrySetException(new InvalidOperationException(error.ToJsonString()));
                }
                else
                {
                    waiting.TrySetResult(message["result"]!);
                }
            }
        }
        else if (message["sessionId"]?.GetValue<string>() is string session)
        {
            _events.GetOrAdd(session, _ => []).Enqueue(message);
        }
    }

    [GeneratedRegex(@"DevTools listening on (ws://\S+)")]
    private static partial Regex Listening();
}

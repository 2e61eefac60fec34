using System.Net;
using System.Text;
using System.Text.Json;
using PushSim.Cli.Tests;

namespace PushSim.Workbench.Tests.Server;

/// <summary>A workbench in this process on a copy of the shipped scenarios, and a client that came by its address.</summary>
public sealed class OpenServer : IAsyncDisposable
{
    private readonly ScratchFolder _folder = new();
    private readonly List<(string Name, JsonElement Data)> _events = [];
    private readonly SemaphoreSlim _some = new(0);

    private OpenServer(WorkbenchServer? server, HttpClient client) => (Server, Client) = (server!, client);

    public WorkbenchServer Server { get; private set; }

    /// <summary>Has the cookie.</summary>
    public HttpClient Client { get; }

    public string this[string name] => _folder[name];

    public static async Task<OpenServer> StartAsync(string? file = "shove-heavy-grippy.toml", string below = "")
    {
        var handler = new HttpClientHandler { AllowAutoRedirect = false };
        var open = new OpenServer(null, new HttpClient(handler));
        foreach (string from in Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*", SearchOption.AllDirectories))
        {
            string to = open._folder[Path.GetRelativePath(Path.Combine(Repository.Root, "scenarios"), from)];
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(from, to);
        }

        open.Server = await WorkbenchServer.Start(new WorkbenchOptions { File = file is null ? null : open[file], Folder = Path.Combine(open._folder.Path, below), Stays = true });
        open.Client.BaseAddress = new Uri(open.Server.Address.GetLeftPart(UriPartial.Authority));
        open.Server.Hub.Sent = open.Take;
        using HttpResponseMessage _ = await open.Client.GetAsync(open.Server.Address);
        return open;
    }

    public async Task<JsonElement> PostAsync(string path, string body = "{}", HttpStatusCode expected = HttpStatusCode.OK)
    {
        using HttpResponseMessage answer = await Client.PostAsync(path, new StringContent(body, Encoding.UTF8, "application/json"));
        string text = await answer.Content.ReadAsStringAsync();
        Xunit.Assert.True(answer.StatusCode == expected, $"{path}: expected {expected}, actual {answer.StatusCode}: {text}");
        return JsonDocument.Parse(text).RootElement;
    }

    public async Task<JsonElement> StateAsync() => JsonDocument.Parse(await Client.GetStringAsync("/api/state")).RootElement;

    public Task<JsonElement> ChangeAsync(string key, string text, bool drag = false) => PostAsync("/api/change", JsonSerializer.Serialize(new { key, text, drag }));

    /// <summary>The first event from now or before that fits; fails after forty seconds, since others may use the machine.</summary>
    internal async Task<JsonElement> EventAsync(string name, Func<JsonElement, bool> fits)
    {
        using var late = new CancellationTokenSource(TimeSpan.FromSeconds(40));
        for (int seen = 0; ;)
        {
            lock (_events)
            {
                for (; seen < _events.Count; seen++)
                {
                    if (_events[seen].Name == name && fits(_events[seen].Data))
                    {
                        return _events[seen].Data;
                    }
                }
            }

            await _some.WaitAsync(late.Token);
        }
    }

    public Task<JsonElement> AnswerAsync(JsonElement change) => AnswerAsync(change.GetProperty("number").GetInt64());

    public Task<JsonElement> AnswerAsync(long number) => EventAsync("answer", a => a.GetProperty("number").GetInt64() >= number);

    public int Count(string name)
    {
        lock (_events)
        {
            return _events.Count(e => e.Name == name);
        }
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await Server.DisposeAsync();
        _folder.Dispose();
    }

    private void Take(string name, string data)
    {
        JsonElement read = JsonDocument.Parse(data).RootElement;
        lock (_events)
        {
            _events.Add((name, read));
        }

        _some.Release();
    }
}

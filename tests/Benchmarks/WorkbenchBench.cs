using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using PushSim.Workbench;

namespace PushSim.Benchmarks;

/// <summary>Times of the workbench from its server's side, over HTTP as a page asks: a slider moved to the answer's event, strips, odds, memory. Every shipped shove.</summary>
internal static class WorkbenchBench
{
    private const int Changes = 60;
    private const int Strips = 12;

    /// <summary>Measures and prints a table.</summary>
    /// <param name="args">Folder of the scenarios.</param>
    public static async Task RunAsync(string[] args)
    {
        string folder = args.Length > 0 ? args[0] : "scenarios";
        Console.WriteLine("| shove | first answer [ms] | slider to answer, median / 95 % [ms] | 12 strips, coarse / with flips [ms] | odds, first / ± 3 % [ms] | answer [kB] |");
        Console.WriteLine("|---|---|---|---|---|---|");
        foreach (string file in Directory.GetFiles(folder, "shove-*.toml").Order(StringComparer.Ordinal))
        {
            await MeasureAsync(folder, file);
        }
    }

    private static async Task MeasureAsync(string folder, string file)
    {
        long begin = Stopwatch.GetTimestamp();
        await using var page = await Page.OpenAsync(folder, file);
        await page.Until("answer", _ => true);
        double first = Ms(begin);
        await page.Until("closer", _ => true);
        double middle = (await page.StateAsync()).GetProperty("robots")[0].GetProperty("parts").EnumerateArray().SelectMany(p => p.GetProperty("rows").EnumerateArray())
            .First(r => r.GetProperty("key").GetString() == "a.chassis.mass").GetProperty("value").GetDouble();
        List<double> times = [];
        int bytes = 0;
        for (int i = 0; i < Changes; i++)
        {
            long since = Stopwatch.GetTimestamp();
            long number = await page.ChangeAsync(middle * (0.8 + (0.4 * i / (Changes - 1.0))));
            bytes = (await page.Until("answer", a => a.GetProperty("number").GetInt64() >= number)).GetRawText().Length;
            times.Add(Ms(since));
            await Task.Delay(60);
        }

        times.Sort();
        string[] keys = [.. (await page.StateAsync()).GetProperty("matters").EnumerateArray().Select(k => k.GetString()!).Take(Strips)];
        page.Forget();
        long strips = Stopwatch.GetTimestamp();
        await page.PostAsync("/api/strips", JsonSerializer.Serialize(new { keys }));
        foreach (string key in keys)
        {
            await page.Until("strip", s => s.GetProperty("key").GetString() == key);
        }

        double coarse = Ms(strips);
        foreach (string key in keys)
        {
            await page.Until("strip", s => s.GetProperty("key").GetString() == key && s.GetProperty("done").GetBoolean());
        }

        double whole = Ms(strips);
        page.Forget();
        long odds = Stopwatch.GetTimestamp();
        await page.PostAsync("/api/mode", "{\"mode\":\"odds\"}");
        await page.Until("odds", _ => true);
        double share = Ms(odds);
        await page.Until("odds", o => 0.5 * (o.GetProperty("high").GetDouble() - o.GetProperty("low").GetDouble()) <= 0.03 || o.GetProperty("done").GetBoolean());
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"| {Path.GetFileNameWithoutExtension(file)} | {first:0} | {times[Changes / 2]:0} / {times[Changes * 95 / 100]:0} | {coarse:0} / {whole:0} ({keys.Length} strips) | {share:0} / {Ms(odds):0} | {bytes / 1000.0:0} |"));
    }

    /// <summary>Moves a slider as fast as the server takes it and prints memory now and then: an hour of hands is less than 100 000 events.</summary>
    /// <param name="args">Folder of the scenarios; number of slider events.</param>
    public static async Task WatchAsync(string[] args)
    {
        string folder = args.Length > 0 ? args[0] : "scenarios";
        int events = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 100_000;
        await using var page = await Page.OpenAsync(folder, Path.Combine(folder, "shove-heavy-grippy.toml"));
        await page.PostAsync("/api/strips", "{\"keys\":[\"a.chassis.mass\",\"b.chassis.mass\"]}");
        var watch = Stopwatch.StartNew();
        Console.WriteLine("| slider events | seconds | answers | managed, all collected [MB] | managed, as it is [MB] | process [MB] |");
        Console.WriteLine("|---|---|---|---|---|---|");
        for (int i = 0; i <= events; i++)
        {
            if (i % (events / 10) == 0)
            {
                using var process = Process.GetCurrentProcess();
                double held = GC.GetTotalMemory(forceFullCollection: false) / 1e6;
                double kept = GC.GetTotalMemory(forceFullCollection: true) / 1e6;
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {i} | {watch.Elapsed.TotalSeconds:0} | {page.Answers} | {kept:0.0} | {held:0} | {process.WorkingSet64 / 1e6:0} |"));
            }

            await page.ChangeAsync(1000.0 + (i % 500));
            if (i % 100 == 99)
            {
                page.Forget();
            }
        }
    }

    private static double Ms(long since) => Stopwatch.GetElapsedTime(since).TotalMilliseconds;

    /// <summary>What a page does, without a page.</summary>
    private sealed class Page : IAsyncDisposable
    {
        private readonly WorkbenchServer _server;
        private readonly HttpClient _client;
        private readonly List<(string Name, JsonElement Data)> _events = [];
        private readonly SemaphoreSlim _some = new(0);
        private readonly CancellationTokenSource _over = new();
        private Task _listening = Task.CompletedTask;

        /// <summary>Answers so far [1].</summary>
        public long Answers { get; private set; }

        private Page(WorkbenchServer server, HttpClient client) => (_server, _client) = (server, client);

        public static async Task<Page> OpenAsync(string folder, string file)
        {
            WorkbenchServer server = await WorkbenchServer.Start(new WorkbenchOptions { File = file, Folder = folder, Stays = true });
            var client = new HttpClient { BaseAddress = new Uri(server.Address.GetLeftPart(UriPartial.Authority)), Timeout = Timeout.InfiniteTimeSpan };
            using HttpResponseMessage _ = await client.GetAsync(server.Address);
            var page = new Page(server, client);
            page._listening = page.ListenAsync();
            return page;
        }

        public async Task<JsonElement> StateAsync() => JsonDocument.Parse(await _client.GetStringAsync("/api/state")).RootElement;

        public async Task<long> ChangeAsync(double grams) =>
            (await PostAsync("/api/change", string.Create(CultureInfo.InvariantCulture, $"{{\"key\":\"a.chassis.mass\",\"text\":\"{grams:0.#} g\",\"drag\":true}}"))).GetProperty("number").GetInt64();

        public async Task<JsonElement> PostAsync(string path, string body)
        {
            using HttpResponseMessage answer = await _client.PostAsync(path, new StringContent(body, Encoding.UTF8, "application/json"));
            return JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        }

        public void Forget()
        {
            lock (_events)
            {
                _events.Clear();
            }
        }

        public async Task<JsonElement> Until(string name, Func<JsonElement, bool> fits)
        {
            while (true)
            {
                lock (_events)
                {
                    foreach ((string _, JsonElement data) in _events.Where(e => e.Name == name && fits(e.Data)))
                    {
                        return data;
                    }
                }

                await _some.WaitAsync(_over.Token);
            }
        }

        public async ValueTask DisposeAsync()
        {
            await _over.CancelAsync();
            await _listening;
            _client.Dispose();
            await _server.DisposeAsync();
        }

        private async Task ListenAsync()
        {
            try
            {
                using Stream stream = await _client.GetStreamAsync("/api/events", _over.Token);
                using var reader = new StreamReader(stream);
                string name = "";
                while (await reader.ReadLineAsync(_over.Token) is string line)
                {
                    if (line.StartsWith("event: ", StringComparison.Ordinal))
                    {
                        name = line[7..];
                    }
                    else if (line.StartsWith("data: ", StringComparison.Ordinal))
                    {
                        JsonElement data = JsonDocument.Parse(line.AsMemory(6)).RootElement;
                        lock (_events)
                        {
                            _events.Add((name, data));
                            Answers += name == "answer" ? 1 : 0;
                        }

                        _some.Release();
                    }
                }
            }
            catch (Exception e) when (e is OperationCanceledException or IOException or HttpRequestException)
            {
                // the measurement is over
            }
        }
    }
}

using System.Net;
using System.Net.Sockets;
using System.Text;
using Xunit;

namespace PushSim.Workbench.Tests.Server;

/// <summary>Whom the workbench refuses. Rules: OWASP's cheat sheets on cross-site request forgery and on DNS rebinding (from memory); RFC 9110 for the status codes.</summary>
public sealed class RefusalTests(RefusalTests.Shared shared) : IClassFixture<RefusalTests.Shared>
{
    private OpenServer Open => shared.Open;

    [Theory]
    [InlineData("/")]
    [InlineData("/api/state")]
    [InlineData("/api/events")]
    [InlineData("/api/ports")]
    [InlineData("/api/readings")]
    [InlineData("/static/index.html")]
    public async Task Without_the_cookie(string path)
    {
        using var stranger = new HttpClient { BaseAddress = Open.Client.BaseAddress };
        using HttpResponseMessage answer = await stranger.GetAsync(path);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.DoesNotContain("mole", await answer.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000")]
    [InlineData("")]
    public async Task With_another_token(string token)
    {
        using var stranger = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = Open.Client.BaseAddress };
        using HttpResponseMessage answer = await stranger.GetAsync("/?token=" + token);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("evil.example:{0}")]
    [InlineData("127.0.0.1.evil.example:{0}")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:1")]
    public async Task A_foreign_host(string host) => Assert.Equal(HttpStatusCode.Forbidden, await StatusAsync(HttpMethod.Get, "/api/state", m => m.Headers.Host = string.Format(System.Globalization.CultureInfo.InvariantCulture, host, Open.Server.Address.Port)));

    [Theory]
    [InlineData("127.0.0.1:{0}")]
    [InlineData("localhost:{0}")]
    [InlineData("[::1]:{0}")]
    public async Task But_not_an_own_host(string host) => Assert.Equal(HttpStatusCode.OK, await StatusAsync(HttpMethod.Get, "/api/state", m => m.Headers.Host = string.Format(System.Globalization.CultureInfo.InvariantCulture, host, Open.Server.Address.Port)));

    [Theory]
    [InlineData("http://evil.example")]
    [InlineData("null")]
    [InlineData("https://127.0.0.1:{0}")]
    [InlineData("http://127.0.0.1:1")]
    public async Task A_foreign_origin(string origin) => Assert.Equal(
        HttpStatusCode.Forbidden,
        await StatusAsync(HttpMethod.Post, "/api/undo", m => m.Headers.Add("Origin", string.Format(System.Globalization.CultureInfo.InvariantCulture, origin, Open.Server.Address.Port))));

    // neither a port is opened nor a reading noted for another page
    [Theory]
    [InlineData("/api/port")]
    [InlineData("/api/reading")]
    public async Task A_foreign_origin_at_the_bench(string path) => Assert.Equal(HttpStatusCode.Forbidden, await StatusAsync(HttpMethod.Post, path, m => m.Headers.Add("Origin", "http://evil.example")));

    [Fact]
    public async Task But_not_the_own_origin() => Assert.Equal(HttpStatusCode.OK, await StatusAsync(HttpMethod.Post, "/api/undo", m => m.Headers.Add("Origin", Open.Client.BaseAddress!.GetLeftPart(UriPartial.Authority))));

    // the client would take the dots out: sent as it stands
    [Theory]
    [InlineData("/static/../../etc/passwd")]
    [InlineData("/static/%2e%2e/x.js")]
    [InlineData("/static/..%2fx.js")]
    [InlineData("/static/%252e%252e/x.js")]
    [InlineData("/static/..%5cx.js")]
    public async Task A_path_that_climbs(string path)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, Open.Server.Address.Port);
        await socket.GetStream().WriteAsync(Encoding.ASCII.GetBytes($"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{Open.Server.Address.Port}\r\nConnection: close\r\n\r\n"));
        using var reader = new StreamReader(socket.GetStream());
        Assert.StartsWith("HTTP/1.1 400", await reader.ReadLineAsync());
    }

    [Theory]
    [InlineData("../secret.toml")]
    [InlineData("robots/../../secret.toml")]
    [InlineData("/etc/hostname")]
    [InlineData("C:\\x.toml")]
    [InlineData("")]
    [InlineData("out.toml")]
    public async Task A_file_outside_the_folder(string path)
    {
        if (path == "out.toml" && !File.Exists(Open["out.toml"]))
        {
            // a link that leads out
            File.CreateSymbolicLink(Open["out.toml"], Path.Combine(Cli.Tests.Repository.Root, "scenarios", "robots", "mole.toml"));
        }

        System.Text.Json.JsonElement fault = await Open.PostAsync("/api/open", System.Text.Json.JsonSerializer.Serialize(new { path }), HttpStatusCode.BadRequest);
        Assert.NotEqual("", fault.GetProperty("message").GetString());
    }

    [Fact]
    public async Task A_body_of_five_megabytes()
    {
        using HttpResponseMessage answer = await Open.Client.PostAsync("/api/change", new StringContent(new string(' ', 5 << 20)));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Fact]
    public async Task A_body_of_five_megabytes_in_chunks_of_unknown_length()
    {
        using var message = new HttpRequestMessage(HttpMethod.Post, "/api/change") { Content = new StreamContent(new MemoryStream(Encoding.ASCII.GetBytes(new string(' ', 5 << 20)))) };
        message.Headers.TransferEncodingChunked = true;
        using HttpResponseMessage answer = await Open.Client.SendAsync(message);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Theory]
    [InlineData("/api/change", "{")]
    [InlineData("/api/change", "[]")]
    [InlineData("/api/change", "{\"key\":\"\",\"text\":\"1\"}")]
    [InlineData("/api/change", "{\"key\":\"a.chassis.mass\"}")]
    [InlineData("/api/mode", "{\"mode\":\"other\"}")]
    [InlineData("/api/port", "[]")]
    [InlineData("/api/port", "{\"name\":\"\"}")]
    [InlineData("/api/port", "{\"name\":\"nothing-of-that-name\"}")]
    [InlineData("/api/port", "{\"name\":\"cell\\n0\"}")]
    [InlineData("/api/port", "{\"name\":\"cell0\",\"baud\":1}")]
    [InlineData("/api/port", "{\"name\":\"cell0\",\"unit\":\"mm\"}")]
    [InlineData("/api/port", "{\"name\":\"cell0\",\"unit\":\"mV\"}")]
    [InlineData("/api/reading", "{")]
    [InlineData("/api/reading", "{\"text\":\"\"}")]
    [InlineData("/api/reading", "{\"text\":\"soft, 1360 g\"}")]
    [InlineData("/api/reading", "{\"tyre\":\"soft\",\"peak\":\"5 apples\"}")]
    [InlineData("/api/reading", "{\"tyre\":\"soft\",\"peak\":\"-5 N\"}")]
    public async Task What_cannot_be_read(string path, string body) => await Open.PostAsync(path, body, HttpStatusCode.BadRequest);

    [Fact]
    public async Task Answers_tell_browsers_to_run_nothing_foreign()
    {
        using HttpResponseMessage answer = await Open.Client.GetAsync("/");
        string policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.StartsWith("default-src 'none'", policy);
        Assert.DoesNotContain("unsafe", policy);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Fact]
    public async Task The_cookie_is_for_this_site_alone()
    {
        using var stranger = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false });
        using HttpResponseMessage answer = await stranger.GetAsync(Open.Server.Address);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/", answer.Headers.Location!.ToString());
        string cookie = answer.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
    }

    // another address of this machine, where it has one
    [Fact]
    public async Task Other_addresses_of_the_machine_do_not_answer()
    {
        IPAddress? other = (await Dns.GetHostAddressesAsync(Dns.GetHostName())).FirstOrDefault(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a));
        Assert.SkipWhen(other is null, "needs an address besides 127.0.0.1");
        using var socket = new TcpClient();
        await Assert.ThrowsAnyAsync<SocketException>(() => socket.ConnectAsync(other!, Open.Server.Address.Port));
    }

    private async Task<HttpStatusCode> StatusAsync(HttpMethod method, string path, Action<HttpRequestMessage> change)
    {
        using var message = new HttpRequestMessage(method, path);
        change(message);
        using HttpResponseMessage answer = await Open.Client.SendAsync(message, HttpCompletionOption.ResponseHeadersRead);
        return answer.StatusCode;
    }

    /// <summary>One workbench for all refusals.</summary>
    public sealed class Shared : IAsyncLifetime
    {
        public OpenServer Open { get; private set; } = null!;

        public async ValueTask InitializeAsync() => Open = await OpenServer.StartAsync();

        public ValueTask DisposeAsync() => Open.DisposeAsync();
    }
}

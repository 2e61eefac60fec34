using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using PushSim.Workbench.Bench;
using PushSim.Workbench.Designs;
using PushSim.Workbench.Events;
using PushSim.Workbench.Serving;
using PushSim.Workbench.State;

namespace PushSim.Workbench;

/// <summary>The workbench as a server on this machine alone.</summary>
public sealed class WorkbenchServer : IAsyncDisposable
{
    // How often files are looked at for what others write.
    private static readonly TimeSpan s_watch = TimeSpan.FromMilliseconds(700);

    private readonly WebApplication _app;
    private readonly WorkbenchState _state;
    private readonly CellListener _cell;
    private readonly CancellationTokenSource _over;
    private readonly TaskCompletionSource _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly WorkbenchOptions _options;
    private readonly Timer _watch;
    private Timer? _timer;

    private WorkbenchServer(WebApplication app, WorkbenchState state, CellListener cell, EventHub hub, CancellationTokenSource over, WorkbenchOptions options, Uri address)
    {
        (_app, _state, _cell, Hub, _over, _options, Address) = (app, state, cell, hub, over, options, address);
        hub.PagesChanged = Pages;
        _watch = new Timer(_ => Watch(), null, s_watch, s_watch);
    }

    /// <summary>The address with its token, for a browser of this machine.</summary>
    public Uri Address { get; }

    /// <summary>Ends when the last page has been closed for a while.</summary>
    public Task Ended => _ended.Task;

    internal EventHub Hub { get; }

    internal WorkbenchState State => _state;

    /// <summary>Starts it.</summary>
    /// <param name="options">How.</param>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task<WorkbenchServer> Start(WorkbenchOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        (int port, bool hasSix) = FreePort(options.Port);
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = [], EnvironmentName = "Production", ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton<IHostLifetime, NoLifetime>();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = Guard.MostBytes;
            kestrel.Listen(IPAddress.Loopback, port);
            if (hasSix)
            {
                kestrel.Listen(IPAddress.IPv6Loopback, port);
            }
        });
        WebApplication app = builder.Build();
        var hub = new EventHub();
        var state = new WorkbenchState(hub, options.Garage);
        var over = new CancellationTokenSource();
        var guard = new Guard(port);
        app.Use((context, next) => guard.Pass(context, next));
        new Endpoints(state, hub, options, over.Token).Map(app);
        new BenchEndpoints(state, over.Token).Map(app);
        var cell = new CellListener(hub, options.Folder);
        new CellEndpoints(state, cell, new GarageBook(options.Folder, options.Garage)).Map(app);
        await app.StartAsync().ConfigureAwait(false);
        var address = new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}/?token={guard.Token}"));
        if (options.File is string file)
        {
            state.Do((session, number) => session.Open(file, number));
        }

        return new WorkbenchServer(app, state, cell, hub, over, options, address);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _over.CancelAsync().ConfigureAwait(false);
        await _watch.DisposeAsync().ConfigureAwait(false);
        if (_timer is not null)
        {
            await _timer.DisposeAsync().ConfigureAwait(false);
        }

        _cell.Dispose();
        _state.Dispose();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(2));
        await _app.StopAsync(patience.Token).ConfigureAwait(false);
        await _app.DisposeAsync().ConfigureAwait(false);
        _over.Dispose();
    }

    // one that both kinds of address have
    private static (int Port, bool HasSix) FreePort(int wanted)
    {
        using var four = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        try
        {
            four.Bind(new IPEndPoint(IPAddress.Loopback, wanted));
        }
        catch (SocketException e)
        {
            throw new IOException(string.Create(CultureInfo.InvariantCulture, $"port {wanted} cannot be used: {e.Message}"), e);
        }

        int port = ((IPEndPoint)four.LocalEndPoint!).Port;
        if (!Socket.OSSupportsIPv6)
        {
            return (port, false);
        }

        try
        {
            using var six = new Socket(AddressFamily.InterNetworkV6, SocketType.Stream, ProtocolType.Tcp);
            six.Bind(new IPEndPoint(IPAddress.IPv6Loopback, port));
            return (port, true);
        }
        catch (SocketException)
        {
            return (port, false);
        }
    }

    private void Watch()
    {
        if (_state.Session.Design is { } design && Keeper.Outside(design) is { Count: > 0 } found && _state.Session.IsNews(found))
        {
            _state.Do((session, number) => session.TakeOutside(isTheirs: false, number));
        }
    }

    private void Pages(int pages)
    {
        if (_options.Stays)
        {
            return;
        }

        Timer? old = Interlocked.Exchange(ref _timer, pages > 0 ? null : new Timer(_ => _ended.TrySetResult(), null, _options.Wait, Timeout.InfiniteTimeSpan));
        old?.Dispose();
    }

    // the program that started us listens for its signals
    private sealed class NoLifetime : IHostLifetime
    {
        public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}

using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace PushSim.Workbench.Tests.Page;

/// <summary>Passes bytes on between a browser and a server, until the cable is cut. To the browser it is a proxy.</summary>
internal sealed class Relay : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly ConcurrentBag<TcpClient> _ends = [];
    private readonly int _port;
    private volatile bool _isCut;

    /// <param name="port">Port of the server on this machine.</param>
    public Relay(int port)
    {
        _port = port;
        _listener.Start();
        _ = AcceptAsync();
    }

    public string Address => $"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}";

    /// <summary>Ends all connections and takes no new one.</summary>
    public void Cut()
    {
        _isCut = true;
        while (_ends.TryTake(out TcpClient? end))
        {
            end.Close();
        }
    }

    /// <summary>Takes connections again.</summary>
    public void Mend() => _isCut = false;

    public void Dispose()
    {
        Cut();
        _listener.Dispose();
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
            {
                TcpClient browser = await _listener.AcceptTcpClientAsync();
                if (_isCut)
                {
                    browser.Close();
                    continue;
                }

                var server = new TcpClient();
                await server.ConnectAsync(IPAddress.Loopback, _port);
                _ends.Add(browser);
                _ends.Add(server);
                _ = PassAsync(browser, server);
                _ = PassAsync(server, browser);
            }
        }
        catch (Exception e) when (e is ObjectDisposedException or SocketException)
        {
            // the test is over
        }
    }

    private static async Task PassAsync(TcpClient from, TcpClient to)
    {
        try
        {
            await from.GetStream().CopyToAsync(to.GetStream());
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            // cut
        }

        to.Close();
    }
}

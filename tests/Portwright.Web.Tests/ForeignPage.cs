using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Portwright.Web.Tests;

/// <summary>A page of another origin on the same machine, as any program could serve one.</summary>
public sealed class ForeignPage : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);

    public ForeignPage()
    {
        _listener.Start();
        _ = Serve();
    }

    public string Url => $"http://elsewhere.example:{((IPEndPoint)_listener.LocalEndpoint).Port}/";

    public void Dispose() => _listener.Dispose();

    private async Task Serve()
    {
        try
        {
            while (true)
            {
                using var caller = await _listener.AcceptTcpClientAsync();
                var stream = caller.GetStream();
                _ = await stream.ReadAsync(new byte[4096]);
                await stream.WriteAsync(Encoding.ASCII.GetBytes("HTTP/1.1 200 OK\r\nContent-Type: text/html\r\nContent-Length: 21\r\nConnection: close\r\n\r\n<html><body></body>  "));
            }
        }
        catch (Exception over) when (over is SocketException or ObjectDisposedException or IOException)
        {
            // The test is over.
        }
    }
}

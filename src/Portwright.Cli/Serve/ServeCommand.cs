using System.CommandLine;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Store.Demo;
using Portwright.Web;

namespace Portwright.Cli.Serve;

/// <summary><c>portwright serve</c>: the workbench in the browser, for this machine alone.</summary>
internal static class ServeCommand
{
    private const int UsualPort = 5190;

    public static Option<int> Port() => new("--port")
    {
        Description = string.Create(CultureInfo.InvariantCulture, $"TCP port on 127.0.0.1 (usual: {UsualPort}; 0 takes a free one)"),
        HelpName = "N",
        DefaultValueFactory = _ => UsualPort,
    };

    public static Command Make()
    {
        var (port, data, si) = (Port(), CommandWords.Data(), CommandWords.Si());
        return new Command("serve", "the workbench in the browser, for this machine alone") { port, data, si }
            .Does(parsed => Run(
                DataFolder.Resolve(parsed.GetValue(data)), parsed.GetValue(port),
                parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary, parsed.InvocationConfiguration.Output))
            .Example("portwright serve", "portwright serve --data /srv/shop --port 5200");
    }

    /// <summary>Serves until it is told to end.</summary>
    public static int Run(string folder, int port, UnitSystem units, TextWriter output)
    {
        if (port is < 0 or > 65535) throw new Refusal(string.Create(CultureInfo.InvariantCulture, $"--port {port} is not a port. Type a number from 1 to 65535, or 0 for a free one."));
        if (port != 0) RefuseIfTaken(port);
        using var held = DataFolder.Hold(folder);
        using var journal = Journal.Open(folder);
        using var workbench = Workbench.Build(new WorkbenchOptions(journal, folder, port, units, record => DemoShop.Load(record), CommandLine.Sums()));
        try
        {
            workbench.Start();
        }
        catch (IOException busy) when (busy.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            throw Taken(port);
        }

        var address = workbench.Urls.First();
        held.Announce(address);
        var page = new Page(output);
        page.Line();
        page.Pair("workbench", address, 0);
        page.Pair("record", folder, 0);
        page.Paragraph("Open the address in the browser. Ctrl+C ends it; every reading shown as saved is kept.");
        output.Flush();
        workbench.WaitForShutdown();
        return ExitCode.Done;
    }

    /// <summary>Asked first, because the host writes a page of its own troubles when it cannot have its port.</summary>
    private static void RefuseIfTaken(int port)
    {
        try
        {
            using var free = new TcpListener(IPAddress.Loopback, port);
            free.Start();
        }
        catch (SocketException)
        {
            throw Taken(port);
        }
    }

    private static Refusal Taken(int port) =>
        new(string.Create(CultureInfo.InvariantCulture, $"Port {port} is taken by another program, or closed to you. Choose another with --port, or --port 0 for a free one."), ExitCode.File);
}

using System.CommandLine;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Store;

namespace Portwright.Cli.Serve;

/// <summary><c>portwright serve</c>: the workbench in the browser, for this machine alone.</summary>
internal static class ServeCommand
{
    private const int UsualPort = 5190;

    public static Option<int> Port() => new("--port")
    {
        Description = $"TCP port on 127.0.0.1 (usual: {UsualPort}; 0 takes a free one)",
        HelpName = "N",
        DefaultValueFactory = _ => UsualPort,
    };

    public static Command Make()
    {
        var (port, data) = (Port(), CommandWords.Data());
        return new Command("serve", "the workbench in the browser, for this machine alone") { port, data }
            .Does(parsed => Run(DataFolder.Resolve(parsed.GetValue(data)), parsed.GetValue(port), new Page(parsed.InvocationConfiguration.Output)))
            .Example("portwright serve", "portwright serve --data /srv/shop --port 5200");
    }

    public static int Run(string folder, int port, Page page)
    {
        throw new Refusal("not here yet " + folder + port + page);
    }
}

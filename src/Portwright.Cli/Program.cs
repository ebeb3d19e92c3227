using System.Globalization;
using System.Text;
using Portwright.Cli;

// Numbers and messages are the same whatever the machine's language.
CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;
if (OperatingSystem.IsWindows())
{
    // The plain Windows console shows ± wrongly otherwise.
    Console.OutputEncoding = new UTF8Encoding(false);
}

return CommandLine.Run(args, Console.Out, Console.Error);

using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Portwright.Store.Tests;

/// <summary>The crash program as a process of its own.</summary>
public sealed class Child : IDisposable
{
    private readonly Process _process;

    private Child(Process process) => _process = process;

    public static Child Start(params string[] arguments)
    {
        var program = Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "Portwright.Crash.exe" : "Portwright.Crash");
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        // The same runtime as this one: shared/Microsoft.NETCore.App/VERSION lies three folders under its root.
        start.Environment["DOTNET_ROOT"] = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", ".."));
        return new Child(Process.Start(start)!);
    }

    public string? ReadLine() => _process.StandardOutput.ReadLine();

    /// <summary>What it still said before it died, and that it is dead.</summary>
    public IReadOnlyList<string> ReadToEnd()
    {
        var lines = _process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        _process.WaitForExit();
        return lines;
    }

    /// <summary>SIGKILL on Unix, TerminateProcess on Windows: nothing in it runs any more.</summary>
    public void Kill() => _process.Kill();

    /// <summary>Lets it end by itself.</summary>
    public int Finish()
    {
        _process.StandardInput.Close();
        _process.WaitForExit();
        return _process.ExitCode;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            _process.WaitForExit();
        }

        _process.Dispose();
    }
}

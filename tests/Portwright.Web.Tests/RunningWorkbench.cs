using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Reflection;
using Portwright.Store;

namespace Portwright.Web.Tests;

/// <summary>The built program in a process of its own, on a data folder of its own, that can be killed as a power cut would.</summary>
public sealed class RunningWorkbench : IDisposable
{
    private readonly string? _culture;
    private Process? _process;

    public RunningWorkbench(string? culture = null)
    {
        _culture = culture;
        Data = Directory.CreateTempSubdirectory("portwright-test-").FullName;
        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        Port = ((IPEndPoint)free.LocalEndpoint).Port;
    }

    public string Data { get; }

    public int Port { get; }

    public string Url => $"http://127.0.0.1:{Port}";

    /// <summary>From starting the process to the first page served.</summary>
    public TimeSpan StartedIn { get; private set; }

    /// <summary>Everything the process wrote.</summary>
    public StringWriter Said { get; } = new();

    public static string Program => Environment.GetEnvironmentVariable("PORTWRIGHT_DLL")
        ?? typeof(RunningWorkbench).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().First(m => m.Key == "Portwright").Value!;

    public async Task<RunningWorkbench> Start()
    {
        if (!File.Exists(Program))
        {
            throw new FileNotFoundException($"The program {Program} is not built. Build the solution first.");
        }

        var since = Stopwatch.StartNew();
        var start = new ProcessStartInfo("dotnet", [Program, "serve", "--data", Data, "--port", $"{Port}"])
        {
            // Elsewhere than the program: it must find its files from where it lies.
            WorkingDirectory = Path.GetTempPath(),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (_culture is not null)
        {
            start.Environment["LANG"] = start.Environment["LC_ALL"] = _culture;
        }

        _process = Process.Start(start)!;
        _process.OutputDataReceived += (_, line) => Write(line.Data);
        _process.ErrorDataReceived += (_, line) => Write(line.Data);
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        using var client = new HttpClient();
        while (true)
        {
            if (_process.HasExited || since.Elapsed > TimeSpan.FromSeconds(60))
            {
                throw new InvalidOperationException($"The workbench did not start: {Said}");
            }

            try
            {
                using var answer = await client.GetAsync(Url);
                StartedIn = since.Elapsed;
                return this;
            }
            catch (Exception early) when (early is HttpRequestException or SocketException)
            {
                await Task.Delay(20);
            }
        }
    }

    /// <summary>SIGKILL: no farewell, as when the plug is pulled.</summary>
    public void Kill()
    {
        _process!.Kill(entireProcessTree: true);
        _process.WaitForExit();
        _process.Dispose();
        _process = null;
    }

    /// <summary>What the record holds, read beside the running program.</summary>
    public T Read<T>(Func<Journal, T> read)
    {
        using var journal = Journal.Open(Data);
        return read(journal);
    }

    public void Dispose()
    {
        if (_process is not null)
        {
            Kill();
        }

        Directory.Delete(Data, recursive: true);
    }

    private void Write(string? line)
    {
        lock (Said)
        {
            Said.WriteLine(line);
        }
    }
}

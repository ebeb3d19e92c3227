using System.Diagnostics;
using System.Globalization;
using Portwright.Crash;
using Portwright.Store;

// Started by the store's tests, to be killed by them or to kill itself at a named point.
switch (args)
{
    case ["append", var folder, var from]:
        Appending.Run(folder, int.Parse(from, CultureInfo.InvariantCulture));
        return 0;
    case ["change", var folder, var stage]:
        using (Journal.Open(folder, LaterSchema.Schema, new DieAt(Enum.Parse<SchemaStage>(stage))))
        {
        }

        return 0;
    case ["change", var folder]:
        Console.WriteLine("changing");
        using (Journal.Open(folder, LaterSchema.Schema))
        {
        }

        return 0;
    case ["restore", var backup, var folder, var stage]:
        Journal.Restore(backup, folder, evenIfDamaged: false, reached =>
        {
            if (reached == Enum.Parse<RestoreStage>(stage))
            {
                Process.GetCurrentProcess().Kill();
            }
        });
        return 0;
    case ["open", var folder]:
        using (Journal.Open(folder))
        {
            Console.WriteLine("open");
            Console.ReadLine();
        }

        return 0;
    case ["hold", var folder]:
        using (var held = DataFolder.Hold(folder))
        {
            held.Announce("http://127.0.0.1:5080");
            Console.WriteLine("held");
            Console.ReadLine();
        }

        return 0;
    default:
        return 64;
}

/// <summary>Kills this process, without any farewell, when a schema change comes to a stage.</summary>
internal sealed class DieAt(SchemaStage stage) : IProgress<SchemaPoint>
{
    public void Report(SchemaPoint value)
    {
        if (value.Stage == stage)
        {
            Process.GetCurrentProcess().Kill();
        }
    }
}

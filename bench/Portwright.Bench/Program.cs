using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using Portwright.Bench;

var kept = History.Asked(ref args);
// A benchmark that could not be built or run has nothing to keep.
var found = BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args).Where(s => s.Reports.Any(r => r.Success)).ToList();
if (!kept || found.Count == 0) return;

var tables = new AccumulationLogger();
foreach (var summary in found) MarkdownExporter.GitHub.ExportToLog(summary, tables);
Console.WriteLine(History.Keep("Program", tables.GetLog()));

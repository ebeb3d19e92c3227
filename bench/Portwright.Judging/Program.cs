using System.Globalization;
using Portwright.Judging.Reports;
using Portwright.Judging.Trial;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (Options.Read(args) is not { } options)
{
    Console.Error.WriteLine(Options.Usage);
    return 2;
}

if (options.Shop is { } number)
{
    Console.WriteLine(OneShop.Of(options, number));
    return 0;
}

var run = Run.Of(options.Extent, (done, of) => Console.Error.WriteLine($"{done} of {of}"));
var rates = Rates.Of(run);
Console.WriteLine(Tables.Of(run, rates));
Console.WriteLine($"{run.Took.TotalMinutes:F1} minutes on {Environment.ProcessorCount} cores.");
if (options.Json is { } json) RatesJson.Write(json, run, rates);
if (options.Page is { } page) JudgementPage.Write(page, run, rates);
return 0;

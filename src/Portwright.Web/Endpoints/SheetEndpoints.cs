using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Portwright.Figures;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Store.Export;
using Portwright.Web.Engine;
using Portwright.Web.Shell;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Endpoints;

/// <summary>Port sheets, tables and whole jobs as files to take along.</summary>
internal static class SheetEndpoints
{
    private const string Workbook = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/port/{port:guid}/cut/{number:int}/sheet.{kind}", Sheet);
        app.MapGet("/job/{job:guid}/sheets.pdf", Sheets);
        app.MapGet("/port/{port:guid}/readings.csv", (Guid port, ShopRecord shop) =>
        {
            var ledger = shop.Job(shop.JobOf(port));
            return Results.Bytes(CsvFile.Write(SweepSheets.Raw(ledger, port)), "text/csv", FileName("csv", NameOf(ledger, port), "readings"));
        });
        app.MapGet("/port/{port:guid}/tables.xlsx", async (Guid port, HttpContext http, ShopRecord shop, WorkbenchOptions options) =>
        {
            var ledger = shop.Job(shop.JobOf(port));
            var tables = new[] { SweepSheets.Reduced(ledger, port, Look.Units(http, options)), SweepSheets.Raw(ledger, port) };
            return Results.Bytes(await XlsxFile.WriteAsync(tables, http.RequestAborted), Workbook, FileName("xlsx", NameOf(ledger, port)));
        });
        app.MapGet("/job/{job:guid}/job.json", (Guid job, ShopRecord shop) =>
            Results.Bytes(
                JobDocumentFile.Write(JobDocument.From(shop.Journal, job)),
                "application/json",
                FileName("json", shop.Job(job).Get<Job>(job).Fact.Name)));
    }

    private static IResult Sheet(Guid port, int number, string kind, HttpContext http, ShopRecord shop, RunningEngines engines, WorkbenchOptions options)
    {
        if (SheetFile.Kinds.FirstOrDefault(k => k.Kind == kind) is not { } file)
        {
            return Results.NotFound();
        }

        var ledger = shop.Job(shop.JobOf(port));
        var cut = ledger.CutsOf(port).FirstOrDefault(c => c.Fact.Number == number)
            ?? throw new KeyNotFoundException($"{ledger.Get<Port>(port).Fact.Name} has no cut {number}.");
        var reductions = shop.Reduced(shop.JobOf(port));
        var known = engines.Port(reductions, port, cut.Id);
        if (known.Sheet.Flow is null)
        {
            throw new KeyNotFoundException($"{known.Sheet.Port.Fact.Name} has no reading at cut {number} yet: there is nothing to print.");
        }

        return Results.Bytes(
            file.Render(known, IsFull(http) ? PortDocument.Of(known, Today) : PortDocument.ForThePorter(known, Today), Look.Units(http, options)), file.MediaType, FileName(kind, NameOf(ledger, port), $"cut {number}"));
    }

    /// <summary>The job's first page and then its sheets.</summary>
    private static IResult Sheets(Guid job, HttpContext http, ShopRecord shop, RunningEngines engines, WorkbenchOptions options)
    {
        var units = Look.Units(http, options);
        engines.Kept.TakeIn();
        var sheets = JobSheets.Of(shop.Reduced(job), job, engines.Kept, Today, IsFull(http));
        if (sheets.Sheets.Count == 0) throw new KeyNotFoundException($"No port of {shop.Job(job).Get<Job>(job).Fact.Name} was swept yet: there is nothing to print.");
        return Results.Bytes(JobPaper.Pdf(sheets.First, sheets.Sheets, PaperSize.Of(units), units), SheetFile.Pdf.MediaType, FileName("pdf", shop.Job(job).Get<Job>(job).Fact.Name, "sheets"));
    }

    private static DateOnly Today => DateOnly.FromDateTime(DateTime.Now);

    /// <summary>Whether what is for the engineer is asked for too.</summary>
    private static bool IsFull(HttpContext http) => http.Request.Query.ContainsKey("full");

    private static string NameOf(Ledger ledger, Guid port)
    {
        var of = ledger.Get<Port>(port);
        var head = ledger.Get<Head>(of.Fact.Head);
        return $"{ledger.Get<Job>(head.Entry.Job!.Value).Fact.Name} {head.Fact.Name} {of.Fact.Name}";
    }

    /// <summary>Letters, digits and hyphens only: what a person typed must not steer a browser's or a disk's idea of a name.</summary>
    private static string FileName(string ending, params string[] words)
    {
        var plain = new string([.. string.Join('-', words).Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')]);
        var name = string.Join('-', plain.Split('-', StringSplitOptions.RemoveEmptyEntries));
        return $"{(name.Length == 0 ? "portwright" : name)}.{ending}";
    }
}

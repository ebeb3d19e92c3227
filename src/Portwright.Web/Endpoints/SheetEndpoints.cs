using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Portwright.Figures;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Web.Shell;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Endpoints;

/// <summary>The port sheet as a file to take along.</summary>
internal static class SheetEndpoints
{
    public static void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/port/{port:guid}/cut/{number:int}/sheet.{kind}", (Guid port, int number, string kind, HttpContext http, ShopRecord shop, WorkbenchOptions options) =>
        {
            var ledger = shop.Job(shop.JobOf(port));
            var cut = ledger.CutsOf(port).FirstOrDefault(c => c.Fact.Number == number)
                ?? throw new KeyNotFoundException($"{ledger.Get<Port>(port).Fact.Name} has no cut {number}.");
            var sheet = PortSheet.Of(ledger, port, cut.Id);
            var units = Look.Units(http, options);
            var drawing = FlowOverLift.Draw(FlowPlot.Of(sheet, units: units), FigureSize.Wide, units);
            var name = FileName(sheet, kind);
            return kind switch
            {
                "svg" => Attached(http, name, Results.Text(Svg.Standalone(drawing, Theme.Paper), "image/svg+xml")),
                "png" => Results.Bytes(Png.Render(drawing, Theme.Paper), "image/png", name),
                _ => Results.NotFound(),
            };
        });

    private static IResult Attached(HttpContext http, string name, IResult result)
    {
        http.Response.Headers.ContentDisposition = $"attachment; filename=\"{name}\"";
        return result;
    }

    /// <summary>Letters, digits and hyphens only: what a person typed must not steer a browser's or a disk's idea of a name.</summary>
    private static string FileName(PortSheet sheet, string kind)
    {
        var words = $"{sheet.Job.Fact.Name} {sheet.Head.Fact.Name} {sheet.Port.Fact.Name} cut {sheet.Cut.Fact.Number}";
        var plain = new string([.. words.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')]);
        return $"{string.Join('-', plain.Split('-', StringSplitOptions.RemoveEmptyEntries))}.{kind}";
    }
}

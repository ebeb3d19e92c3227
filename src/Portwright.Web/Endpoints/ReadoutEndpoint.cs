using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Web.Forms;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Endpoints;

/// <summary>The answer to what the shop's readout shows: a fact of the bench card, and every reading is worked out anew with it.</summary>
internal static class ReadoutEndpoint
{
    public static void Map(IEndpointRouteBuilder app) => app.MapPost("/bench/readout", (
        [FromForm] string? range, [FromForm] ReadoutMeaning meaning, [FromForm] string? back, HttpContext http, ShopRecord shop) =>
    {
        if (shop.Shop().All<BenchCard>().LastOrDefault() is not { } bench || bench.Fact.RangeNamed(range ?? "") is not { } asked || StandInBench.MeaningOf(asked) is null)
        {
            throw new KeyNotFoundException("The bench card has no readout of that name to say anything of. Load the page again.");
        }

        var now = DateTimeOffset.Now;
        shop.Save(Amend.Correct(bench, StandInBench.Answered(bench.Fact, asked.Name, meaning), now, Hands.Of(http), $"said what the readout shows: {ReadoutSaid.Words(meaning)}"));
        return Results.LocalRedirect(Back.Local(back));
    });
}

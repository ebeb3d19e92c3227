using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Trials;
using Portwright.Store;
using Portwright.Web.Bench;
using Portwright.Web.Shell;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Endpoints;

/// <summary>What the entry box at the bench talks to: JSON in, JSON out, each reading on the disk before it is answered.</summary>
internal static class SweepEndpoints
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapPost("/sweep/{id:guid}/reading", Save);
        app.MapPost("/sweep/{id:guid}/take-back", (Guid id, NamedReading named, HttpContext http, ShopRecord shop, WorkbenchOptions options, IAntiforgery forms) =>
            Turn(id, named, true, http, shop, options, forms));
        app.MapPost("/sweep/{id:guid}/put-back", (Guid id, NamedReading named, HttpContext http, ShopRecord shop, WorkbenchOptions options, IAntiforgery forms) =>
            Turn(id, named, false, http, shop, options, forms));
        app.MapGet("/sweep/{id:guid}/standing", (Guid id, HttpContext http, ShopRecord shop, WorkbenchOptions options) =>
            Results.Json(SweepStanding.Of(shop.Reduced(shop.JobOf(id)), id, Look.Units(http, options))));
    }

    private static async Task<IResult> Save(
        Guid id, EnteredReading entered, HttpContext http, ShopRecord shop, WorkbenchOptions options, IAntiforgery forms)
    {
        await forms.ValidateRequestAsync(http);
        var units = Look.Units(http, options);
        try
        {
            var job = shop.JobOf(id);
            var before = shop.Reduced(job);
            var ledger = before.Ledger;
            var sweep = ledger.Get<Sweep>(id);
            var (entry, problem) = entered.Entry(sweep, ledger.Get<BenchCard>(sweep.Fact.Bench), units);
            if (entry is null)
            {
                return Results.Json(new Answer(null, problem, null), statusCode: StatusCodes.Status422UnprocessableEntity);
            }

            // Judged before it is saved, while the porter still sees the tube; one that came before is only answered again.
            switch (ledger.Find<FlowReading>(entry.Subject) is null ? ReadingEntry.Of(before, entry, units, problem) : null)
            {
                case Refuse refused:
                    return Results.Json(new Answer(null, refused.Problem, null), statusCode: StatusCodes.Status422UnprocessableEntity);
                case Ask ask when !entered.Kept || !ask.MayKeep:
                    return Results.Json(new Answer(null, null, new Question(ask.Question.In(units), [.. ask.Likely.Select(m => m.Text)], ask.MayKeep)), statusCode: StatusCodes.Status409Conflict);
                case Ask ask:
                    shop.Save(entry, entered.Confirmation(entry, ask.Question.In(units)));
                    break;
                default:
                    shop.Save(entry);
                    break;
            }

            return Results.Json(new Answer(SweepStanding.Of(shop.Reduced(job), id, units), null, null));
        }
        catch (RecordProblem trouble) when (trouble.Kind == RecordProblemKind.Refused)
        {
            return Results.Json(new Answer(null, trouble.Message, null), statusCode: StatusCodes.Status422UnprocessableEntity);
        }
        catch (RecordProblem trouble)
        {
            return Results.Json(new Answer(null, trouble.Message, null), statusCode: StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static async Task<IResult> Turn(
        Guid id, NamedReading named, bool back, HttpContext http, ShopRecord shop, WorkbenchOptions options, IAntiforgery forms)
    {
        await forms.ValidateRequestAsync(http);
        var job = shop.JobOf(id);
        var ledger = shop.Job(job);
        var reading = ledger.Get<FlowReading>(named.Id);
        if (reading.Fact.Sweep == id && ledger.IsHidden(reading.Id) != back)
        {
            shop.Save(back
                ? Amend.Hide(reading, DateTimeOffset.Now, reading.Entry.Hand, "taken back at the bench")
                : Amend.Show(reading, DateTimeOffset.Now, reading.Entry.Hand, "put back at the bench"));
        }

        return Results.Json(new Answer(SweepStanding.Of(shop.Reduced(job), id, Look.Units(http, options)), null, null));
    }

    private sealed record NamedReading(Guid Id);

    private sealed record Question(string Words, IReadOnlyList<string> Likely, bool MayKeep);

    private sealed record Answer(SweepStanding? Standing, string? Problem, Question? Question);
}

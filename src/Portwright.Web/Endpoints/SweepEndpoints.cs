using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
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

            // Reduced before it is saved: what cannot be an air flow is asked again while the porter still sees the tube.
            var trial = new Reductions(ledger.With([entry]));
            if (Trial.Refuses(trial.Of(sweep), entry.Subject) is { } refused)
            {
                return Results.Json(new Answer(null, refused, null), statusCode: StatusCodes.Status422UnprocessableEntity);
            }

            shop.Save(entry);
            var question = ReadingQuestion.Of(before, trial, id, entry.Subject, units) is { } words ? new Question(entry.Subject, words) : null;
            return Results.Json(new Answer(SweepStanding.Of(shop.Reduced(job), id, units), null, question));
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

    private sealed record Question(Guid Id, string Words);

    private sealed record Answer(SweepStanding? Standing, string? Problem, Question? Question);
}

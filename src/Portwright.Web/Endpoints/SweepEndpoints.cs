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
            // Judged before it is saved, while the porter still sees the tube; one that came before is only answered again.
            var isNew = ledger.Find<FlowReading>(entered.Number) is null;
            var pressure = isNew ? ReadingPressure.Of(sweep.Fact, entered.Pass, entered.PressureText, units) : null;
            if (pressure is Refuse off) return Refused(off.Problem);
            if (pressure is Ask at && !(entered.PressureKept && at.MayKeep)) return Asked(at, "pressure", entered.WithPressure);
            var (entry, problem) = entered.Entry(sweep, ledger.Get<BenchCard>(sweep.Fact.Bench), units);
            if (entry is null) return Refused(problem!);
            var reading = isNew ? ReadingEntry.Of(before, entry, units, problem) : null;
            if (reading is Refuse refused) return Refused(refused.Problem);
            if (reading is Ask ask && !(entered.Kept && ask.MayKeep)) return Asked(ask, "reading", entered.WithNumber);
            List<Entry> entries = [entry];
            if (pressure is Ask keptAt) entries.Add(entered.PressureConfirmation(entry, keptAt.Question.In(units)));
            if (reading is Ask kept) entries.Add(entered.Confirmation(entry, kept.Question.In(units)));
            shop.Save([.. entries]);
            return Results.Json(new Answer(SweepStanding.Of(shop.Reduced(job), id, units), null, null));
        }
        catch (RecordProblem trouble) when (trouble.Kind == RecordProblemKind.Refused)
        {
            return Refused(trouble.Message);
        }
        catch (RecordProblem trouble)
        {
            return Results.Json(new Answer(null, trouble.Message, null), statusCode: StatusCodes.Status503ServiceUnavailable);
        }

        static IResult Refused(string problem) => Results.Json(new Answer(null, problem, null), statusCode: StatusCodes.Status422UnprocessableEntity);

        IResult Asked(Ask ask, string about, Func<string, string> typed) => Results.Json(
            new Answer(null, null, new Question(ask.Question.In(units), about, [.. ask.Likely.Select(m => typed(m.Text))], ask.MayKeep)), statusCode: StatusCodes.Status409Conflict);
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

    /// <param name="About"><c>reading</c> or <c>pressure</c>: what is kept where the answer is to keep it.</param>
    private sealed record Question(string Words, string About, IReadOnlyList<string> Likely, bool MayKeep);

    private sealed record Answer(SweepStanding? Standing, string? Problem, Question? Question);
}

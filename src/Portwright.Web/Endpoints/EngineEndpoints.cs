using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Portwright.Shop.Runs;
using Portwright.Web.Engine;
using Portwright.Web.Security;
using Portwright.Web.Shell;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Endpoints;

/// <summary>Begins and stops engine runs, and says how far they are.</summary>
internal static class EngineEndpoints
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapPost("/job/{job:guid}/engine/run", async (Guid job, [FromForm] string? back, HttpContext http, ShopRecord shop, RunningEngines engines) =>
        {
            var asked = EngineAddress.Of(job, http.Request);
            var standing = engines.Standing(shop.Reduced(shop.JobOf(job)), job, asked.Intake, asked.Exhaust);
            if (standing.Question is null)
            {
                await Plain.Answer(http, StatusCodes.Status422UnprocessableEntity, "The plan makes no engine yet: open the engine run's page, it says what is missing.");
                return Results.Empty;
            }

            engines.Start(job, Back.Local(back), standing.Tasks);
            return Results.LocalRedirect(Back.Local(back));
        });
        app.MapPost("/job/{job:guid}/engine/study/run", async (Guid job, [FromForm] string? back, HttpContext http, ShopRecord shop, RunningEngines engines, WorkbenchOptions options) =>
        {
            var asked = EngineAddress.Of(job, http.Request);
            var form = StudyForm.Of(http.Request, Look.Units(http, options));
            var question = engines.Standing(shop.Reduced(shop.JobOf(job)), job, asked.Intake, asked.Exhaust).Question;
            var problem = "The study is not laid out: choose what to vary, from what to what.";
            var tasks = question is null || form.Spans.Count == 0 ? [] : new EngineStudy(question, form.Spans).Tasks(out problem);
            if (tasks.Count == 0)
            {
                await Plain.Answer(http, StatusCodes.Status422UnprocessableEntity, problem);
                return Results.Empty;
            }

            engines.Start(job, Back.Local(back), tasks);
            return Results.LocalRedirect(Back.Local(back));
        });
        app.MapPost("/job/{job:guid}/engine/stop", (Guid job, [FromForm] string? back, RunningEngines engines) =>
        {
            engines.Stop(job);
            return Results.LocalRedirect(Back.Local(back));
        });
        app.MapGet("/job/{job:guid}/engine/progress", (Guid job, HttpContext http, RunningEngines engines) =>
        {
            http.Response.Headers.CacheControl = "no-store";
            var work = engines.Of(job);
            var progress = work?.Progress ?? default;
            return Results.Json(new { Running = work?.State == WorkState.Running, progress.Done, progress.Total, Words = EngineWords.Of(progress) });
        });
    }
}

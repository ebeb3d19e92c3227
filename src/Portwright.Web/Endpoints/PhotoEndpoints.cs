using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Portwright.Shop.Record;
using Portwright.Store;
using Portwright.Web.Forms;
using Portwright.Web.Security;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Endpoints;

/// <summary>Photos and clips come in by a form and are judged by their bytes; they go out under the hash of their bytes and nothing else.</summary>
internal static class PhotoEndpoints
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapPost("/cut/{of:guid}/photo", Keep<Cut>);
        app.MapPost("/flag/{of:guid}/photo", Keep<FlagReading>);
        app.MapGet("/photo/{content:regex(^[0-9a-f]{{64}}$)}", (string content, HttpContext http, ShopRecord shop) =>
        {
            if (shop.Journal.Attachment(content) is not { } picture)
            {
                return Results.NotFound();
            }

            http.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
            http.Response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
            return Results.Bytes(picture.Bytes, picture.MediaType, enableRangeProcessing: true);
        });
    }

    private static async Task<IResult> Keep<T>(Guid of, IFormFile? photo, [FromForm] string? caption, [FromForm] string? back, HttpContext http, ShopRecord shop)
        where T : Fact
    {
        var ledger = shop.Job(shop.JobOf(of));
        var kept = ledger.Get<T>(of);
        var words = "No photo or clip was sent. Choose one, then keep it.";
        if (photo is { Length: > UploadLimits.Photo })
        {
            words = "The file is larger than 20 MB. Send a smaller one. Nothing was saved.";
        }
        else if (photo is { Length: > 0 })
        {
            using var bytes = new MemoryStream((int)photo.Length);
            await photo.CopyToAsync(bytes, http.RequestAborted);
            try
            {
                var content = shop.Journal.Attach(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
                var picture = shop.Journal.Attachment(content)!;
                var text = new string([.. (caption ?? "").Where(c => !char.IsControl(c)).Take(300)]).Trim();
                shop.Save(Entry.About(Guid.CreateVersion7(), kept.Entry.Job, new Photo(of, content, picture.MediaType, text), DateTimeOffset.Now, Hands.Of(http)));
                return Results.LocalRedirect(Back.Local(back));
            }
            catch (RecordProblem problem) when (problem.Kind == RecordProblemKind.Refused)
            {
                words = problem.Message;
            }
        }

        await Plain.Answer(http, StatusCodes.Status400BadRequest, words);
        return Results.Empty;
    }
}

using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Portwright.Store.Import;
using Portwright.Web.Security;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Endpoints;

/// <summary>Takes a file of readings and holds it while its preview is looked at. What it is, is told by its bytes, not by its name.</summary>
internal static class ImportEndpoint
{
    public static void Map(IEndpointRouteBuilder app) => app.MapPost("/import/file", Take);

    private static async Task<IResult> Take(IFormFile? file, HttpContext http, UploadShelf shelf)
    {
        if (file is not { Length: > 0 })
        {
            await Plain.Answer(http, StatusCodes.Status400BadRequest, "No file was sent. Choose a CSV file or a workbook, then look at it.");
            return Results.Empty;
        }

        if (file.Length > UploadLimits.Table)
        {
            await Plain.Answer(http, StatusCodes.Status413PayloadTooLarge, "The file is larger than 10 MB: no sheet of readings is. Nothing was saved. Choose the right file.");
            return Results.Empty;
        }

        using var bytes = new MemoryStream((int)file.Length);
        await file.CopyToAsync(bytes, http.RequestAborted);
        var content = bytes.ToArray();
        if (!TableFile.TryRead(content, file.FileName, null, out _, out var problem))
        {
            await Plain.Answer(http, StatusCodes.Status422UnprocessableEntity, problem + " Nothing was saved.");
            return Results.Empty;
        }

        return Results.LocalRedirect($"/import/{shelf.Put(file.FileName, content).Number}");
    }
}

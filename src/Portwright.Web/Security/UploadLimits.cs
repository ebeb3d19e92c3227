using System.Globalization;
using Microsoft.AspNetCore.Http;

namespace Portwright.Web.Security;

/// <summary>Sizes that may come in, in bytes, and a clear word where one is passed.</summary>
public sealed class UploadLimits(RequestDelegate next)
{
    /// <summary>A photo: 20 MB.</summary>
    public const int Photo = 20_000_000;

    /// <summary>A table of readings: 10 MB.</summary>
    public const int Table = 10_000_000;

    /// <summary>Any request: a photo and its form.</summary>
    public const int Request = Photo + 100_000;

    public Task InvokeAsync(HttpContext context)
    {
        var limit = context.Request.Path.StartsWithSegments("/import") ? Table + 100_000 : Request;
        if (context.Request.ContentLength > limit)
        {
            return Plain.Answer(context, StatusCodes.Status413PayloadTooLarge, string.Create(
                CultureInfo.InvariantCulture,
                $"The file holds {context.Request.ContentLength / 1e6:F0} MB; at most {limit / 1e6:F0} MB are taken here. Nothing was saved. Send a smaller one."));
        }

        return next(context);
    }
}

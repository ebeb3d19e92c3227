using System.Globalization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace Portwright.Web.Security;

/// <summary>Sizes that may come in, in bytes, and a clear word where one is passed.</summary>
public sealed class UploadLimits(RequestDelegate next)
{
    /// <summary>A photo or a clip: 20 MB.</summary>
    public const int Photo = 20_000_000;

    /// <summary>A table of readings: 10 MB.</summary>
    public const int Table = 10_000_000;

    /// <summary>Any request: a photo and its form.</summary>
    public const int Request = Photo + 100_000;

    /// <summary>
    /// A browser that is still sending when it is answered shows a broken line instead of the answer. So much is read and thrown away first.
    /// </summary>
    private const long ThrownAway = 200_000_000;

    public async Task InvokeAsync(HttpContext context)
    {
        var limit = context.Request.Path.StartsWithSegments("/import") ? Table + 100_000 : Request;
        if (context.Request.ContentLength is not { } size || size <= limit)
        {
            await next(context);
            return;
        }

        if (size <= ThrownAway && context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } body)
        {
            body.MaxRequestBodySize = ThrownAway;
            await context.Request.Body.CopyToAsync(Stream.Null, context.RequestAborted);
        }

        await Plain.Answer(context, StatusCodes.Status413PayloadTooLarge, string.Create(
            CultureInfo.InvariantCulture,
            $"The file holds {size / 1e6:F0} MB; at most {limit / 1e6:F0} MB are taken here. Nothing was saved. Send a smaller one."));
    }
}

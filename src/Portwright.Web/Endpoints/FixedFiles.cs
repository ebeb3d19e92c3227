using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Portwright.Figures;

namespace Portwright.Web.Endpoints;

/// <summary>Fonts and the figures' style sheet, which the program carries inside.</summary>
internal static class FixedFiles
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/fonts/{name:regex(^IBMPlexSansCondensed-[A-Za-z]+\\.woff2$)}", (string name, HttpContext http) =>
        {
            if (Typeface.File(name) is not { } bytes)
            {
                return Results.NotFound();
            }

            http.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
            return Results.Bytes(bytes, "font/woff2");
        });
        app.MapGet("/figures.css", (HttpContext http) =>
        {
            http.Response.Headers.CacheControl = "public, max-age=3600";
            return Results.Text(Svg.StyleSheet, "text/css");
        });
    }
}

using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Portwright.Web.Shell;

namespace Portwright.Web.Endpoints;

/// <summary>Remembers theme and units, and goes back to where one was.</summary>
internal static class LookEndpoint
{
    public static void Map(IEndpointRouteBuilder app) => app.MapPost("/look", (
        [FromForm] string? theme, [FromForm] string? units, [FromForm] string? back, HttpContext http) =>
    {
        Look.Choose(http, theme, units);
        // Only a place of ours: "//elsewhere" and "/\elsewhere" are addresses of other machines.
        var here = back is ['/', ..] && !back.StartsWith("//", StringComparison.Ordinal) && !back.Contains('\\', StringComparison.Ordinal) ? back : "/";
        return Results.LocalRedirect(here);
    });
}

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
        return Results.LocalRedirect(Back.Local(back));
    });
}

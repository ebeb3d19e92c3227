using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Portwright.Web.Endpoints;

/// <summary>A fresh form token for a page whose own has grown old. No page of another origin can read the answer.</summary>
internal static class FormTokenEndpoint
{
    public static void Map(IEndpointRouteBuilder app) => app.MapGet("/form-token", (HttpContext http, IAntiforgery forms) =>
    {
        var token = forms.GetAndStoreTokens(http).RequestToken;
        http.Response.Headers.CacheControl = "no-store";
        return Results.Json(new { Token = token });
    });
}

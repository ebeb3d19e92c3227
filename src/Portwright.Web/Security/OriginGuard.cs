using Microsoft.AspNetCore.Http;

namespace Portwright.Web.Security;

/// <summary>
/// Refuses what comes from a page that is not ours. A browser lets any page on the internet open a WebSocket to this machine or
/// post a form to it; only the Origin header tells them apart.
/// </summary>
public sealed class OriginGuard(RequestDelegate next, OpenCircuits circuits)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (!IsOurs(context.Request))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        }

        // A page that opens one connection after another would eat the machine's memory.
        if (circuits.Full && context.Request.Path.StartsWithSegments("/_blazor/negotiate"))
        {
            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            return Task.CompletedTask;
        }

        return next(context);
    }

    internal static bool IsOurs(HttpRequest request)
    {
        var origin = request.Headers.Origin.ToString();
        var self = $"{request.Scheme}://{request.Host}";
        // A WebSocket over HTTP/2 comes as CONNECT.
        var socket = HttpMethods.IsConnect(request.Method)
            || request.Headers.Upgrade.ToString().Contains("websocket", StringComparison.OrdinalIgnoreCase);
        var reads = HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method);
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        if ((origin.Length > 0 || socket) && !origin.Equals(self, StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        var live = socket || request.Path.StartsWithSegments("/_blazor");
        return !((live || !reads) && site is "cross-site" or "same-site");
    }
}

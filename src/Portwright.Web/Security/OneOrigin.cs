using Microsoft.AspNetCore.Http;

namespace Portwright.Web.Security;

/// <summary>
/// Leads a page asked for as <c>localhost</c> to 127.0.0.1. A browser keeps what is held for each origin apart: readings waiting under
/// one name of this machine would not be seen under the other.
/// </summary>
public sealed class OneOrigin(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        var isSocket = request.Headers.Upgrade.Count > 0;
        if (!HttpMethods.IsGet(request.Method) || isSocket || !request.Host.Host.Equals("localhost", StringComparison.OrdinalIgnoreCase))
        {
            return next(context);
        }

        var host = request.Host.Port is { } port ? new HostString("127.0.0.1", port) : new HostString("127.0.0.1");
        context.Response.StatusCode = StatusCodes.Status307TemporaryRedirect;
        context.Response.Headers.Location = $"{request.Scheme}://{host}{request.PathBase}{request.Path}{request.QueryString}";
        // Another program may have this port tomorrow.
        context.Response.Headers.CacheControl = "no-store";
        return Task.CompletedTask;
    }
}

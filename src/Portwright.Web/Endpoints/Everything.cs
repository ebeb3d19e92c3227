using Microsoft.AspNetCore.Routing;

namespace Portwright.Web.Endpoints;

/// <summary>All addresses that are no page.</summary>
internal static class Everything
{
    public static void Map(IEndpointRouteBuilder app)
    {
        FixedFiles.Map(app);
        FormTokenEndpoint.Map(app);
        LookEndpoint.Map(app);
        SweepEndpoints.Map(app);
        PhotoEndpoints.Map(app);
        SheetEndpoints.Map(app);
        ImportEndpoint.Map(app);
        EngineEndpoints.Map(app);
        ReadoutEndpoint.Map(app);
    }
}

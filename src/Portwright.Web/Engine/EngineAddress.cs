using Microsoft.AspNetCore.Http;
using Portwright.Shop.Runs;

namespace Portwright.Web.Engine;

/// <summary>Addresses of the engine's pages: a job, and the cuts it breathes through where they were chosen.</summary>
public sealed record EngineAddress(Guid Job, Guid? Intake = null, Guid? Exhaust = null)
{
    public static EngineAddress Of(Guid job, HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        Guid? Asked(string name) => Guid.TryParse(request.Query[name], out var id) ? id : null;
        return new(job, Asked("intake"), Asked("exhaust"));
    }

    public static EngineAddress Of(EngineChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return new(choice.Job, choice.Intake?.Cut.Id, choice.Exhaust?.Cut.Id);
    }

    /// <summary><c>/job/…/engine</c> or a page under it, with the cuts and what else is asked.</summary>
    public string Href(string under = "", string more = "")
    {
        var asked = string.Join('&', new[] { Intake is { } i ? $"intake={i}" : "", Exhaust is { } e ? $"exhaust={e}" : "", more }.Where(p => p.Length > 0));
        return $"/job/{Job}/engine{under}{(asked.Length > 0 ? "?" : "")}{asked}";
    }
}

using Microsoft.AspNetCore.Http;
using Portwright.Shop.Units;

namespace Portwright.Web.Shell;

/// <summary>How a reader wants the pages: theme and units, each remembered in a cookie.</summary>
public static class Look
{
    public const string ThemeCookie = "portwright.theme";
    public const string UnitsCookie = "portwright.units";

    /// <summary><c>paper</c>, <c>lamp</c>, or null to follow the machine.</summary>
    public static string? Theme(HttpContext http) => http.Request.Cookies[ThemeCookie] is "paper" or "lamp" ? http.Request.Cookies[ThemeCookie] : null;

    /// <summary>The units chosen, else those the workbench was started with.</summary>
    public static UnitSystem Units(HttpContext http, WorkbenchOptions options) => http.Request.Cookies[UnitsCookie] switch
    {
        "us" => UnitSystem.UsCustomary,
        "si" => UnitSystem.Si,
        _ => options.Units,
    };

    /// <summary>Remembers a choice for a year; what is not known is forgotten.</summary>
    public static void Choose(HttpContext http, string? theme, string? units)
    {
        var kept = new CookieOptions { MaxAge = TimeSpan.FromDays(365), HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" };
        if (theme is "paper" or "lamp")
        {
            http.Response.Cookies.Append(ThemeCookie, theme, kept);
        }
        else if (theme is not null)
        {
            http.Response.Cookies.Delete(ThemeCookie);
        }

        if (units is "us" or "si")
        {
            http.Response.Cookies.Append(UnitsCookie, units, kept);
        }
    }
}

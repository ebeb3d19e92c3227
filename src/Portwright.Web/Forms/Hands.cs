using Microsoft.AspNetCore.Http;

namespace Portwright.Web.Forms;

/// <summary>Whose hand made an entry: the initials last typed in this browser.</summary>
public static class Hands
{
    private const string Cookie = "portwright.hand";

    public static string Of(HttpContext http) => Clean(http.Request.Cookies[Cookie]);

    public static void Remember(HttpContext http, string hand) => http.Response.Cookies.Append(
        Cookie,
        Clean(hand),
        new CookieOptions { MaxAge = TimeSpan.FromDays(365), HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" });

    private static string Clean(string? text) => new([.. (text ?? "").Where(c => !char.IsControl(c)).Take(40)]);
}

using System.Net;
using Microsoft.AspNetCore.Http;

namespace Portwright.Web.Security;

/// <summary>A page of one sentence, for where no other page can be made.</summary>
internal static class Plain
{
    public static Task Answer(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync(
            $"""
            <!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <title>Portwright</title><link rel="stylesheet" href="/_content/Portwright.Web/workbench.css"></head>
            <body><main class="plain"><h1>Not done</h1><p>{WebUtility.HtmlEncode(sentence)}</p><p><a href="/">To the jobs</a></p></main></body></html>
            """);
    }
}

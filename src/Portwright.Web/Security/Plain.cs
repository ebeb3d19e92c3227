using System.Net;
using Microsoft.AspNetCore.Http;

namespace Portwright.Web.Security;

/// <summary>A page of one sentence, for where no other page can be made; to a script that sent JSON, the same sentence as JSON.</summary>
internal static class Plain
{
    /// <summary>The code of an answer to a form token that is missing, old or another's: a fresh one and the same again may do.</summary>
    public const string FormToken = "form-token";

    /// <param name="code">What went wrong, for a script to act on; the sentence is for a person.</param>
    public static Task Answer(HttpContext context, int status, string sentence, string? code = null)
    {
        context.Response.StatusCode = status;
        if (context.Request.HasJsonContentType())
        {
            return context.Response.WriteAsJsonAsync(new { Problem = sentence, Code = code });
        }

        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync(
            $"""
            <!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <title>Portwright</title><link rel="stylesheet" href="/_content/Portwright.Web/workbench.css"></head>
            <body><main class="plain"><h1>Not done</h1><p>{WebUtility.HtmlEncode(sentence)}</p><p><a href="/">To the jobs</a></p></main></body></html>
            """);
    }
}

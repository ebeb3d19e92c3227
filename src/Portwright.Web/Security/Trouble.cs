using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Portwright.Store;

namespace Portwright.Web.Security;

/// <summary>Turns what went wrong into a sentence; no stack trace reaches a page.</summary>
public sealed partial class Trouble(RequestDelegate next, ILogger<Trouble> log)
{
    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (Exception error) when (!context.Response.HasStarted && Answer(error) is { } answer)
        {
            if (answer.Status == StatusCodes.Status500InternalServerError)
            {
                Unforeseen(log, error, context.Request.Path);
            }

            await Plain.Answer(context, answer.Status, answer.Sentence, error is AntiforgeryValidationException ? Plain.FormToken : null);
        }
    }

    /// <summary>A sentence where an answer has a status and nothing to read.</summary>
    public static Task Page(StatusCodeContext context)
    {
        var http = context.HttpContext;
        return Plain.Answer(http, http.Response.StatusCode, http.Response.StatusCode switch
        {
            StatusCodes.Status404NotFound => "There is nothing at this address. It may have been typed wrong, or belong to another record.",
            StatusCodes.Status400BadRequest when http.Request.HasJsonContentType() => "The workbench cannot read what this page sent. Load the page again, then type it again.",
            StatusCodes.Status400BadRequest => "The form is too old, or was not sent by this page. Go back, load the page again, and do it again.",
            StatusCodes.Status405MethodNotAllowed or StatusCodes.Status415UnsupportedMediaType => "This address does not take what was sent.",
            _ => "This cannot be done here. Go back and do it another way.",
        });
    }

    private static (int Status, string Sentence)? Answer(Exception error) => error switch
    {
        OperationCanceledException => null,
        RecordProblem problem => (StatusCodes.Status503ServiceUnavailable, problem.Message),
        KeyNotFoundException => (StatusCodes.Status404NotFound, error.Message),
        BadHttpRequestException bad => (bad.StatusCode, "The browser sent something this page does not take. Go back and do it again."),
        AntiforgeryValidationException => (StatusCodes.Status400BadRequest, "The form is too old, or was not sent by this page. Go back, load the page again, and do it again."),
        _ => (StatusCodes.Status500InternalServerError, "Something went wrong here that should not. What was saved is safe. Go back and do it again; the terminal that runs the workbench says more."),
    };

    [LoggerMessage(LogLevel.Error, "{Path} failed")]
    private static partial void Unforeseen(ILogger log, Exception error, PathString path);
}

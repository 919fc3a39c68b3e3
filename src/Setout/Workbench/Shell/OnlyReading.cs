namespace Setout.Workbench.Shell;

/// <summary>Pages of this version are only read: GET and HEAD, nothing else.</summary>
internal static class OnlyReading
{
    /// <summary>Answers HEAD as GET without a body, and every other method with 405.</summary>
    public static void UseOnlyReading(this WebApplication app) => app.Use(async (http, next) =>
    {
        if (HttpMethods.IsHead(http.Request.Method))
        {
            http.Request.Method = HttpMethods.Get;
            http.Response.Body = Stream.Null;
        }
        else if (!HttpMethods.IsGet(http.Request.Method))
        {
            http.Response.StatusCode = StatusCodes.Status405MethodNotAllowed;
            http.Response.Headers.Allow = "GET, HEAD";
            await http.Response.WriteAsync("This page can only be read.");
            return;
        }
        await next(http);
    });
}

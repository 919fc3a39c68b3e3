using Microsoft.AspNetCore.Http.Features;

namespace Setout.Workbench.Changing;

/// <summary>What may change something: a post from one of our own pages, small, and a form.</summary>
internal static class Posts
{
    /// <summary>The most bytes of a post: more than any text that a piece file may have, as a form writes it.</summary>
    public const long MostBytes = 16 * 1024 * 1024;

    /// <summary>
    /// Answers HEAD as GET without a body; lets GET through, and POST where it comes from a page of this workbench. A page elsewhere can make a browser post a form to this machine, but not with our
    /// origin: browsers say where a post comes from, and nothing that does not say so changes anything.
    /// </summary>
    public static void UseOwnPostsOnly(this WebApplication app) => app.Use(async (http, next) =>
    {
        string method = http.Request.Method;
        if (HttpMethods.IsHead(method))
        {
            http.Request.Method = HttpMethods.Get;
            http.Response.Body = Stream.Null;
        }
        else if (HttpMethods.IsPost(method))
        {
            if (Refusal(http.Request) is var (status, words))
            {
                http.Response.StatusCode = status;
                http.Response.ContentType = "text/plain; charset=utf-8";
                await http.Response.WriteAsync(words + "\n");
                return;
            }
        }
        else if (!HttpMethods.IsGet(method))
        {
            http.Response.StatusCode = StatusCodes.Status405MethodNotAllowed;
            http.Response.Headers.Allow = "GET, HEAD, POST";
            await http.Response.WriteAsync("That is not done to this page.\n");
            return;
        }
        await next(http);
    });

    private static (int Status, string Words)? Refusal(HttpRequest request)
    {
        string own = $"{request.Scheme}://{request.Host.Value}";
        if (request.Headers.Origin.ToString() != own) return (StatusCodes.Status403Forbidden, "This does not come from a page of this workbench, so nothing was changed.");
        // A backup is the one thing that may be larger: it goes to the disk as it comes.
        long most = request.Path == Keeping.Uploads.Path ? Keeping.Uploads.MostBytes : MostBytes;
        if (request.ContentLength > most) return (StatusCodes.Status413PayloadTooLarge, $"This is larger than {most / 1024 / 1024} MB, so nothing was changed.");
        if (!request.HasFormContentType) return (StatusCodes.Status415UnsupportedMediaType, "This is no form, so nothing was changed.");
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size) size.MaxRequestBodySize = most;
        return null;
    }
}

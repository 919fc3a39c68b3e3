using System.Net;
using Setout.Commands;
using Setout.Shop.Facts;
using Setout.Workbench.Changing;

namespace Setout.Workbench.Shell;

/// <summary>What every answer of the workbench keeps to.</summary>
internal static class Guards
{
    /// <summary>Nothing from anywhere else, nothing written into the page itself, no frame round it.</summary>
    public const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>Sets the headers that keep a page to itself.</summary>
    public static void UseSafeHeaders(this WebApplication app) => app.Use(async (http, next) =>
    {
        IHeaderDictionary headers = http.Response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        // With "no-referrer" browsers would not say either where a form comes from, and it would be refused.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.CacheControl = "no-cache";
        await next(http);
    });

    /// <summary>
    /// Answers only to this machine's own names. Otherwise a web page elsewhere could point a name of its own at this machine and read along.
    /// </summary>
    public static void UseOwnNamesOnly(this WebApplication app) => app.Use(async (http, next) =>
    {
        if (IsOwn(http.Request.Host.Host))
        {
            await next(http);
            return;
        }
        http.Response.StatusCode = StatusCodes.Status400BadRequest;
        http.Response.ContentType = "text/plain; charset=utf-8";
        await http.Response.WriteAsync($"This workbench answers only on this machine. Open http://localhost:{http.Connection.LocalPort}/ instead.\n");
    });

    /// <summary>Whatever goes wrong is our fault, said so on the page and told in full on the terminal.</summary>
    public static void UsePlainFaults(this WebApplication app, Terminal terminal) => app.Use(async (http, next) =>
    {
        try
        {
            await next(http);
        }
        catch (OperationCanceledException) when (http.RequestAborted.IsCancellationRequested)
        {
            // Nobody waits for the answer any more.
        }
        catch (FactStoreException store) when (!http.Response.HasStarted)
        {
            // The disk is at fault, not what was asked; forms catch it themselves and keep what was typed.
            await terminal.Error.WriteLineAsync($"setout: {http.Request.Path}: {store.Fault.Words} {store.Fault.Remedy}");
            await Pages.Show<RefusedPage>(RefusedView.Of(store.Fault, "", http.Request.Path), StatusCodes.Status503ServiceUnavailable).ExecuteAsync(http);
        }
#pragma warning disable CA1031 // the last line of defence: whatever is left is our fault and says so
        catch (Exception ours) when (!http.Response.HasStarted)
#pragma warning restore CA1031
        {
            await terminal.Error.WriteLineAsync($"setout: this is our fault, not yours: {http.Request.Path}: {ours}");
            http.Response.StatusCode = StatusCodes.Status500InternalServerError;
            http.Response.ContentType = "text/plain; charset=utf-8";
            await http.Response.WriteAsync("Something went wrong, and it is our fault, not yours. Your files are as they were. The terminal that runs 'setout' says more.\n");
        }
    });

    private static bool IsOwn(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? address) && IPAddress.IsLoopback(address));
}

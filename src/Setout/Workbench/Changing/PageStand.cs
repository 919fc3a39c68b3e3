using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.Changing;

/// <summary>How things stand: the last change, the last fact, and how many layouts became ready. A page says the stand it shows, so that a window that hears of another knows that it shows something older.</summary>
internal static class PageStand
{
    private static readonly object s_key = new();

    /// <summary>Notes for each page how things stood before anything of it was read: what comes while it is made makes it older, never newer than it says.</summary>
    public static void UseStand(this WebApplication app)
    {
        IDocumentStore store = app.Services.GetRequiredService<IDocumentStore>();
        PlanDesk desk = app.Services.GetRequiredService<PlanDesk>();
        app.Use((http, next) =>
        {
            if (HttpMethods.IsGet(http.Request.Method) && !http.Request.Path.StartsWithSegments("/assets")) http.Items[s_key] = Now(store, desk);
            return next(http);
        });
    }

    /// <summary>The stand that the page of a request shows; null for what is no page.</summary>
    public static string? Of(HttpContext? http) => http?.Items[s_key] as string;

    /// <summary>How things stand now; null where the store cannot be read, which the page that is asked for tells.</summary>
    public static string? Now(IDocumentStore store, PlanDesk desk)
    {
        try
        {
            StoreStand stand = store.Stand();
            return $"{stand.Change}.{stand.Fact} {desk.Ready}";
        }
        catch (FactStoreException)
        {
            return null;
        }
    }
}

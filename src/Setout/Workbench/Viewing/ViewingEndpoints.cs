using Setout.Workbench.Changing;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Viewing;

/// <summary>How pages are shown to the person in front of them: asked on a page, kept by the browser.</summary>
internal static class ViewingEndpoints
{
    /// <summary>The page.</summary>
    public const string Address = "/viewing";

    public static void MapViewing(this IEndpointRouteBuilder routes)
    {
        routes.MapGet(Address, (string? back, HttpContext http) => Pages.Show<ViewingPage>(ViewingView.Of(Viewer.Of(http), Back(back))));
        routes.MapPost(Address, async (HttpContext http) =>
        {
            (IFormCollection? fields, IResult? refusal) = await ChangeEndpoints.FormAsync(http.Request);
            if (fields is null) return refusal!;
            Viewer.Of(fields).Keep(http.Response);
            return Results.LocalRedirect(Back(fields["back"].ToString()));
        });
    }

    // A page of this program and nowhere else.
    private static string Back(string? asked) => asked is ['/', ..] && !asked.StartsWith("//", StringComparison.Ordinal) && !asked.Contains('\\', StringComparison.Ordinal) && Links.IsPlain(asked) ? asked : Links.Shelf;
}

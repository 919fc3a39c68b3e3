using Setout.Shop.BenchSheets;

namespace Setout.Workbench.Shell;

/// <summary>The addresses of the workbench. They are a contract: people keep and send them.</summary>
public static class Links
{
    /// <summary>The shelf of pieces.</summary>
    public const string Shelf = "/";

    /// <summary>The form that begins a piece, which stands on the shelf too.</summary>
    public const string New = "/new";

    /// <summary>How the work is kept: backups, import, export.</summary>
    public const string Keeping = "/keeping";

    /// <summary>Several pieces broken down together.</summary>
    public const string Together = "/together";

    /// <summary>A stage of a piece; an empty word is the first, setting out.</summary>
    public static string Stage(string piece, string word) => $"/piece/{Uri.EscapeDataString(piece)}{(word.Length > 0 ? "/" + word : "")}";

    /// <summary>The working of a size or part.</summary>
    public static string Size(string piece, string key) => Size(piece, key, "");

    /// <summary>The working of a size or part beside a view of the piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="key">Of the size or part.</param>
    /// <param name="view">The word of the view, with where it is looked at from behind it where that is not the usual; empty for the front.</param>
    public static string Size(string piece, string key, string view) => $"{Stage(piece, "")}?{(view.Length > 0 ? $"view={view}&" : "")}size={Uri.EscapeDataString(key)}#working";

    /// <summary>The working of a size or part beside what an address of the piece shows: from the same side, turned the same way; an empty key is no size.</summary>
    public static string SizeSeenAs(string address, string piece, string key)
    {
        string query = new Uri(new Uri("http://here"), address).Query.TrimStart('?');
        string[] seen = [.. query.Split('&', StringSplitOptions.RemoveEmptyEntries).Where(w => s_seenBy.Contains(w.Split('=')[0]))];
        if (key.Length == 0) return Stage(piece, "") + (seen.Length > 0 ? "?" + string.Join('&', seen) : "");
        return $"{Stage(piece, "")}?{string.Concat(seen.Select(w => w + "&"))}size={Uri.EscapeDataString(key)}#working";
    }

    // The words of an address that say what the drawing shows.
    private static readonly string[] s_seenBy = ["view", "turn", "tip", "apart"];

    /// <summary>A view of the piece, with the size that is chosen; an empty word is the front, an empty key no size.</summary>
    public static string View(string piece, string view, string key)
    {
        string[] asked = [.. view.Length > 0 ? [$"view={view}"] : Array.Empty<string>(), .. key.Length > 0 ? [$"size={Uri.EscapeDataString(key)}"] : Array.Empty<string>()];
        return $"{Stage(piece, "")}{(asked.Length > 0 ? "?" : "")}{string.Join('&', asked)}";
    }

    /// <summary>The text of a piece.</summary>
    public static string Text(string piece) => Stage(piece, "text");

    /// <summary>Whether this can be said in the header of an answer: letters, figures and signs, all others escaped.</summary>
    public static bool IsPlain(string address) => address.All(c => c is > ' ' and < '\u007f');

    /// <summary>The bench sheets as a file.</summary>
    public static string BenchSheets(string piece) => Stage(piece, "bench-sheets.pdf");

    /// <summary>Those of one stage.</summary>
    public static string BenchSheets(string piece, SheetStage only) => $"{BenchSheets(piece)}?only={only.Word}";
}

namespace Setout.Workbench.Shell;

/// <summary>The addresses of the workbench. They are a contract: people keep and send them.</summary>
public static class Links
{
    /// <summary>The shelf of pieces.</summary>
    public const string Shelf = "/";

    /// <summary>A stage of a piece; an empty word is the first, setting out.</summary>
    public static string Stage(string piece, string word) => $"/piece/{Uri.EscapeDataString(piece)}{(word.Length > 0 ? "/" + word : "")}";

    /// <summary>The working of a size or part.</summary>
    public static string Size(string piece, string key) => $"{Stage(piece, "")}?size={Uri.EscapeDataString(key)}#working";

    /// <summary>The bench sheets as a file.</summary>
    public static string BenchSheets(string piece) => Stage(piece, "bench-sheets.pdf");
}

using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Workbench.ShopPages;

namespace Setout.Workbench.Shell;

/// <summary>Where a note stands in a text.</summary>
/// <param name="Words">The line and whose text; empty for nowhere.</param>
/// <param name="Href">That line on the page of the text; null where no page shows it.</param>
public sealed record NotePlace(string Words, string? Href)
{
    /// <summary>Nowhere.</summary>
    public static NotePlace None { get; } = new("", null);

    /// <summary>The address of a line of a text.</summary>
    /// <param name="text">The page of the text.</param>
    /// <param name="line">From 1.</param>
    public static string Line(string text, int line) => $"{text}?line={line}";

    /// <summary>Where a finding stands.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="file">The name of its text; empty for none.</param>
    /// <param name="isRead">True where the text could be read: then its lines are no way to find something, the piece is; the words say what the link leads to.</param>
    internal static NotePlace Of(Finding finding, string file, bool isRead = false)
    {
        if (file.Length == 0) return None;
        string name = Path.GetFileNameWithoutExtension(file);
        (string words, int line) = finding.Place.IsKnown ? (isRead ? "its place in " : $"line {finding.Place.Line} of ", finding.Place.Line) : ("", 0);
        // Whose page it stands on says which piece it is about; a log or the shop is another text.
        if (name.EndsWith(".log", StringComparison.Ordinal)) return new($"{words}the log of {name[..^".log".Length]}", null);
        if (name == DocumentName.Shop) return new($"{words}the text of the shop", Line(ShopLinks.Text, line));
        return line == 0 ? None : new($"{words}the text of {name}", Line(Links.Text(name), line));
    }
}

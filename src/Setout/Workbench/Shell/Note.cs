using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.Shell;

/// <summary>A finding as a pencil note.</summary>
/// <param name="Code">Its stable code.</param>
/// <param name="Mark">What kind of note, in a word: stop, look, note.</param>
/// <param name="IsRed">In red pencil: it stops the plan, or wants a look before cutting.</param>
/// <param name="Words">What is wrong or worth knowing.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Place">Where it stands, as <c>file:line:column</c>; empty where nowhere.</param>
/// <param name="Href">The size it is about, if it is about one.</param>
public sealed record Note(string Code, string Mark, bool IsRed, Phrase Words, Phrase Remedy, string Place, string? Href)
{
    internal static Note Of(Finding finding, string file, string? href = null) => new(
        finding.Code,
        finding.Severity switch { Severity.Stop => "Stop", Severity.Warn => "Look", _ => "Note" },
        finding.Severity != Severity.Note,
        Figures.Phrase(finding.Words), Figures.Phrase(finding.Remedy),
        finding.Place.IsKnown ? $"{Path.GetFileName(file)}:{finding.Place.Line}:{finding.Place.Column}" : Path.GetFileName(file), href);

    internal static ImmutableArray<Note> Of(IEnumerable<Finding> findings, SetPiece set, string piece, string file) =>
    [
        .. findings.Select(f => Of(f, file, HrefOf(f, set, piece))),
    ];

    private static string? HrefOf(Finding finding, SetPiece set, string piece)
    {
        if (finding.Key.Length == 0) return null;
        if (set.Worked.Values.ContainsKey(new(finding.Key)) || set.Parts.Any(p => p.Key == finding.Key)) return Links.Size(piece, finding.Key);
        QuantityKey thickness = QuantityKey.Of(finding.Key, "thickness");
        return set.Worked.Values.ContainsKey(thickness) ? Links.Size(piece, thickness.Text) : null;
    }
}

using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Scenes;
using Setout.Shop.Documents;
using Setout.Shop.Drawings;
using Setout.Workbench.Changing;
using Setout.Workbench.Noting;
using Setout.Workbench.Pieces;
using Setout.Shop.Outputs;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.Shell;

/// <summary>A finding as a pencil note.</summary>
/// <param name="Code">Its stable code.</param>
/// <param name="Mark">What kind of note, in a word: stop, look, note.</param>
/// <param name="IsRed">In red pencil: it stops the plan, or wants a look before cutting.</param>
/// <param name="Words">What is wrong or worth knowing.</param>
/// <param name="Remedy">What to do, with where it is done.</param>
/// <param name="Place">Where in a text it stands; nowhere for what is about no line.</param>
/// <param name="Href">The size it is about, if it is about one.</param>
public sealed record Note(string Code, string Mark, bool IsRed, Phrase Words, ImmutableArray<SaidStretch> Remedy, NotePlace Place, string? Href)
{
    /// <summary>Why it is let stand; empty where nobody lets it.</summary>
    public Phrase LetStand { get; init; } = Phrase.Empty;

    /// <summary>To let it stand; null where that cannot be, or it does already.</summary>
    public AllowForm? Allow { get; init; }

    /// <summary>The piece it is about, by its name in addresses; empty for none.</summary>
    public string Piece { get; init; } = "";

    /// <summary>The member whose page says what the remedy is about; empty for the whole piece.</summary>
    public string Owner { get; init; } = "";

    internal static Note Of(Finding finding, string file, string? href = null, SetPiece? set = null, bool hasSayings = false) => new(
        finding.Code,
        finding.LetStand.Length > 0 ? "Let stand" : finding.Severity switch { Severity.Stop => "Stop", Severity.Warn => "Look", _ => "Note" },
        finding.Severity != Severity.Note,
        Figures.Phrase(PageWords.Blanks(finding.Words)), PageWords.Of(finding.Remedy, set, hasSayings),
        NotePlace.Of(finding, file, set is not null), href)
    { LetStand = Figures.Phrase(finding.LetStand), Piece = PieceOf(file) };

    /// <summary>The findings of an open piece; those that may be let stand with a form to do so.</summary>
    internal static ImmutableArray<Note> Of(IEnumerable<Finding> findings, OpenPiece piece, string back) =>
    [
        .. findings.Select((f, i) => Of(f, piece.File.FileName, HrefOf(f, piece.Set, piece.Name), piece.Set, hasSayings: true) with
        {
            Owner = Shop.Edits.Saying.Sayings.Of(piece.File.Document.Text, f.Key.Split('.')[0]) is null ? "" : f.Key.Split('.')[0],
            Allow = f.Severity == Severity.Warn ? new AllowForm(FormHead.Of(piece, "allow", back), $"allow-{i}", f.Code, f.Key, "", f.Words.Split([';', ':', '.'])[0]) : null,
        }),
    ];

    internal static ImmutableArray<Note> Of(IEnumerable<Finding> findings, SetPiece set, string piece, string file) =>
    [
        .. findings.Select(f => Of(f, file, HrefOf(f, set, piece), set)),
    ];

    // The piece that a text belongs to; the shop file belongs to none.
    private static string PieceOf(string file)
    {
        string name = Path.GetFileNameWithoutExtension(file);
        return name.EndsWith(".log", StringComparison.Ordinal) ? name[..^".log".Length] : file == DocumentName.Shop + ".yaml" ? "" : name;
    }

    internal static string? HrefOf(Finding finding, SetPiece set, string piece)
    {
        if (finding.Key.Length == 0) return null;
        if (set.Worked.Values.ContainsKey(new(finding.Key)) || set.Parts.Any(p => p.Key == finding.Key)) return Links.Size(piece, finding.Key);
        QuantityKey thickness = QuantityKey.Of(finding.Key, "thickness");
        return set.Worked.Values.ContainsKey(thickness) ? Links.Size(piece, thickness.Text) : null;
    }
}

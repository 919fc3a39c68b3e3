using System.Security.Cryptography;
using System.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.SetOut;

/// <summary>What an edit would make of a piece.</summary>
/// <param name="Piece">The piece as it would be; null where the edit cannot be made.</param>
/// <param name="Name">What the edit is called.</param>
/// <param name="Fault">Why it cannot be made; null where it can.</param>
internal sealed record Trial(OpenPiece? Piece, string Name, Finding? Fault);

/// <summary>Makes edits on the kept text without keeping them. The last one of each piece is at hand: a page asks for one in parts.</summary>
/// <param name="pieces">The pieces as they stand.</param>
/// <param name="desk">The pieces set out.</param>
internal sealed class Trials(KeptPieces pieces, PlanDesk desk)
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, (string Asked, Trial Trial)> _last = [];

    /// <summary>Makes an edit that is offered for what is chosen; null when there is no such piece.</summary>
    /// <param name="name">The piece.</param>
    /// <param name="key">What was chosen; empty for the whole piece.</param>
    /// <param name="choice">Which of its edits.</param>
    /// <param name="values">What was typed, by the names of the fields.</param>
    public Trial? Make(string name, string key, string choice, IReadOnlyDictionary<string, string> values)
    {
        if (pieces.Read(name) is not { } file) return null;
        if (file.Source is not { } source) return new(null, "", new("edit.mistakes", Severity.Stop, "", "The text has mistakes; it is not edited on the drawing until they are mended.", "Mend it in the text."));
        string asked = string.Join('\u0001', [source.Hash, $"{source.Piece.Shown}", key, choice, .. values.OrderBy(v => v.Key, StringComparer.Ordinal).Select(v => $"{v.Key}\u0002{v.Value}")]);
        lock (_lock)
            if (_last.TryGetValue(name, out (string Asked, Trial Trial) last) && last.Asked == asked) return last.Trial;
        Trial trial = Make(name, file, source, key, choice, values);
        lock (_lock) _last[name] = (asked, trial);
        return trial;
    }

    private Trial Make(string name, PieceFile file, PieceSource source, string key, string choice, IReadOnlyDictionary<string, string> values)
    {
        Edited edited = PieceChanges.Propose(source, desk.SetOut(name, source), file.Document.Text, key, choice, values);
        if (edited.Text is not { } text) return new(null, edited.Name, edited.Findings[0]);
        TextRead<Piece> read = PieceText.Read(text);
        if (!read.IsSound || read.Value is not { } piece) return new(null, edited.Name, read.Findings[0]);
        // The other texts are as they stand; the hash tells this trial from all others and from what is kept.
        PieceSource tried = source with { Piece = piece with { Shown = source.Piece.Shown }, Hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(source.Hash + text)))[..8] };
        SetPiece set = tried.SetOut();
        return new(new(name, file with { Source = tried }, tried, set, null), edited.Name, null);
    }
}

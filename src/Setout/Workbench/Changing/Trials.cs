using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Edits.Saying;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Workbench.Pieces;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.Changing;

/// <summary>What an edit would make of a piece.</summary>
/// <param name="Piece">The piece as it would be; null where the edit cannot be made.</param>
/// <param name="Edited">What came of the edit: the text to be kept, or why there is none.</param>
internal sealed record Trial(OpenPiece? Piece, Edited Edited)
{
    /// <summary>Why it cannot be made; none where it can.</summary>
    public ImmutableArray<Finding> Faults => Piece is null ? Edited.Findings : [];

    internal static Trial Refused(string code, string words, string remedy) => new(null, new(null, "", [new(code, Severity.Stop, "", words, remedy)]));
}

/// <summary>Makes edits on the kept text without keeping them. The last one of each piece is at hand: a page asks for one in parts, and keeps it afterwards.</summary>
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
    public Trial? Make(string name, string key, string choice, IReadOnlyDictionary<string, string> values) => pieces.Read(name) is { } file ? Make(file, key, choice, values) : null;

    /// <summary>The same of a piece that was read already.</summary>
    public Trial Make(PieceFile file, string key, string choice, IReadOnlyDictionary<string, string> values)
    {
        if (file.Source is not { } source) return Trial.Refused("edit.mistakes", "The text has mistakes; it is not edited on the drawing until they are mended.", "Mend it in the text.");
        string asked = string.Join('\u0001', [source.Hash, $"{source.Piece.Shown}", key, choice, .. values.OrderBy(v => v.Key, StringComparer.Ordinal).Select(v => $"{v.Key}\u0002{v.Value}")]);
        lock (_lock)
            if (_last.TryGetValue(file.Name, out (string Asked, Trial Trial) last) && last.Asked == asked) return last.Trial;
        Trial trial = Make(file, source, key, choice, values);
        lock (_lock) _last[file.Name] = (asked, trial);
        return trial;
    }

    private Trial Make(PieceFile file, PieceSource source, string key, string choice, IReadOnlyDictionary<string, string> values)
    {
        SetPiece set = desk.SetOut(file.Name, source);
        string text = file.Document.Text;
        // Somebody may have gone on: what is offered is looked for in what he saw, and the store says so if it is no more.
        if (Offered(set, source, text, key, choice) is not { } offered) return Trial.Refused("edit.not-offered", "That is not there to be edited any more.", "Look at the drawing as it stands now.");
        PieceSource? tried = null;
        (Edited edited, SetPiece? would) = EditTrial.Of(offered, values, text, new(source.Log, source.Shop, []), set, after => (tried = With(source, after))?.SetOut());
        return edited.IsDone && would is not null ? new(new(file.Name, file with { Source = tried }, tried!, would, null), edited) : new(null, edited);
    }

    private static EditChoice? Offered(SetPiece set, PieceSource source, string text, string key, string choice) =>
        Choices.For(set, key, source.Shop).FirstOrDefault(c => c.Id == choice) ?? Sayings.Of(text, key)?.For(set.Piece.Unit, set.Piece.Shown).All.FirstOrDefault(s => s.Choice.Id == choice)?.Choice;

    // The other texts are as they stand; the hash tells this trial from all others and from what is kept.
    private static PieceSource? With(PieceSource source, string text) => PieceText.Read(text) is { IsSound: true, Value: { } piece }
        ? source with { Piece = piece with { Shown = source.Piece.Shown, Hand = source.Piece.Hand }, Hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(source.Hash + text)))[..8] } : null;
}

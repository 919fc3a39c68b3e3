using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Turning;
using Setout.Shop.Edits;
using Setout.Shop.Edits.Saying;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.SetOut;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Says;

/// <summary>One thing that can be said, as a form.</summary>
/// <param name="Form">What goes along, with the edit.</param>
/// <param name="About">What it means.</param>
/// <param name="IsSaid">Whether something stands there now.</param>
public sealed record SayLine(ChoiceForm Form, string About, bool IsSaid)
{
    /// <summary>Of one field: shown as it stands, not folded away.</summary>
    public bool IsPlain => Form.Choice.Fields.Length == 1;
}

/// <summary>What belongs together within the thing.</summary>
/// <param name="Title">Such as <c>back</c>; empty for the thing itself.</param>
/// <param name="Lines">Fields first.</param>
public sealed record SayGroup(string Title, ImmutableArray<SayLine> Lines);

/// <summary>Another thing, with a page like this one.</summary>
/// <param name="Words">What it is.</param>
/// <param name="Href">Its page.</param>
public sealed record SayLink(string Words, string Href);

/// <summary>All that the piece file can say of one thing.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Key">The thing; empty for the whole piece.</param>
/// <param name="Words">What it is.</param>
/// <param name="Back">The drawing with the thing chosen.</param>
/// <param name="Drawing">From the front, with the thing marked; empty where there is nothing to draw.</param>
/// <param name="Groups">What can be said.</param>
/// <param name="Around">What it stands in, from the outside.</param>
/// <param name="Within">What stands in it.</param>
/// <param name="History">What was done, and what can be taken back.</param>
public sealed record SaysView(PieceHead Head, string Key, string Words, string Back, string Drawing, ImmutableArray<SayGroup> Groups, ImmutableArray<SayLink> Around, ImmutableArray<SayLink> Within, HistoryView History)
{
    /// <summary>Why nothing is drawn; empty where something is.</summary>
    public ImmutableArray<Note> Stops { get; init; } = [];

    /// <summary>The page of a thing of a piece.</summary>
    internal static string Link(string piece, string key) => Links.Stage(piece, "says") + (key.Length > 0 ? "?of=" + Uri.EscapeDataString(key) : "");

    internal static SaysView? Of(OpenPiece piece, string key)
    {
        if (Sayings.Of(piece.File.Document.Text, key)?.For(piece.Set.Piece.Unit, piece.Set.Piece.Shown) is not { } said) return null;
        string here = Link(piece.Name, key);
        SayLink To(SaidOf of) => new(of.Words, Link(piece.Name, of.Key));
        SayLine Line(Said s) => new(new(FormHead.Of(piece, "edit", here), s.Choice), s.Words, s.IsSaid);
        DrawingView? drawing = DrawingView.Of(piece.Set, piece.Name, key, null, Standpoint.Usual);
        return new(PieceHead.Of(piece, ""), key, said.Words, key.Length > 0 ? Links.Size(piece.Name, key) : Links.Stage(piece.Name, ""), drawing?.Wide ?? "",
            [.. said.All.GroupBy(s => s.Under).Select(g => new SayGroup(g.Key, [.. g.Select(Line).OrderBy(l => l.Form.Choice.Fields.Length != 1)]))],
            [.. key.Length > 0 ? [new SayLink("the piece", Link(piece.Name, ""))] : Array.Empty<SayLink>(), .. said.Around.Select(To)], [.. said.Within.Select(To)], HistoryView.Of(piece, here))
        { Stops = piece.Set.IsStopped ? Note.Of(piece.Set.Findings.Where(f => f.Severity == Severity.Stop), piece, here) : [] };
    }
}

using System.Collections.Immutable;
using Setout.Shop.Documents;
using Setout.Workbench.Changing;
using Setout.Workbench.Keeping;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.States;

/// <summary>A state in the list.</summary>
/// <param name="Number">Its own.</param>
/// <param name="Step">What made it.</param>
/// <param name="At">When, in words.</param>
/// <param name="Names">Save points on it.</param>
/// <param name="Place">Where it stands, in words.</param>
/// <param name="IsNow">Whether the piece stands there.</param>
/// <param name="IsAside">Whether it is on another branch than the piece.</param>
/// <param name="Href">Where it is looked at.</param>
public sealed record StateLine(long Number, string Step, string At, ImmutableArray<string> Names, string Place, bool IsNow, bool IsAside, string Href);

/// <summary>The history of a piece.</summary>
/// <param name="Name">Of the piece.</param>
/// <param name="Head">The head of the piece; null where it cannot be read or was put away.</param>
/// <param name="IsPutAway">Whether it was put away.</param>
/// <param name="Lines">The newest first.</param>
/// <param name="Older">The page with older ones; null for none.</param>
/// <param name="Counted">How many there are, in words.</param>
/// <param name="Shown">The state that is looked at; null for none.</param>
/// <param name="Point">The form of a save point.</param>
/// <param name="Rename">The form of a rename.</param>
/// <param name="TakeBack">The form that takes it back.</param>
/// <param name="Piece">Its drawing.</param>
public sealed record StatesView(
    string Name, PieceHead? Head, bool IsPutAway, ImmutableArray<StateLine> Lines, string? Older, string Counted, ShownState? Shown, FormHead Point, FormHead Rename, FormHead TakeBack, string Piece)
{
    private const int MostLines = 100;

    internal static StatesView Of(Document document, IDocumentStore store, KeptPieces pieces, PieceDoor door, long? state, long? before, TimeProvider time)
    {
        string name = document.Name, page = Links.Stage(name, "history");
        ImmutableArray<PlacedState> all = StateTree.Of(store.History(document.Id));
        ImmutableArray<PlacedState> from = before is { } older ? [.. all.Where(s => s.Line.State.Number < older)] : all;
        FormHead Form(string word) => new(Links.Stage(name, word), ChangeForm.NewId(), document.Revision, page);
        OpenPiece? open = pieces.Read(name) is { Source: { } source } file ? door.Opened(file, source) : null;
        PlacedState? shown = state is { } number ? all.FirstOrDefault(s => s.Line.State.Number == number) : null;
        return new(name, open is null ? null : PieceHead.Of(open, "history"), document.Line.IsPutAway,
            [.. from.Take(MostLines).Select(s => Line(s, page, time))],
            from.Length > MostLines ? $"{page}?before={from[MostLines - 1].Line.State.Number}" : null,
            Counts(all), shown is null ? null : ShownState.Of(shown, document, store, pieces, open?.Set, Form("go-back"), time), Form("save-point"), Form("rename"), Form("take-back"), Links.Stage(name, ""));
    }

    private static StateLine Line(PlacedState placed, string page, TimeProvider time)
    {
        DocumentState state = placed.Line.State;
        return new(state.Number, state.Step, When.Of(state.At, time), placed.Line.SavePoints, Words(placed), placed.Place == StatePlace.Now,
            placed.Place is StatePlace.Undone or StatePlace.LeftAside, $"{page}?state={state.Number}");
    }

    /// <summary>Where a state stands, in words; empty for those that led to the present one.</summary>
    internal static string Words(PlacedState placed) => placed.Place switch
    {
        StatePlace.Now => "the piece stands here",
        StatePlace.Undone => "undone; redo makes it again",
        StatePlace.LeftAside => placed.Instead is { } other ? $"undone, then done instead: {other.Step}" : "left aside",
        _ => "",
    };

    private static string Counts(ImmutableArray<PlacedState> all)
    {
        int aside = all.Count(s => s.Place is StatePlace.Undone or StatePlace.LeftAside), named = all.Count(s => !s.Line.SavePoints.IsEmpty);
        return $"{all.Length} {(all.Length == 1 ? "state" : "states")}{(named > 0 ? $", {named} kept by name" : "")}{(aside > 0 ? $", {aside} undone" : "")}. Nothing is ever thrown away.";
    }
}

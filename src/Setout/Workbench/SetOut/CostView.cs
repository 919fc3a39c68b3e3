using System.Collections.Immutable;
using System.Globalization;
using Setout.Shop.Documents;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.SetOut;

/// <summary>What a trial changes at once.</summary>
/// <param name="Name">What the edit is called.</param>
/// <param name="Drawing">The view that is looked at; empty when there is nothing to draw.</param>
/// <param name="Chosen">The chosen size with its working.</param>
public sealed record TrialView(string Name, string Drawing, ChosenSize Chosen);

/// <summary>A state that the piece can be held against.</summary>
/// <param name="Words">The step that made it, and when.</param>
/// <param name="Href">The page, held against it.</param>
/// <param name="IsCurrent">Whether it is the one.</param>
public sealed record StateLink(string Words, string Href, bool IsCurrent);

/// <summary>What the piece has come to against an earlier state.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Line">The difference.</param>
/// <param name="States">The states it can be held against, the latest first.</param>
public sealed record CostView(PieceHead Head, string Line, ImmutableArray<StateLink> States)
{
    private const int MostStates = 40;

    internal static CostView Of(OpenPiece piece, CostLine cost, long? against, IDocumentStore store) => new(PieceHead.Of(piece, ""), cost.Line,
    [
        .. store.History(piece.File.Document.Id).Where(h => !h.IsHead).Reverse().Take(MostStates).Select(h => new StateLink(
            $"{string.Concat(h.SavePoints.Select(s => $"“{s}”: "))}{h.State.Step}, {When.Of(h.State.At, TimeProvider.System)}",
            $"{Links.Stage(piece.Name, "cost")}?against={h.State.Number}", h.State.Number == against)),
    ]);
}

using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.Assembling;

/// <summary>A part that comes in at a step.</summary>
/// <param name="Mark">The mark pencilled on it.</param>
/// <param name="Name">For people.</param>
/// <param name="Href">Its workings.</param>
public sealed record StepPart(string Mark, string Name, string Href);

/// <summary>A step of putting the piece together.</summary>
/// <param name="Text">What to do, with where it is entered.</param>
/// <param name="Parts">What comes in.</param>
/// <param name="Diagonals">What both diagonals read when it is square; empty where there is nothing to square.</param>
/// <param name="Lift">The largest to lift in it; empty where that is light or not known.</param>
/// <param name="Caution">What to mind; empty where nothing is.</param>
public sealed record StepView(ImmutableArray<SaidStretch> Text, ImmutableArray<StepPart> Parts, Phrase Diagonals, string Lift, string Caution);

/// <summary>The stage of putting together.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Piece">Its name in addresses.</param>
/// <param name="Steps">In order.</param>
/// <param name="Weight">What the piece weighs, and the largest to lift.</param>
/// <param name="Deference">Whose word comes first.</param>
public sealed record AssemblingView(PieceHead Head, string Piece, ImmutableArray<StepView> Steps, string Weight, string Deference)
{
    internal static AssemblingView Of(OpenPiece piece)
    {
        SetPiece set = piece.Set;
        StepPart Part(string key) => set.Parts.FirstOrDefault(p => p.Key == key.Split('#')[0]) is { } part
            ? new(part.Mark, part.Name, Links.Size(piece.Name, part.Key))
            : new(key, "", Links.Size(piece.Name, key));
        StepView Step(AssemblyStep step)
        {
            (string lift, string advice) = WeightWords.Lift(set, step);
            return new(PageWords.Of(step.Words, set), [.. step.Parts.Select(Part)],
                step.Diagonal is { } diagonal ? Phrase.Of(LengthFormat.For(set.Piece.Shown).Format(diagonal)) : Phrase.Empty, lift, WeightWords.Mind(set, step, advice));
        }
        return new(PieceHead.Of(piece, "assemble"), piece.Name, set.IsStopped ? [] : [.. set.Steps.Select(Step)], set.IsStopped ? "" : WeightWords.Whole(set), Cautions.Deference);
    }
}

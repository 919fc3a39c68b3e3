using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.Machining;

/// <summary>A part in a group of parts that are cut alike.</summary>
/// <param name="Mark">The mark pencilled on it.</param>
/// <param name="Name">For people.</param>
/// <param name="Href">Its workings.</param>
public sealed record CutPart(string Mark, string Name, string Href);

/// <summary>A figure of a cut.</summary>
/// <param name="Name">Depth, width, distance.</param>
/// <param name="Figure">The figure.</param>
/// <param name="Href">Its working.</param>
public sealed record CutFigure(string Name, Phrase Figure, string Href);

/// <summary>A cut.</summary>
/// <param name="Words">What and where.</param>
/// <param name="Figures">Its figures.</param>
/// <param name="Caution">What to mind at it; empty for nothing of its own.</param>
public sealed record CutView(Phrase Words, ImmutableArray<CutFigure> Figures, string Caution);

/// <summary>Parts that are cut alike.</summary>
/// <param name="Name">What they are.</param>
/// <param name="Parts">Each of them.</param>
/// <param name="Cuts">What is cut into each.</param>
public sealed record CutGroupView(string Name, ImmutableArray<CutPart> Parts, ImmutableArray<CutView> Cuts);

/// <summary>The stage of grooves, dadoes, joints and holes.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Notes">What stops the plan.</param>
/// <param name="Groups">What the work wants first in front.</param>
/// <param name="Wide">Faces with holes, for a desk.</param>
/// <param name="Narrow">The same for a phone.</param>
/// <param name="Deference">Whose word comes first.</param>
public sealed record MachiningView(PieceHead Head, ImmutableArray<Note> Notes, ImmutableArray<CutGroupView> Groups, ImmutableArray<string> Wide, ImmutableArray<string> Narrow, string Deference)
{
    private static readonly PaperBox s_wide = new(180, 78) { FigureSize = 3.4 }, s_narrow = new(92, 78) { FigureSize = 3.4 };

    internal static MachiningView Of(OpenPiece piece, Plan plan)
    {
        SetPiece set = piece.Set;
        var head = PieceHead.Of(piece, "machine");
        if (plan.IsStopped) return new(head, StoppedNotes.Of(piece, plan), [], [], [], Cautions.Deference);
        LengthFormat bare = LengthFormat.For(set.Piece.Shown).Bare;
        CutView Cut(GroupedCut cut) => new(Figures.Phrase(cut.Words), [.. cut.Figures.Select(f => new CutFigure(f.Name, Figures.ByTheRule(bare.Format(set.Worked[f.Key])), Links.Size(piece.Name, f.Key.Text)))], cut.Caution);
        ImmutableArray<string> Faces(PaperBox paper) => [.. BoredParts.Of(set, paper).Select(f => SvgWriter.Write(f.Scene, SvgOptions.Inline))];
        return new(head, [],
            [.. CutGroup.Of(plan).Select(g => new CutGroupView(g.Name, [.. g.Parts.Select(p => new CutPart(p.Mark, p.Name, Links.Size(piece.Name, p.Key)))], [.. g.Cuts.Select(Cut)]))],
            Faces(s_wide), Faces(s_narrow), Cautions.Deference);
    }
}

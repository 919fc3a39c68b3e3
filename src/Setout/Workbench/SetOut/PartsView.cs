using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.SetOut;

/// <summary>A line of the bench list.</summary>
/// <param name="Key">The part.</param>
/// <param name="Mark">The short mark pencilled on it.</param>
/// <param name="Name">For people.</param>
/// <param name="Href">Both its workings.</param>
/// <param name="Count">How many, such as <c>2 off</c>.</param>
/// <param name="Length">The figure to cut along the grain.</param>
/// <param name="LengthHref">Its working.</param>
/// <param name="Width">The figure to cut across it.</param>
/// <param name="WidthHref">Its working.</param>
/// <param name="Weight">What one of it weighs.</param>
public sealed record PartLine(string Key, string Mark, Phrase Name, string Href, string Count, Phrase Length, string LengthHref, Phrase Width, string WidthHref, string Weight)
{
    /// <summary>How far it has come, such as <c>2 cut</c>; empty for what is not begun.</summary>
    public string Stand { get; init; } = "";

    /// <summary>What it was read as, such as <c>length 21 1/2</c>; empty while the figures to cut stand alone.</summary>
    public ImmutableArray<Phrase> Read { get; init; } = [];
}

/// <summary>The parts of one material.</summary>
/// <param name="Material">Its name in the piece.</param>
/// <param name="Thickness">Such as <c>23/32 in thick</c>.</param>
/// <param name="ThicknessHref">Its working.</param>
/// <param name="Weight">What they weigh together.</param>
/// <param name="Lines">In the order set out.</param>
public sealed record PartGroup(string Material, Phrase Thickness, string ThicknessHref, string Weight, ImmutableArray<PartLine> Lines)
{
    internal static ImmutableArray<PartGroup> Of(SetPiece set, string piece)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown), bare = format.Bare;
        PartLine Line(Part part) => new(part.Key, part.Mark, Figures.Phrase(part.Name), Links.Size(piece, part.Key), $"{part.Count} off",
            Phrase.Of(bare.Format(set.Worked[part.Length.ToCut])), Links.Size(piece, part.Length.Exact.Text),
            Phrase.Of(bare.Format(set.Worked[part.Width.ToCut])), Links.Size(piece, part.Width.Exact.Text), WeightWords.Short(Weights.OfOne(set, part), set.Piece.Shown))
        { Stand = StandOf(set, part), Read = [.. ReadAsCut.Of(set, part).Select(r => Figures.Phrase($"{r.Word} ").Add(bare.Format(r.Read)))] };
        return
        [
            .. set.Parts.GroupBy(p => p.Material).Select(g => new PartGroup(g.Key, Phrase.Of(format.Format(set.Worked[g.First().Thickness])).Add(" thick"),
                Links.Size(piece, g.First().Thickness.Text), WeightWords.Of(Weights.Of(set, g), set.Piece.Shown), [.. g.Select(Line)])),
        ];
    }

    private static string StandOf(SetPiece set, Part part)
    {
        int Come(PartState state) => Enumerable.Range(1, part.Count).Count(i => set.Facts.StateOf(part.Key, i) >= state);
        (int Come, string Word)[] stands = [(Come(PartState.Fitted), "fitted"), (Come(PartState.Assembled), "assembled"), (Come(PartState.Cut), "cut")];
        return stands.FirstOrDefault(s => s.Come > 0) is ( > 0 and int come, { } word) ? come == part.Count ? word : $"{come} {word}" : "";
    }
}

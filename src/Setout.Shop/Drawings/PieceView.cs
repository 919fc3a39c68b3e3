using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;

namespace Setout.Shop.Drawings;

/// <summary>A piece set out as it is seen from the front, from above and from the right, to scale, with its dimensions.</summary>
public static class PieceView
{
    /// <summary>All that can be drawn, in the order they are shown.</summary>
    public static ImmutableArray<Views> All { get; } = [Views.Front, Views.Above, Views.Right];

    /// <summary>The word for a view in addresses, file names and tabs.</summary>
    public static string Word(Views from) => from switch
    {
        Views.Above => "plan",
        Views.Right => "side",
        _ => "front",
    };

    /// <summary>True when there is anything to draw: loose parts alone have no views.</summary>
    public static bool Has(SetPiece set) => set.Parts.Any(p => p.Placements.Length > 0);

    /// <summary>Whether the floor is drawn under it: not where a case hangs on a wall.</summary>
    internal static bool StandsOnTheFloor(SetPiece set) => !set.Piece.Members.OfType<Case>().Any(c => c.IsHung);

    /// <summary>Draws one view.</summary>
    /// <param name="set">The piece; <see cref="Has"/> must be true.</param>
    /// <param name="from">One of <see cref="All"/>.</param>
    /// <param name="paper">The room.</param>
    public static ElevationDrawing Draw(SetPiece set, Views from, PaperBox paper) => Elevation.Draw(Input(set, from, null), paper);

    /// <summary>Draws one view with few dimensions, for narrow paper: the whole, the structures, the bays, and those of what is chosen.</summary>
    /// <param name="set">The piece; <see cref="Has"/> must be true.</param>
    /// <param name="from">One of <see cref="All"/>.</param>
    /// <param name="paper">The room.</param>
    /// <param name="chosen">The key of a size, part, opening or member; empty for none.</param>
    public static ElevationDrawing DrawFew(SetPiece set, Views from, PaperBox paper, string chosen)
    {
        ElevationDrawing Drawn(FewSizes few) => Elevation.Draw(Input(set, from, few), paper);
        ElevationDrawing drawing = Drawn(new(chosen));
        // What is too wide all the same, and would be shrunk, says less.
        if (drawing.Scene.Width > paper.Width) drawing = Drawn(new(chosen) { HasBays = false });
        return drawing.Scene.Width > paper.Width ? Drawn(new("") { HasBays = false }) : drawing;
    }

    private static ElevationInput Input(SetPiece set, Views from, FewSizes? few)
    {
        var where = new Whereabouts(set);
        string sizes = string.Join(", ", set.Piece.Members.Where(m => m is Frame or Case).Select(m => Over(set, m)));
        (string caption, string kind, string more) = from switch
        {
            Views.Above => ("from above, the front below", "Plan", "The front is below; broken lines are what stands under the top."),
            Views.Right => ("from the right, the front at the left", "Side elevation from the right", "The front is at the left; broken lines are what stands inside."),
            _ => ("from the front", "Front elevation", Content(set)),
        };
        ImmutableArray<ElevationChain> chains = ViewChains.Of(set, from, where, few);
        if (ChainSums.AreRoundedApart(chains, LengthFormat.For(set.Piece.Shown))) caption += ", each figure rounded by itself";
        return new($"{set.Piece.Name}, {Word(from)}", $"{kind} of {set.Piece.Name}: {sizes}. {more}", ViewParts.Of(set, from, where))
        {
            Caption = caption,
            Openings =
            [
                .. set.Openings.Where(o => from == Views.Front && o.Content == "open").Select(o => new ElevationOpening(o.Key, $"{o.Name}, open", Sight.Area(from, o.Space), Phrase.Of("open"))),
                .. set.CutOuts.Where(c => from == Views.Above && set.Piece.Members.OfType<Top>().Any(t => t.Wells.Any(w => w.Key == c.Key))).DistinctBy(c => c.Key)
                    .Select(c => new ElevationOpening(c.Key, c.Name, Sight.Area(from, c.Space), Phrase.Empty)),
            ],
            Chains = chains,
            Inner = from == Views.Front ? ShelfSpaces.Of(set, where, few) : [],
            HasFloor = from != Views.Above && StandsOnTheFloor(set),
        };
    }

    private static string Over(SetPiece set, Member member)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        string Say(string what) => set.Worked.Values.TryGetValue(QuantityKey.Of(member.Key, what), out Worked? w) ? format.Text(w.Value) : "?";
        return $"{Say("width")} wide, {Say("height")} high, {Say("depth")} deep";
    }

    private static string Content(SetPiece set) => string.Join(" ", set.Openings.Where(o => o.Content != "divided").Select(o => $"{o.Name}: {o.Content}."));
}

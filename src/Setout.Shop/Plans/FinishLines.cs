using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Finishes;
using Setout.Shop.Edits;

namespace Setout.Shop.Plans;

/// <summary>A part that is finished, in words.</summary>
/// <param name="Part">Which.</param>
/// <param name="Sum">How the area of one came to be: <c>24 x 12 x 3/4 in: 2 faces, 1 long edge, 2 ends</c>.</param>
/// <param name="Area">Of all members.</param>
/// <param name="Remark">How many are finished, the step it comes in, what was left out; empty for nothing.</param>
public sealed record FinishLine(Part Part, string Sum, string Area, string Remark);

/// <summary>Parts that are finished at one time.</summary>
/// <param name="Title">When.</param>
/// <param name="Why">Why then, with its basis.</param>
/// <param name="Lines">In the order of the piece.</param>
public sealed record FinishGroup(string Title, string Why, ImmutableArray<FinishLine> Lines);

/// <summary>A finish, in words.</summary>
/// <param name="Name">The piece's own name for it.</param>
/// <param name="Title">What it is and how often it goes on.</param>
/// <param name="Sum">From the area to the cans, a sentence.</param>
/// <param name="HasCoverage">Whether somebody has said how far it goes.</param>
/// <param name="Materials">What it goes on, by material: words and area.</param>
/// <param name="Groups">Before, then after.</param>
public sealed record FinishSheet(string Name, string Title, string Sum, bool HasCoverage, ImmutableArray<(string Words, string Area)> Materials, ImmutableArray<FinishGroup> Groups);

/// <summary>What is finished and with how much: one wording for pages, paper and data.</summary>
public static class FinishLines
{
    /// <summary>What the areas are and are not.</summary>
    public const string Limits = "A face is length x width, a long edge length x thickness, an end width x thickness, as the part was cut or read or else as it is to be cut. Faces that meet in a joint are counted with the rest, so that it comes to a little too much; grooves and holes are not taken off. "
        + "Left out are faces under laminate, glued layers, and what lies behind lips, strips and bands. Laminate, melamine and edge bands need none; a band of real wood does, and is not in it.";

    /// <summary>Of wood in a groove and drawers; see <see cref="FinishTime"/>.</summary>
    private const string WhyBefore = "What stands in a groove is finished to its edges, or a raw line shows where it shrinks; drawers inside, for they are hard to reach later. Keep finish off every place that is still to be glued: glue does not hold on it. Mask those places; the areas have them in. (common practice, no source)";
    private const string WhyAfter = "When it stands; fronts, doors and whatever is planed to its opening once it has been fitted, or the plane takes the finish off again. (common practice, no source)";

    /// <summary>The cautions of finishing.</summary>
    public static ImmutableArray<Caution> Cautions { get; } = [Core.Craft.Cautions.Of("rags"), Core.Craft.Cautions.Of("solvent"), Core.Craft.Cautions.Of("sanding")];

    /// <summary>The finishes of a piece, in the order written.</summary>
    public static ImmutableArray<FinishSheet> Of(SetPiece set) => [.. FinishWork.Of(set).Select(w => Sheet(set, w))];

    /// <summary>What could be finished and is not, by material.</summary>
    public static ImmutableArray<(string Words, string Area)> Bare(SetPiece set) => ByMaterial(set, FinishWork.Bare(set));

    /// <summary>What takes none, each with why; empty for nothing.</summary>
    public static ImmutableArray<string> None(SetPiece set) =>
        [.. set.Parts.Select(p => Surface.Of(set, p)).Where(s => s.Flats.IsEmpty).GroupBy(s => (s.Part.Material, s.Without)).Select(g => $"{g.Key.Material}: {g.Key.Without}")];

    private static FinishSheet Sheet(SetPiece set, FinishWork work)
    {
        Finish finish = work.Finish;
        string coats = finish.Coats == 1 ? "1 coat" : $"{finish.Coats} coats";
        FinishGroup Group(FinishTime time) => new(time == FinishTime.Before ? "Before it goes together" : "Once it stands", time == FinishTime.Before ? WhyBefore : WhyAfter,
            [.. work.Parts.Where(p => p.Time == time).Select(p => Line(set, p))]);
        return new(finish.Name, $"{Fillings.Capital(finish.Product.Text)}, {coats}", SumOf(set, work), finish.Covers is not null, ByMaterial(set, work.Parts.Select(p => p.Surface)),
            [.. new[] { Group(FinishTime.Before), Group(FinishTime.After) }.Where(g => g.Lines.Length > 0)]);
    }

    private static string SumOf(SetPiece set, FinishWork work)
    {
        (Finish finish, LengthUnit unit) = (work.Finish, set.Piece.Shown);
        if (work.Parts.IsEmpty) return "There is nothing for it to go on.";
        string area = AmountText.Of(work.Area, unit), sum = finish.Coats == 1 ? $"{area} in 1 coat" : $"{area} x {finish.Coats} coats = {AmountText.Of(work.Coated, unit)}";
        if (work.Needed is not { } needed || finish.Covers is not { } covers)
            return $"{sum}. How far a can goes was not found in a source that holds for every finish: read it on the can, the smaller figure where two stand there, and say it here.";
        string takes = $"{sum}; {AmountText.Of(covers)} and coat by its label: {AmountText.Needed(needed)}";
        return finish.Can is { } can && work.Cans is { } cans ? $"{takes}, which is {cans} {(cans == 1 ? "can" : "cans")} of {AmountText.Of(can)}." : work.IsBeyondCans ? $"{takes}. In cans that is more than anybody buys: look at its label again." : $"{takes}. Its label says how much is in a can.";
    }

    private static FinishLine Line(SetPiece set, FinishedPart finished)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        Surface surface = finished.Surface;
        Part part = finished.Part;
        string sizes = $"{format.Bare.Text(set.Worked[part.Length.AsCut])} x {format.Bare.Text(set.Worked[part.Width.AsCut])} x {format.Text(set.Worked[part.Thickness])}";
        string sides = surface.Flats.Length == 3 && surface.Flats.All(f => f.Count == 2) ? "all six sides" : string.Join(", ", surface.Flats.Select(f => $"{f.Count} {(f.Count == 1 ? f.Name : f.Name + "s")}"));
        // What is coated before has joints that are still to be glued; what is coated after has them shut.
        string but = finished.Time == FinishTime.Before && set.Joints.Any(j => (j.Part == part.Key || j.Against == part.Key) && IsGlued(j)) ? " but for where it is glued" : "";
        string sum = $"{(part.Count == 1 ? "" : "each ")}{sizes}: {sides}{but}", area = AmountText.Of(surface.OfAll, set.Piece.Shown);
        string step = finished is { Time: FinishTime.Before, Step: { } number } ? $"before step {number}" : finished.From == PartState.Fitted ? "once it is fitted" : "";
        string without = surface.Without.Length > 0 ? $"without {surface.Without}" : "";
        int done = set.Facts.FinishedOf(part);
        string state = done == 0 ? "" : done == part.Count ? "finished" : $"{done} finished";
        return new(surface.Part, sum, area, string.Join("; ", new[] { state, step, without }.Where(w => w.Length > 0)));
    }

    private static bool IsGlued(Joint joint) => joint.Held.StartsWith("glue", StringComparison.Ordinal);

    private static ImmutableArray<(string, string)> ByMaterial(SetPiece set, IEnumerable<Surface> surfaces) =>
    [
        .. surfaces.GroupBy(s => s.Part.Material).Select(g => ($"{BuyingList.Words(set.Piece.Materials[g.Key])} ({g.Key})", AmountText.Of(g.Aggregate(ExactArea.Zero, (sum, s) => sum + s.OfAll), set.Piece.Shown))),
    ];
}

using System.Collections.Immutable;
using System.Numerics;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Finishes;

/// <summary>When a part is finished.</summary>
public enum FinishTime
{
    /// <summary>Before it goes together: not all of it can be reached any more once it is.</summary>
    Before,

    /// <summary>When it stands, and what is planed to fit has been.</summary>
    After,
}

/// <summary>A part that is finished.</summary>
/// <param name="Surface">What of it.</param>
/// <param name="Time">When.</param>
/// <param name="Why">Why before; empty for after.</param>
/// <param name="Step">The number of the step of the assembly in which it comes in, from 1; null for one that comes in none.</param>
/// <param name="From">How far it has come when it can be finished.</param>
public sealed record FinishedPart(Surface Surface, FinishTime Time, string Why, int? Step, PartState From)
{
    /// <summary>The part.</summary>
    public Part Part => Surface.Part;
}

/// <summary>What one finish goes on, and how much of it that takes.</summary>
/// <param name="Finish">Which.</param>
/// <param name="Parts">In the order of the piece.</param>
public sealed record FinishWork(Finish Finish, ImmutableArray<FinishedPart> Parts)
{
    /// <summary>What is coated once.</summary>
    public ExactArea Area => Parts.Aggregate(ExactArea.Zero, (sum, p) => sum + p.Surface.OfAll);

    /// <summary>What is coated in all: each coat anew.</summary>
    public ExactArea Coated => Area * Finish.Coats;

    /// <summary>How much it takes; null where nobody has said how far it goes.</summary>
    public Volume? Needed => Finish.Covers?.For(Coated);

    /// <summary>More cans than this are a slip of the pen in one of the figures: common practice, no source.</summary>
    public const int MostCans = 10_000;

    /// <summary>How many cans; null where their size or the coverage is not said, or they would be more than anybody buys.</summary>
    public int? Cans => InCans is { } cans && cans <= MostCans ? (int)cans : null;

    /// <summary>Whether by what is said there would be more cans than anybody buys.</summary>
    public bool IsBeyondCans => InCans > MostCans;

    private BigInteger? InCans => Needed is { } needed && Finish.Can is { } can ? (needed.Millilitres / can.Millilitres).Round(Rounding.Up) : null;

    /// <summary>The finishes of a piece, in the order written; empty for a piece that is stopped.</summary>
    public static ImmutableArray<FinishWork> Of(SetPiece set)
    {
        if (set.IsStopped || set.Piece.Finishes.IsEmpty) return [];
        HashSet<string> named = [.. set.Piece.Finishes.SelectMany(f => f.On.SelectMany(w => PartsOf(set, w.Text))).Select(p => p.Key)];
        return [.. set.Piece.Finishes.Select(f =>
        {
            HashSet<string> on = f.On.IsEmpty ? [] : [.. f.On.SelectMany(w => PartsOf(set, w.Text)).Select(p => p.Key)];
            return new FinishWork(f, [.. set.Parts.Where(p => f.On.IsEmpty ? !named.Contains(p.Key) : on.Contains(p.Key)).Select(p => Timed(set, Surface.Of(set, p))).Where(p => !p.Surface.Flats.IsEmpty)]);
        })];
    }

    /// <summary>What no finish goes on, though it could; all that could where there is none.</summary>
    public static ImmutableArray<Surface> Bare(SetPiece set)
    {
        if (set.IsStopped) return [];
        HashSet<string> done = [.. Of(set).SelectMany(w => w.Parts).Select(p => p.Part.Key)];
        return [.. set.Parts.Where(p => !done.Contains(p.Key)).Select(p => Surface.Of(set, p)).Where(s => !s.Flats.IsEmpty)];
    }

    /// <summary>Whether a word of <c>on</c> means anything of a piece.</summary>
    public static bool IsKnown(SetPiece set, string word) => PartsOf(set, word).Any();

    /// <summary>What <c>on</c> can name, but for single parts: the materials of its parts, then what they belong to.</summary>
    public static ImmutableArray<string> Nameable(SetPiece set) =>
        [.. set.Parts.Select(p => p.Material).Concat(set.Parts.Select(p => new QuantityKey(p.Key).Owner)).Where(w => w.Length > 0).Distinct()];

    /// <summary>The parts that a word of <c>on</c> means: one by its key, those of a structure, a drawer, a door or a top, or those of a material. Empty where it means none.</summary>
    internal static IEnumerable<Part> PartsOf(SetPiece set, string word) => set.Parts.Any(p => p.Key == word)
        ? set.Parts.Where(p => p.Key == word)
        : set.Parts.Where(p => new QuantityKey(p.Key).Owner == word || p.Material == word);

    private static FinishedPart Timed(SetPiece set, Surface surface)
    {
        Part part = surface.Part;
        int? step = set.Steps.Index().Where(s => s.Item.Parts.Any(k => k.Split('#')[0] == part.Key)).Select(s => (int?)s.Index + 1).FirstOrDefault();
        string why = Before(set, part);
        if (why.Length > 0) return new(surface, FinishTime.Before, why, step, PartState.Cut);
        // What no step brings in, such as a loose part, is ready when it is cut; what is planed to its opening has to fit first, or the plane takes the finish off again.
        PartState from = step is null ? PartState.Cut : IsPlanedToFit(part) ? PartState.Fitted : PartState.Assembled;
        return new(surface, FinishTime.After, "", step, from);
    }

    // Both rules are common practice, no source.
    private static string Before(SetPiece set, Part part) => part.Role switch
    {
        PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom => "the inside of a drawer is hard to reach once it is together",
        _ when set.Joints.Any(j => j.Part == part.Key && j.Kind is JointKind.Groove or JointKind.SlidIn) => "it stands in a groove: a raw line would show where it shrinks, and its edges are out of reach",
        _ => "",
    };

    private static bool IsPlanedToFit(Part part) => !part.HeldUntil.IsDefaultOrEmpty || part.Role is PartRole.FalseFront or PartRole.Door or PartRole.DoorStile or PartRole.DoorRail;
}

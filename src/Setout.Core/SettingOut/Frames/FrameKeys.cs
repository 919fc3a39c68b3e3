using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Frames;

/// <summary>The quantities of a frame that its bays and panels go by.</summary>
/// <param name="Post">Length of the posts.</param>
/// <param name="PostThin">The smaller size of a post: front to back.</param>
/// <param name="PostWide">The larger size of a post: seen from the front.</param>
/// <param name="RailThin">The smaller size of rails and ties.</param>
/// <param name="RailWide">The larger size of rails and ties: their height where they stand on edge.</param>
/// <param name="TopRail">Height of the top rails as they lie.</param>
/// <param name="Toe">Floor to bottom rail.</param>
/// <param name="Depth">Outside depth.</param>
/// <param name="Above">How far the posts stand over the top rails; null for flush.</param>
/// <param name="Tenon">Length of the tenons; null where there are none.</param>
/// <param name="Tie">Length of the ties.</param>
internal sealed record FrameKeys(
    PartSize Post, QuantityKey PostThin, QuantityKey PostWide, QuantityKey RailThin, QuantityKey RailWide, QuantityKey TopRail, QuantityKey Toe, QuantityKey Depth,
    QuantityKey? Above, QuantityKey? Tenon, PartSize Tie)
{
    /// <summary>What a panel in the back takes of the depth; null for none.</summary>
    public QuantityKey? BackTakes { get; init; }

    /// <summary>False where there are top rails and ties only.</summary>
    public bool HasBottom { get; init; } = true;

    /// <summary>How the rails pass the posts.</summary>
    public RailRun Run { get; init; }

    /// <summary>The part of the rails of a bay: one for all bays where they run through.</summary>
    public string RailOf(string frame, string bay) => Run == RailRun.Between ? $"{bay}.rail" : $"{frame}.rail";

    /// <summary>The bottom rail as a term; nothing where there is none.</summary>
    public ImmutableArray<Term> Bottom(int times, string words = "bottom rail, on edge") => HasBottom ? [Term.From(words, times, RailWide)] : [];

    /// <summary>What rails on the faces of the posts take of the depth, front and back, as a term.</summary>
    public static ImmutableArray<Term> OnFaces(RailRun run, int times, QuantityKey railThin) =>
        run is RailRun.Outside or RailRun.Inside ? [Term.From("rails on the faces of the posts", times, railThin)] : [];

    /// <summary>Between front and rear post as built, as terms.</summary>
    public ImmutableArray<Term> BetweenPosts => [Term.From("tie, between its shoulders as cut", 1, Tie.Made), .. Run == RailRun.Inside ? OnFaces(Run, 2, RailThin) : []];

    /// <summary>From the front to the back as built, as terms.</summary>
    public ImmutableArray<Term> BuiltDepth => [Term.From("tie, between its shoulders as cut", 1, Tie.Made), Term.From("posts, front and back", 2, PostThin), .. OnFaces(Run, 2, RailThin)];

    /// <summary>The depth of what stands in a bay.</summary>
    public Sum Inside => new([Term.From("frame depth", 1, Depth), .. BackTakes is { } takes ? [Term.From("back panel, and the wood behind it", -1, takes)] : ImmutableArray<Term>.Empty]);

    /// <summary>What stands over the top rails, as a term.</summary>
    public ImmutableArray<Term> Over(int times) => Above is { } above ? [Term.From("posts over the top rail", times, above)] : [];

    /// <summary>What the clear width of a bay is worked from, in words.</summary>
    public string Between => Run != RailRun.Between ? "between posts, as set out" : Tenon is null ? "rail, as cut" : "rail, as cut, between shoulders";
}

using System.Collections.Immutable;

namespace Setout.Drawing.Documents;

/// <summary>The paper a document is made for.</summary>
public enum Paper
{
    /// <summary>8 1/2 by 11 in (215.9 by 279.4 mm).</summary>
    Letter,

    /// <summary>210 by 297 mm.</summary>
    A4,
}

/// <summary>Where a section begins.</summary>
public enum SectionStart
{
    /// <summary>On a page of its own, so that it can be handed out alone.</summary>
    NewPage,

    /// <summary>Below the section before it.</summary>
    FollowsOn,
}

/// <summary>What stands at the foot of every page, so that a sheet in the hand can be told from a newer one.</summary>
/// <param name="Piece">Name of the piece.</param>
/// <param name="MadeText">When it was made, in words for the reader.</param>
/// <param name="Made">The same moment for the file's own properties; the caller's clock, never ours.</param>
/// <param name="RuleSet">Version of the rule set.</param>
/// <param name="Hash">Short hash of what the document was made from.</param>
public sealed record Stamp(string Piece, string MadeText, DateTimeOffset Made, string RuleSet, string Hash);

/// <summary>One section: it gets a bookmark, and its title stands at the foot of its pages.</summary>
/// <param name="Title">Shown above the first block.</param>
/// <param name="Blocks">In reading order.</param>
/// <param name="Start">Where it begins.</param>
public sealed record Section(string Title, ImmutableArray<Block> Blocks, SectionStart Start = SectionStart.NewPage);

/// <summary>Bench sheets as a value: words, tables, sums and drawings, without a place on any page yet.</summary>
/// <param name="Title">Title of the document, shown above the first section and in the file's properties.</param>
/// <param name="Language">Language tag such as <c>en</c> or <c>en-US</c>.</param>
/// <param name="Stamp">What stands at the foot of every page.</param>
/// <param name="Paper">The paper.</param>
/// <param name="Sections">In reading order.</param>
public sealed record BenchDocument(string Title, string Language, Stamp Stamp, Paper Paper, ImmutableArray<Section> Sections);

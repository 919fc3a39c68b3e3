namespace Setout.Core.Workings;

/// <summary>A place in a text, counted from one; 0 where there is none.</summary>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
public readonly record struct Place(int Line, int Column)
{
    /// <summary>No place.</summary>
    public static Place None => default;

    /// <summary>True when there is a place.</summary>
    public bool IsKnown => Line > 0;
}

/// <summary>Where a term comes from, which is also how sure it is.</summary>
public enum OriginKind
{
    /// <summary>Written in the piece file.</summary>
    Given,

    /// <summary>A rule of the trade, with its source or the words "common practice, no source".</summary>
    Rule,

    /// <summary>A table's or label's value, standing in until someone reads the real thing.</summary>
    Default,

    /// <summary>Picked from a series, with its reason.</summary>
    Choice,

    /// <summary>Measured at the bench.</summary>
    Reading,

    /// <summary>Worked out from other quantities.</summary>
    Worked,
}

/// <summary>The origin of a value, in words.</summary>
/// <param name="Kind">What sort of origin.</param>
/// <param name="Words">Short words beside the term, such as <c>side-mounted, 1/2 in class</c>.</param>
/// <param name="Source">The source of the fact, or null where there is none to name (given, worked).</param>
/// <param name="Place">Where it stands in the piece file, if it does.</param>
public sealed record Origin(OriginKind Kind, string Words, string? Source = null, Place Place = default)
{
    /// <summary>Given in the piece file.</summary>
    public static Origin Given(Place place) => new(OriginKind.Given, place.IsKnown ? $"given, line {place.Line}" : "given", null, place);

    /// <summary>Nobody has said it and no table has it: the figure only keeps the sums going, and what rests on it expects nothing.</summary>
    public static Origin Unknown { get; } = new(OriginKind.Default, "not known");

    /// <summary>Worked out from other quantities.</summary>
    public static Origin Worked { get; } = new(OriginKind.Worked, "worked out");
}

using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>The two directions of a sheet.</summary>
public enum GrainAxis
{
    /// <summary>Along the grain of the sheet's face.</summary>
    Along,

    /// <summary>Across the grain of the sheet's face.</summary>
    Across,
}

/// <summary>Whether a part's grain must run with the sheet's.</summary>
public enum GrainRule
{
    /// <summary>The part's Along lies along the sheet's grain.</summary>
    Keep,

    /// <summary>The part may be turned by a quarter.</summary>
    Free,
}

/// <summary>How a part lies on the sheet.</summary>
public enum Turn
{
    /// <summary>Its Along lies along the sheet's grain.</summary>
    None,

    /// <summary>Turned by a quarter: its Along lies across the sheet's grain.</summary>
    Quarter,
}

/// <summary>A part to be cut from sheets, in figures to cut.</summary>
/// <param name="Id">Unique within the instance; not empty.</param>
/// <param name="Along">Size along the grain; above zero.</param>
/// <param name="Across">Size across the grain; above zero.</param>
/// <param name="Count">How many; one or more.</param>
/// <param name="Grain">Whether the part may be turned.</param>
public sealed record SheetPart(string Id, Length Along, Length Across, int Count, GrainRule Grain)
{
    /// <summary>The size this part takes along and across the sheet's grain when it lies so.</summary>
    public (Length Along, Length Across) Lying(Turn turn) => turn == Turn.None ? (Along, Across) : (Across, Along);
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>What sort of thing is out.</summary>
public enum UpsetKind
{
    /// <summary>A gap that something frozen takes part in lies outside its limits.</summary>
    GapOut,

    /// <summary>A part is made and the plan now asks for another figure, though every gap it takes part in is inside its limits.</summary>
    PartDiffers,

    /// <summary>Something bought is longer than the room that is left for it.</summary>
    BoughtTooLong,
}

/// <summary>Something frozen (cut, assembled, bought) that what is known now has upset.</summary>
/// <param name="Kind">What sort.</param>
/// <param name="Key">The gap; the figure to cut of the part; the choice that was bought.</param>
/// <param name="Name">For people.</param>
/// <param name="Value">Its best value now.</param>
/// <param name="Least">The least it may be; for a part the figure asked for.</param>
/// <param name="Most">The most it may be; for a part the figure asked for.</param>
/// <param name="Frozen">Keys of the parts or quantities that take part and stand fast, in order.</param>
/// <param name="Words">What is out, with figures, in the unit of the piece.</param>
public sealed record Upset(
    UpsetKind Kind, QuantityKey Key, string Name, ExactLength Value, ExactLength Least, ExactLength Most, ImmutableArray<string> Frozen, string Words)
{
    /// <summary>How far outside: more than zero is too large, less is too small, zero is inside.</summary>
    public ExactLength By => Value > Most ? Value - Most : Value < Least ? Value - Least : ExactLength.Zero;
}

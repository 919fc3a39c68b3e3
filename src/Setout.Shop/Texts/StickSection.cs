using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;

namespace Setout.Shop.Texts;

/// <summary>The two sizes of a section as its text gives them, or as the table of dressed sizes does for a name of the yard; readings do not count.</summary>
/// <param name="Thickness">The smaller size.</param>
/// <param name="Width">The larger size.</param>
public readonly record struct StickSection(ExactLength Thickness, ExactLength Width)
{
    /// <summary>Of two sizes, in whichever order.</summary>
    public static StickSection Of(ExactLength one, ExactLength other) => one <= other ? new(one, other) : new(other, one);

    /// <summary>Of a stick; null where neither text nor table knows.</summary>
    public static StickSection? Of(Stick stick)
    {
        if (stick is { Thickness: { } thin, Width: { } wide }) return new(thin.Value, wide.Value);
        return LumberTable.Find(stick.Nominal) is { } fact ? new(fact.Thickness, fact.Width) : null;
    }
}

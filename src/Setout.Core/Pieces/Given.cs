using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>A length written in the piece file, with where it stands.</summary>
/// <param name="Value">As read, exactly.</param>
/// <param name="Place">Where it stands.</param>
public readonly record struct Given(ExactLength Value, Place Place)
{
    /// <summary>As a working.</summary>
    public Stated Stated => new(Value, Origin.Given(Place));
}

/// <summary>A word written in the piece file that names something else, with where it stands.</summary>
/// <param name="Text">The word.</param>
/// <param name="Place">Where it stands.</param>
public readonly record struct Named(string Text, Place Place);

/// <summary>The size of one of several things that share a whole.</summary>
/// <param name="Value">The size given; null for an equal share or the rest.</param>
/// <param name="IsRest">True for the one that takes up what is left.</param>
/// <param name="Place">Where it stands.</param>
public readonly record struct ShareOfWhole(ExactLength? Value, bool IsRest, Place Place)
{
    private readonly int _more;

    /// <summary>An equal share.</summary>
    public static ShareOfWhole Equal => default;

    /// <summary>Of a share of what has no size: how many parts of it, 1 to 1000; 1 where nothing is said.</summary>
    public int Parts { get => _more + 1; init => _more = value - 1; }
}

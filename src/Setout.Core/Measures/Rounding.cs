namespace Setout.Core.Measures;

/// <summary>How a value off the grid lands on it.</summary>
public enum Rounding
{
    /// <summary>To the nearer step; half a step goes away from zero.</summary>
    Nearest,

    /// <summary>To the step below: safe for what must go inside (boxes, shelves, inset panels).</summary>
    Down,

    /// <summary>To the step above: safe for what must cover (applied backs, cover parts).</summary>
    Up,
}

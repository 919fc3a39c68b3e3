namespace Setout.Core.Workings;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing.</summary>
    Note,

    /// <summary>Look before you cut.</summary>
    Warn,

    /// <summary>The plan cannot stand.</summary>
    Stop,
}

/// <summary>Something wrong or worth knowing: one clear sentence, its place and a remedy.</summary>
/// <param name="Code">Stable, such as <c>drawer.too-wide</c>; a contract with whoever reads the output.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Key">The key of what it is about; empty for the whole piece.</param>
/// <param name="Words">What is wrong, with figures.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Place">Where it stands in the piece file, if it does.</param>
public sealed record Finding(string Code, Severity Severity, string Key, string Words, string Remedy, Place Place = default)
{
    /// <summary>Why it is let stand; empty, the default, where nobody lets it. It is a note then, whatever it was before.</summary>
    public string LetStand { get; init; } = "";

    /// <summary>The field of a form that it is about, by name: what was typed there cannot be taken. Empty, the default, where it is about none alone.</summary>
    public string Field { get; init; } = "";
}

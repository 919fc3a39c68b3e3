using Setout.Core.Workings;

namespace Setout.Shop.Facts;

/// <summary>A store of facts refuses what was asked, or cannot be used. Nothing was changed.</summary>
/// <param name="fault">What is wrong and what to do.</param>
/// <param name="cause">What the system said, if it said something.</param>
public sealed class FactStoreException(Finding fault, Exception? cause = null) : Exception(fault.Words, cause)
{
    /// <summary>The code of a conflict: an id is taken by an entry that says something else.</summary>
    public const string IdTaken = "log.id-taken";

    /// <summary>What is wrong, with a code, and what to do.</summary>
    public Finding Fault { get; } = fault;

    /// <summary>True when an id is taken by an entry that says something else.</summary>
    public bool IsConflict => Fault.Code == IdTaken;

    /// <summary>A refusal.</summary>
    /// <param name="code">Stable, such as <c>store.newer</c>.</param>
    /// <param name="words">What is wrong.</param>
    /// <param name="remedy">What to do.</param>
    /// <param name="cause">What the system said, if it said something.</param>
    public static FactStoreException Of(string code, string words, string remedy, Exception? cause = null) => new(new(code, Severity.Stop, "", words, remedy), cause);
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>What the log is to be told when a remedy has been carried out.</summary>
/// <param name="Command">The same as it is typed on the command line.</param>
public abstract record MendingAct(string Command);

/// <summary>A reading of what has changed.</summary>
/// <param name="Key">The quantity.</param>
/// <param name="Value">What to expect; what is measured then counts.</param>
public sealed record ReadAnew(QuantityKey Key, ExactLength Value, string Command) : MendingAct(Command);

/// <summary>A part that was cut, or cut again.</summary>
/// <param name="Part">Its key.</param>
/// <param name="IsAgain">True where it was cut before.</param>
/// <param name="Figures">The sizes that were cut, with their figures.</param>
public sealed record CutTo(string Part, bool IsAgain, ImmutableArray<(QuantityKey Size, ExactLength Figure)> Figures, string Command) : MendingAct(Command);

/// <summary>An entry that counts no more.</summary>
/// <param name="Entry">Its id.</param>
public sealed record TakeBack(string Entry, string Command) : MendingAct(Command);

/// <summary>Slides that were changed for others.</summary>
/// <param name="Owner">The key of what they belong to.</param>
public sealed record BoughtAnew(string Owner, string Command) : MendingAct(Command);

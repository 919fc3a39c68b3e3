using Setout.Core.Workings;

namespace Setout.Workbench.Changing;

/// <summary>A change that was not made.</summary>
/// <param name="Words">Why.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Typed">What was typed, so that it is not lost.</param>
/// <param name="Back">Where it was typed.</param>
public sealed record RefusedView(string Words, string Remedy, string Typed, string Back)
{
    internal static RefusedView Of(Finding fault, string typed, string back) => new(fault.Place.IsKnown ? $"Line {fault.Place.Line}: {fault.Words}" : fault.Words, fault.Remedy, typed, back);
}

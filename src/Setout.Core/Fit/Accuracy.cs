using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Core.Fit;

/// <summary>
/// How closely a shop works. Each figure is half a width: the true value lies within so much to either side of the best one, and
/// anywhere in between is as likely unless said otherwise.
/// </summary>
/// <param name="Instruments">How far each instrument may be off, by name: <c>tape</c>, <c>rule</c>, <c>calliper</c>.</param>
/// <param name="Setting">How far a fence or a stop may stand off the figure it is set to; shared by all that is cut at that setting.</param>
/// <param name="Repeat">How far one cut may differ from another at the same setting; small differences are likelier than large ones.</param>
/// <param name="Sheet">How far the sheets of one lot differ in thickness from the mean of the lot.</param>
/// <param name="Spot">How far the spots of one sheet differ in thickness from the mean of the sheet.</param>
/// <param name="Section">How far a stick's section lies off the size it was dressed to.</param>
/// <param name="Placing">How far a part may stand off its place when it is fixed by spacers, marks or clamps.</param>
/// <param name="Bought">How far bought hardware, such as the thickness of a slide, lies off its sheet.</param>
public sealed record Accuracy(
    ImmutableDictionary<string, Length> Instruments, Length Setting, Length Repeat, Length Sheet, Length Spot, Length Section, Length Placing, Length Bought)
{
    /// <summary>
    /// A usual shop. The tape: EU class II (Directive 2014/32/EU) and NIST Handbook 44 both allow about 1/32 in at bench lengths. All
    /// else is common practice, no source: a fence set by tape to 1/32 in, cuts at one setting alike to 1/64 in, and so on.
    /// </summary>
    public static Accuracy Usual { get; } = new(
        ImmutableDictionary<string, Length>.Empty.Add("tape", Length.FromInches(1, 32)).Add("rule", Length.FromInches(1, 64)).Add("calliper", Length.FromTicks(Length.TicksPerInch / 1000)),
        Setting: Length.FromInches(1, 32), Repeat: Length.FromInches(1, 64), Sheet: Length.FromInches(1, 128), Spot: Length.FromInches(1, 256),
        Section: Length.FromInches(1, 32), Placing: Length.FromInches(1, 64), Bought: Length.FromInches(1, 256));
}

/// <summary>Thin stuff that the shop keeps for packing: a washer, a strip of veneer, card.</summary>
/// <param name="Name">What it is, for people.</param>
/// <param name="Thickness">Of one.</param>
public sealed record Shim(string Name, Length Thickness);

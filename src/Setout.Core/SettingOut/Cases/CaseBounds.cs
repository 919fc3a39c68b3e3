using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Cases;

/// <summary>
/// Whether anything is left of the inside of a case: between its sides, between bottom and top above a toe kick, and from front to back before its back. Looked
/// at before any part is written, so that what is wrong is said once and where it was written.
/// </summary>
internal static class CaseBounds
{
    /// <summary>True where there is an inside; else findings say what leaves none.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="shape">The case.</param>
    /// <param name="rail">The width and thickness of its hanging rail; null for none.</param>
    /// <param name="sideWidth">The width of its sides.</param>
    public static bool HasInside(Book book, CaseShape shape, StripStock? rail, PartSize sideWidth)
    {
        Case described = shape.Described;
        ExactLength t = book.Value(shape.Thickness), raise = book.ValueOr0(shape.Raise);
        if (book.HasUnknown) return true;
        int before = book.Findings.Count(f => f.Severity == Severity.Stop);
        void Stop(string code, string words, string remedy, Place place) => book.Note(code, Severity.Stop, shape.Key, words, remedy, place);

        ExactLength wide = described.Width.Value, high = described.Height.Value;
        if (wide <= t * 2) Stop("case.no-inside", $"{shape.Name} is {book.Say(wide)} wide: its two sides take {book.Say(t * 2)} of that.", $"Make it wider than {book.Say(t * 2)}.", described.Width.Place);
        if (high <= t * 2) Stop("case.no-inside", $"{shape.Name} is {book.Say(high)} high: its top and bottom take {book.Say(t * 2)} of that.", $"Make it higher than {book.Say(t * 2)}.", described.Height.Place);
        else if (described.Toe is { } toe)
        {
            if (raise >= high - (t * 2))
                Stop("case.toe-too-high", $"A toe kick of {book.Say(raise)} leaves nothing between bottom and top of {shape.Name}, {book.Say(high)} high.",
                    high - (t * 2) > book.Grid.Step.ToExact() ? $"Make it {book.SayBelow(high - (t * 2))} high or less." : $"Leave it out, or make the case higher than {book.Say(raise + (t * 2))}.", toe.Height?.Place ?? toe.Place);
            if (raise < book.Grid.Step.ToExact())
                Stop("case.toe-too-low", $"A toe kick of {book.Say(raise)} is less than one step of the grid: no board goes under the bottom.", $"Make it {book.Say(book.Grid.Step)} high or more, or leave it out.", toe.Height?.Place ?? toe.Place);
        }
        Depth(book, shape, rail, sideWidth, Stop);
        ExactLength clear = high - (t * 2) - raise;
        if (rail is not null && book.Value(rail.Width.AsCut).Sign <= 0)
            Stop("case.rail-too-narrow", $"The hanging rail of {shape.Name} comes out {book.Say(book.Value(rail.Width.AsCut))} wide.", $"Make it {book.Say(book.Grid.Step)} wide or more, or leave its width out.", described.HangingRail!.Width?.Place ?? described.HangingRail.Of.Place);
        if (rail is not null && clear.Sign > 0 && book.Value(rail.Width.AsCut) > clear)
            Stop("case.rail-too-wide", $"A hanging rail of {book.Say(book.Value(rail.Width.AsCut))} does not go between top and bottom of {shape.Name}, {book.Say(clear)} apart.",
                $"Make it {book.SayAtMost(clear)} wide or less, or the case {book.SayAtLeast(book.Value(rail.Width.AsCut) - clear)} higher.", described.HangingRail!.Width?.Place ?? described.HangingRail.Of.Place);
        return book.Findings.Count(f => f.Severity == Severity.Stop) == before;
    }

    private static void Depth(Book book, CaseShape shape, StripStock? rail, PartSize sideWidth, Action<string, string, string, Place> stop)
    {
        Case described = shape.Described;
        ExactLength side = book.Value(sideWidth.Made), step = book.Grid.Step.ToExact();
        if (book.Value(sideWidth.AsCut).Sign <= 0)
        {
            ExactLength takes = described.Depth.Value - book.Value(sideWidth.Exact);
            stop("case.no-inside", $"{shape.Name} is {book.Say(described.Depth.Value)} deep: {Takers(shape)} {book.Say(takes)} of that.", $"Make it {book.SayAtLeast(takes + step)} deep or more.", described.Depth.Place);
            return;
        }
        if (shape.Back is { Hold: not BackHold.Applied } back)
        {
            ExactLength behind = book.Value(back.Inset!.Value), thick = book.Value(back.Thickness), least = side - thick - step;
            if (behind > least)
                stop("case.back-too-far-in", $"A back {book.Say(thick)} thick, {book.Say(behind)} from the rear edges, leaves nothing inside {shape.Name}: its sides are {book.Say(side)} deep.",
                    described.BackFit.Inset is not null && least.Sign >= 0 ? $"Make {book.Hand.Key("inset")} {book.SayAtMost(least)} or less." : $"Make the case {book.SayAtLeast(behind - least)} deeper.", described.BackFit.Inset?.Place ?? described.Depth.Place);
        }
        else if (rail is not null && shape.Back is null && book.Value(rail.Thickness) >= side)
            stop("case.no-inside", $"A hanging rail {book.Say(book.Value(rail.Thickness))} thick takes the whole depth of {shape.Name}.", $"Make the case {book.SayAtLeast(book.Value(rail.Thickness) - side + step)} deeper.", described.Depth.Place);
    }

    private static string Takers(CaseShape shape)
    {
        ImmutableArray<string> words = [.. shape.Back?.Hold == BackHold.Applied ? ["its back"] : Array.Empty<string>(), .. shape.FrameThickness is not null ? ["its face frame"] : Array.Empty<string>()];
        return words.Length == 0 ? "the grid takes" : $"{string.Join(" and ", words)} {(words.Length == 1 ? "takes" : "take")}";
    }
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>
/// Fronts that grow from the top down, by a ratio or by a step: their heights are shares of the same net height, each landed on the grid, and the one
/// that is named takes up what that leaves, so that the chain closes exactly.
/// </summary>
internal static class Graduated
{
    /// <summary>Writes the heights; null where they cannot be shared (a finding says why).</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="name">What is shared, for people.</param>
    /// <param name="by">The ratio or the step.</param>
    /// <param name="whole">The height that fronts and gaps fill.</param>
    /// <param name="between">The gaps.</param>
    /// <param name="sharers">From the top; one that takes the rest is the one that takes up the residue, else the lowest.</param>
    public static ImmutableArray<PartSize>? Share(Book book, string name, Graduation by, QuantityKey whole, ImmutableArray<Term> between, ImmutableArray<Sharer> sharers)
    {
        int count = sharers.Length;
        if (sharers.FirstOrDefault(s => s.Share.Value is not null || s.Share.Parts > 1) is { } given)
        {
            book.Note("front.height-and-graduated", Severity.Stop, given.Owner, $"{name}: {given.Name} is given{(given.Share.Value is null ? " a share" : "")}, but these fronts are graduated.", $"Leave its height out, or take {book.Hand.Key("graduated")} off the bank.", given.Share.Place);
            return null;
        }
        if (by.Step is null && by.Ratio.Length != count)
        {
            book.Note("front.ratio-count", Severity.Stop, sharers[0].Owner, $"{name}: the ratio has {by.Ratio.Length} numbers for {count} drawers.", "Write one number for each drawer, from the top.", by.Place);
            return null;
        }
        int[] rests = [.. Enumerable.Range(0, count).Where(i => sharers[i].Share.IsRest)];
        if (rests.Length > 1)
        {
            book.Note("sharing.two-rests", Severity.Stop, sharers[rests[1]].Owner, $"{name}: two take the rest.", "Name one.", sharers[rests[1]].Share.Place);
            return null;
        }
        int taker = rests.Length == 1 ? rests[0] : count - 1;
        ImmutableArray<Term> net = [Term.From("whole", 1, whole), .. between.Select(t => t with { Times = -t.Times })];
        var sizes = new PartSize[count];
        for (int i = 0; i < count; i++)
            if (i != taker) sizes[i] = book.DefineSize(sharers[i].Owner, sharers[i].What, sharers[i].Name, Meant(by, net, i, count), Rounding.Nearest, "to the nearest step");
        Sharer last = sharers[taker];
        sizes[taker] = book.DefineSize(last.Owner, last.What, last.Name,
            new Sum([.. net, .. sharers.Where(s => s != last).Select(s => Term.From(s.Name, -1, QuantityKey.Of(s.Owner, s.What).AsCut))]), Rounding.Nearest, "to the nearest step");
        bool isThere = book.IsRead(sizes[taker].ToCut) || book.IsRead(sizes[taker].AsCut);
        QuantityKey takesUp = isThere ? sizes[taker].AsCut : sizes[taker].Exact;
        book.Chains.Add(new(name, whole, [.. between, .. sharers.Select((s, i) => Term.From(s.Name, 1, i == taker ? takesUp : sizes[i].AsCut))], takesUp));
        if (Enumerable.Range(0, count).FirstOrDefault(i => book.Value(sizes[i].Exact).Sign <= 0, -1) is >= 0 and int none)
        {
            book.Note("sharing.too-much", Severity.Stop, sharers[none].Owner, $"{name}: the others leave {book.Say(book.Value(sizes[none].Exact))} for {sharers[none].Name}.",
                by.Step is null ? "Make the opening higher." : "Make the step smaller.", by.Place);
            return null;
        }
        return [.. sizes];
    }

    /// <summary>
    /// A ratio gives each its part of the net height. A step s gives the i-th of n, from 0, an equal share and (i - (n - 1) / 2) steps, which add up to nothing.
    /// </summary>
    private static Sum Meant(Graduation by, ImmutableArray<Term> net, int index, int count)
    {
        if (by.Step is not { } step) return new(net, Rational.Of(by.Ratio[index], by.Ratio.Sum(r => (long)r)));
        // Inside the share of 1/n the step counts n times as often.
        Rational times = Rational.Of((2 * index) - (count - 1), 2) * count;
        return new(times.Sign == 0 ? net : [.. net, Term.From($"steps, shared out among {count}", times, step.Value, Origin.Given(step.Place))], Rational.Of(1, count));
    }
}

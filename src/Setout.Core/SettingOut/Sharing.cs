using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>One of several things that share a whole.</summary>
/// <param name="Owner">The key it belongs to.</param>
/// <param name="What">What the size is called in its key.</param>
/// <param name="Name">For people.</param>
/// <param name="Share">Given, equal or the rest.</param>
/// <param name="ReadAs">What it is read as at the bench, where that is something else: terms that come to the same length; empty for itself.</param>
internal sealed record Sharer(string Owner, string What, string Name, ShareOfWhole Share, ImmutableArray<Term> ReadAs = default);

/// <summary>
/// Shares a whole among given sizes, equal shares and one rest, and closes the chain exactly: every share but one lands on the grid,
/// and the named one takes up what that leaves.
/// </summary>
internal static class Sharing
{
    /// <summary>Writes the sizes and the chain; null when the whole cannot be shared (a finding says why).</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="name">What is shared, for people.</param>
    /// <param name="whole">The whole.</param>
    /// <param name="between">What stands between or beside: members, gaps; each so many times.</param>
    /// <param name="sharers">In order.</param>
    /// <param name="restIsCut">True when the one that takes up the rest is itself cut, so that it lands on the grid too.</param>
    /// <param name="built">The whole as it comes out, where what is cut lands on the grid and moves it; null for the whole itself.</param>
    public static ImmutableArray<PartSize>? Share(
        Book book, string name, QuantityKey whole, ImmutableArray<Term> between, ImmutableArray<Sharer> sharers, bool restIsCut, QuantityKey? built = null)
    {
        int[] equal = [.. Enumerable.Range(0, sharers.Length).Where(i => sharers[i].Share is { Value: null, IsRest: false })];
        int[] rest = [.. Enumerable.Range(0, sharers.Length).Where(i => sharers[i].Share.IsRest)];
        if (rest.Length > 1 || (rest.Length == 1 && equal.Length > 0))
        {
            Sharer second = sharers[rest.Length > 1 ? rest[1] : rest[0]];
            book.Note("sharing.two-rests", Severity.Stop, second.Owner,
                rest.Length > 1 ? $"{name}: two take the rest." : $"{name}: one takes the rest, so the others need sizes.",
                "Give sizes to all but one, or leave the size out everywhere for equal shares.", second.Share.Place);
            return null;
        }
        if (equal.Length == 1 && sharers[equal[0]].Share.Parts > 1)
            book.Note("sharing.alone", Severity.Warn, sharers[equal[0]].Owner, $"{name}: {sharers[equal[0]].Name} alone has no size of its own, so {sharers[equal[0]].Share.Parts} parts are as good as one: it has all that is left.",
                "Leave it out, or give the others shares too instead of sizes.", sharers[equal[0]].Share.Place);
        // When all are given the last one still closes the chain: what it gives up is less than a step.
        if (rest.Length == 0 && equal.Length == 0 && !AddsUp(book, name, whole, between, sharers)) return null;

        int taker = rest.Length == 1 ? rest[0] : equal.Length > 0 ? equal[^1] : sharers.Length - 1;
        var sizes = new PartSize[sharers.Length];
        ImmutableArray<Term> taken = [.. between.Select(t => t with { Times = -t.Times })];
        // As cut: what came off the saw a little long or short is made up by what is not cut yet.
        ImmutableArray<Term> given = [.. sharers.Where(s => s.Share.Value is not null).Select(s => Term.From(s.Name, -1, QuantityKey.Of(s.Owner, s.What).AsCut))];
        int parts = equal.Sum(i => sharers[i].Share.Parts);
        Sum Shared(int of) => new([Term.From("whole", 1, whole), .. taken, .. given], parts > 0 ? Rational.Of(of, parts) : Rational.One);
        Sum equalShare = Shared(1);
        // Shares alike are set out alike as far as the grid allows; unlike ones each land where they fall nearest.
        bool areAlike = parts == equal.Length;
        // What is cut scatters as cuts do; what is only set out is as good as the placing of what bounds it.
        Scatter scatter = restIsCut ? Scatter.Cut : Scatter.Placed;
        // Given sizes first: equal shares are what those leave.
        foreach (int i in Enumerable.Range(0, sharers.Length).Where(i => i != taker).OrderBy(i => sharers[i].Share.Value is null))
        {
            Sharer sharer = sharers[i];
            if (sharer.Share.Value is { } value)
                sizes[i] = book.DefineSize(sharer.Owner, sharer.What, sharer.Name, new Stated(value, Origin.Given(sharer.Share.Place)), Rounding.Nearest, "to the nearest step", scatter);
            else
            {
                (Rounding way, string why) = areAlike ? EvenWay(book, equalShare, Array.IndexOf(equal, i), equal.Length) : (Rounding.Nearest, "to the nearest step");
                sizes[i] = book.DefineSize(sharer.Owner, sharer.What, sharer.Name, areAlike ? equalShare : Shared(sharer.Share.Parts), way, why, scatter);
            }
        }
        Sharer[] allOthers = [.. sharers.Where((_, i) => i != taker)];
        ImmutableArray<Term> others = [.. allOthers.Select(s => Term.From(s.Name, -1, QuantityKey.Of(s.Owner, s.What).AsCut))];
        Sharer last = sharers[taker];
        var remainder = new Sum([Term.From("whole", 1, whole), .. taken, .. others]);
        if (restIsCut) sizes[taker] = book.DefineSize(last.Owner, last.What, last.Name, remainder, Rounding.Nearest, "to the nearest step");
        else
        {
            QuantityKey key = book.Define(last.Owner, last.What, last.Name, remainder);
            sizes[taker] = Book.Uncut(key);
        }
        // The chain is of what is read at the bench, so that it shows when readings no longer add up.
        ImmutableArray<Term> Read(Sharer sharer, QuantityKey size) => sharer.ReadAs.IsDefaultOrEmpty ? [Term.From(sharer.Name, 1, size)] : sharer.ReadAs;
        // What takes up the rest closes the chain exactly; once it is cut or read it takes up no more.
        bool isThere = restIsCut && (book.IsRead(sizes[taker].ToCut) || book.IsRead(sizes[taker].AsCut));
        ImmutableArray<Term> takesUp = Read(last, isThere ? sizes[taker].AsCut : sizes[taker].Exact);
        book.Chains.Add(new(name, built ?? whole, [.. between, .. allOthers.SelectMany(s => Read(s, QuantityKey.Of(s.Owner, s.What).AsCut)), .. takesUp], takesUp[0].Of!.Value));
        if (book.Value(sizes[taker].Exact).Sign <= 0)
        {
            ExactLength over = -book.Value(sizes[taker].Exact);
            book.Note("sharing.too-much", Severity.Stop, last.Owner, over.Sign == 0 ? $"{name}: the other sizes leave nothing for {last.Name}." : $"{name}: the other sizes are {book.Say(over)} too much, and nothing is left for {last.Name}.",
                over.Sign == 0 ? "Make one of them smaller." : $"Make one of them more than {book.Say(over)} smaller.", last.Share.Place);
            return null;
        }
        return [.. sizes];
    }

    /// <summary>
    /// Equal shares differ by one step at most: the first of them go down, so many that the last ones, gone up, leave less than a step over.
    /// All to the nearest step would leave up to half a step for each to the one that takes the rest, and the eye sees that in a bank of ten.
    /// </summary>
    private static (Rounding Way, string Why) EvenWay(Book book, Sum share, int index, int count)
    {
        Rational steps = book.Value(share) / book.Grid.Step, over = steps - Rational.Of(steps.Floor(), 1);
        if (over.Sign == 0) return (Rounding.Nearest, "on the grid as it is");
        int up = (int)(over * count).Round(Rounding.Nearest);
        return index < count - up
            ? (Rounding.Down, $"down: {count - up} of {count} equal shares go down and {up} up, so that they fill the whole")
            : (Rounding.Up, $"up: {count - up} of {count} equal shares go down and {up} up, so that they fill the whole");
    }

    /// <summary>
    /// Whether sizes that are all given fill the whole, to less than one step of the grid: nearer than that they cannot be set, and a
    /// whole that a reading moved by a hair need not stop the plan.
    /// </summary>
    private static bool AddsUp(Book book, string name, QuantityKey whole, ImmutableArray<Term> between, ImmutableArray<Sharer> sharers)
    {
        ExactLength total = ExactLength.Zero;
        foreach (Term term in between) total += (term.Figure?.Value ?? book.Value(term.Of!.Value)) * term.Times;
        foreach (Sharer sharer in sharers) total += sharer.Share.Value!.Value;
        ExactLength over = total - book.Value(whole);
        if (over.Abs() < book.Grid.Step) return true;
        Sharer last = sharers[^1];
        book.Note("sharing.does-not-add-up", Severity.Stop, last.Owner,
            $"{name}: the sizes given add up to {book.Say(total)}, {book.Say(over.Abs())} {(over.Sign > 0 ? "more" : "less")} than the whole of {book.Say(book.Value(whole))}.",
            "Write rest for one of them.", last.Share.Place);
        return false;
    }
}

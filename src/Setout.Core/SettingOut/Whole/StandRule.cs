using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Cases;
using Setout.Core.SettingOut.Tops;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Whole;

/// <summary>
/// Where structures stand: each beside the one on its left, or on the one below it, as that came out. Positions are sums like all else, so a
/// reading of one case moves its neighbours.
/// </summary>
internal static class StandRule
{
    /// <summary>The place of a structure; null where what it stands by is not there, with a finding.</summary>
    public static Corner? Corner(Book book, Structure structure, IReadOnlyDictionary<string, Structure> before)
    {
        (Named? beside, ImmutableArray<Named> named, bool atBack, Place place) = structure.Stand;
        // On a top is on what that lies on, and as much higher as it is thick.
        ImmutableArray<Top> tops = [.. book.Piece.Members.TakeWhile(m => m != structure).OfType<Top>().Where(t => named.Any(n => n.Text == t.Key))];
        ImmutableArray<Named> on = [.. named.SelectMany(n => tops.FirstOrDefault(t => t.Key == n.Text) is { } top ? TopRule.Under(book, top, before).Select(s => n with { Text = s.Key }) : [n])];
        // A top that could not be laid carries nothing; its own finding says why.
        if ((on.IsEmpty && !named.IsEmpty) || tops.Any(t => !book.Knows(TopMakeUp.ThicknessOf(book, t)))) return null;
        if (!on.Concat(beside is { } b ? [b] : []).All(n => Known(book, structure, n, before))) return null;
        string key = structure.Key, name = structure.Name.Length > 0 ? structure.Name : key;
        QuantityKey? lift = null;
        if (structure is Case standing)
        {
            FillerRule.Spaces(book, standing);
            lift = FootRule.Lift(book, standing);
        }
        if (beside is null && on.IsEmpty)
        {
            if (before.Count == 0) return First(book, key, name, lift);
            string last = before.Values.Last().Key;
            book.Note("structure.no-place", Severity.Stop, key, $"{name} does not say where it stands.", $"Add 'beside: {last}' or 'on: {last}'.", structure.Place);
            return null;
        }
        if (beside is { } left)
            book.Define(key, "left", $"{name}, from the left of the piece", new Sum([.. Standing.Start(book, left.Text, "left", "from the left"), Term.From($"{left.Text}, outside as built", 1, Built.Width(left.Text)), .. Standing.Fillers(book, left.Text, key)]));
        else if (Has(book, on[0].Text, "left") && !Standing.FillerLeft(book, key).Any())
            book.DefineSame(key, "left", $"{name}, from the left of the piece", $"as {on[0].Text}", QuantityKey.Of(on[0].Text, "left"));
        else if (Standing.FillerLeft(book, key).Any())
            book.Define(key, "left", $"{name}, from the left of the piece", new Sum([.. Standing.Start(book, on[0].Text, "left", "from the left"), .. Standing.FillerLeft(book, key)]));
        if (!on.IsEmpty)
            Raised(book, key, name, lift, new Sum([.. Standing.Start(book, on[0].Text, "up", "from the floor"), Term.From($"{on[0].Text}, height as built", 1, Built.Height(before[on[0].Text])), .. tops.Take(1).Select(t => Term.From($"top {t.Key}", 1, TopMakeUp.ThicknessOf(book, t)))]));
        else if (beside is { } level && Ground(book, level.Text) is { } ground)
        {
            Raised(book, key, name, lift, new Sum(Term.From($"as {level.Text}", 1, ground)));
            // Beside what stands on another, with nothing named below it.
            if (structure is not Case { IsHung: true } && book.Value(ground).Sign > 0)
                book.Note("structure.nothing-below", Severity.Warn, key, $"{name} would stand {book.Say(book.Value(ground))} above the floor, level with {level.Text}, and nothing is named below it.",
                    $"{book.Hand.Say("Write 'on:' with", "Set “on” to")} what it stands on as well, or {book.Hand.Key("hung", "yes")} for a case on a wall.", place);
        }
        else Raised(book, key, name, lift, null);
        string against = on.IsEmpty ? beside!.Value.Text : on[0].Text;
        var forward = new Sum([.. Standing.Start(book, against, "forward", "from the front"),
            .. atBack ? [Term.From($"{against}, depth", 1, Built.Depth(against)), Term.From("its own depth", -1, structure.Depth.Value, Origin.Given(structure.Depth.Place))] : ImmutableArray<Term>.Empty]);
        if (book.Value(forward).Sign != 0) book.Define(key, "forward", $"{name}, from the front of the piece", forward);
        Carried(book, structure, name, on, before, place);
        return Standing.Of(book, key);
    }

    /// <summary>The first of a piece stands at the left on the floor, but for a filler beside it and what lifts it.</summary>
    private static Corner First(Book book, string key, string name, QuantityKey? lift)
    {
        ImmutableArray<Term> filler = [.. Standing.FillerLeft(book, key)];
        if (lift is null && filler.IsEmpty) return default;
        if (!filler.IsEmpty) book.Define(key, "left", $"{name}, from the left of the piece", new Sum(filler));
        Raised(book, key, name, lift, null);
        return Standing.Of(book, key);
    }

    /// <summary>Writes how high it stands: on what is below it, and on its own base or feet.</summary>
    private static void Raised(Book book, string key, string name, QuantityKey? lift, Sum? below)
    {
        if (lift is null)
        {
            if (below is not null) book.Define(key, "up", $"{name}, from the floor", below);
            return;
        }
        ImmutableArray<Term> ground = below is null ? [] : [Term.From("what it stands on", 1, book.Define(key, "ground", $"{name}, floor to what it stands on", below))];
        book.Define(key, "up", $"{name}, from the floor", new Sum([.. ground, Term.From("base or feet", 1, lift.Value)]));
    }

    /// <summary>The level that a structure stands on, without its own base or feet; null for the floor.</summary>
    private static QuantityKey? Ground(Book book, string key) =>
        Has(book, key, "ground") ? QuantityKey.Of(key, "ground") : Has(book, key, "up") && !Has(book, key, "lift") ? QuantityKey.Of(key, "up") : null;

    private static void Carried(Book book, Structure structure, string name, ImmutableArray<Named> on, IReadOnlyDictionary<string, Structure> before, Place place)
    {
        if (on.IsEmpty) return;
        ExactLength carried = on.Aggregate(ExactLength.Zero, (sum, o) => sum + book.Value(Built.Width(o.Text)))
            + on.Zip(on.Skip(1)).SelectMany(p => Standing.Fillers(book, p.First.Text, p.Second.Text)).Aggregate(ExactLength.Zero, (sum, t) => sum + book.Value(t.Of!.Value));
        ExactLength over = structure.Width.Value - carried;
        string below = string.Join(" and ", on.Select(o => o.Text));
        if (over.Sign > 0)
            book.Note("structure.overhangs", Severity.Warn, structure.Key, $"{name} is {book.Say(over)} wider than {below}, on which it stands.", "Name all that it stands on, as in 'on: [A, B]', make it narrower, or see that what overhangs is carried.", place);
        ExactLength back = on.Max(o => Standing.Value(book, o.Text, "forward") + book.Value(Built.Depth(o.Text))), front = on.Min(o => Standing.Value(book, o.Text, "forward")), own = Standing.Value(book, structure.Key, "forward");
        ExactLength ahead = front - own, behind = own + structure.Depth.Value - back;
        if (ahead.Sign > 0 || behind.Sign > 0)
            book.Note("structure.overhangs", Severity.Warn, structure.Key, $"{name} stands {book.Say(ExactLength.Max(ahead, behind))} over the {(ahead >= behind ? "front" : "back")} of {below}.", "Make it less deep, or see that what overhangs is carried and cannot tip.", place);
        ExactLength Up(string key) => Standing.Of(book, key).Z + book.Value(Built.Height(before[key]));
        if (on.FirstOrDefault(o => Up(o.Text) != Up(on[0].Text)) is { Text: { } other })
            book.Note("structure.not-level", Severity.Stop, structure.Key, $"{on[0].Text} comes up to {book.Say(Up(on[0].Text))} and {other} to {book.Say(Up(other))}: {name} cannot stand on both.", "Give them one height, or name one of them.", place);
    }

    /// <summary>
    /// Says of the steps of a structure, which begin at a place in the list, that it is put together in them, up to the last one on the bench; and writes
    /// how one after the first comes to its place.
    /// </summary>
    public static void Step(Book book, Structure structure, IReadOnlyDictionary<string, Structure> before, int first)
    {
        string key = structure.Key, name = Standing.NameOf(book, structure, structure is Frame ? "frame" : "case");
        book.Units.Add(new(key, name, UnitKind.Structure));
        for (int i = first; i < book.Steps.Count; i++)
            book.Steps[i] = book.Steps[i] with { On = book.Steps[i].On ?? (book.Steps[i].Stage < Stage.Top ? key : "") };
        if (before.Count == 0 || structure is Case { IsHung: true }) return;
        (Named? beside, ImmutableArray<Named> on, bool atBack, _) = structure.Stand;
        string line = atBack ? "backs in line" : "fronts in line";
        string words = on.IsEmpty
            ? $"Set {name} beside {beside!.Value.Text}, {line} and level with it."
            : $"Set {name} on {string.Join(" and ", on.Select(o => o.Text))}, {line}{(beside is { } left ? $", close against {left.Text}" : "")}{StackRule.Hold(book, structure)}.";
        // One that is levelled comes to its place in the step that does it.
        int levelled = book.Steps.FindIndex(first, s => s.Stage == Stage.Top && s.Whole.Contains(key));
        if (levelled < 0) book.Steps.Insert(first, new(Stage.Top, words, [], null, "lift") { On = "", Whole = [key] });
        else
        {
            // A base is levelled before what stands on it comes.
            AssemblyStep step = book.Steps[levelled];
            book.Steps[levelled] = step with { Words = structure is Case { Base: not null } ? $"{step.Words} {(on.IsEmpty ? $"It stands beside {beside!.Value.Text}" : $"It stands on {string.Join(" and ", on.Select(o => o.Text))}")}, {line}." : $"{words} {step.Words}" };
        }
    }

    /// <summary>Notes where a structure as it came out stands in the room of an earlier one.</summary>
    public static void CheckRoom(Book book, Structure structure, IEnumerable<Structure> before)
    {
        Placement own = Outline(book, structure);
        foreach (Structure other in before)
        {
            Placement there = Outline(book, other);
            ExactLength least = own.Within(there);
            // Less than a step of the grid is what rounding leaves.
            if (least < book.Grid.Step.ToExact()) continue;
            book.Note("structure.in-the-way", Severity.Stop, structure.Key, $"{structure.Key} would stand {book.Say(least)} inside {other.Key}.",
                own.Shared(there).Z == least ? $"Make {other.Key} lower, or let {structure.Key} stand on it too." : $"Make {structure.Key} narrower, or let it stand by something else.", structure.Place);
            return;
        }
    }

    private static Placement Outline(Book book, Structure structure) =>
        Standing.Of(book, structure.Key).Place(new(ExactLength.Zero, ExactLength.Zero, ExactLength.Zero, book.Value(Built.Width(structure.Key)), structure.Depth.Value, book.Value(Built.Height(structure))));

    private static bool Has(Book book, string key, string what) => book.Knows(QuantityKey.Of(key, what));

    private static bool Known(Book book, Structure structure, Named named, IReadOnlyDictionary<string, Structure> before)
    {
        if (before.ContainsKey(named.Text)) return true;
        // One that is there but could not be set out has its own finding.
        if (book.Piece.Members.TakeWhile(m => m != structure).Any(m => m is Structure && m.Key == named.Text)) return false;
        string there = before.Count == 0 ? "It is the first: leave it out." : $"Name one of those before it: {string.Join(", ", before.Keys.Order(StringComparer.Ordinal))}.";
        book.Note("structure.unknown", Severity.Stop, structure.Key, $"There is no frame, case or top '{named.Text}' before {structure.Key}.", there, named.Place);
        return false;
    }
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Puts the cuts of a run into lines: what follows on one blank is one line, and blanks of which the same is said share it.</summary>
internal sealed class CutLines(Plan plan, BlankNames names)
{
    private static readonly string[] s_kinds = ["sheet ", "board "];

    private readonly LengthFormat _bare = LengthFormat.For(plan.Set.Piece.Shown).Bare;

    /// <summary>Which run made each side true.</summary>
    public SideRuns Sides => _edges.Sides;

    private readonly ILookup<int, RunCut> _cuts = plan.Runs.Runs.SelectMany(r => r.Cuts).ToLookup(c => c.Blank);

    private readonly EdgeWords _edges = new(plan, names);

    private sealed record Chain(ImmutableArray<RunCut> Cuts, string Material, string Name, string Off, string Remains, string Edge);

    public ImmutableArray<WordedCuts> Of(Run run)
    {
        Chain[] chains = [.. Chains(run).Select(c => Said(run, c))];
        return
        [
            .. chains.GroupBy(c => (c.Material, c.Cuts.Length, c.Off, c.Remains, c.Edge))
                .Select(g => new WordedCuts([.. g.SelectMany(c => c.Cuts)], g.Key.Material, Names(g.Select(c => c.Name)), g.Key.Length, g.Key.Off, g.Key.Remains, g.Key.Edge)),
        ];
    }

    // Cuts that go on with what the cut before left.
    private static IEnumerable<ImmutableArray<RunCut>> Chains(Run run)
    {
        var chain = ImmutableArray.CreateBuilder<RunCut>();
        foreach (RunCut cut in run.Cuts)
        {
            if (chain.Count > 0 && !(chain[^1] is var last && last.Rest == cut.Blank && (last.Axis, last.From, last.Figure) == (cut.Axis, cut.From, cut.Figure)))
            {
                yield return chain.ToImmutable();
                chain.Clear();
            }
            chain.Add(cut);
        }
        if (chain.Count > 0) yield return chain.ToImmutable();
    }

    private Chain Said(Run run, ImmutableArray<RunCut> cuts)
    {
        RunCut first = cuts[0];
        RunBlank blank = plan.Runs.Blanks[first.Blank];
        return new(cuts, MaterialOf(blank), names.Spoken(first.Blank), Mark(run, first) + Off(cuts), Remains(cuts), _edges.Of(run, cuts));
    }

    // Where sides lose different figures, each cut has its own.
    private string Mark(Run run, RunCut cut)
    {
        if (run.Figure.Sign > 0 || run.Cuts.Select(c => (c.Axis, c.Figure)).Distinct().Count() == 1) return "";
        return $"{_bare.Text(cut.Figure)} off: ";
    }

    private string Off(ImmutableArray<RunCut> cuts)
    {
        RunBlank[] off = [.. cuts.Where(c => c.Off is not null).Select(c => plan.Runs.Blanks[c.Off!.Value])];
        var words = new List<string>();
        words.AddRange(off.Where(b => b.Use == BlankUse.Part).GroupBy(b => Part(b.Id)).Select(g => g.Count() == 1 ? g.Key : $"{g.Count()} x {g.Key}"));
        if (Stays(cuts) is not null) words.Add(cuts[0].Rest is { } gone ? $"waste {Size(plan.Runs.Blanks[gone])}" : "dust");
        else if (off.Where(b => b.Use == BlankUse.Work).ToArray() is { Length: > 0 } work) words.Add(List(work.Select(b => names[b.Id])));
        words.AddRange(off.Where(b => b.Use == BlankUse.Keep).Select(b => $"{names[b.Id]}, {Size(b)}: keep{Flaws(b)}"));
        words.AddRange(off.Where(b => b.Use == BlankUse.Waiting).Select(b => $"{names[b.Id]}, {Size(b)}: {Waits(b)}"));
        if (off.Any(b => b.Use == BlankUse.Waste)) words.Add("waste");
        return words.Count > 0 ? string.Join("; ", words) : "dust";
    }

    // Loose parts are marked by numbers, which nobody takes for a size or a board where the name stands with them.
    private string Part(int id) => char.IsAsciiDigit(names[id][0]) ? $"part {names[id]} ({plan.Set.Parts.First(p => p.Key == plan.Runs.Blanks[id].PartId).Name})" : names[id];

    // One cut that takes nothing but waste off the far side: the piece at the reference side stays what it was.
    private RunBlank? Stays(ImmutableArray<RunCut> cuts) =>
        cuts is [{ Off: { } id } cut] && plan.Runs.Blanks[id] is { Use: BlankUse.Work } on && names[id] == names[cut.Blank] && (cut.Rest is not { } rest || plan.Runs.Blanks[rest].Use == BlankUse.Waste) ? on : null;

    private string Remains(ImmutableArray<RunCut> cuts)
    {
        RunCut last = cuts[^1];
        if (Stays(cuts) is { } stays) return $"{names.Spoken(stays.Id)}, {Extent(stays, last)}";
        if (last.Rest is not { } id) return "dust";
        RunBlank rest = plan.Runs.Blanks[id];
        return rest.Use switch
        {
            BlankUse.Part => $"{Part(id)}, at its size: measure it",
            BlankUse.Keep => $"{Size(rest)}: keep{Flaws(rest)}",
            BlankUse.Waiting => $"{Size(rest)}: {Waits(rest)}",
            BlankUse.Waste => $"{Size(rest)}: waste{Spares(rest)}",
            // No later cut brings it to size: it is what the others left.
            _ => IsSizedAgain(id, last.Axis) ? Extent(rest, last) : $"{Extent(rest, last)}: measure it",
        };
    }

    private bool IsSizedAgain(int id, GrainAxis axis) => _cuts[id].Any(c => c.Axis == axis || new[] { c.Off, c.Rest }.OfType<int>().Any(next => IsSizedAgain(next, axis)));

    private string Extent(RunBlank blank, RunCut cut) => cut.Axis == GrainAxis.Across ? $"{_bare.Text(blank.Across)} wide" : $"{_bare.Text(blank.Along)} long";

    /// <summary>The flaws of a blank that is kept, and how much of it is sound; empty where it has none.</summary>
    public string Flaws(RunBlank blank)
    {
        if (blank.Flaws.IsEmpty) return "";
        string end = Sides.Of(blank.Id, BlankSide.NearEnd) is { } by and > 0 ? $"the end sawn in run {by}" : "the end that its flaws are measured from";
        Length at = blank.Trim.AlongStart, sound = Length.Zero;
        foreach (BoardStretch flaw in blank.Flaws.OrderBy(f => f.From))
        {
            sound = Length.Max(sound, flaw.From - at);
            at = Length.Max(at, flaw.To);
        }
        sound = Length.Max(sound, blank.Along - blank.Trim.AlongEnd - at);
        return $"; flaw {List(blank.Flaws.Select(f => $"{_bare.Text(f.From)} to {_bare.Text(f.To)}"))} from {end}, {_bare.Text(sound)} of it sound in one length";
    }

    /// <summary>Keys of the parts that a blank is or that come out of it.</summary>
    public IEnumerable<string> PartsIn(int id)
    {
        RunBlank blank = plan.Runs.Blanks[id];
        if (blank.Use == BlankUse.Part) return [blank.PartId];
        return _cuts[id].SelectMany(c => new[] { c.Off, c.Rest }.OfType<int>()).SelectMany(PartsIn);
    }

    private static string Spares(RunBlank waste) => waste.Spares switch { 0 => "", 1 => ", enough for one spare", var n => $", enough for {n} spares" };

    /// <summary>The size of a blank that goes to the rack, with the sides that are raw.</summary>
    public string Kept(RunBlank blank) => RawSides.Words(blank) is { Length: > 0 } raw ? $"{Size(blank)}, {raw}" : Size(blank);

    public string Size(RunBlank blank) => $"{_bare.Text(blank.Along)} x {_bare.Text(blank.Across)}";

    /// <summary>What wood that is put aside waits for.</summary>
    public string Waits(RunBlank blank)
    {
        string until = Until(blank);
        return $"put aside whole{For(blank)}{(until.Length > 0 ? $": waits for a reading of {until}" : "")}";
    }

    /// <summary>The marks of the parts that wait in it, such as <c> for D1 and D2</c>; empty for none.</summary>
    public string For(RunBlank blank) => blank.Waiting.IsEmpty ? "" : $" for {List(Waiting(blank).Select(p => p.Mark).Distinct())}";

    /// <summary>The readings that they wait for, in words; empty for none.</summary>
    public string Until(RunBlank blank) => List(Waiting(blank).Where(p => !p.HeldUntil.IsDefaultOrEmpty).Select(p => HeldWords.Of(plan.Set, p.HeldUntil[^1])).Distinct());

    /// <summary>Their keys.</summary>
    public IEnumerable<QuantityKey> Awaited(RunBlank blank) => Waiting(blank).Where(p => !p.HeldUntil.IsDefaultOrEmpty).Select(p => p.HeldUntil[^1]);

    private IEnumerable<Part> Waiting(RunBlank blank) => blank.Waiting.Distinct().Select(id => plan.Set.Parts.First(p => p.Key == id));

    public string MaterialOf(RunBlank blank) =>
        names.IsSheet(blank.Material) ? plan.Sheets[blank.Material].Material.Name : plan.Boards[blank.Material - plan.Sheets.Length].Material.Name;

    /// <summary>Such as <c>sheets A and B</c>.</summary>
    public static string Names(IEnumerable<string> spoken)
    {
        string[] all = [.. spoken];
        return s_kinds.FirstOrDefault(w => all.Length > 1 && all.All(a => a.StartsWith(w, StringComparison.Ordinal))) is { } word
            ? $"{word.TrimEnd()}s {List(all.Select(a => a[word.Length..]))}"
            : List(all);
    }

    /// <summary>Such as <c>A.1, A.2 and A.3</c>.</summary>
    public static string List(IEnumerable<string> words)
    {
        string[] all = [.. words];
        return all.Length switch { 0 => "", 1 => all[0], _ => $"{string.Join(", ", all[..^1])} and {all[^1]}" };
    }
}

// Over 200 lines: all that is said of one run, in the order in which it is read at the saw.
using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Says the runs of a plan in words: what to set, what to push, which edge lies where, what comes off and what remains. Pure; the same for the same plan.</summary>
public sealed class RunWords
{
    private readonly Plan _plan;
    private readonly BlankNames _names;
    private readonly CutLines _lines;
    private readonly LengthFormat _bare;
    private readonly ILookup<int, StripGroove> _grooves;
    private readonly StandIns _standIns;

    private RunWords(Plan plan)
    {
        (_plan, _names, _bare) = (plan, BlankNames.Of(plan), LengthFormat.For(plan.Set.Piece.Shown).Bare);
        _lines = new(plan, _names);
        _standIns = new(plan);
        _grooves = StripGrooves.Of(plan).ToLookup(g => g.Before);
    }

    /// <summary>All runs of a plan.</summary>
    public static WordedRuns Of(Plan plan) => new RunWords(plan).All();

    /// <summary>How many settings, and whether fewer are possible; empty where nothing is sawn.</summary>
    public static string Summary(RunPlan runs)
    {
        if (runs.Runs.IsEmpty) return "";
        string count = runs.Settings == 1 ? "1 setting" : $"{runs.Settings} settings";
        string all = runs.Settings < runs.Runs.Length ? $"; {runs.Runs.Length} runs, for some need no setting" : "";
        return (runs.IsFewest ? $"{count}, the fewest for this layout" : $"{count}; this layout needs at least {runs.LeastSettings}") + all;
    }

    private WordedRuns All()
    {
        ImmutableArray<RunBlank> blanks = _plan.Runs.Blanks;
        return new(
            Summary(_plan.Runs), Minded([.. _plan.Runs.Runs.Select(Worded)]),
            [.. blanks.Where(b => b.Use == BlankUse.Waiting || (b.Use == BlankUse.Stock && !b.Waiting.IsEmpty)).Select(b => new PutAside(_names.Spoken(b.Id), _lines.MaterialOf(b), $"{(b.Use == BlankUse.Stock ? _names.LineOf(b.Material, b.Stock).Words : _lines.Size(b))}{(b.Waiting.IsEmpty ? "" : ",")}{_lines.For(b)}") { Until = _lines.Until(b) })],
            [.. blanks.Where(b => b.Use == BlankUse.Keep).Select(b => new PutAside(_names.Spoken(b.Id), _lines.MaterialOf(b), _lines.Kept(b) + _lines.Flaws(b)))])
        {
            First = [.. First()],
            Ask = _plan.Runs.Runs.IsEmpty ? [] : [.. _standIns.Things.Select(t => Asked($"thickness of {t}", QuantityKey.Of(t, "thickness")))],
            Await = [.. blanks.Where(b => !b.Waiting.IsEmpty).SelectMany(_lines.Awaited).Distinct().Select(k => Asked(HeldWords.Of(_plan.Set, k), k))],
            Names = NameWords.Of(_plan, _names),
            Unused = [.. Unused()],
        };
    }

    private AskedReading Asked(string words, QuantityKey key) =>
        new(words, _plan.Set.Worked.Values.TryGetValue(key, out Worked? worked) ? Spreads.CarefulInstrument(worked.Quantity) : "", worked is null ? "" : _bare.Text(worked.Value));

    // What earlier runs left and no layout takes: else it stands in no list at all.
    private IEnumerable<PutAside> Unused()
    {
        HashSet<string> used =
        [
            .. _plan.Sheets.SelectMany(s => s.Outcome.Layout.Sheets.Select(l => s.Stock.First(k => k.Id == l.StockId))).Concat(_plan.Boards.SelectMany(b => b.Outcome.Layout.Boards.Select(l => b.Stock.First(k => k.Id == l.StockId))))
                .Where(l => l.Size.InHand is not null).Select(l => l.Size.Name),
        ];
        return _plan.Source.Ledger.Blanks.Where(b => b.By.Name == _plan.Source.FileName && !used.Contains(b.Name)).Select(b => b.Wood)
            .Select(b => new PutAside(b.Name, b.Of, b.Size.Across is { } across ? $"{_bare.Text(b.Size.Along)} x {_bare.Text(across)}" : _bare.Text(b.Size.Along)));
    }

    private IEnumerable<string> First()
    {
        if (_plan.Runs.Runs.IsEmpty) yield break;
        if (_standIns.Things is { Length: > 0 } things)
        {
            Hand hand = _plan.Set.Piece.Hand;
            string[] figures = [.. things.Select(t => $"{t} ({_bare.Text(_plan.Set.Worked[QuantityKey.Of(t, "thickness")])} stands in)")];
            // Of several pieces each calls a pooled wood by a name of its own.
            string places = _plan.Source.Together is { } together ? string.Join("; ", things.Select(t => $"{t} {together.Places(t)}"))
                : $"{(things.Length == 1 ? "it" : "them")} at {CutLines.List(things.Select(t => Hands.Place(_plan.Set.Worked.Values[QuantityKey.Of(t, "thickness")].Quantity.Name)))}";
            yield return $"First read the thickness of {CutLines.List(figures)} with a calliper at two spots{hand.Say($": setout record FILE {things[0]}.thickness READING", $", and enter {places}")}.";
        }
        if (UsualSaws.Of(_plan) is { Length: > 0 } usual) yield return usual;
    }

    // In full where a caution comes up for the first time, then its gist and where it stands.
    private static ImmutableArray<WordedRun> Minded(ImmutableArray<WordedRun> runs)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        return [.. runs.Select(r => r with { MindInTurn = string.Join(" ", r.Mind.Select(c => first.TryAdd(c.Key, r.Run.Number) ? c.Words : $"{Cautions.GistOf(c.Key)} (run {first[c.Key]}).")) })];
    }

    private WordedRun Worded(Run run) => new(run, $"Run {run.Number} of {_plan.Runs.Runs.Length}: {Setting(run)}", Saw(run.Way), [.. Settings(run)], _lines.Of(run), [.. Notes(run)], [.. Keys(run).Select(Cautions.Of)])
    {
        Before = [.. _grooves[run.Number].Select(Grooved)],
    };

    private string Grooved(StripGroove groove)
    {
        string figures = string.Join(", ", groove.Cut.Figures.Select(f => $"{f.Name} {_bare.Text(_plan.Set.Worked[f.Key])}"));
        string[] marks = [.. groove.Parts.Select(c => _plan.Set.Parts.First(p => p.Key == c.Part).Mark)];
        string said = $"{char.ToLowerInvariant(groove.Cut.Words[0])}{groove.Cut.Words[1..]}; {figures}. Choose the better edge for it on each strip, and chalk it.";
        // A strip has no inner edge yet. From which side the middle is set makes no odds to the sum, and the good face shows.
        if (groove.Cut.Words.Contains("in the middle of the thickness", StringComparison.Ordinal) && groove.Cut.Figures.FirstOrDefault(f => f.Name == "width") is { Key: { } wide })
        {
            ExactLength thick = _plan.Set.Worked[_plan.Set.Parts.First(p => p.Key == groove.Cut.Part).Thickness];
            said = $"{said.Replace("along the inner edge", "along one edge", StringComparison.Ordinal)} Good face at the fence, fence {_bare.Text((thick - _plan.Set.Worked[wide]) / 2)} from the groove.";
        }
        return $"Before run {groove.Before}, while {CutLines.Names(groove.Strips.Select(s => _names.Spoken(s)))} {(groove.Strips.Length == 1 ? "is" : "are")} long: {said} All {string.Join(", ", marks)} of this wood have it then. Hood and spreader back at once.";
    }

    private string Setting(Run run)
    {
        string figure = _bare.Text(Figure(run)), sides = string.Join(" and ", run.Cuts.Select(c => c.Axis).Distinct().OrderDescending().Select(a => a == GrainAxis.Across ? "edges" : "ends"));
        string where = run.Way switch { SawWay.Fence => "fence", SawWay.Sled => "sled", SawWay.Stop => "board saw", _ => "guided saw" };
        return (run.Kind, run.Way) switch
        {
            (RunKind.True, _) => HasOneFigure(run) ? $"true {sides}, {figure} off" : $"true {sides}",
            (RunKind.Clear, _) => HasOneFigure(run) ? $"cut flaws away, {figure} off" : "cut flaws away",
            (RunKind.Rough, _) => $"{where}, rough at {figure}",
            (_, SawWay.Fence) => $"fence at {figure}",
            (_, SawWay.Guide) => $"guided saw at {figure}",
            _ => $"{where}, stop at {figure}",
        };
    }

    // A circular blade tears where its teeth leave the wood: above the table they enter at the top, under a hand-held saw they leave there.
    private static string Saw(SawWay way) => way switch
    {
        SawWay.Fence => "Table saw, along the fence; good face up",
        SawWay.Sled => "Table saw, on the sled; good face up",
        SawWay.Stop => "Crosscut saw for boards; good face up, a true edge against its fence",
        _ => "Hand-held saw along a straight edge; good face down",
    };

    private IEnumerable<string> Settings(Run run)
    {
        foreach (string thing in _standIns.Behind(run, _lines)) yield return $"This figure rests on the thickness of {thing}, which nobody has read: read it first.";
        string[] flawed = [.. run.Cuts.Select(c => _plan.Runs.Blanks[c.Blank]).Where(b => b.Use == BlankUse.Stock && !b.Flaws.IsEmpty).Select(b => _names.Spoken(b.Id)).Distinct()];
        if (flawed.Length > 0)
            yield return $"{Upper(CutLines.Names(flawed))}: chalk the end that {(flawed.Length > 1 ? "the flaws of each" : "its flaws")} are measured from, the end at 0 of the drawing.";
        if (run.Way == SawWay.Guide)
        {
            foreach (string clamp in new Clamping(_plan, _names).Of(run)) yield return clamp;
            if (run.Kind == RunKind.True && run.Cuts.Any(c => _lines.Sides.SquareTo(c) is not null))
                yield return "Measure along the true side that the cut is to be square to, and carry the line over with a large square: a raw side is seldom square.";
        }
        if (run.Kind == RunKind.Rough) yield return "The figure holds what the cut runs beyond the line: add nothing. What comes off is trued there with its last part; what remains is true at this cut.";
        if (Planing(run) is { } planing) yield return planing;
        if (run.Kind == RunKind.Clear) yield return "The wood beyond the mark is good.";
        if (run.Trial is { } trial) yield return $"Try the setting on waste first: {TrialWords(trial)}. Measure it.";
        if (run.Cuts.Length > 1 && run.Kind is RunKind.Size or RunKind.Lane) yield return "Cut one and measure it before the rest.";
    }

    // A run that trues has no figure of its own: each side loses what its stock says.
    private static bool HasOneFigure(Run run) => run.Figure.Sign > 0 || run.Cuts.Select(c => (c.Axis, c.Figure)).Distinct().Count() == 1;

    private static Length Figure(Run run) => run.Figure.Sign > 0 ? run.Figure : run.Cuts[0].Figure;

    private string TrialWords(int trial)
    {
        RunBlank waste = _plan.Runs.Blanks[trial];
        (Run Run, RunCut Cut) made = _plan.Runs.Runs.SelectMany(r => r.Cuts.Select(c => (r, c))).First(m => m.c.Off == trial || m.c.Rest == trial);
        return $"{_lines.MaterialOf(waste)} {_lines.Size(waste)}, left of {_names.Spoken(made.Cut.Blank)} in run {made.Run.Number}";
    }

    private IEnumerable<string> Notes(Run run)
    {
        foreach (string support in LongWood.Supports(_plan, run, _names)) yield return support;
        foreach (string hold in new ShortWood(_plan, _names).Holds(run)) yield return hold;
        string[] two = [.. run.Cuts.Where(c => c.TakesTwo).Select(c => _names.Spoken(c.Blank)).Distinct()];
        if (two.Length > 0) yield return $"Two people for {CutLines.Names(two)}: {(two.Length > 1 ? "each" : "it")} may weigh more than {WeightWords.Short(_plan.Source.Shop.Lift, _plan.Set.Piece.Shown)}.";
        if (run.Cuts.Any(c => c.NeedsCarrier)) yield return "Narrow strip: with a carrier that holds it down and brings it past the blade, never with a hand or a push stick alone.";
        // Common practice, no source.
        string[] through = [.. run.Cuts.Where(c => c.Axis == GrainAxis.Across && !_plan.Runs.Blanks[c.Blank].Flaws.IsEmpty).Select(c => _names.Spoken(c.Blank)).Distinct()];
        if (through.Length > 0) yield return $"{Upper(CutLines.Names(through))} {(through.Length > 1 ? "are" : "is")} ripped through a flaw: look at it first; a loose knot comes out at the blade, so knock it out before.";
    }

    // What remains is planed before it is at the fence again; a sawn edge there would bring the saw marks into the next lane.
    private string? Planing(Run run)
    {
        if (run.Cuts.FirstOrDefault(c => c.Planed.Sign > 0 || c.PlanedRest.Sign > 0) is not { } lane) return null;
        string rest = lane.PlanedRest.Sign > 0 ? $", and {_bare.Text(lane.PlanedRest)} off the sawn edge of what remains unless that is waste: the planed edge lies at the fence for the next rip" : "";
        return $"After each rip plane {_bare.Text(lane.Planed)} off the sawn edge of the lane{rest}.";
    }

    private static string Upper(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    // At one setting of the fence lanes may be ripped off boards, and strips off sheets.
    private bool Rips(Run run) => run.Kind == RunKind.Lane || (run.Way == SawWay.Fence && run.Cuts.Any(c => !_names.IsSheet(_plan.Runs.Blanks[c.Blank].Material)));

    private IEnumerable<string> Keys(Run run)
    {
        yield return run.Way switch { SawWay.Fence => "fence", SawWay.Sled => "sled", SawWay.Stop => "board saw", _ => "guide" };
        if (Rips(run)) yield return "rip";
    }
}

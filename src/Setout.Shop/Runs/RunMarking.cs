using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>Makes one entry of the log of a run of a printed plan: the parts that came off it, the wood it took, the wood it left. Pure.</summary>
public static class RunMarking
{
    /// <summary>The entry, or why there can be none.</summary>
    /// <param name="source">The texts as they are now.</param>
    /// <param name="set">The piece set out from them.</param>
    /// <param name="plan">The printed plan.</param>
    /// <param name="number">The number of the run.</param>
    /// <param name="id">Of the entry.</param>
    /// <param name="at">When.</param>
    public static (MarkEntry? Entry, Finding? Refusal) Of(PieceSource source, SetPiece set, SawnPlan plan, int number, string id, string at)
    {
        if (plan.Texts != source.TextHash) return Refuse("run.other-texts", "The plan was made of another piece file or shop file than they are now.", source.Piece.Hand.Say("Make the plan anew, and mark the runs of that one. What you have cut by the old one, mark part by part: setout mark FILE cut KEY --blank NAME.", $"{Anew(source.Piece)}, and mark the runs of that one. What you have cut by the old one, mark part by part."));
        if (plan.Runs.Runs.FirstOrDefault(r => r.Number == number) is not { } run)
            return Refuse("run.unknown", plan.Runs.Runs.IsEmpty ? "The plan has no runs." : $"The plan has no run {number}.", plan.Runs.Runs.IsEmpty ? "There is nothing to saw; mark parts by their keys." : $"Name a run from 1 to {plan.Runs.Runs.Length}.");
        if (WoodLedger.EntryOf(source.Log, plan.Id, number) is { } there) return Refuse("run.marked", $"Run {number} is marked already, by the mark of {EntryTime.Say(there.At)}.", $"Mark the run that you cut; or void that one first{source.Piece.Hand.Void(there.Id)}.");
        RunBlank[] begun = [.. plan.TakenBy(run)];
        foreach (RunBlank blank in begun)
            if (plan.MadeBy(blank.Id) is { } earlier && WoodLedger.EntryOf(source.Log, plan.Id, earlier.Number) is null)
                return Refuse("run.earlier", $"Run {number} cuts what run {earlier.Number} leaves, and that run is not marked.", $"Mark run {earlier.Number} first.");
        ImmutableArray<TakenWood> took = TakenBy(source, set, plan, run);
        if (WoodInHand.Missing(source, set, took) is { } gone) return Refuse("run.wood-gone", $"Run {number} cuts {gone.Words}", gone.Remedy);
        RunBlank[] left = [.. plan.LeftBy(run)];
        if (Keys(set, plan, [.. left.Where(b => b.Use == BlankUse.Part)], out ImmutableArray<string> keys) is { } refusal) return (null, refusal);
        return (new(id, at, Progress.Cut, keys, Marking.Figures(set, Progress.Cut, keys, false))
        {
            Chosen = Marking.Chosen(set, Progress.Cut, keys),
            Run = number,
            Plan = plan.Id,
            Took = took,
            Left = [.. left.Where(b => b.Use is BlankUse.Keep or BlankUse.Work or BlankUse.Waiting).Select(b => Left(source, plan, run, b))],
        }, null);
    }

    /// <summary>The wood that a run begins to cut: what has been bought and put into the rack since the plan was made comes from there.</summary>
    /// <param name="source">The texts as they are now.</param>
    /// <param name="set">The piece set out from them.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="run">The run.</param>
    public static ImmutableArray<TakenWood> TakenBy(PieceSource source, SetPiece set, SawnPlan plan, Run run)
    {
        TakenWood As(RunBlank blank) => Taken(source, plan, blank);
        ImmutableArray<TakenWood> took = [.. plan.TakenBy(run).Select(As)];
        if (took.All(w => w.Source != WoodSource.Bought)) return took;
        var bought = new BoughtSince(source, set, plan, As);
        return [.. took.Select(bought.Of)];
    }

    /// <summary>The run to be cut next: the first that no entry marks; null when all are.</summary>
    public static Run? Next(Log log, SawnPlan plan) => plan.Runs.Runs.FirstOrDefault(r => WoodLedger.EntryOf(log, plan.Id, r.Number) is null);

    /// <summary>Begins a sentence that asks for another plan.</summary>
    internal static string Anew(Piece piece) => piece.Hand.Say("Make the plan anew", "Plan what is left anew");

    private static (MarkEntry?, Finding?) Refuse(string code, string words, string remedy) => (null, new(code, Severity.Stop, "", words, remedy));

    // The names of members that are still to be cut, each part at the figure that is asked for now.
    private static Finding? Keys(SetPiece set, SawnPlan plan, RunBlank[] made, out ImmutableArray<string> keys)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        var found = ImmutableArray.CreateBuilder<string>();
        keys = [];
        foreach (IGrouping<string, RunBlank> of in made.GroupBy(b => b.PartId))
        {
            if (set.Parts.FirstOrDefault(p => p.Key == of.Key) is not { } part) return new("run.moved", Severity.Stop, of.Key, $"The piece has no part {of.Key} any more.", $"{Anew(set.Piece)}.");
            foreach (RunBlank blank in of)
            {
                (Length length, Length width) = blank.Turn == Turn.None ? (blank.Along, blank.Across) : (blank.Across, blank.Along);
                bool isSheet = set.Piece.Materials[part.Material] is Panel;
                if (length == set.ToCut(part.Length) && (!isSheet || width == set.ToCut(part.Width))) continue;
                (string word, Length cut, Length asked, QuantityKey key) = length != set.ToCut(part.Length) ? ("length", length, set.ToCut(part.Length), part.Length.Exact) : ("width", width, set.ToCut(part.Width), part.Width.Exact);
                return new("run.moved", Severity.Stop, part.Key, $"The plan cuts {part.Name} to a {word} of {format.Text(cut)}; by what has been read since it is {format.Text(asked)}.",
                    $"{Anew(set.Piece)}. {set.Piece.Hand.Say($"If it is cut already: setout mark FILE cut {part.Key} --to \"{key}={NamedLength.Exactly(cut.ToExact())}\" --blank NAME, with the blank it came from.", "If it is cut already, mark it cut by itself, and read what it came to.")}");
            }
            string[] uncut = [.. Enumerable.Range(1, part.Count).Where(i => set.Facts.StateOf(part.Key, i) == PartState.Planned).Select(i => part.Count == 1 ? part.Key : BenchFacts.Member(part.Key, i))];
            if (uncut.Length < of.Count()) return new("run.part-cut", Severity.Stop, part.Key, $"{of.Count()} of {part.Name} come off this run, and {uncut.Length} of them {(uncut.Length == 1 ? "is" : "are")} still to be cut by the log.", $"Void the entry that marks them if this run made them, or {set.Piece.Hand.Say("make the plan anew", "plan what is left anew")}.");
            found.AddRange(uncut.Take(of.Count()));
        }
        keys = found.ToImmutable();
        return null;
    }

    private static TakenWood Taken(PieceSource source, SawnPlan plan, RunBlank blank)
    {
        SawnMaterial material = plan.Materials[blank.Material];
        if (plan.MadeBy(blank.Id) is { } earlier) return new(material.Name, WoodSource.Blank, NameOf(source, plan, earlier, blank), null);
        SawnStock stock = material.Stock[blank.Stock];
        return new(material.Name, stock.Source, stock.Name, stock.Source == WoodSource.Blank ? null : SizeOf(material, blank, stock.Section));
    }

    private static LeftWood Left(PieceSource source, SawnPlan plan, Run run, RunBlank blank)
    {
        SawnMaterial material = plan.Materials[blank.Material];
        StickSection? section = material.Stock[blank.Stock] is { Section: { } whole, Lane: { } lane } && blank.Across > lane ? StickSection.Of(whole.Thickness, blank.Across.ToExact()) : null;
        return new(material.Name, NameOf(source, plan, run, blank), SizeOf(material, blank, section), blank.Use);
    }

    private static LoggedSize SizeOf(SawnMaterial material, RunBlank blank, StickSection? section) => new(blank.Along, material.IsSheet ? blank.Across : null)
    {
        Section = section,
        Trim = blank.Trim,
        Flaws = [.. blank.Flaws.Select(f => new Flaw(f.From, f.To))],
    };

    // What the pages call it, the run that left it and the plan: what remains of a blank is called as it was, and another plan calls its sheets the same. Two pieces of one text may have
    // plans that are the same to the last sign, so the logs of all are looked at, with what is void.
    private static string NameOf(PieceSource source, SawnPlan plan, Run run, RunBlank blank)
    {
        string called = plan.Names[blank.Id];
        // Waste bears the name of what it came off, and nobody chalks it on.
        bool isAlone = called.Length > 0 && plan.LeftBy(run).All(b => b.Id == blank.Id || b.Use == BlankUse.Waste || plan.Names[b.Id] != called);
        string name = $"{(isAlone ? called : $"{called}{blank.Id}.")}-r{run.Number}-";
        // Once it is in the log it is called so, whatever the others have come to say since.
        if (WoodLedger.EntryOf(source.Log, plan.Id, run.Number)?.Left.FirstOrDefault(l => l.Name.StartsWith(name, StringComparison.Ordinal) && l.Name[name.Length..].All(char.IsAsciiHexDigitLower)) is { } left) return left.Name;
        HashSet<string> known = [.. source.Log.Entries.OfType<MarkEntry>().Where(e => e.Plan != plan.Id).Concat(source.Others.SelectMany(o => o.Log.Entries.OfType<MarkEntry>())).SelectMany(e => e.Left).Select(l => l.Name)];
        return Endings(plan.Id).Select(e => name + e).First(n => !known.Contains(n));
    }

    private static IEnumerable<string> Endings(string plan)
    {
        yield return plan[..4];
        yield return plan;
        for (int i = 1; ; i++) yield return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{plan} {i}"))))[..8];
    }
}

using System.Collections.Immutable;
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
        if (plan.Texts != source.TextHash) return Refuse("run.other-texts", "The plan was made of another piece file or shop file than they are now.", "Make the plan anew, and mark the runs of that one. What you have cut by the old one, mark part by part: setout mark FILE cut KEY --blank NAME.");
        if (plan.Runs.Runs.FirstOrDefault(r => r.Number == number) is not { } run)
            return Refuse("run.unknown", plan.Runs.Runs.IsEmpty ? "The plan has no runs." : $"The plan has no run {number}.", plan.Runs.Runs.IsEmpty ? "There is nothing to saw; mark parts by their keys." : $"Name a run from 1 to {plan.Runs.Runs.Length}.");
        if (WoodLedger.EntryOf(source.Log, plan.Id, number) is { } there) return Refuse("run.marked", $"Run {number} is marked already, by entry {there.Id}.", $"Mark the run that you cut; or void that one first: setout void FILE {there.Id}.");
        WoodLedger ledger = WoodLedger.Of(source.Log);
        var took = ImmutableArray.CreateBuilder<TakenWood>();
        foreach (RunBlank blank in plan.TakenBy(run))
        {
            if (plan.MadeBy(blank.Id) is { } earlier && WoodLedger.EntryOf(source.Log, plan.Id, earlier.Number) is null)
                return Refuse("run.earlier", $"Run {number} cuts what run {earlier.Number} leaves, and that run is not marked.", $"Mark run {earlier.Number} first.");
            TakenWood wood = Taken(source.Log, plan, blank);
            bool isThere = wood.Source == WoodSource.Blank ? ledger.Blanks.Any(b => b.Name == wood.Name) : wood.Source == WoodSource.Bought || IsInHand(source, set, plan, blank);
            if (!isThere) return Refuse("run.wood-gone", $"Run {number} cuts {(wood.Name.Length > 0 ? wood.Name : "stock")} of {wood.Of}, which is gone by the log.", "Make the plan anew; or void the entry that took it.");
            took.Add(wood);
        }
        RunBlank[] left = [.. plan.LeftBy(run)];
        if (Keys(set, plan, [.. left.Where(b => b.Use == BlankUse.Part)], out ImmutableArray<string> keys) is { } refusal) return (null, refusal);
        return (new(id, at, Progress.Cut, keys, Marking.Figures(set, Progress.Cut, keys, false))
        {
            Chosen = Marking.Chosen(set, Progress.Cut, keys),
            Run = number,
            Plan = plan.Id,
            Took = took.ToImmutable(),
            Left = [.. left.Where(b => b.Use is BlankUse.Keep or BlankUse.Work or BlankUse.Waiting).Select(b => Left(source.Log, plan, run, b))],
        }, null);
    }

    /// <summary>The run to be cut next: the first that no entry marks; null when all are.</summary>
    public static Run? Next(Log log, SawnPlan plan) => plan.Runs.Runs.FirstOrDefault(r => WoodLedger.EntryOf(log, plan.Id, r.Number) is null);

    private static (MarkEntry?, Finding?) Refuse(string code, string words, string remedy) => (null, new(code, Severity.Stop, "", words, remedy));

    // The names of members that are still to be cut, each part at the figure that is asked for now.
    private static Finding? Keys(SetPiece set, SawnPlan plan, RunBlank[] made, out ImmutableArray<string> keys)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Unit);
        var found = ImmutableArray.CreateBuilder<string>();
        keys = [];
        foreach (IGrouping<string, RunBlank> of in made.GroupBy(b => b.PartId))
        {
            if (set.Parts.FirstOrDefault(p => p.Key == of.Key) is not { } part) return new("run.moved", Severity.Stop, of.Key, $"The piece has no part {of.Key} any more.", "Make the plan anew.");
            foreach (RunBlank blank in of)
            {
                (Length length, Length width) = blank.Turn == Turn.None ? (blank.Along, blank.Across) : (blank.Across, blank.Along);
                bool isSheet = set.Piece.Materials[part.Material] is Panel;
                if (length == set.ToCut(part.Length) && (!isSheet || width == set.ToCut(part.Width))) continue;
                (string word, Length cut, Length asked, QuantityKey key) = length != set.ToCut(part.Length) ? ("length", length, set.ToCut(part.Length), part.Length.Exact) : ("width", width, set.ToCut(part.Width), part.Width.Exact);
                return new("run.moved", Severity.Stop, part.Key, $"The plan cuts {part.Name} to a {word} of {format.Text(cut)}; by what has been read since it is {format.Text(asked)}.",
                    $"Make the plan anew. If it is cut already: setout mark FILE cut {part.Key} --to \"{key}={format.Text(cut)}\" --blank NAME, with the blank it came from.");
            }
            string[] uncut = [.. Enumerable.Range(1, part.Count).Where(i => set.Facts.StateOf(part.Key, i) == PartState.Planned).Select(i => part.Count == 1 ? part.Key : BenchFacts.Member(part.Key, i))];
            if (uncut.Length < of.Count()) return new("run.part-cut", Severity.Stop, part.Key, $"{of.Count()} of {part.Name} come off this run, and {uncut.Length} of them {(uncut.Length == 1 ? "is" : "are")} still to be cut by the log.", "Void the entry that marks them if this run made them, or make the plan anew.");
            found.AddRange(uncut.Take(of.Count()));
        }
        keys = found.ToImmutable();
        return null;
    }

    private static TakenWood Taken(Log log, SawnPlan plan, RunBlank blank)
    {
        SawnMaterial material = plan.Materials[blank.Material];
        if (plan.MadeBy(blank.Id) is { } earlier) return new(material.Name, WoodSource.Blank, NameOf(log, plan, earlier, blank), null);
        SawnStock stock = material.Stock[blank.Stock];
        return new(material.Name, stock.Source, stock.Name, stock.Source == WoodSource.Blank ? null : SizeOf(material, blank, stock.Section));
    }

    // Another plan, or a hand that wrote the log, may have taken what stood in the rack when this plan was made.
    private static bool IsInHand(PieceSource source, SetPiece set, SawnPlan plan, RunBlank blank)
    {
        SawnMaterial material = plan.Materials[blank.Material];
        SawnStock stock = material.Stock[blank.Stock];
        Length? across = material.IsSheet ? blank.Across : null;
        return StockOffers.For(set.Piece.Materials[material.Name], source.ShopInHand, set)
            .Any(l => l.Size.InHand > 0 && (l.Size.Along, l.Size.Across, l.Size.Name) == (blank.Along, across, stock.Name) && (l.Rip is null ? null : l.Section) == stock.Section);
    }

    private static LeftWood Left(Log log, SawnPlan plan, Run run, RunBlank blank)
    {
        SawnMaterial material = plan.Materials[blank.Material];
        StickSection? section = material.Stock[blank.Stock] is { Section: { } whole, Lane: { } lane } && blank.Across > lane ? StickSection.Of(whole.Thickness, blank.Across.ToExact()) : null;
        return new(material.Name, NameOf(log, plan, run, blank), SizeOf(material, blank, section), blank.Use);
    }

    private static LoggedSize SizeOf(SawnMaterial material, RunBlank blank, StickSection? section) => new(blank.Along, material.IsSheet ? blank.Across : null)
    {
        Section = section,
        Trim = blank.Trim,
        Flaws = [.. blank.Flaws.Select(f => new Flaw(f.From, f.To))],
    };

    // What the pages call it, the run that left it and the plan: what remains of a blank is called as it was, and another plan calls its sheets the same.
    private static string NameOf(Log log, SawnPlan plan, Run run, RunBlank blank)
    {
        string called = plan.Names[blank.Id];
        bool isAlone = called.Length > 0 && plan.LeftBy(run).All(b => b.Id == blank.Id || plan.Names[b.Id] != called);
        string name = $"{(isAlone ? called : $"{called}{blank.Id}.")}-r{run.Number}-";
        bool isTaken = log.Entries.OfType<MarkEntry>().Any(e => e.Plan != plan.Id && e.Left.Any(l => l.Name == name + plan.Id[..4]));
        return isTaken ? name + plan.Id : name + plan.Id[..4];
    }
}

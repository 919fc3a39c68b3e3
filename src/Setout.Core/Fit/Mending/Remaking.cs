using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>Trimming, taking off, cutting anew and exchanging: a remake that settled, as work with its minutes, its wood and its words.</summary>
internal static class Remaking
{
    // Narrower than this a strip wants a push stick. Common practice, no source.
    private static readonly ExactLength s_narrow = ExactLength.FromInches(3);

    /// <summary>Each made part that moves the gap, to the figure that the plan asks for, or else to one that brings the gap in.</summary>
    public static IEnumerable<Remedy> For(Bench bench, Gap gap, ImmutableArray<Blank> blanks)
    {
        bool IsIn(SetPiece set) => Proof.IsInside(set, gap.Key);
        foreach ((Part part, PartSize size) in bench.MadeIn(gap.Key))
        {
            Remedy? planned = Of(bench, part, size, null, IsIn, blanks, gap);
            if (planned is not null) yield return planned;
            // Where the plan's figure does not do, another may; and where it takes others with it, one nearer by may leave them alone.
            if (planned is { Parts.Length: 1 } || !bench.Reach(gap.Key).ContainsKey(size.AsCut) || bench.GoesByBought(size)) continue;
            ExactLength now = bench.Set.Worked[size.AsCut];
            Remedy? solved = bench.Figures(gap, size.AsCut, bench.Set.Grid.Step).Where(f => f.Sign > 0 && (f - now).Abs() <= Changing.Most)
                .Select(f => Of(bench, part, size, f, IsIn, blanks, gap)).FirstOrDefault(r => r is not null && (planned is null || r.Parts.Length < planned.Parts.Length));
            if (solved is not null) yield return solved;
        }
    }

    /// <summary>One size of a part, with all that follows it.</summary>
    /// <param name="bench">The bench.</param>
    /// <param name="part">The part.</param>
    /// <param name="size">The size that is to change.</param>
    /// <param name="figure">To what; null for what the plan asks.</param>
    /// <param name="claim">What must hold then.</param>
    /// <param name="blanks">Wood to cut anew from.</param>
    /// <param name="gap">The gap to say the landing of; null for none.</param>
    public static Remedy? Of(Bench bench, Part part, PartSize size, ExactLength? figure, Func<SetPiece, bool> claim, ImmutableArray<Blank> blanks, Gap? gap = null)
    {
        var remake = new Remake(bench);
        return remake.TryAdd(part, size, figure) && remake.Settle(claim) is { } settled ? Written(bench, remake, settled.Amendments, settled.After, blanks, null, gap) : null;
    }

    /// <summary>Slides changed for those that would be picked now, with the sides that were made for the old ones.</summary>
    public static Remedy? Exchange(Bench bench, QuantityKey slide, Func<SetPiece, bool> claim, ImmutableArray<Blank> blanks)
    {
        ExactLength other = bench.Set.Worked.Values[slide].Expected;
        if (other == bench.Set.Worked[slide]) return null;
        var remake = new Remake(bench) { Besides = [new(slide, other, AmendmentKind.Bought)] };
        foreach (Part side in bench.Set.Parts.Where(p => p.Role == PartRole.BoxSide && new QuantityKey(p.Key).Owner == slide.Owner && bench.IsMade(p)))
            if (!remake.TryAdd(side, side.Length)) return null;
        return remake.Settle(claim) is { } settled ? Written(bench, remake, settled.Amendments, settled.After, blanks, (slide, other), null) : null;
    }

    private static Remedy Written(
        Bench bench, Remake remake, ImmutableArray<Amendment> amendments, SetPiece after, ImmutableArray<Blank> blanks, (QuantityKey Key, ExactLength Length)? slide, Gap? gap)
    {
        Part[] parts = [.. remake.Parts];
        var rack = new Rack(blanks);
        var steps = ImmutableArray.CreateBuilder<string>();
        var settings = new HashSet<(string Material, string Word, ExactLength Figure)>();
        int minutes = 0;
        string caution = "";
        Part[] boxes = [.. parts.Where(p => p.Role == PartRole.BoxEnd && remake.IsAnew(p) && bench.IsTogether(p))];
        if (slide is { } bought)
        {
            minutes += RemedyMinutes.Of("exchange");
            steps.Add($"Change the slides of drawer {bought.Key.Owner} for a pair of {bench.Say(bought.Length)}, if the shop takes the old ones back");
        }
        foreach (Part part in parts)
        {
            int count = remake.IsAnew(part) && bench.IsTogether(part) ? part.Count : bench.Made(part);
            string of = count > 1 ? $"{part.Name} ({count})" : part.Name;
            bool comesOff = bench.IsTogether(part) && !bench.IsFast(part);
            minutes += (count * RemedyMinutes.Of(remake.IsAnew(part) ? "recut" : "trim")) + (comesOff ? count * RemedyMinutes.Of("take-off") : 0);
            foreach (PartSize size in remake.SizesOf(part)) settings.Add((part.Material, bench.Word(part, size), after.Worked[size.ToCut]));
            string off = comesOff ? "Take off, " : "", on = comesOff ? ", and fix it again" : "";
            if (remake.IsAnew(part))
            {
                rack.Take(part, after.Worked[part.Length.ToCut], after.Worked[part.Width.ToCut], count, bench.IsStick(part));
                steps.Add($"{off}{(comesOff ? "cut" : "Cut")} anew: {of}, {bench.Say(after.Worked[part.Length.ToCut])} x {bench.Say(after.Worked[part.Width.ToCut])}{on}");
                caution = caution.Length > 0 ? caution : "saw";
                continue;
            }
            foreach (PartSize size in remake.SizesOf(part))
            {
                ExactLength figure = after.Worked[size.ToCut], less = bench.Set.Worked[size.AsCut] - figure;
                steps.Add($"{off}{(comesOff ? "trim" : "Trim")} {bench.Say(less)} off the {bench.Word(part, size)} of {of}, to {bench.Say(figure)}{on}");
                caution = Worse(caution, size == part.Length ? "crosscut" : figure < s_narrow ? "narrow" : "saw");
            }
        }
        minutes += (settings.Count * RemedyMinutes.Of("setting")) + (boxes.Length * RemedyMinutes.Of("box"));
        foreach (Part end in boxes)
        {
            string drawer = new QuantityKey(end.Key).Owner;
            // A front that hangs on the old box goes over to the new one.
            if (bench.Set.Parts.Any(p => p.Role == PartRole.FalseFront && new QuantityKey(p.Key).Owner == drawer && bench.IsTogether(p)))
            {
                minutes += RemedyMinutes.Of("take-off");
                steps.Add($"Take the front of drawer {drawer} off the old box and fix it to the new one");
            }
            steps.Add($"The box of drawer {drawer} is glued: make a whole new one of these parts and read its width");
        }
        StockUse use = rack.Use;
        if (slide is not null) use = use with { MustBuy = true, Words = string.Join("; ", new[] { "a pair of slides", use.Words }.Where(w => w.Length > 0)) };
        ImmutableArray<GapMove> moves = bench.Proof.Moves(after);
        string words = $"{string.Join("; ", steps.Select((s, i) => i == 0 ? s : char.ToLowerInvariant(s[0]) + s[1..]))}{(gap is null ? "" : $": {gap.Name} comes to {bench.Say(after.Worked[gap.Key])}")}.";
        RemedyKind kind = slide is not null ? RemedyKind.Exchange
            : parts.Any(remake.IsAnew) ? RemedyKind.Recut
            : parts.Any(bench.IsTogether) ? RemedyKind.TakeApart
            : RemedyKind.Trim;
        return new(kind, words, minutes, use, [.. steps.Select(s => s + ".")], amendments, Acts(bench, remake, parts, after), caution, [.. parts.Select(p => p.Key)], moves);
    }

    // A small part crosscut at the saw hurts soonest, then a narrow strip.
    private static string Worse(string a, string b)
    {
        string[] order = ["", "saw", "narrow", "crosscut"];
        return Array.IndexOf(order, a) >= Array.IndexOf(order, b) ? a : b;
    }

    private static ImmutableArray<MendingAct> Acts(Bench bench, Remake remake, Part[] parts, SetPiece after)
    {
        var acts = ImmutableArray.CreateBuilder<MendingAct>();
        foreach (Part end in parts.Where(p => p.Role == PartRole.BoxEnd && remake.IsAnew(p)))
            if (bench.PinOf(Bench.Built(end)) is { EntryId.Length: > 0 } read) acts.Add(Bench.Void(read.EntryId));
        foreach (Part part in parts)
        {
            PartSize[] sizes = [.. remake.SizesOf(part)];
            // What only a reading says is read anew; a mark would leave the reading standing.
            PartSize[] read = [.. sizes.Where(s => bench.PinOf(s.AsCut) is not null && bench.PinOf(s.ToCut) is null)];
            foreach (PartSize size in read) acts.Add(bench.Record(size.AsCut, after.Worked[size.ToCut]));
            if (sizes.Except(read).Any()) acts.Add(bench.Cut(part, sizes.Except(read), s => after.Worked[s.ToCut]));
        }
        foreach (Amendment slide in remake.Besides.Where(b => b.Kind == AmendmentKind.Bought)) acts.Add(new BoughtAnew(slide.Key.Owner, $"setout mark FILE bought {slide.Key.Owner} --again"));
        return acts.ToImmutable();
    }
}

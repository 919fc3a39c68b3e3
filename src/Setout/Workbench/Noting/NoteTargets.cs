using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Finishes;
using Setout.Core.Workings;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.Noting;

/// <summary>What of a piece a chosen key means when something is marked.</summary>
internal static class NoteTargets
{
    /// <summary>The parts: the one of that key or size; else those of a drawer, door or structure; else those of the drawers of a bank.</summary>
    public static ImmutableArray<Part> PartsOf(SetPiece set, string asked)
    {
        string key = asked.Split('#')[0];
        if (set.Parts.FirstOrDefault(p => p.Key == key) is { } part) return [part];
        if (set.Parts.Where(p => key.StartsWith(p.Key + ".", StringComparison.Ordinal)).MaxBy(p => p.Key.Length) is { } sized) return [sized];
        string owner = new QuantityKey(key).Owner;
        ImmutableArray<Part> owned = [.. set.Parts.Where(p => new QuantityKey(p.Key).Owner == owner)];
        bool IsBank(string of) => of.Length > owner.Length && of.StartsWith(owner, StringComparison.Ordinal) && of[owner.Length..].All(char.IsAsciiDigit);
        // An opening with drawers in it is chosen for its drawers; what carries their slides is the structure's.
        ImmutableArray<Part> bank = set.Openings.Any(o => o.Key == owner) ? [.. set.Parts.Where(p => IsBank(new QuantityKey(p.Key).Owner))] : [];
        return bank.Length > 0 ? bank : owned;
    }

    /// <summary>How far parts have come: <c>2 of 4 cut, 1 assembled</c>.</summary>
    public static string State(SetPiece set, ImmutableArray<Part> parts)
    {
        int all = parts.Sum(p => p.Count);
        int Come(PartState state) => parts.Sum(p => Enumerable.Range(1, p.Count).Count(i => set.Facts.StateOf(p.Key, i) >= state));
        (int cut, int together, int fitted) = (Come(PartState.Cut), Come(PartState.Assembled), Come(PartState.Fitted));
        string held = parts.Where(set.IsHeld).Select(p => p.HeldUntil.Last()).Distinct().ToArray() is { Length: > 0 } until ? $"; waits for a reading of {string.Join(" or ", until.Select(k => FactSentences.NameOf(set, k)))}" : "";
        string Of(int n) => n == all ? all == 1 ? "it is" : "all" : $"{n} of {all}";
        string now = fitted > 0 ? $"{Of(fitted)} fitted" : together > 0 ? $"{Of(together)} assembled" : cut > 0 ? $"{Of(cut)} cut" : all == 1 ? "not cut yet" : $"none of {all} cut yet";
        // A mark alone measures nothing: what is read of a part says more. It may have been cut to another figure than the plan has now.
        Part[] unread = [.. parts.Where(p => set.Facts.CutOf(p) > 0 && new[] { p.Length, p.Width }.All(size => !set.Facts.Pins.ContainsKey(size.AsCut)))];
        bool IsAsPlanned(Part part) => new[] { part.Length, part.Width }.All(size => !set.Worked.Values.TryGetValue(size.ToCut, out Worked? cut) || cut.Over.Sign == 0);
        int finished = parts.Sum(set.Facts.FinishedOf);
        string planned = unread.Length == 0 ? "" : (all == 1, unread.All(IsAsPlanned)) switch
        {
            (true, true) => "; taken as planned",
            (false, true) => "; what was not read is taken as planned",
            (true, false) => "; not read, and not what is planned now",
            (false, false) => "; not all of it was read, nor is it what is planned now",
        };
        string done = finished == 0 ? "" : finished == all ? ", finished" : $", {finished} finished";
        return now + planned + held + done;
    }

    /// <summary>The marks that make sense now.</summary>
    public static ImmutableArray<MarkForm> Marks(OpenPiece piece, string asked, ImmutableArray<Part> parts, string back)
    {
        var marks = ImmutableArray.CreateBuilder<MarkForm>();
        SetPiece set = piece.Set;
        if (parts.Length > 0)
        {
            foreach ((PartState state, string word) in new[] { (PartState.Cut, "cut"), (PartState.Assembled, "assembled"), (PartState.Fitted, "fitted") })
                if (Mark(piece, parts, state, word, back) is { } mark) marks.Add(mark);
            if (Finished(piece, parts, back) is { } finished) marks.Add(finished);
            if (Anew(piece, parts, back) is { } anew) marks.Add(anew);
        }
        if (Bought(piece, asked, back) is { } bought) marks.Add(bought);
        return marks.ToImmutable();
    }

    private static MarkForm? Mark(OpenPiece piece, ImmutableArray<Part> parts, PartState state, string word, string back)
    {
        SetPiece set = piece.Set;
        // A box is put together, a whole drawer fitted; what is next of each member.
        string[] Next(Part part) => [.. Enumerable.Range(1, part.Count).Where(i => set.Facts.StateOf(part.Key, i) == state - 1).Select(i => BenchFacts.Member(part.Key, i))];
        string Keys(IEnumerable<Part> some) => string.Join(' ', some.SelectMany(p => Next(p) is var next && next.Length == p.Count ? [p.Key] : next));
        Part[] open = [.. parts.Where(p => Next(p).Length > 0)];
        if (open.Length == 0) return null;
        var what = new List<Markable>();
        int count = open.Sum(p => Next(p).Length);
        if (count > 1) what.Add(new(Keys(open), open.Length == 1 ? $"all {count}" : $"all of it, {count} parts"));
        string[] owners = [.. open.Select(p => new QuantityKey(p.Key).Owner).Distinct()];
        if (owners.Length > 1)
        {
            foreach (string owner in owners)
            {
                Part[] own = [.. open.Where(p => new QuantityKey(p.Key).Owner == owner)], box = [.. own.Where(p => p.Role is PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom)];
                if (box.Length > 0 && box.Length < own.Length) what.Add(new(Keys(box), $"the box of drawer {owner}"));
                what.Add(new(Keys(own), box.Length > 0 ? $"drawer {owner}, box and front" : owner));
            }
        }
        else
        {
            foreach (Part part in open) if (open.Length > 1) what.Add(new(Keys([part]), part.Name));
            if (open is [var only] && only.Count > 1) what.AddRange(Next(only).Select(m => new Markable(m, $"one of them: #{m.Split('#')[1]}")));
        }
        if (what.Count == 0) what.Add(new(Keys(open), open[0].Name));
        string waits = state == PartState.Cut && open.Any(set.IsHeld) ? "This still waits for a reading. Marked cut now, its figures stand as planned, whatever is read later."
            : state == PartState.Cut ? string.Join(" ", EarlyOpening.CutBy(set, open).Take(1).Select(e => e.OfCutting)) : "";
        return new(FormHead.Of(piece, "mark", back), $"mark-{word}", $"Mark {(count > 1 ? "them" : "it")} {word}", word, [.. what], false, state == PartState.Cut ? Sheets(set, open) : [], false, waits) { About = Of(open), Chosen = NextOfItsSort.In([.. what], piece.Source.Log, word) };
    }

    // Parts by what they belong to, in words.
    private static string Of(IReadOnlyList<Part> parts) => parts is [var one] ? one.Name : string.Join(" and ", parts.GroupBy(p => new QuantityKey(p.Key).Owner).Select(o => o.Any(p => p.Role == PartRole.BoxSide) ? $"drawer {o.Key}" : o.Key));

    // What a finish goes on, once it can be finished.
    private static MarkForm? Finished(OpenPiece piece, ImmutableArray<Part> parts, string back)
    {
        SetPiece set = piece.Set;
        Dictionary<string, PartState> from = FinishWork.Of(set).SelectMany(w => w.Parts).GroupBy(p => p.Part.Key).ToDictionary(g => g.Key, g => g.First().From, StringComparer.Ordinal);
        string[] due = [.. parts.Where(p => from.ContainsKey(p.Key)).SelectMany(p =>
        {
            string[] open = [.. Enumerable.Range(1, p.Count).Where(i => !set.Facts.IsFinished(p.Key, i) && set.Facts.StateOf(p.Key, i) >= from[p.Key]).Select(i => BenchFacts.Member(p.Key, i))];
            return open.Length == p.Count ? [p.Key] : open;
        })];
        if (due.Length == 0) return null;
        string Name(string key) => key.Split('#') is [var part, var number] ? $"one of them: #{number} of {part}" : set.Parts.First(p => p.Key == key).Name;
        Markable[] what = due.Length == 1 ? [new(due[0], Name(due[0]))] : [new(string.Join(' ', due), "all of it"), .. due.Select(d => new Markable(d, Name(d)))];
        return new(FormHead.Of(piece, "mark", back), "mark-finished", $"Mark {(due.Length > 1 || parts[0].Count > 1 ? "them" : "it")} finished", "finished", [.. what], false, [], false, "") { About = Of(parts) };
    }

    private static MarkForm? Anew(OpenPiece piece, ImmutableArray<Part> parts, string back)
    {
        if (parts is not [var part] || piece.Set.Facts.CutOf(part) == 0) return null;
        Markable[] what = [new(part.Key, part.Count == 1 ? part.Name : $"all {part.Count}"), .. part.Count == 1 ? [] : Enumerable.Range(1, part.Count).Where(i => piece.Set.Facts.StateOf(part.Key, i) >= PartState.Cut).Select(i => new Markable(BenchFacts.Member(part.Key, i), $"one of them: #{i}"))];
        return new(FormHead.Of(piece, "mark", back), "mark-anew", "Cut anew", "cut", [.. what], false, Sheets(piece.Set, [part]), true, "It was cut a second time, to what the plan asks for now.") { About = part.Name };
    }

    private static MarkForm? Bought(OpenPiece piece, string asked, string back)
    {
        SetPiece set = piece.Set;
        string owner = new QuantityKey(asked.Split('#')[0]).Owner;
        MarkForm Form(string words, Markable[] what, bool isItem) => new(FormHead.Of(piece, "mark", back), "mark-bought", words, "bought", [.. what], isItem, [], false, "");
        if (set.Piece.Materials.ContainsKey(owner)) return set.Facts.Bought.Contains(owner) ? null : Form($"Mark {owner} bought", [new(owner, owner)], true);
        HardwareItem[] own = [.. set.Hardware.Where(h => h.Key == owner && !ThingsToBuy.MarksOf(set, h).Any(set.Facts.Bought.Contains))];
        return own.Length == 0 || !set.Piece.Keys.ContainsKey(owner) ? null : Form("Mark its hardware bought", [new(owner, string.Join(", ", own.Select(h => h.Name).Distinct()))], true);
    }

    private static ImmutableArray<string> Sheets(SetPiece set, IEnumerable<Part> parts) =>
        parts.Select(p => p.Material).Distinct().ToArray() is [var material] && set.Piece.Materials.GetValueOrDefault(material) is Panel ? NotedKeys.SheetsRead(set, material) : [];
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>Finds what is upset: gaps first, then parts that differ, then what was bought; each in the order of the piece.</summary>
internal static class Upsets
{
    public static IEnumerable<Upset> Of(Bench bench) => [.. Gaps(bench), .. Differing(bench), .. Bought(bench)];

    private static IEnumerable<Upset> Gaps(Bench bench)
    {
        foreach (Gap gap in bench.Set.Gaps)
        {
            if (!bench.Set.Worked.Values.ContainsKey(gap.Key) || Proof.IsInside(bench.Set, gap)) continue;
            ImmutableArray<string> frozen = FrozenIn(bench, gap);
            if (frozen.IsEmpty) continue;
            ExactLength value = bench.Set.Worked[gap.Key];
            bool isOver = value > gap.Most;
            string by = isOver ? $"{bench.Say(value - gap.Most)} more than it may be" : $"{bench.Say(gap.Least - value)} less than it may be";
            yield return new(UpsetKind.GapOut, gap.Key, gap.Name, value, gap.Least, gap.Most, frozen,
                $"{gap.Name}: {bench.Say(value)}, {by} ({bench.Say(gap.Least)} to {bench.Say(gap.Most)}).");
        }
    }

    private static ImmutableArray<string> FrozenIn(Bench bench, Gap gap)
    {
        IReadOnlyDictionary<QuantityKey, Rational> reach = bench.Reach(gap.Key);
        IEnumerable<string> boxes = bench.Set.Parts.Where(p => p.Role == PartRole.BoxSide).Select(Bench.Built).Where(b => bench.PinOf(b) is not null && Bench.Moves(reach, b)).Select(b => b.Text);
        string[] front = Changing.FrontOf(bench, gap) is { } fixedFront ? [fixedFront.Key] : [];
        return [.. bench.MadeIn(gap.Key).Select(m => m.Part.Key).Concat(boxes).Concat(front).Concat(Levelling.Standing(bench, gap)).Distinct(StringComparer.Ordinal)];
    }

    private static IEnumerable<Upset> Differing(Bench bench)
    {
        foreach (Part part in bench.Set.Parts)
        {
            foreach (PartSize size in Bench.Sizes(part))
            {
                if (!bench.Set.Worked.Values.TryGetValue(size.ToCut, out Worked? cut) || cut.Pin is null || cut.Over.Sign == 0) continue;
                // A gap that is out says it better.
                if (bench.GapsOf(part, size).Any(g => !Proof.IsInside(bench.Set, g))) continue;
                string way = cut.Over.Sign > 0 ? "more" : "less";
                yield return new(UpsetKind.PartDiffers, size.ToCut, cut.Quantity.Name, cut.Value, cut.Expected, cut.Expected, [part.Key],
                    $"{part.Name} is cut to a {bench.Word(part, size)} of {bench.Say(cut.Value)}, {bench.Say(cut.Over.Abs())} {way} than the {bench.Say(cut.Expected)} that the plan asks for now.");
            }
        }
    }

    private static IEnumerable<Upset> Bought(Bench bench)
    {
        foreach (Choice choice in bench.Set.Choices)
        {
            if (choice.Decides is not { } decides || bench.PinOf(choice.Key) is null || !bench.Set.Worked.Values.ContainsKey(decides)) continue;
            (ExactLength had, ExactLength room) = (bench.Set.Worked[choice.Key], bench.Set.Worked[decides]);
            if (had <= room) continue;
            yield return new(UpsetKind.BoughtTooLong, choice.Key, choice.Name, had, ExactLength.Zero, room, [choice.Key.Text],
                $"{choice.Name}: {bench.Say(had)} long where {bench.Say(room)} is left, {bench.Say(had - room)} too long.");
        }
    }
}

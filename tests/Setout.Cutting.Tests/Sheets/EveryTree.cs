using Setout.Cutting.Sheets;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>
/// Every cut tree of one sheet for a few parts in whole millimetres, for the fewest settings, the fewest cuts with those, and the best worth of left-overs with both;
/// written without any of the solver's code. Slices are as large as parts beside each other make them, or as a single part of the sheet is.
/// Trees of more than <paramref name="most"/> settings are left out.
/// </summary>
internal sealed class EveryTree(SheetPart[] parts, int kerf, int shortSide, int longSide, int most)
{
    // Worth and cuts add up over a tree, so one number holds both: no worth reaches what a cut counts.
    private static readonly Int128 s_cut = (Int128)1_000_000_000_000_000;

    private readonly Dictionary<(int Set, int Along, int Across, int Stage, bool? Parent), Dictionary<string, Int128>> _known = [];

    /// <summary>The fewest settings, the fewest cuts with them, the most worth with both; null when the sheet does not hold the parts.</summary>
    public (int Settings, int Cuts, Int128 Worth)? Best(int along, int across)
    {
        (int Settings, Int128 Worth)? best = null;
        foreach (bool first in (bool[])[true, false])
            foreach ((string settings, Int128 worth) in Divided((1 << parts.Length) - 1, along, across, 0, first))
                best = Better(best, (settings.Length == 0 ? 0 : settings.Split(' ').Length + (first ? 1 : 0), worth));
        if (Trees((1 << parts.Length) - 1, along, across, 0, null).TryGetValue("", out Int128 whole)) best = Better(best, (0, whole));
        if (best is not { } found) return null;
        int cuts = 0;
        for (; found.Worth < 0; cuts++) found.Worth += s_cut;
        return (found.Settings, cuts, found.Worth);
    }

    private static (int, Int128) Better((int Settings, Int128 Worth)? a, (int Settings, Int128 Worth) b) =>
        a is { } known && (known.Settings, -known.Worth).CompareTo((b.Settings, -b.Worth)) <= 0 ? known : b;

    // The settings of each tree for these parts (bits) in this rectangle, sorted words with a space between, and the most worth with just those.
    private Dictionary<string, Int128> Trees(int set, int along, int across, int stage, bool? parent)
    {
        set = Alike(set);
        if (_known.TryGetValue((set, along, across, stage, parent), out Dictionary<string, Int128>? known)) return known;
        var found = new Dictionary<string, Int128>(StringComparer.Ordinal);
        if (int.IsPow2(set) && Is(parts[int.TrailingZeroCount(set)], along, across)) found[""] = 0;
        else
            foreach (bool axis in (bool[])[true, false])
                if (axis != parent)
                    foreach ((string settings, Int128 worth) in Divided(set, along, across, stage, axis)) Keep(found, settings, worth);
        return _known[(set, along, across, stage, parent)] = found;
    }

    private Dictionary<string, Int128> Divided(int set, int along, int across, int stage, bool isAlong)
    {
        int extent = isAlong ? along : across, other = isAlong ? across : along;
        var found = new Dictionary<string, Int128>(StringComparer.Ordinal);
        Go(set, 0, 0, "", 0);
        return found;

        // The slice of the first part still open takes some of the others with it.
        void Go(int open, int used, int slices, string settings, Int128 worth)
        {
            if (open == 0)
            {
                int left = extent - used;
                if (left == 0 && slices == 1) return;
                worth -= (slices - 1 + (left > 0 ? 1 : 0)) * s_cut;
                if (left > kerf)
                {
                    int rest = left - kerf;
                    if (Math.Min(rest, other) >= shortSide && Math.Max(rest, other) >= longSide) worth += (Int128)rest * other * rest * other;
                }
                Keep(found, settings, worth);
                return;
            }
            int first = open & -open;
            var taken = new HashSet<int>();
            for (int more = open ^ first; ; more = (more - 1) & (open ^ first))
            {
                foreach (int size in taken.Add(Alike(first | more)) ? Sizes(first | more) : [])
                {
                    int end = used + size + (slices > 0 ? kerf : 0);
                    if (end > extent || size == extent) continue;
                    foreach ((string inner, Int128 its) in Trees(first | more, isAlong ? size : along, isAlong ? across : size, stage + 1, isAlong))
                    {
                        string all = Join(settings, Join(inner, $"{stage}{(isAlong ? '|' : '-')}{size}"));
                        if (all.AsSpan().Count(' ') < most) Go(open ^ first ^ more, end, slices + 1, all, worth + its);
                    }
                }
                if (more == 0) break;
            }
        }

        IEnumerable<int> Sizes(int of)
        {
            var sizes = new SortedSet<int>();
            foreach (SheetPart part in parts)
                foreach (int side in Sides(part, isAlong)) sizes.Add(side);
            IEnumerable<int> sums = [-kerf];
            for (int p = 0; p < parts.Length; p++)
                if ((of & (1 << p)) != 0) sums = [.. sums.SelectMany(s => Sides(parts[p], isAlong).Select(side => s + side + kerf).Append(s)).Distinct()];
            sizes.UnionWith(sums.Where(s => s > 0));
            return sizes;
        }
    }

    // Equal parts stand for each other: the first of them are taken.
    private int Alike(int set)
    {
        int alike = 0;
        for (int p = 0; p < parts.Length; p++)
            if ((set & (1 << p)) != 0)
                for (int q = 0; q <= p; q++)
                    if ((alike & (1 << q)) == 0 && ReferenceEquals(parts[q], parts[p]))
                    {
                        alike |= 1 << q;
                        break;
                    }
        return alike;
    }

    private static string Join(string a, string b) =>
        string.Join(' ', a.Split(' ', StringSplitOptions.RemoveEmptyEntries).Union(b.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Order(StringComparer.Ordinal));

    private void Keep(Dictionary<string, Int128> found, string settings, Int128 worth)
    {
        if (settings.AsSpan().Count(' ') < most && (!found.TryGetValue(settings, out Int128 known) || known < worth)) found[settings] = worth;
    }

    private static int Along(SheetPart part) => (int)part.Along.ToMillimetres();

    private static int Across(SheetPart part) => (int)part.Across.ToMillimetres();

    private static int[] Sides(SheetPart part, bool isAlong) =>
        part.Grain == GrainRule.Free ? [Along(part), Across(part)] : [isAlong ? Along(part) : Across(part)];

    private static bool Is(SheetPart part, int along, int across) =>
        (Along(part) == along && Across(part) == across) || (part.Grain == GrainRule.Free && Across(part) == along && Along(part) == across);
}

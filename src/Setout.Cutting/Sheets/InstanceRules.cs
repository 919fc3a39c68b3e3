using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>What a sheet instance is checked for as it is made; each breach is an ArgumentException that says which and why.</summary>
internal static class InstanceRules
{
    public static void CheckParts(ImmutableArray<SheetPart> parts)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        long count = 0;
        foreach (SheetPart part in parts)
        {
            if (string.IsNullOrEmpty(part.Id)) throw new ArgumentException("A part has an empty id.", nameof(parts));
            if (!ids.Add(part.Id)) throw new ArgumentException($"Two parts have the id {part.Id}.", nameof(parts));
            CheckSide(part.Along, $"Part {part.Id} along the grain", nameof(parts));
            CheckSide(part.Across, $"Part {part.Id} across the grain", nameof(parts));
            if (part.Count < 1) throw new ArgumentException($"Part {part.Id} is asked for {part.Count} times; it must be 1 or more.", nameof(parts));
            if (!Enum.IsDefined(part.Grain)) throw new ArgumentException($"Part {part.Id} has the unknown grain rule {part.Grain}.", nameof(parts));
            count += part.Count;
        }
        if (count > SheetInstance.MostParts) throw new ArgumentException($"{count} parts are asked for; at most {SheetInstance.MostParts} are laid out at once.", nameof(parts));
    }

    public static void CheckStock(ImmutableArray<SheetStock> stock)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (SheetStock sheet in stock)
        {
            if (string.IsNullOrEmpty(sheet.Id)) throw new ArgumentException("A stock has an empty id.", nameof(stock));
            if (!ids.Add(sheet.Id)) throw new ArgumentException($"Two stocks have the id {sheet.Id}.", nameof(stock));
            CheckSide(sheet.Along, $"Stock {sheet.Id} along the grain", nameof(stock));
            CheckSide(sheet.Across, $"Stock {sheet.Id} across the grain", nameof(stock));
            foreach (Length trim in (Length[])[sheet.Trim.AlongStart, sheet.Trim.AlongEnd, sheet.Trim.AcrossStart, sheet.Trim.AcrossEnd])
                if (trim.Sign < 0 || trim > SheetInstance.Longest) throw new ArgumentException($"Stock {sheet.Id} has a trim of {trim}; it must lie between 0 and {SheetInstance.Longest}.", nameof(stock));
            if (sheet.TruedAlong.Sign <= 0 || sheet.TruedAcross.Sign <= 0)
                throw new ArgumentException($"Nothing is left of stock {sheet.Id} once its edges are trued ({sheet.TruedAlong} by {sheet.TruedAcross}).", nameof(stock));
            if (sheet.Cost < Money.Zero) throw new ArgumentException($"Stock {sheet.Id} costs {sheet.Cost}; it must be 0 or more.", nameof(stock));
            if (sheet.Limit < 0) throw new ArgumentException($"Stock {sheet.Id} has a limit of {sheet.Limit}; it must be 0 or more.", nameof(stock));
        }
    }

    private static void CheckSide(Length side, string what, string name)
    {
        if (side.Sign <= 0 || side > SheetInstance.Longest)
            throw new ArgumentException($"{what} is {side}; it must be above 0 and at most {SheetInstance.Longest}.", name);
    }

    public static void CheckSlack(Length slack, ImmutableArray<SheetStock> stock)
    {
        if (slack.Sign < 0 || slack > SheetInstance.Longest)
            throw new ArgumentException($"The slack is {slack}; it must lie between 0 and {SheetInstance.Longest}.", nameof(slack));
        foreach (SheetStock sheet in stock)
            if (sheet.TruedAlong <= slack || sheet.TruedAcross <= slack)
                throw new ArgumentException($"Nothing is left of stock {sheet.Id}, {sheet.TruedAlong} by {sheet.TruedAcross} once trued, if a slack of {slack} stays free.", nameof(slack));
    }

    public static void CheckGroups(ImmutableArray<FigureGroup> groups, ImmutableArray<SheetPart> parts)
    {
        if (groups.IsDefault) throw new ArgumentException("The list of figure groups is not set.", nameof(groups));
        Dictionary<string, SheetPart> known = parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var taken = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (FigureGroup group in groups)
        {
            if (string.IsNullOrEmpty(group.Id)) throw new ArgumentException("A figure group has an empty id.", nameof(groups));
            if (!ids.Add(group.Id)) throw new ArgumentException($"Two figure groups have the id {group.Id}.", nameof(groups));
            if (!Enum.IsDefined(group.Axis)) throw new ArgumentException($"Figure group {group.Id} has the unknown direction {group.Axis}.", nameof(groups));
            if (group.PartIds.IsDefault || group.PartIds.Length < 2)
                throw new ArgumentException($"Figure group {group.Id} names {(group.PartIds.IsDefault ? 0 : group.PartIds.Length)} parts; a figure runs through two or more.", nameof(groups));
            CheckMembers(group, known, taken);
        }
    }

    private static void CheckMembers(FigureGroup group, Dictionary<string, SheetPart> known, Dictionary<string, string> taken)
    {
        int? times = null;
        string first = group.PartIds[0];
        foreach ((string id, int mentions) in group.PartIds.CountBy(id => id ?? ""))
        {
            if (!known.TryGetValue(id, out SheetPart? part)) throw new ArgumentException($"Figure group {group.Id} names the part {id}, which there is not.", nameof(group));
            if (!taken.TryAdd(id, group.Id)) throw new ArgumentException($"Part {id} is in the figure groups {taken[id]} and {group.Id}; it can be in one only.", nameof(group));
            if (part.Grain != GrainRule.Keep) throw new ArgumentException($"Part {id} of figure group {group.Id} may be turned; a figure runs through only where the grain is kept.", nameof(group));
            if (part.Count % mentions != 0)
                throw new ArgumentException($"Part {id} is asked for {part.Count} times and named {mentions} times in figure group {group.Id}; the count must be a multiple of that.", nameof(group));
            times ??= part.Count / mentions;
            if (times != part.Count / mentions)
                throw new ArgumentException($"Figure group {group.Id} would be cut {times} times for part {first} and {part.Count / mentions} times for part {id}; all its parts must agree.", nameof(group));
        }
    }
}

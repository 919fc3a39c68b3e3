using System.Collections.Immutable;
using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>
/// Says of a layout that a shop already follows what it is today. Ids of stock follow from how it is had and called; a sheet that was bought, chalked with
/// a name or counted into the rack since is the same wood. So each sheet that is still wanted, and whose cuts come out to the tick on some stock of today, is
/// laid on that stock, and its left-overs are called as the rule of today calls them. No cut is changed. All other sheets stay as they were written.
/// </summary>
public static class EarlierSheets
{
    /// <summary>The layout before in today's words.</summary>
    /// <param name="instance">Of today; whatever layout it holds to is not looked at.</param>
    /// <param name="before">As it was written; it may speak of parts and stock that are gone.</param>
    /// <returns>
    /// The same sheets in the same order. Where several stocks suit a sheet, one in hand under its own id comes first, then what costs less, then its own id, then
    /// the order of the stock. No stock is given to more sheets than there are of it.
    /// </returns>
    public static SheetLayout Today(SheetInstance instance, SheetLayout before)
    {
        Dictionary<string, int> wanted = instance.Parts.ToDictionary(p => p.Id, p => p.Count, StringComparer.Ordinal);
        var suiting = new ImmutableArray<(SheetStock Stock, LaidSheet Sheet)>[before.Sheets.Length];
        for (int i = 0; i < suiting.Length; i++)
        {
            KeyValuePair<string, int>[] on = [.. PartIds(before.Sheets[i].Root).CountBy(id => id)];
            bool isWanted = on.All(p => wanted.GetValueOrDefault(p.Key) >= p.Value);
            suiting[i] = isWanted ? Suiting(instance, before.Sheets[i]) : [];
            if (!suiting[i].IsEmpty)
                foreach ((string id, int count) in on) wanted[id] -= count;
        }
        Dictionary<string, int> left = instance.Stock.ToDictionary(s => s.Id, s => s.Limit ?? int.MaxValue, StringComparer.Ordinal);
        LaidSheet[] today = [.. before.Sheets];
        var isGiven = new bool[today.Length];
        void Give(int i, Func<SheetStock, bool> may)
        {
            foreach ((SheetStock stock, LaidSheet sheet) in suiting[i])
            {
                if (isGiven[i] || left[stock.Id] < 1 || !may(stock)) continue;
                (today[i], isGiven[i]) = (sheet, true);
                if (stock.Limit is not null) left[stock.Id]--;
            }
        }

        // What lies on a blank in hand keeps it before another sheet may have it.
        for (int i = 0; i < today.Length; i++) Give(i, s => s.Limit is not null && s.Id == before.Sheets[i].StockId);
        for (int i = 0; i < today.Length; i++) Give(i, _ => true);
        return before with { Sheets = [.. today] };
    }

    // The cuts of a sheet add up to its trued size on the tick, so the checker alone tells what they come out on.
    private static ImmutableArray<(SheetStock, LaidSheet)> Suiting(SheetInstance instance, LaidSheet sheet) =>
    [
        .. instance.Stock.OrderBy(s => s.Cost).ThenBy(s => s.Id == sheet.StockId ? 0 : 1)
            .Select(s => (s, new LaidSheet(s.Id, Called(sheet.Root, s.TruedAlong, s.TruedAcross, instance.Keep))))
            .Where(l => SheetChecker.CheckAlone(instance, l.Item2).IsEmpty),
    ];

    private static CutNode Called(CutNode node, Length along, Length across, KeepRule keep) => node switch
    {
        KeepNode or WasteNode => keep.Keeps(along, across) ? KeepNode.Instance : WasteNode.Instance,
        Division division => division with
        {
            Slices = [.. division.Slices.Select(s => s with { Content = division.Axis == GrainAxis.Along ? Called(s.Content, s.Size, across, keep) : Called(s.Content, along, s.Size, keep) })],
        },
        _ => node,
    };

    /// <summary>The id of each part that is cut from a rectangle.</summary>
    internal static IEnumerable<string> PartIds(CutNode node) => node switch
    {
        PartNode part => [part.PartId],
        Division division => division.Slices.SelectMany(s => PartIds(s.Content)),
        _ => [],
    };
}

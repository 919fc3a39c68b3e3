using System.Collections.Immutable;
using System.Globalization;
using Setout.Cutting.Runs;
using Setout.Shop.Texts;

namespace Setout.Shop.Rack;

/// <summary>An entry of the log of a piece.</summary>
/// <param name="By">Whose log.</param>
/// <param name="Entry">The entry; it stands.</param>
public sealed record LoggedMark(ShopPiece By, MarkEntry Entry);

/// <summary>A blank that an entry left.</summary>
/// <param name="By">Whose log.</param>
/// <param name="Entry">The entry.</param>
/// <param name="Wood">What it left, in the words of that piece.</param>
public sealed record LeftBlank(ShopPiece By, MarkEntry Entry, LeftWood Wood)
{
    /// <summary>Its own name, for ever.</summary>
    public string Name => Wood.Name;

    /// <summary>True where another piece may use it: what a piece is cutting on, or keeps whole for a reading, is its own.</summary>
    public bool IsForAll => Wood.Use == BlankUse.Keep;
}

/// <summary>Wood that an entry took.</summary>
/// <param name="By">Whose log.</param>
/// <param name="Entry">The entry.</param>
/// <param name="Wood">What it took, in the words of that piece.</param>
public sealed record TakenByPiece(ShopPiece By, MarkEntry Entry, TakenWood Wood);

/// <summary>
/// What the logs of a shop say of wood: the blanks that are in hand, and what was taken from the rack. It goes by the entries that stand and by names alone, never by their order
/// or by that of the pieces, so that logs kept apart give the same ledger whichever is looked at first. Of the same run of the same plan of one piece one entry counts, and so does an entry
/// that stands in two logs because one began as a copy of the other.
/// </summary>
/// <param name="Blanks">What entries left and none took, piece by piece, in the order of their logs.</param>
/// <param name="Gone">Blanks that were left and taken, each with all that took it.</param>
/// <param name="Taken">What was taken from lines of the rack, in the shop file or in the piece file, in the order of time.</param>
/// <param name="Twice">Entries that mark a run which another entry has marked already: their wood does not count.</param>
/// <param name="Unknown">Blanks that were taken and that no entry left.</param>
public sealed record WoodLedger(
    ImmutableArray<LeftBlank> Blanks, ImmutableArray<(LeftBlank Blank, ImmutableArray<TakenByPiece> By)> Gone, ImmutableArray<TakenByPiece> Taken,
    ImmutableArray<LoggedMark> Twice, ImmutableArray<TakenByPiece> Unknown)
{
    /// <summary>Of one log.</summary>
    public static WoodLedger Of(Log log) => Of([ShopPiece.Of("", log)]);

    /// <summary>Of the logs of the pieces of a shop, in whatever order.</summary>
    public static WoodLedger Of(IEnumerable<ShopPiece> pieces)
    {
        ImmutableArray<LoggedMark>.Builder counted = ImmutableArray.CreateBuilder<LoggedMark>(), twice = ImmutableArray.CreateBuilder<LoggedMark>();
        var runs = new HashSet<(string, string, int)>();
        var known = new Dictionary<string, List<MarkEntry>>(StringComparer.Ordinal);
        foreach (ShopPiece piece in pieces.OrderBy(p => p.Name, StringComparer.Ordinal))
        {
            foreach (MarkEntry entry in piece.Log.Standing.OfType<MarkEntry>().Where(e => e.TellsOfWood))
            {
                if (!known.TryGetValue(entry.Id, out List<MarkEntry>? alike)) known[entry.Id] = alike = [];
                if (alike.Any(e => LogText.SaysTheSame(e, entry))) continue;
                alike.Add(entry);
                if (entry.Run is { } run && !runs.Add((piece.Name, entry.Plan, run))) twice.Add(new(piece, entry));
                else counted.Add(new(piece, entry));
            }
        }
        TakenByPiece[] all = [.. counted.SelectMany(e => e.Entry.Took.Select(w => new TakenByPiece(e.By, e.Entry, w)))];
        LeftBlank[] left = [.. counted.SelectMany(e => e.Entry.Left.Select(l => new LeftBlank(e.By, e.Entry, l))).DistinctBy(l => (l.By.Name, l.Name))];
        ILookup<string, LeftBlank> byName = left.ToLookup(l => l.Name, StringComparer.Ordinal);
        // A blank may stand in the rack under its own name: whoever takes it there takes it here.
        ILookup<(string, string), TakenByPiece> takers = all.Where(t => t.Wood.Source == WoodSource.Blank || (t.Wood.Source != WoodSource.Bought && t.Wood.Name.Length > 0))
            .SelectMany(t => Meant(byName[t.Wood.Name], t).Select(b => (Key: (b.By.Name, b.Name), Taker: t))).ToLookup(t => t.Key, t => t.Taker);
        return new(
            [.. left.Where(l => !takers.Contains((l.By.Name, l.Name)))],
            [.. left.Where(l => takers.Contains((l.By.Name, l.Name))).Select(l => (l, takers[(l.By.Name, l.Name)].ToImmutableArray()))],
            [.. all.Where(t => t.Wood.Source is WoodSource.Rack or WoodSource.Piece).OrderBy(t => TimeOf(t.Entry)).ThenBy(t => t.Entry.Id, StringComparer.Ordinal)],
            twice.ToImmutable(),
            [.. all.Where(t => t.Wood.Source == WoodSource.Blank && !byName.Contains(t.Wood.Name))]);
    }

    /// <summary>The blanks that a piece may use: its own, those that it began together with another, then those that others keep. Of those that share a name, which no two should, one.</summary>
    /// <param name="piece">The name of the piece file.</param>
    public IEnumerable<LeftBlank> For(string piece) => Blanks.Where(b => b.By.Name == piece).Concat(Blanks.Where(b => b.By.Name != piece && (b.IsForAll || b.Entry.With.Contains(piece)))).DistinctBy(b => b.Name);

    /// <summary>Blanks that more than one entry took, which only one of them can have done.</summary>
    public IEnumerable<(LeftBlank Blank, ImmutableArray<TakenByPiece> By)> TakenTwice => Gone.Select(g => (g.Blank, By: g.By.RemoveAll(t => t.Wood.Source != WoodSource.Blank))).Where(g => g.By.Length > 1);

    /// <summary>Blanks of different pieces that bear one name.</summary>
    public IEnumerable<ImmutableArray<LeftBlank>> NamedTwice => Blanks.Concat(Gone.Select(g => g.Blank)).GroupBy(b => b.Name).Where(g => g.Count() > 1).Select(g => g.OrderBy(b => b.By.Name, StringComparer.Ordinal).ToImmutableArray());

    /// <summary>What took a blank of that name; empty where it is in hand, or nobody knows it.</summary>
    public IEnumerable<TakenByPiece> TakersOf(string blank) => Gone.Where(g => g.Blank.Name == blank).SelectMany(g => g.By);

    /// <summary>The entry that marks a run of a plan; null when none that stands does.</summary>
    /// <param name="log">The log.</param>
    /// <param name="plan">The plan's figure of inputs.</param>
    /// <param name="run">The number, from 1.</param>
    public static MarkEntry? EntryOf(Log log, string plan, int run) => log.Standing.OfType<MarkEntry>().FirstOrDefault(e => e.Plan == plan && e.Run == run);

    /// <summary>Standing entries, of whatever piece, that took what an entry left: they have to be voided before it.</summary>
    /// <param name="by">Whose log the entry stands in.</param>
    /// <param name="on">The entry.</param>
    public ImmutableArray<LoggedMark> Built(ShopPiece by, MarkEntry on)
    {
        HashSet<string> names = [.. on.Left.Select(l => l.Name)];
        bool isAlone = on.Run is null || by.Log.Standing.OfType<MarkEntry>().Count(e => e.Plan == on.Plan && e.Run == on.Run) < 2;
        return isAlone ? [.. Gone.Where(g => g.Blank.By.Name == by.Name && names.Contains(g.Blank.Name)).SelectMany(g => g.By).Where(t => t.By.Name != by.Name || t.Entry.Id != on.Id).Select(t => new LoggedMark(t.By, t.Entry)).DistinctBy(t => (t.By.Name, t.Entry.Id))] : [];
    }

    // Whoever left a blank of the name means that one; anybody else could mean each of those that bear it.
    private static IEnumerable<LeftBlank> Meant(IEnumerable<LeftBlank> named, TakenByPiece taker) =>
        named.FirstOrDefault(b => b.By.Name == taker.By.Name) is { } own ? [own] : named;

    private static DateTimeOffset TimeOf(MarkEntry entry) =>
        DateTimeOffset.TryParse(entry.At, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset time) ? time : DateTimeOffset.MinValue;
}

using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Plans;

/// <summary>Like parts whose figure moved by the same way from one figure to another: one cut to set anew.</summary>
/// <param name="Marks">The marks pencilled on them, the first of many.</param>
/// <param name="What">What they are and which size, such as <c>ends of boxes, length</c>.</param>
/// <param name="Before">The figure before, without its unit.</param>
/// <param name="After">The figure after.</param>
/// <param name="By">By how much, such as <c>1/32 shorter</c>.</param>
/// <param name="Through">The keys that carried it, from what was read to the size.</param>
/// <param name="Size">The exact size of the first of them.</param>
public sealed record RippleRow(string Marks, string What, string Before, string After, string By, string Through, QuantityKey Size);

/// <summary>Writes what a reading or a mark moved as lines of plain text.</summary>
public static class RippleLines
{
    // Names of one line beyond which it could not be read.
    private const int MostNames = 8;

    /// <summary>The lines: figures that moved with the working that carried them, parts released, what still waits.</summary>
    /// <param name="before">The piece before.</param>
    /// <param name="after">The piece after.</param>
    /// <param name="ripple">What changed between them.</param>
    public static IEnumerable<string> Of(SetPiece before, SetPiece after, Ripple ripple)
    {
        foreach (RippleRow row in Rows(after, ripple))
        {
            yield return $"  {row.Marks}  {row.What}: {row.Before} -> {row.After} ({row.By})";
            yield return $"      through {row.Through}";
        }
        yield return ripple.Figures == 0 ? "  no figure to cut moved" : ripple.Figures == 1 ? "  1 figure to cut moved" : $"  {ripple.Figures} figures to cut moved";
        foreach (string line in Anew(after, ripple).Concat(Besides(ripple))) yield return "  " + line;
    }

    /// <summary>What is to be set or marked anew although no length or width says so: figures of grooves and other cuts, and stations of holes, with how many first; without indent.</summary>
    /// <param name="after">The piece after.</param>
    /// <param name="ripple">What changed.</param>
    public static IEnumerable<string> Anew(SetPiece after, Ripple ripple)
    {
        LengthFormat format = LengthFormat.For(after.Piece.Shown);
        if (Counted(ripple) is { Length: > 0 } counted) yield return counted;
        foreach (SettingMoved setting in ripple.Settings)
            yield return $"set anew for {Marks(setting.Parts)}: {setting.Words}, {setting.Figure} {format.Bare.Format(setting.Before).ByTheRule} -> {format.Format(setting.After).ByTheRule}";
        foreach (StationsMoved holes in ripple.Stations)
            yield return $"mark anew for {Marks(holes.Parts)}: {holes.Stations} {(holes.Stations == 1 ? "hole" : "holes")}, {holes.Name}";
    }

    /// <summary>How many settings and stations moved, in words; empty for none.</summary>
    public static string Counted(Ripple ripple)
    {
        int settings = ripple.Settings.Length, stations = ripple.Stations.Sum(s => s.Stations);
        static string Of(int count, string one) => $"{count} {one}{(count == 1 ? "" : "s")}";
        string[] counts = [.. new[] { settings > 0 ? Of(settings, "setting") + " of cuts into parts" : "", stations > 0 ? Of(stations, "station") + " of holes" : "" }.Where(c => c.Length > 0)];
        return counts.Length == 0 ? "" : $"{string.Join(" and ", counts)} moved";
    }

    private static string Marks(IEnumerable<Part> parts) => Names([.. parts.Select(p => p.Mark)]);

    /// <summary>What came, went, may be cut now, must wait, and what is no longer said; without indent.</summary>
    /// <param name="ripple">What changed.</param>
    /// <param name="name">How what is waited for is called; null for its key.</param>
    public static IEnumerable<string> Besides(Ripple ripple, Func<QuantityKey, string>? name = null)
    {
        if (ripple.Came.Length > 0) yield return $"new: {Names([.. ripple.Came.Select(p => p.Mark)])}";
        if (ripple.Went.Length > 0) yield return $"gone: {Names([.. ripple.Went.Select(p => p.Mark)])}";
        if (ripple.Released.Length > 0) yield return $"may be cut now: {Names([.. ripple.Released.Select(p => p.Mark)])}";
        if (ripple.HeldAgain.Length > 0) yield return $"must wait again: {Names([.. ripple.HeldAgain.Select(p => p.Mark)])}";
        if (ripple.Released.Length > 0 || ripple.HeldAgain.Length > 0)
            foreach (StillWaiting waiting in ripple.Waiting) yield return $"still waits for a reading of {name?.Invoke(waiting.Until) ?? waiting.Until.Text}: {Names([.. waiting.Parts.Select(p => p.Mark)])}";
        foreach (Finding gone in ripple.GoneFindings.Where(f => f.Severity > Severity.Note)) yield return $"no longer: {gone.Words}";
    }

    /// <summary>The figures that moved, like ones together.</summary>
    /// <param name="after">The piece after.</param>
    /// <param name="ripple">What changed.</param>
    public static IEnumerable<RippleRow> Rows(SetPiece after, Ripple ripple)
    {
        LengthFormat format = LengthFormat.For(after.Piece.Shown);
        foreach (MovedTogether moved in ripple.Moved)
        {
            string way = moved.By.Sign > 0 ? "longer" : "shorter", by = format.Bare.Text(moved.By.Abs());
            // Like parts that moved to the same figure are one cut to set anew.
            foreach (var alike in moved.Figures.GroupBy(f => (f.Before, f.After)))
            {
                FigureMoved first = alike.First();
                string names = Names([.. alike.Select(f => f.Part.Mark)]);
                yield return new(names, $"{(alike.Count() == 1 ? first.Part.Name : Words(first.Part.Role))}, {SizeWords.Of(after, first.Size.Exact, moved.IsLength)}",
                    format.Bare.Text(alike.Key.Before), format.Text(alike.Key.After), $"{by} {way}", string.Join(" > ", first.Through), first.Size.Exact);
            }
        }
    }

    private static string Names(string[] marks) => marks.Length <= MostNames ? string.Join(", ", marks) : $"{string.Join(", ", marks[..(MostNames - 1)])} and {marks.Length - MostNames + 1} more";

    private static string Words(PartRole role) => role switch
    {
        PartRole.Post => "posts",
        PartRole.Rail => "rails",
        PartRole.Tie => "ties",
        PartRole.SlidePanel => "slide panels",
        PartRole.Side => "sides",
        PartRole.Deck => "decks",
        PartRole.Partition => "partitions",
        PartRole.Shelf => "shelves",
        PartRole.Back => "backs",
        PartRole.BoxSide => "sides of boxes",
        PartRole.BoxEnd => "ends of boxes",
        PartRole.BoxBottom => "bottoms",
        PartRole.FalseFront => "false fronts",
        PartRole.Top => "tops",
        PartRole.FramePanel => "panels",
        PartRole.EdgeStrip => "strips of edging",
        PartRole.WellPlatform => "platforms of wells",
        PartRole.WellBearer => "bearers of wells",
        PartRole.WellSide => "sides of wells",
        PartRole.Lip => "lips",
        PartRole.Door => "doors",
        PartRole.DoorStile => "stiles of doors",
        PartRole.DoorRail => "rails of doors",
        PartRole.DoorPanel => "panels of doors",
        PartRole.ShelfStrip => "strips under shelves",
        PartRole.Kick => "kick boards and bases",
        PartRole.HangingRail => "hanging rails",
        PartRole.FaceFrame => "face frames",
        PartRole.Packing => "packing",
        PartRole.Filler => "fillers",
        PartRole.Runner => "runners",
        PartRole.Kicker => "kickers",
        PartRole.Bearer => "bearers",
        PartRole.Slat => "slats",
        _ => "parts",
    };
}

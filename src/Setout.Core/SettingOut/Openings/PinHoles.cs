using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Where each hole for shelf pins is. A row that would run into holes that are there already, such as those of hinge plates, is moved further in.</summary>
internal static class PinHoles
{
    // More would bring the rows to the middle of the panel.
    private const int MostMoves = 2;

    /// <summary>Writes the holes of both rows on both sides.</summary>
    public static void Write(Book book, Space space, PinShelfRule.Rows rows)
    {
        foreach ((string part, int number, Placement box, ExactLength face) in Panels(book, space))
            foreach (ExactLength y in new[] { box.Y + book.Value(rows.Front), box.Y + box.SizeY - book.Value(rows.Back) })
                book.Bores.AddRange(Row(book, space, part, number, face, y, (rows.Pitch, rows.First, book.Value(rows.Depth), rows.Count, rows.Hole)));
    }

    /// <summary>How often each row is moved so that it stands beside what is bored already; none where moving does not help.</summary>
    public static (int Front, int Back) Beside(Book book, Space space, (QuantityKey Pitch, QuantityKey First, ExactLength Depth, int Count, string Hole) rows, ImmutableArray<Term> front, ImmutableArray<Term> back)
    {
        ExactLength step = Usual.Length(book, "SH9"), fore = book.Value(new Sum(front)), rear = book.Value(new Sum(back));
        int Moves(Func<Placement, int, ExactLength> at) => Enumerable.Range(0, MostMoves + 1).FirstOrDefault(n => !Panels(book, space).Any(p =>
        {
            Bore[] there = [.. book.Bores.Where(b => b.Part == p.Part && b.Number == p.Number && !IsOppositePin(b, p.Face))];
            return there.Length > 0 && Row(book, space, p.Part, p.Number, p.Face, at(p.Box, n), rows).Any(r => there.Any(b => BoreRoom.Meet(r, b, p.Box)));
        }));
        return (Moves((box, n) => box.Y + fore + (step * n)), Moves((box, n) => box.Y + box.SizeY - rear - (step * n)));
    }

    /// <summary>How wide a hole of a name is.</summary>
    public static ExactLength Diameter(string hole) => hole == PinShelfRule.Metric ? FromMillimetres(5) : FromInches(Rational.Of(1, 4));

    /// <summary>What a row is moved, as a term.</summary>
    public static ImmutableArray<Term> Moved(Book book, int times) =>
        times == 0 ? [] : [Term.From("moved beside what is bored there already", times, Usual.Length(book, "SH9"), new(OriginKind.Rule, "no two holes in one place", TradeRules.Get("SH9").Cited))];

    // Rows that meet through a partition are for the woodworker to part: shelves set back, or a thicker one.
    private static bool IsOppositePin(Bore bore, ExactLength face) => bore.X != face && bore.Name.StartsWith("pins", StringComparison.Ordinal);

    private static IEnumerable<(string Part, int Number, Placement Box, ExactLength Face)> Panels(Book book, Space space)
    {
        ExactLength left = book.Corner.X + space.X;
        foreach ((Edge edge, bool isLeft) in new[] { (space.Edges.Left, true), (space.Edges.Right, false) })
        {
            ExactLength face = isLeft ? left : left + book.Value(space.Width);
            if (Bored.Beside(book, edge.Part, face, isLeft) is { } panel) yield return (edge.Part, panel.Number, panel.Box, face);
        }
    }

    private static IEnumerable<Bore> Row(Book book, Space space, string part, int number, ExactLength face, ExactLength y, (QuantityKey Pitch, QuantityKey First, ExactLength Depth, int Count, string Hole) rows)
    {
        ExactLength hole = Diameter(rows.Hole), low = book.Corner.Z + space.Z + book.Value(rows.First);
        for (int i = 0; i < rows.Count; i++)
            yield return new(space.Owner, $"pins of {space.Name}", part, number, Along.X, face, y, low + (book.Value(rows.Pitch) * i), hole, rows.Depth);
    }
}

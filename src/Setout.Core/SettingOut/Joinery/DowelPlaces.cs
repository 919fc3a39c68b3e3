using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>Where each dowel is, once all members stand: in the middle of an end, in a row along its width, and opposite in what it meets.</summary>
internal static class DowelPlaces
{
    /// <summary>Writes the holes of all rows.</summary>
    public static void Write(Book book)
    {
        foreach (DowelRows rows in book.DowelRows)
            foreach ((int number, Placement box) in Bored.Members(book, rows.Ended))
                foreach (string into in rows.Into)
                    foreach ((int other, Placement against) in Bored.Members(book, into))
                        Meet(book, rows, number, box, into, other, against);
    }

    private static void Meet(Book book, DowelRows rows, int number, Placement box, string into, int other, Placement against)
    {
        foreach (Along way in Enum.GetValues<Along>())
        {
            Along[] rest = [.. Enum.GetValues<Along>().Where(a => a != way)];
            if (!rest.All(a => Low(box, a) < High(against, a) && Low(against, a) < High(box, a))) continue;
            foreach ((ExactLength end, ExactLength face) in new[] { (Low(box, way), High(against, way)), (High(box, way), Low(against, way)) })
            {
                if (end != face) continue;
                (Along wide, Along thin) = Size(box, rest[0]) >= Size(box, rest[1]) ? (rest[0], rest[1]) : (rest[1], rest[0]);
                ExactLength Of(string what) => book.Value(QuantityKey.Of(rows.Owner, $"dowel.{what}"));
                for (int i = 0; i < rows.Count; i++)
                {
                    ExactLength along = Low(box, wide) + Of("first") + (Of("apart") * i), middle = Low(box, thin) + (Size(box, thin) / 2);
                    ExactLength At(Along axis) => axis == way ? end : axis == wide ? along : middle;
                    Bore hole = new(rows.Owner, "dowel", rows.Ended, number, way, At(Along.X), At(Along.Y), At(Along.Z), Of("diameter"), Of("in-end"));
                    book.Bores.AddRange([hole, hole with { Part = into, Number = other, Depth = Of("in-face") }]);
                }
            }
        }
    }

    private static ExactLength Low(Placement box, Along axis) => axis switch { Along.X => box.X, Along.Y => box.Y, _ => box.Z };

    private static ExactLength Size(Placement box, Along axis) => axis switch { Along.X => box.SizeX, Along.Y => box.SizeY, _ => box.SizeZ };

    private static ExactLength High(Placement box, Along axis) => Low(box, axis) + Size(box, axis);
}

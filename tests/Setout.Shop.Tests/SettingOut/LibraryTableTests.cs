using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>
/// A whole table set out from its outside sizes, line by line against the stock bill that was printed for it: Mission Furniture, Part Three (Windsor / Popular
/// Mechanics, Chicago 1912; Project Gutenberg 23666), "A Library Table". All its parts are structures of the piece file; none is a loose part.
/// </summary>
public class LibraryTableTests
{
    private static SetPiece Set() => SetOut(File.ReadAllText(Repository.PathOf("tests/Setout.Shop.Tests/SettingOut/Pieces/library-table.yaml")));

    /// <summary>A printed line: name, count, thickness, width, length, the parts it is, and on what of the file it rests that is not printed.</summary>
    private sealed record Line(string Name, int Count, string Thickness, string Width, string Length, string[] Parts, string Chosen = "");

    // As printed, in its order, in inches.
    private static readonly Line[] s_bill =
    [
        new("legs", 4, "2", "2", "30 1/4", ["F.post"]),
        new("top", 1, "1 1/8", "30", "42", ["T"]),
        new("end pieces", 2, "3/4", "17 1/8", "29", ["P1", "P2"], "the width on 'toe: 12 1/4'"),
        new("top rails", 2, "7/8", "2", "37", ["A.rail"]),
        new("top rails", 2, "7/8", "2", "25 1/2", ["F.tie"]),
        new("lower brace", 1, "3/4", "2", "32", ["X"], "the length on 'short: 4 1/2'"),
        new("shelves", 4, "3/4", "7", "29", ["S1", "S2", "S3", "S4"], "the width on 'past posts: 1 3/4', a leg less a slat"),
        new("slats", 8, "1/4", "1 1/8", "17 1/8", ["E1.slat", "E2.slat"], "the length on 'toe: 12 1/4'"),
        new("drawer fronts", 2, "3/4", "5 3/4", "25", ["D1.front", "D2.front"]),
        new("drawer sides", 4, "3/8", "3 3/4", "14", ["D1.side", "D2.side"]),
        new("drawer ends", 2, "3/8", "3 3/8", "24 1/4", ["D1.back", "D2.back"]),
        new("drawer bottoms", 2, "3/8", "13 1/4", "24 1/4", ["D1.bottom", "D2.bottom"]),
        new("drawer supports", 2, "3/4", "2", "23 1/2", ["D.runner"], "the length on 'setback: 2'"),
        new("drawer supports", 2, "3/4", "2", "25", ["U"]),
    ];

    // What does not come out as printed: the line, the figure seen, and why.
    private static readonly (string Name, string Width, string Why)[] s_unlike =
    [
        ("drawer bottoms", "13 5/8", "Printed 13 1/4. The sides of 14 go 3/8 into the front; the printed back of 3 3/8 stands on the bottom of 3/8, so that the bottom reaches to its rear face: 14 - 3/8. The printed one ends at its front face."),
    ];

    // What is set out and not in the bill: the book's drawers have nothing above them but the top, 7/8 higher, and tip by as much.
    private static readonly string[] s_notPrinted = ["D.kicker"];

    [Fact]
    public void Table_AgainstItsPrintedBill_LineByLine()
    {
        SetPiece set = Set();
        // The book allows no clearances and pins bottoms of pine all round: 13 5/8 x 0.00216 x 6 = 0.177 in across their grain, and fronts of white oak 3 3/4 to 4 in high, no gap. Nothing else.
        Assert.Equal(["wood.cross-grain D1.bottom", "wood.cross-grain D2.bottom", "wood.no-room D"], set.Findings.Where(f => f.Severity != Core.Workings.Severity.Note).Select(f => $"{f.Code} {f.Key}").Order(StringComparer.Ordinal));
        var wrong = new List<string>();
        foreach (Line line in s_bill)
        {
            Part[] parts = [.. line.Parts.Select(k => set.Parts.Single(p => p.Key == k))];
            string width = s_unlike.FirstOrDefault(u => u.Name == line.Name).Width ?? line.Width;
            if (parts.Sum(p => p.Count) != line.Count) wrong.Add($"{line.Name}: {parts.Sum(p => p.Count)} for {line.Count}");
            foreach (Part part in parts)
            {
                string seen = string.Join(" x ", new[] { set.Worked[part.Thickness], set.Worked[part.Width.ToCut], set.Worked[part.Length.ToCut] }.Select(l => l.Inches.ToString()));
                string printed = string.Join(" x ", new[] { line.Thickness, width, line.Length }.Select(l => Described.Of(l).Inches.ToString()));
                if (seen != printed) wrong.Add($"{line.Name} ({part.Key}): {seen} for {printed}");
            }
        }
        Assert.Empty(wrong);
        // Each line that is said to differ differs, and no part is in no line.
        Assert.All(s_unlike, u => Assert.NotEqual(s_bill.Single(l => l.Name == u.Name).Width, u.Width));
        Assert.Equal(set.Parts.Select(p => p.Key).Order(StringComparer.Ordinal), s_bill.SelectMany(l => l.Parts).Concat(s_notPrinted).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(set.Parts, p => p.Role == PartRole.Loose);
    }

    [Fact]
    public void Table_Whole_HoldsTogether() => Assert.Empty(RandomPieceTests.Wrong(Set()));

    [Fact]
    public void Table_ByHand_MatchesItsSums() => AssertValues(Set(),
        // D26-library-table-top: 37 x 25 1/2 between legs of 2: 41 x 29 1/2 outside; overhangs 1/2 and 1/4: 42 x 30.
        ("A.width", "37"), ("F.tie.length", "25 1/2"), ("T.length", "42"), ("T.width", "30"),
        // D27-library-table-drawer: 41 - 2 x 8 = 25; back 25 - 2 x 3/8 = 24 1/4 by 3 3/4 - 3/8; bottom 24 1/4.
        ("B.width", "25"), ("D1.back.length", "24 1/4"), ("D1.back.width", "3 3/8"), ("D1.bottom.width", "24 1/4"),
        // Half of 29 = 14 1/2, less the front of 3/4 and 1/8 behind, and half of the front into it: 14. The front covers a support of 2: 3 3/4 + 2.
        ("D1.side.length", "14"), ("D1.front.height", "5 3/4"),
        // Not asked for, and so a sign that slats and shelves stand as meant: 5 1/4 - 2 x 1 1/8 = 3, three spaces of 1.
        ("E1.slat-space", "1"), ("E2.slat-space", "1"),
        // From face to face of the supports: 29 - 2 x 2 - 2 x 3/4.
        ("D.runner.length", "23 1/2"));

    [Fact]
    public void Table_DrawersBackToBack_DoNotMeetAndOpenEachToItsSide()
    {
        SetPiece set = Set();
        Placement front = Box(set, "D1.front"), behind = Box(set, "D2.front"), side = Box(set, "D1.side"), other = Box(set, "D2.side");
        // The bay stands back 1/4; the drawers leave 1/8 behind each.
        Assert.Equal(ExactLength.FromInches(Rational.Of(1, 4)), front.Y);
        Assert.Equal(Described.Of("29 1/2"), behind.Y + behind.SizeY + front.Y);
        Assert.Equal(ExactLength.FromInches(Rational.Of(1, 4)), other.Y - side.Y - side.SizeY);
        // Both run on the same supports: one pair, not two.
        Assert.Equal(4, set.Parts.Where(p => p.Key is "U" or "D.runner").Sum(p => p.Count));

        static Placement Box(SetPiece set, string key) => set.Parts.Single(p => p.Key == key).Placements[0];
    }
}

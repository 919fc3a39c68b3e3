// Over 200 lines: the table of mistakes of one kind of text.
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Texts;

public class PieceTextTests
{
    private const string Head = "setout: 1\nname: Box\nunit: in\nmaterials:\n  ply: {panel: hardwood plywood, label: 3/4}\n";
    private const string Case = "assembly:\n  - case: C\n    of: ply\n    width: 30\n    height: 30\n    depth: 12\n";
    private const string Frame = "assembly:\n  - frame: F\n    of: ply\n    width: 30\n    height: 30\n    depth: 12\n    toe: 0\n";

    /// <summary>The code, and a text with the mark ¦ where the finding stands. Each text has one mistake, so there is one finding.</summary>
    public static TheoryData<string, string> Mistakes => new()
    {
        // Doors and shelves
        { "text.missing", Head + "doors:\n  k: ¦{lies: inset}\n" + Case },
        { "text.two-kinds", Head + "doors:\n  k: {of: ply, ¦frame: {of: ply}}\n" + Case },
        { "doors.idle-overlay", Head + "doors:\n  k: {of: ply, lies: inset, ¦overlay: 1}\n" + Case },
        { "text.key-taken", Head + "doors:\n  C: {of: ply}\n" + Case.Replace("case: C", "case: ¦C", StringComparison.Ordinal) },
        { "doors.too-many", Head + Case + "    doors: {like: k, keys: [D1, D2, ¦D3]}\n" },
        { "doors.hinges-of-a-pair", Head + Case + "    doors: {like: k, keys: [D1, D2], ¦hinges: left}\n" },
        { "doors.none", Head + Case + "    doors: ¦{like: k, keys: []}\n" },
        { "opening.two-contents", Head + Case + "    drawers: {like: k, down: [{drawer: E1}]}\n    ¦doors: {like: k, keys: [D1]}\n" },
        { "shelves.idle", Head + Case + "    shelves: {¦pitch: 1, down: [S1]}\n" },
        { "shelves.idle", Head + Case + "    shelves: {fit: adjustable, ¦dado: 1/4, down: [S1]}\n" },
        // The text as a whole
        { "text.empty", "¦" },
        { "text.empty", "¦# nothing but a remark\n" },
        { "text.not-yaml", "setout: 1\nname: ¦\"never closed\n" },
        { "text.not-yaml", "setout: 1\nname: a: ¦b\n".Replace("a: ¦", "a¦: ", StringComparison.Ordinal) },
        { "text.wanted-map", "¦- a\n- b\n" },
        { "text.wanted-map", "¦word\n" },
        { "text.two-documents", Head + Case + "¦---\nsetout: 1\n" },
        { "text.alias", "setout: 1\nname: ¦*x\n" },
        { "text.anchor", "setout: 1\nname: ¦&x Box\n" },
        { "text.tag", "setout: 1\nname: ¦!!str Box\n" },
        { "text.tag", "setout: 1\nname: ¦! Box\n" },
        { "text.key", "setout: 1\n? ¦[a, b]\n: c\n" },
        { "text.tab", "setout: 1\nmaterials:\n¦\tply: {panel: mdf}\n" },
        { "text.tab", "setout: 1\nmaterials:\n  ply:\n    panel: mdf\n ¦\t  label: 3/4\n" },
        { "text.not-text", "setout: 1\nname: B¦\0x\n" },
        { "text.not-utf8", "setout: 1\nname: B¦\uFFFDx\n" },
        { "text.not-utf8", "setout: 1\nname: B¦\uD800x\n" },
        { "text.control", "setout: 1\nname: B¦\u001b[31m\n" },
        { "text.control", "setout: 1\nname: B¦\u202Ex\n" },
        { "text.control", "setout: 1\nname: B¦\u0085x\n" },
        { "text.control", "setout: 1\nname: ¦\"B\\e[31m\"\n" },
        { "text.not-yaml", "setout: 1\nname¦: \"\\UFFFFFFFF\"\n".Replace("name¦", "¦name", StringComparison.Ordinal) },

        // The version and the kind of text
        { "text.no-version", "¦name: Box\n" },
        { "text.version", "setout: ¦2\nname: Box\n" },
        { "text.version", "setout: ¦0\n" },
        { "text.version", "setout: ¦99999999999999999999\n" },
        { "text.version", "setout: ¦one\n" },
        { "text.version", "setout: ¦1.0\n" },
        { "text.wanted-word", "setout:¦\nname: Box\n" },
        { "text.other-kind", "¦setout-shop: 1\nunit: in\n" },
        { "text.other-kind", "¦setout-log: 1\nentries: []\n" },
        { "text.unknown-key", "¦stout: 1\nname: Box\n" },

        // Words
        { "text.missing", "¦setout: 1\nunit: in\n" + Case },
        { "text.missing", "¦setout: 1\nname: Box\n" + Case },
        { "text.wanted-word", "setout: 1\nname: ¦[a]\nunit: in\n" + Case },
        { "text.wanted-word", "setout: 1\nname: Box\nabout: ¦{a: b}\nunit: in\n" + Case },
        { "text.too-long", "setout: 1\nname: ¦" + new string('a', 101) + "\nunit: in\n" + Case },
        { "text.too-long", "setout: 1\nname: Box\nabout: ¦" + new string('a', 501) + "\nunit: in\n" + Case },
        { "text.one-line", "setout: 1\nname: ¦\"a\\nb\"\nunit: in\n" + Case },
        { "text.one-line", "setout: 1\nname: ¦|\n  a\n  b\nunit: in\n" + Case },
        { "text.unknown-word", "setout: 1\nname: Box\nunit: ¦inch\n" + Case },
        { "text.unknown-word", Head + Case + "    hung: ¦perhaps\n" },
        { "text.unknown-word", Head + Kind("window: ¦wide") + Case },
        { "text.unknown-word", Head + Kind("window: ¦1/16") + Case },
        { "text.wanted-word", Head + Kind("window: ¦[narrow]") + Case },
        { "text.wanted-word", Head + Kind("window: ¦\"\"") + Case },
        { "text.unknown-key", Head + Kind("¦windows: narrow") + Case },
        { "text.twice", Head + Case + "    ¦width: 31\n" },
        { "text.twice", Head + "  ¦ply: {panel: mdf, label: 3/4}\n" + Case },

        // Keys and names
        { "text.bad-key", Head + "assembly:\n  - {case: ¦C.1, of: ply, width: 30, height: 30, depth: 12}\n" },
        { "text.bad-key", Head + "  ¦9mm: {panel: mdf, label: 3/4}\n" + Case },
        { "text.bad-key", Head + Case + "    shelves: {down: [¦a b]}\n" },
        { "text.key-taken", Head + Case + "  - {top: ¦C, of: ply}\n" },
        { "text.key-taken", Head + Case + "    shelves: {down: [S1, ¦S1]}\n" },
        { "text.key-taken", Head + "assembly:\n  - {case: ¦ply, of: ply, width: 30, height: 30, depth: 12}\n" },

        // Lengths: the column is that of the fault inside the value
        { "length.unknown-word", Head + "parts:\n  - {part: P, of: ply, length: 3 ¦cubits, width: 4}\n" },
        { "length.unknown-word", Head + "parts:\n  - {part: P, of: ply, length: \"3 ¦cubits\", width: 4}\n" },
        { "length.unknown-word", Head + "parts:\n  - {part: P, of: ply, length: '1'' + 3 ¦cubits', width: 4}\n" },
        { "length.unknown-word", Head + "parts:\n  - {part: P, of: ply, length: \"1\\\" + 3 ¦cubits\", width: 4}\n" },
        { "length.unknown-word", Head + "parts:\n  - {part: P, of: ply, length: \"\\x31\\u0030 ¦cubits\", width: 4}\n" },
        { "length.unknown-word", Head + "parts:\n  - {part: P, of: ply, width: 4, length: ¦\"3\n      cubits\"}\n" },
        { "length.two-readings", Head + "parts:\n  - {part: P, of: ply, length: 23¦-1/4, width: 4}\n" },
        { "length.two-readings", Head + "parts:\n  - {part: P, of: ply, length: \"1¦,250\", width: 4}\n" },
        { "length.too-deep", Head + "parts:\n  - {part: P, of: ply, length: " + new string('(', 16) + "¦(1, width: 4}\n" },
        { "length.unknown-word", Head + "parts:\n  - {part: P, of: ply, length: ¦NaN, width: 4}\n" },
        { "length.unknown-word", Head + "parts:\n  - {part: P, of: ply, length: ¦Infinity, width: 4}\n" },
        { "length.unknown-word", Head + "parts:\n  - {part: P, of: ply, length: 1¦e5, width: 4}\n" },
        { "text.absurd-size", Head + "parts:\n  - {part: P, of: ply, length: ¦-3, width: 4}\n" },
        { "text.absurd-size", Head + "parts:\n  - {part: P, of: ply, length: ¦0, width: 4}\n" },
        { "text.absurd-size", Head + "parts:\n  - {part: P, of: ply, length: ¦1/999999999999, width: 4}\n" },
        { "text.absurd-size", Head + "parts:\n  - {part: P, of: ply, length: ¦31 m, width: 4}\n" },
        { "text.wanted-length", Head + "parts:\n  - {part: P, of: ply, length: ¦[3], width: 4}\n" },
        { "text.wanted-length", Head + "parts:\n  - {part: P, of: ply, length: ¦\"\", width: 4}\n" },
        { "text.too-long", Head + "parts:\n  - {part: P, of: ply, width: 4, length: ¦1" + new string('+', 200) + "}\n" },
        { "text.unknown-word", Head + Case + "    across:\n      - {opening: A, width: ¦rset}\n" },
        { "text.bad-grid", "setout: 1\nname: Box\nunit: in\ngrid: ¦1/7\n" + Case },
        { "text.absurd-size", "setout: 1\nname: Box\nunit: in\ngrid: ¦2\n" + Case },

        // Numbers, money, sizes
        { "text.wanted-number", Head + "parts:\n  - {part: P, of: ply, count: ¦2.5, length: 3, width: 4}\n" },
        { "text.wanted-number", Head + "parts:\n  - {part: P, of: ply, count: ¦0, length: 3, width: 4}\n" },
        { "text.wanted-number", Head + "parts:\n  - {part: P, of: ply, count: ¦99999999999, length: 3, width: 4}\n" },
        { "text.wanted-number", Head + "parts:\n  - {part: P, of: ply, count: ¦[1], length: 3, width: 4}\n" },
        { "text.wanted-price", Sized("{size: 96 x 48, price: ¦-3}") },
        { "text.wanted-price", Sized("{size: 96 x 48, price: ¦1e3}") },
        { "text.wanted-price", Sized("{size: 96 x 48, price: ¦$3}") },
        { "text.wanted-price", Sized("{size: 96 x 48, price: ¦{a: b}}") },
        { "stock.name-twice", Sized("{size: 96 x 48, have: 1, name: b}, {size: 40 x 30, have: 1, name: ¦b}") },
        { "stock.name-twice", Boards("{length: 96, have: 1, name: b}, {length: 40}, {length: 30, have: 1, name: ¦b}") },
        { "text.wanted-size", Sized("{size: ¦96}") },
        { "text.wanted-size", Sized("{size: ¦1 x 2 x 3}") },
        { "text.wanted-size", Sized("{size: ¦[96, 48]}") },
        { "length.unknown-word", Sized("{size: 96 x 4 ¦ells}") },
        { "length.empty", Sized("{size: ¦x 48}") },
        { "text.absurd-size", Sized("{size: 96 x¦ 0}") },

        { "stock.not-wider", Boards("{length: 96, width: ¦3 1/2}") },
        { "stock.not-wider", Boards("{length: 96, width: ¦1 1/2}") },
        { "stock.not-wider", Boards("{length: 96, width: ¦2}", "stick: oak, section: 2 x 1") },
        { "stock.flaws-to-buy", Boards("¦{length: 96, flaws: [{from: 1, to: 2}]}") },
        { "stock.flaw-beyond", Boards("{length: 96, have: 1, flaws: [{from: 1, to: ¦97}]}") },
        { "stock.flaw-empty", Boards("{length: 96, have: 1, flaws: [{from: 1, to: ¦1/2}]}") },
        { "text.unknown-key", Boards("{length: 96, ¦rip: yes}") },
        { "text.unknown-key", Sized("{size: 96 x 48, ¦width: 50}") },

        // Lists and maps
        { "text.wanted-list", Head + "assembly: ¦{case: C}\n" },
        { "text.wanted-list", Head + Case + "    shelves: {down: ¦S1}\n" },
        { "text.wanted-map", Head + "assembly:\n  - ¦C\n" },
        { "text.wanted-map", Head + "  thin: ¦mdf\n" + Case },
        { "text.wanted-map", Head + Case + "  - top: T\n    of: ply\n    overhang: ¦3\n" },
        { "text.wanted-map", "setout: 1\nname: Box\nunit: in\nmaterials: ¦[a]\n" + Case },
        { "text.wanted-word", Head + Case + "    shelves: {down: [¦[S1]]}\n" },

        // What is described
        { "piece.empty", "¦" + Head },
        { "piece.empty", "¦" + Head + "assembly: []\n" },
        { "text.missing", Head + "assembly:\n  - ¦{name: x}\n" },
        { "text.two-kinds", Head + "assembly:\n  - {case: C, ¦top: T, of: ply, width: 3, height: 3, depth: 3}\n" },
        { "text.missing", Head + "  mine: ¦{label: 3/4}\n" + Case },
        { "text.missing", Head + "  mine: ¦{panel: mdf}\n" + Case },
        { "text.missing", Head + "  mine: ¦{stick: oak}\n" + Case },
        { "material.unknown-kind", Head + "  mine: {panel: ¦mfd, label: 3/4}\n" + Case },
        { "material.unknown-lumber", Head + "  mine: {lumber: ¦2x5}\n" + Case },
        { "text.missing", "¦" + Frame },
        { "text.missing", Head + Case + "    across:\n      - ¦{width: 3}\n" },
        { "opening.two-contents", Head + Case + "    shelves: {down: [S]}\n    ¦down: [{opening: A}]\n".Replace("    shelves: {down: [S]}\n    ¦down: [{opening: A}]", "    ¦shelves: {down: [S]}\n    down: [{opening: A}]", StringComparison.Ordinal) },
        { "division.order", Head + Case + "    across: [{opening: A}, {opening: ¦B}]\n" },
        { "division.order", Head + Case + "    across: ¦[{opening: A}, {partition: B}]\n" },
        { "division.order", Head + Case + "    across: [{partition: ¦B}]\n" },
        { "division.order", Head + Case + "    across: ¦[]\n" },
        { "drawers.none", Head + Case + "    drawers: ¦{like: a}\n" },
        { "drawers.none", Head + Case + "    drawers: ¦{like: a, down: []}\n" },
        { "shelves.none", Head + Case + "    shelves: ¦{of: ply}\n" },
        { "shelves.none", Head + Case + "    shelves: ¦{down: []}\n" },
    };

    private static string Kind(string window) => $"drawers:\n  tray: {{sides: ply, bottom: ply, front: ply, {window}}}\n";

    private static string Boards(string board, string wood = "lumber: 2x4") => Head + "  studs: {" + wood + ", lengths: [" + board + "]}\n" + Case;

    private static string Sized(string size) => Head + "  thin: {panel: mdf, label: 1/4, sizes: [" + size + "]}\n" + Case;

    [Theory, MemberData(nameof(Mistakes))]
    public void Read_OneMistake_OneFindingAtItsPlace(string code, string marked)
    {
        if (marked == "¦" + Frame) marked = Head + Frame.Replace("- frame", "- ¦frame", StringComparison.Ordinal);
        Repository.OnlyFinding(code, marked, t => PieceText.Read(t));
    }

    [Theory]
    [InlineData("slide: 18", SlideWindow.Usual)]
    [InlineData("window: usual", SlideWindow.Usual)]
    [InlineData("window: narrow", SlideWindow.Narrow)]
    [InlineData("window: \"narrow\"", SlideWindow.Narrow)]
    public void Read_Window_IsThatOfItsKindOfDrawer(string written, SlideWindow window)
    {
        TextRead<Piece> read = PieceText.Read(Head + Kind(written) + Case);
        Assert.Empty(read.Findings);
        Assert.Equal(window, read.Value!.DrawerKinds["tray"].Window);
    }

    [Fact]
    public void Read_OtherWindow_NamesBothWordsAndTheNearest()
    {
        Finding finding = Repository.OnlyFinding("text.unknown-word", Head + Kind("window: ¦narow") + Case, t => PieceText.Read(t));
        Assert.Equal(("'narow' is not known for 'window'.", "Did you mean 'narrow'? Use one of: usual, narrow."), (finding.Words, finding.Remedy));
    }

    [Theory]
    [InlineData("setout: 1", 2, "Use a newer program")]
    [InlineData("setout: 1", 0, "Write 'setout: 1'")]
    public void Read_OtherVersion_NamesBothVersions(string from, int version, string remedy)
    {
        Finding finding = Assert.Single(PieceText.Read((Head + Case).Replace(from, $"setout: {version}", StringComparison.Ordinal)).Findings);
        Assert.Contains($"version {version};", finding.Words, StringComparison.Ordinal);
        Assert.Contains("version 1.", finding.Words, StringComparison.Ordinal);
        Assert.StartsWith(remedy, finding.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SeveralMistakes_AllAreToldInTheOrderOfTheText()
    {
        const string text = "setout: 1\nname: Box\nunit: inch\nmaterials:\n  ply: {panle: hardwood plywood, label: 3/4}\nassembly:\n  - case: C\n    of: ply\n    width: 3 cubits\n    heigth: 30\n    depth: -1\n    hung: maybe\n";
        Assert.Equal(
            [("text.unknown-word", 3, 7), ("text.unknown-key", 5, 9), ("length.unknown-word", 9, 14), ("text.unknown-key", 10, 5), ("text.absurd-size", 11, 12), ("text.unknown-word", 12, 11)],
            PieceText.Read(text).Findings.Select(f => (f.Code, f.Place.Line, f.Place.Column)));
    }

    [Fact]
    public void Read_KeysTwiceAndOtherMistakes_AllAreTold()
    {
        Assert.Equal(["text.twice", "text.twice", "text.absurd-size"],
            PieceText.Read("setout: 1\nname: Box\nname: Crate\nunit: in\nunit: mm\nparts:\n  - {part: P, of: ply, length: 0, width: 2}\n").Findings.Select(f => f.Code));
    }

    [Theory]
    [InlineData("in", "3", 3 * 25.4)]
    [InlineData("mm", "3", 3)]
    [InlineData("in", "3 mm", 3)]
    [InlineData("mm", "\"3\\\"\"", 3 * 25.4)]
    [InlineData("in", "96/3 - 3/4", 31.25 * 25.4)]
    [InlineData("in", "1' 11 1/4\"", 23.25 * 25.4)]
    public void Read_BareAndNamedUnits_ReadExactly(string unit, string length, double millimetres)
    {
        TextRead<Piece> read = PieceText.Read($"setout: 1\nname: Box\nunit: {unit}\nparts:\n  - part: P\n    of: ply\n    length: {length}\n    width: 1 mm\n");
        Assert.Empty(read.Findings);
        Assert.Equal(ExactLength.FromMillimetres(Rational.Of((decimal)millimetres)), Assert.IsType<LoosePart>(Assert.Single(read.Value!.Members)).Length.Value);
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\n")]
    public void Read_LineEndsAndByteOrderMark_ReadTheSame(string end)
    {
        foreach (string sample in Repository.PieceSamples)
        {
            string text = File.ReadAllText(sample).ReplaceLineEndings(end);
            TextRead<Piece> plain = PieceText.Read(text.ReplaceLineEndings("\n")), marked = PieceText.Read("\uFEFF" + text);
            Assert.Empty(marked.Findings);
            Assert.Equal(plain.Value!.Keys.OrderBy(k => k.Key, StringComparer.Ordinal), marked.Value!.Keys.OrderBy(k => k.Key, StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Read_RemarkOverSeveralLines_IsKept() =>
        Assert.Equal("one\ntwo\n", PieceText.Read("setout: 1\nname: Box\nabout: |\n  one\n  two\nunit: in\n" + Case).Value!.About);
}

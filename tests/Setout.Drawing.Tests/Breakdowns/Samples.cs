using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Breakdowns;

/// <summary>Sheets and boards of our own, in inches.</summary>
internal static class Samples
{
    /// <summary>A strip: width, and for each part its mark and length.</summary>
    internal sealed record Strip(string Letter, string Width, (string Mark, string Length)[] Parts);

    public static SheetInput Birch() => Ripped("Birch 3/4, sheet B", "96", "48", "1/8",
    [
        new("a", "11 3/4", [("F1", "26 7/8"), ("F2", "26 7/8"), ("F3", "26 7/8")]),
        new("b", "9 1/2", [("L1", "18"), ("L2", "18"), ("L3", "18"), ("L4", "18"), ("L5", "18")]),
        new("c", "9 1/2", [("R1", "18"), ("R2", "18"), ("R3", "18"), ("R4", "18"), ("R5", "18")]),
        new("d", "5 7/8", [("E1", "24 31/32"), ("E2", "24 31/32"), ("E3", "24 31/32"), ("E4", "12")]),
        new("e", "1 1/2", [("K1", "26 15/16"), ("K2", "26 15/16"), ("K3", "16 1/4")]),
    ], "15 3/32") with
    {
        HeaderLeft = Phrase.Of("Birch ").Add(Fig("3/4")).Add(", sheet B").Bold(),
        HeaderNote = Phrase.Of("reads ").Add(Fig("23/32")).Add(" · good face up"),
        HeaderRight = Phrase.Of("3 sheets; no layout can use fewer"),
        ReferenceNote = Phrase.Of("reference edge 0: trued, against the fence for a"),
        Footer = Phrase.Of("rip a to e with the fence; then every strip to length on the sled against a stop, never against the fence: F ").Add(Fig("26 7/8")).Add(" · L, R ").Add(Fig("18")).Add(" · E ").Add(Fig("24 31/32")),
    };

    /// <summary>Small parts: many narrow strips and short blocks.</summary>
    public static SheetInput SmallParts() => Ripped("Offcut of ply 1/2", "48", "24", "1/8",
    [
        new("a", "4", [.. Enumerable.Range(1, 12).Select(i => ($"B{i}", "3 1/4"))]),
        new("b", "3/4", [.. Enumerable.Range(1, 16).Select(i => ($"C{i}", "2 3/8"))]),
        new("c", "3/4", [("D1", "30 5/32"), ("D2", "3/4"), ("D3", "3/4"), ("D4", "3/4")]),
        new("d", "1/2", [("G1", "40")]),
        new("e", "1/2", [("G2", "40")]),
        new("f", "8", [.. Enumerable.Range(1, 18).Select(i => ($"H{i}", "1 3/16"))]),
    ], "8 23/64") with
    { HeaderLeft = Phrase.Of("Offcut of ply ").Add(Fig("1/2")).Bold() };

    /// <summary>Tiles of 5/8 in, all of one mark, so many strips of so many.</summary>
    public static SheetInput Tiles(int strips, int each) => Ripped("Tiles", "96", "48", "1/8",
        [.. Enumerable.Range(0, strips).Select(i => new Strip($"s{i}", "5/8", [.. Enumerable.Repeat(("T", "5/8"), each)]))], "18");

    /// <summary>Lays strips under each other from the reference edge, each cut to length from its left end.</summary>
    public static SheetInput Ripped(string title, string along, string across, string kerfText, Strip[] strips, string keepWidth)
    {
        ImmutableArray<SheetPart>.Builder parts = ImmutableArray.CreateBuilder<SheetPart>();
        ImmutableArray<PrimaryCut>.Builder primary = ImmutableArray.CreateBuilder<PrimaryCut>();
        ImmutableArray<InnerCut>.Builder inner = ImmutableArray.CreateBuilder<InnerCut>();
        ImmutableArray<SheetRect>.Builder waste = ImmutableArray.CreateBuilder<SheetRect>();
        Length y = Length.Zero, kerf = In(kerfText), length = In(along);
        foreach (Strip strip in strips)
        {
            Length height = In(strip.Width), x = Length.Zero;
            foreach ((string mark, string text) in strip.Parts)
            {
                Length end = x + In(text);
                parts.Add(new(mark, $"{mark}, {text} by {strip.Width} in", mark, new(x, y, end - x, height)));
                inner.Add(new(end, SheetAxis.Across, y, y + height, Fig(end)));
                x = end + kerf;
            }
            if (x < length) waste.Add(new(x, y, length - x, height));
            y += height;
            primary.Add(new(strip.Letter, y, SheetAxis.Along, Fig(y)));
            y += kerf;
        }
        return new(title, "Rips from the reference edge, then each strip to length.", length, In(across))
        {
            Parts = parts.ToImmutable(),
            PrimaryCuts = primary.ToImmutable(),
            InnerCuts = inner.ToImmutable(),
            Waste = waste.ToImmutable(),
            Kept = [new("keep-1", new(Length.Zero, y, length, In(across) - y), Phrase.Of("keep, ").Add(Fig(keepWidth)).Add(" wide, whole length"))],
        };
    }

    public static BoardsInput Poplar()
    {
        BoardPart P(string mark, string from, string to, bool held = false) => new(mark, $"{mark}, {from} to {to} in", mark, new(In(from), In(to))) { IsHeld = held };
        BoardCut C(string at) => new(In(at), Fig(at));
        BoardSpan S(string from, string to) => new(In(from), In(to));
        return new("Poplar boards", "Four boards cut from the trued end.",
        [
            new("b1", Phrase.Of("board 1").Bold().Add(", ").Add(Fig("3 1/2")).Add(" wide"), In("96"))
            {
                Width = In("3 1/2"),
                Parts = [P("P1", "0", "32"), P("P2", "32 1/8", "64 1/8"), P("R1", "64 1/4", "91 1/4")],
                Cuts = [C("32"), C("64 1/8"), C("91 1/4")],
                Waste = [S("91 3/8", "96")],
            },
            new("b2", Phrase.Of("board 2").Bold().Add(", knot at 40"), In("96"))
            {
                Width = In("3 1/2"),
                Parts = [P("P3", "0", "32"), P("K1", "32 1/8", "32 7/8"), P("K2", "33", "33 3/4"), P("R2", "44", "71", true)],
                Cuts = [C("32"), C("32 7/8"), C("33 3/4"), C("44"), C("71")],
                Defects = [new(S("38", "42"), Phrase.Of("knot"))],
                Waste = [S("33 7/8", "38"), S("42", "43 7/8")],
                Kept = [new(S("71 1/8", "96"), Phrase.Of("keep, ").Add(Fig("24 7/8")).Add(" long"))],
            },
            new("b3", Phrase.Of("board 3").Bold().Add(", short"), In("48"))
            {
                Width = In("1 1/2"),
                Parts = [.. Enumerable.Range(0, 20).Select(i => new BoardPart($"W{i}", $"wedge {i}", $"W{i}", new(In("2 1/8") * i, (In("2 1/8") * i) + In("2"))))],
                Cuts = [.. Enumerable.Range(0, 20).Select(i => (In("2 1/8") * i) + In("2")).Select(at => new BoardCut(at, Fig(at)))],
                Waste = [S("42 1/2", "48")],
            },
            new("b4", Phrase.Of("board 4").Bold().Add(", with a small remainder"), In("60"))
            {
                Parts = [P("T1", "0", "56")],
                Cuts = [C("56")],
                Kept = [new(S("56 1/8", "60"), Phrase.Of("keep for wedges and stops"))],
            },
        ])
        {
            HeaderLeft = Phrase.Of("Poplar, four boards").Bold(),
            HeaderRight = Phrase.Of("true the left end of each first"),
            Footer = Phrase.Of("R2 is held until the right opening is read."),
        };
    }
}

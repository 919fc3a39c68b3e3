using Setout.Drawing.Readings;
using Setout.Drawing.Scenes;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Readings;

/// <summary>The pictures of the page on readings: its bench, with the figures that are read there. The middle and the back of the box are invented.</summary>
internal static class ReadingsPage
{
    public static readonly ReadingPaper Paper = new(158, 60);

    public static SheetInput Sheet { get; } = new(
        "Where a sheet is read",
        "A sheet of plywood with four spots for the calliper, each in from an edge as far as its jaws reach and away from the corners.",
        In("96"), In("48"), Phrase.Of("boxes, sheet 1"), In("1 1/2"), Phrase.Of("in from the edge, away from the corners"),
        [
            new(In("24"), In("1 1/2"), Phrase.Of("0.472 in")), new(In("72"), In("1 1/2"), Phrase.Empty),
            new(In("24"), In("46 1/2"), Phrase.Empty), new(In("72"), In("46 1/2"), Phrase.Of("0.470 in")),
        ],
        Phrase.Of("Read where the jaws lie on sound wood. Two spots are better than one, four better than two: their mean counts. The border is drawn wider than it is."));

    public static WidthsInput Opening { get; } = new(
        "Where an opening is read",
        "A bay from above between its two slide panels. The clear width is read at the front and at the back, at the height of the slides; the narrower one, here the front, counts.",
        SeenFromAbove.Opening, In("22"), In("23/32"), In("1/2"),
        [new(In("2"), In("19 17/32"), Fig("19 17/32"), "front"), new(In("20"), In("19 9/16"), Fig("19 9/16"), "back")],
        60, Phrase.Of("slide panel"), Phrase.Of("From panel to panel at the height of the slides; dashed is where the slides will go."));

    public static WidthsInput Box { get; } = new(
        "Where a box is read",
        "A finished drawer box from above. Its width over both sides is read at the front, in the middle and at the back; the widest, here the middle, counts.",
        SeenFromAbove.Box, In("22"), In("15/32"), In("0"),
        [
            new(In("1 1/2"), In("18 13/32"), Fig("18 13/32"), "front"), new(In("11"), In("18 27/64"), Fig("18 27/64"), "middle"),
            new(In("20 1/2"), In("18 13/32"), Fig("18 13/32"), "back"),
        ],
        60, Phrase.Of("side"), Phrase.Of("Over both sides, without the slides, after the glue is dry."));
}

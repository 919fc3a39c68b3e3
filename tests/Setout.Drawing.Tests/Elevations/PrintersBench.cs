using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Dimensioning;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Elevations;

/// <summary>A frame of our own: a printer's bench, two banks of five drawers, an open bay with a proof press over it. All in inches.</summary>
internal static class PrintersBench
{
    private static readonly string[] s_fronts = ["3", "3 5/8", "4 1/4", "5 3/8", "6 1/4"];

    public static ElevationInput Input(int marked = 3)
    {
        ImmutableArray<ElevationPart>.Builder parts = ImmutableArray.CreateBuilder<ElevationPart>();
        ImmutableArray<ElevationOpening>.Builder openings = ImmutableArray.CreateBuilder<ElevationOpening>();
        ModelRect R(string x, string y, string w, string h) => new(In(x), In(y), In(w), In(h));
        string[] posts = ["0", "30 1/2", "50", "80 1/2"];
        for (int i = 0; i < 4; i++) parts.Add(new($"po{i}", $"post {i + 1}", PartKind.Post, R(posts[i], "0", "3 1/2", "32"), 2));
        Bank("l", "left bank", "3 1/2", marked);
        Bank("r", "right bank", "53 1/2", 0);
        parts.Add(new("mr", "middle bay, low rail", PartKind.Rail, R("34", "2 1/2", "16", "3 1/2"), 1));
        parts.Add(new("md", "press deck", PartKind.Deck, R("34", "21 1/4", "16", "3/4"), 1));
        parts.Add(new("mb", "back of the middle bay", PartKind.Back, R("34", "6", "16", "15 1/4")));
        parts.Add(new("tl", "top, left", PartKind.Top, R("-3/4", "32", "34 3/4", "1 1/2"), 3));
        parts.Add(new("tr", "top, right", PartKind.Top, R("50", "32", "34 3/4", "1 1/2"), 3));
        openings.Add(new("ob", "middle bay, open", R("34", "6", "16", "15 1/4"), Phrase.Of("open")));
        return new("Printer's bench, front", "A bench 84 in wide and 33 1/2 in high: two banks of five drawers with an open bay between them.", parts.ToImmutable())
        {
            Openings = openings.ToImmutable(),
            Ghosts = [new("gp", "proof press", R("35 1/2", "22", "13", "13"), Phrase.Of("proof press"))],
            Chains =
            [
                new(Side.Above, [new(In("0"), In("84"), Fig("84"), "w", "width over the posts 84 in")]),
                new(Side.Below,
                [
                    new(In("3 1/2"), In("30 1/2"), Fig("26 15/16"), "lw", "left opening 26 15/16 in, read", true),
                    new(In("34"), In("50"), Fig("16"), "mw", "middle opening 16 in"),
                    new(In("53 1/2"), In("80 1/2"), Fig("27"), "rw", "right opening 27 in"),
                ]),
                ElevationChain.Of(Side.Left, [In("0"), In("2 1/2"), In("6"), In("30 1/2"), In("32"), In("33 1/2")], [Fig("2 1/2"), Fig("3 1/2"), Fig("24 1/2"), Fig("1 1/2"), Fig("1 1/2")]),
                ElevationChain.Of(Side.Left, [In("0"), In("33 1/2")], [Fig("33 1/2")]),
            ],
            Inner = [new(new(In("22"), In("33 1/2"), Fig("11 1/2"), "wd", "depth of the well 11 1/2 in"), In("48"), true)],
        };

        void Bank(string key, string name, string left, int pencil)
        {
            parts.Add(new($"{key}u", $"{name}, high rail", PartKind.Rail, R(left, "30 1/2", "27", "1 1/2"), 1));
            parts.Add(new($"{key}d", $"{name}, low rail", PartKind.Rail, R(left, "2 1/2", "27", "3 1/2"), 1));
            Length x = In(left) + In("1/8"), top = In("30 1/4"), gap = In("1/4");
            for (int i = 0; i < 5; i++)
            {
                Length height = In(s_fronts[i]);
                Length middle = x + In("13 3/8");
                parts.Add(new($"{key}f{i}", $"{name}, drawer {i + 1}", PartKind.DrawerFront, new(x, top - height, In("26 3/4"), height), 1)
                {
                    IsMarked = i + 1 == pencil,
                    Handles = [new(middle - In("1 5/8"), top - In("1 7/8"), In("3 1/4"), In("3/8"))],
                });
                top = top - height - gap;
            }
        }
    }
}

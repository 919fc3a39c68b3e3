using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>The sizes of a bottom, and of the back that it slides in under.</summary>
internal sealed record BottomSizes(PartSize Width, PartSize Length, PartSize? BackLength, PartSize? BackHeight);

/// <summary>
/// The bottom of a box: in grooves all round, slid in under a short back, on the lower edges, or let into them. Grooves are as wide as the bottom
/// reads, not as its label says.
/// </summary>
internal static class BottomRule
{
    /// <summary>How far up the bottom reaches from the lower edge of the sides.</summary>
    public static ExactLength Top(Box box) => box.Kind.BottomFit switch
    {
        BottomFit.Applied => ExactLength.Zero,
        BottomFit.LetIn or BottomFit.Between => box.Book.Value(box.BottomThickness),
        _ => box.Book.Value(QuantityKey.Of(box.Key, "groove.up")) + box.Book.Value(QuantityKey.Of(box.Key, "groove.width")),
    };

    public static BottomSizes Write(BoxCorners corners, BoxSizes sizes, QuantityKey built)
    {
        Box box = corners.Box;
        BottomSizes bottom = box.Kind.BottomFit == BottomFit.Applied ? Applied(corners, sizes, built) : Held(corners, sizes);
        if (box.Kind.BottomFit == BottomFit.Grooved) return bottom;
        ImmutableArray<Term> under = box.Kind.BottomFit switch
        {
            BottomFit.SlidIn => [Term.From("groove above the lower edge", -1, QuantityKey.Of(box.Key, "groove.up")), Term.From("bottom, as read", -1, box.BottomThickness)],
            BottomFit.LetIn => [Term.From("bottom, as read", -1, box.BottomThickness)],
            _ => [],
        };
        box.Book.Define(box.Key, "inside.height", $"{box.Name}, height inside, bottom to upper edge", new Sum([Term.From("side height, as cut", 1, sizes.SideHeight.AsCut), .. under]));
        return bottom;
    }

    /// <summary>On the lower edges, flush with the box all round.</summary>
    private static BottomSizes Applied(BoxCorners corners, BoxSizes sizes, QuantityKey built)
    {
        Box box = corners.Box;
        (Book book, string key, string name) = (box.Book, box.Key, box.Name);
        PartSize width = book.DefineSize(key, "bottom.width", $"{name} bottom, across", new Sum(Term.From("box, as built", 1, built)), PartRole.BoxBottom);
        PartSize length = book.DefineSize(key, "bottom.length", $"{name} bottom, front to back", new Sum([Term.From("side, as cut", 1, sizes.SideLength.AsCut), .. corners.LapTerm(1)]), PartRole.BoxBottom);
        foreach (string part in new[] { "side", "end" }) book.Joints.Add(new(JointKind.Butt, $"{key}.bottom", Face.Top, $"{key}.{part}", Face.Bottom, "glue and screws from below"));
        Screw(box, 2 * (Fastening.ScrewsAlong(book.Value(width.AsCut)) + Fastening.ScrewsAlong(book.Value(length.AsCut))), "all round");
        return new(width, length, null, null);
    }

    private static BottomSizes Held(BoxCorners corners, BoxSizes sizes)
    {
        Box box = corners.Box;
        (Book book, DrawerKind kind, string key, string name) = (box.Book, box.Kind, box.Key, box.Name);
        TradeRule depthRule = TradeRules.Get("BX6"), limit = TradeRules.Get("BX7"), slackRule = TradeRules.Get("BX9"), up = TradeRules.Get(kind.Slides == SlideWay.Under ? "US3" : "BX8");
        bool isLetIn = kind.BottomFit == BottomFit.LetIn, slides = kind.BottomFit == BottomFit.SlidIn;
        string word = isLetIn ? "rabbet" : "groove", words = isLetIn ? "rabbets" : "grooves";
        QuantityKey half = book.Define(key, "groove.limit", $"{name}, deepest {word}", new Sum([Term.From("side", 1, box.SideThickness)], Rational.Of(1, 2)));
        PartSize groove = book.DefineSize(key, "groove.depth", $"{name}, {word} depth", kind.GrooveDepth?.Stated ?? (Working)new Extreme(
        [
            Term.From("usual depth", 1, depthRule.Length, new(OriginKind.Rule, "for a thin bottom", depthRule.Cited)),
            Term.From("half the side", 1, half),
        ], IsLeast: true), Rounding.Down, $"down: never past half the side ({limit.Cited})");
        QuantityKey grooveWidth = book.DefineSame(key, "groove.width", isLetIn ? $"{name}, height of the rabbet" : $"{name}, groove width", "bottom, as read", box.BottomThickness);
        QuantityKey? grooveUp = isLetIn ? null : book.Define(key, "groove.up", $"{name}, groove above the lower edge",
            kind.GrooveUp?.Stated ?? new Stated(up.Length, new(OriginKind.Rule, kind.Slides == SlideWay.Under ? "room for the slides under it" : "middle of 1/4 to 1/2 in", up.Cited)));
        if (grooveUp is { } low && kind.GrooveUp is { } said && book.Value(low) < book.Value(box.BottomThickness))
            book.NoteOnce("drawer.groove-low", Severity.Warn, key, $"Only {book.Say(book.Value(low))} of wood stays below the groove for the bottom of {name}: it breaks out.",
                $"Leave as much as the bottom is thick, {book.Say(book.Value(box.BottomThickness))}, or more. (common practice, no source)", said.Place);
        QuantityKey slack = book.Define(key, "bottom.slack", $"{name}, slack of the bottom", new Stated(slackRule.Length, new(OriginKind.Rule, "in all, in each direction", slackRule.Cited)));
        ImmutableArray<Term> across = [Term.From($"{box.EndWord}, as cut", 1, sizes.EndLength.AsCut), .. corners.InsideLess(false), Term.From($"{words} in the sides", 2, groove.ToCut)];
        ImmutableArray<Term> fore = [Term.From("side, as cut", 1, sizes.SideLength.AsCut), .. corners.InsideLengthLess];
        SolidBottom? solid = isLetIn ? null : SolidBottom.Define(box, across, [.. fore, .. slides ? [Term.From("groove in the front", 1, groove.ToCut), Term.From("back", 1, box.BackThickness)] : (Term[])[Term.From("grooves in the ends", 2, groove.ToCut)]], slack, groove.AsCut);
        PartSize width = book.DefineSize(key, "bottom.width", $"{name} bottom, across", new Sum(
            [.. across, Term.From("slack", -1, solid?.IsAcross == true ? solid.Play.Across : slack)]), PartRole.BoxBottom);
        ImmutableArray<Term> along = slides
            ? [Term.From("groove in the front", 1, groove.ToCut), Term.From("back", 1, box.BackThickness), .. solid?.IsAcross == false ? [Term.From("room for what it moves", -1, solid.Play.Across)] : ImmutableArray<Term>.Empty]
            : [Term.From($"{words} in the ends", 2, groove.ToCut), Term.From("slack", -1, solid?.IsAcross == false ? solid.Play.Across : slack)];
        PartSize length = book.DefineSize(key, "bottom.length", $"{name} bottom, front to back", new Sum([.. fore, .. along]), PartRole.BoxBottom);
        Slack(box, "across", $"in the {words} of the sides", new Sum([Term.From($"{box.EndWord}, as cut", 1, sizes.EndLength.AsCut), .. corners.InsideLess(true),
            Term.From($"{words} in the sides, as cut", 2, groove.AsCut), Term.From("bottom, as cut", -1, width.AsCut)]), solid?.IsAcross == true ? solid.Play.Across : null);
        if (!slides)
            Slack(box, "along", $"in the {words} of the ends", new Sum([Term.From("side, as cut", 1, sizes.SideLength.AsCut), .. corners.InsideLengthLess,
                Term.From($"{words} in the ends, as cut", 2, groove.AsCut), Term.From("bottom, as cut", -1, length.AsCut)]), solid?.IsAcross == false ? solid.Play.Across : null);
        foreach (string part in new[] { "side", "end" })
        {
            book.Machinings.Add(new($"{key}.{part}", Words(kind, corners.IsThrough, part), isLetIn
                ? [("depth", groove.ToCut), ("height", grooveWidth)]
                : [("depth", groove.ToCut), ("width", grooveWidth), ("above the lower edge", grooveUp!.Value)])
            { By = [$"{key}.bottom"], On = Face.Inside, IsWholeLength = !corners.IsThrough });
            book.Joints.Add(new(isLetIn ? JointKind.Rabbet : slides ? JointKind.SlidIn : JointKind.Groove, $"{key}.bottom", Face.AllEdges, $"{key}.{part}", Face.Inside, isLetIn ? "glue and pins" : "no glue") { Depth = groove.AsCut, IsLoose = !isLetIn });
        }
        CheckDepth(box, groove, word);
        GrooveHold.Look(book, new(key, "drawer.bottom-falls-out", $"The bottom of {name}", slack, groove.AsCut, !isLetIn), null, kind.GrooveDepth, kind.Place);
        if (!slides) return new(width, length, null, null);

        PartSize backLength = book.DefineSize(key, "back.length", $"{name} back of the box, length", new Sum(Term.From("front of the box, to cut", 1, sizes.EndLength.ToCut)), PartRole.BoxEnd);
        PartSize backHeight = book.DefineSize(key, "back.width", $"{name} back of the box, height", new Sum(
            Term.From("front of the box, to cut", 1, sizes.EndHeight.ToCut), Term.From("groove above the lower edge", -1, grooveUp!.Value), Term.From("groove width", -1, grooveWidth)), PartRole.BoxEnd);
        solid?.Screws(book, key);
        book.Joints.Add(new(JointKind.Butt, $"{key}.bottom", Face.Top, $"{key}.back", Face.Bottom, solid?.HeldWords ?? "screws from below") { IsLoose = solid is not null });
        Screw(box, solid?.IsAcross == true ? 1 : Fastening.ScrewsAlong(book.Value(width.AsCut)), "up into the back");
        return new(width, length, backLength, backHeight);
    }

    private static string Words(DrawerKind kind, bool isThrough, string part) => (kind.BottomFit, isThrough) switch
    {
        (BottomFit.LetIn, false) => "Rabbet along the lower inside edge for the bottom, whole length",
        (BottomFit.LetIn, true) => "Rabbet along the lower inside edge for the bottom, stopped short of both ends, or what shows is filled",
        (_, false) => "Groove along the inside for the bottom, whole length",
        (BottomFit.SlidIn, true) when part == "side" => "Groove along the inside for the bottom, from the back, stopped short of the front end",
        _ => "Groove along the inside for the bottom, stopped short of both ends, or the holes it leaves are plugged",
    };

    /// <summary>The bottom must go in, and stay in.</summary>
    private static void Slack(Box box, string way, string words, Sum slack, QuantityKey? moves = null)
    {
        QuantityKey gap = box.Book.Define(box.Key, $"bottom.play-{way}", $"{box.Name}, slack of the bottom {words}", slack);
        TradeRule most = TradeRules.Get("GV1");
        box.Book.Gaps.Add(new(gap, $"{box.Name}, bottom {words}", moves is { } m ? ExactLength.Max(ExactLength.Zero, box.Book.Value(m) - (most.Length / 2)) : ExactLength.Zero, (moves is { } n ? box.Book.Value(n) - (most.Length / 2) : ExactLength.Zero) + most.Length, $"goes in, and stays in both grooves: {most.Cited}") { Group = box.Space.Owner });
    }

    private static void Screw(Box box, int count, string where)
    {
        Book book = box.Book;
        book.Hardware.Add(new(box.Key, Fastening.PanelScrew(book, box.Sides, book.Value(box.BottomThickness)), count, "piece", $"bottom {where}: {Fastening.SpacingWords}"));
    }

    private static void CheckDepth(Box box, PartSize groove, string word)
    {
        Book book = box.Book;
        ExactLength depth = book.Value(groove.ToCut), thick = book.Value(box.SideThickness), most = thick / 2;
        if (depth <= most || book.IsUnknown(box.Sides.Name)) return;
        Severity severity = depth >= thick ? Severity.Stop : Severity.Warn;
        string left = depth >= thick ? "nothing" : book.Say(thick - depth);
        book.NoteOnce("groove.too-deep", severity, box.Key, $"A {word} of {book.Say(depth)} leaves {left} of a side of {book.Say(thick)}.",
            $"Make it {book.Say(most)} deep at most, half the side. ({TradeRules.Get("BX7").Cited})", box.Kind.GrooveDepth?.Place ?? box.Kind.Place);
    }
}

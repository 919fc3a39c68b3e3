using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>The bottom of a box whose front is its face, in grooves of the sides and the front, slid in under a lower back.</summary>
internal static class FrontedBottom
{
    public static (PartSize Across, PartSize Fore, PartSize Back) SlidIn(Box box, ImmutableArray<Term> inside, ImmutableArray<Term> along, PartSize height)
    {
        (Book book, DrawerKind kind, string key, string name) = (box.Book, box.Kind, box.Key, box.Name);
        TradeRule usual = TradeRules.Get("BX6"), limit = TradeRules.Get("BX7"), upRule = TradeRules.Get("BX8"), slackRule = TradeRules.Get("BX9");
        QuantityKey half = book.Define(key, "groove.limit", $"{name}, deepest groove", new Sum([Term.From("side", 1, box.SideThickness)], Rational.Of(1, 2)));
        PartSize groove = book.DefineSize(key, "groove.depth", $"{name}, groove depth", kind.GrooveDepth?.Stated ?? (Working)new Extreme(
            [Term.From("usual depth", 1, usual.Length, new(OriginKind.Rule, "for a thin bottom", usual.Cited)), Term.From("half the side", 1, half)], IsLeast: true), Rounding.Down, $"down: never past half the side ({limit.Cited})");
        QuantityKey wide = book.DefineSame(key, "groove.width", $"{name}, groove width", "bottom, as read", box.BottomThickness);
        QuantityKey up = book.Define(key, "groove.up", $"{name}, groove above the lower edge", kind.GrooveUp?.Stated ?? new Stated(upRule.Length, new(OriginKind.Rule, "middle of 1/4 to 1/2 in", upRule.Cited)));
        QuantityKey slack = book.Define(key, "bottom.slack", $"{name}, slack of the bottom across", new Stated(slackRule.Length, new(OriginKind.Rule, "in all", slackRule.Cited)));
        ImmutableArray<Term> wideTerms = [.. inside, Term.From("grooves in the sides", 2, groove.ToCut)], longTerms = [.. along, Term.From("groove in the front", 1, groove.ToCut)];
        SolidBottom? solid = SolidBottom.Define(box, wideTerms, longTerms, slack, groove.AsCut);
        PartSize across = book.DefineSize(key, "bottom.width", $"{name} bottom, across", new Sum([.. wideTerms, Term.From("slack", -1, solid?.IsAcross == true ? solid.Play.Across : slack)]), PartRole.BoxBottom);
        PartSize fore = book.DefineSize(key, "bottom.length", $"{name} bottom, front to back", new Sum([.. longTerms, .. solid?.IsAcross == false ? [Term.From("room for what it moves", -1, solid.Play.Across)] : ImmutableArray<Term>.Empty]), PartRole.BoxBottom);
        PartSize back = book.DefineSize(key, "back.width", $"{name} back of the box, height", new Sum(Term.From("side height, to cut", 1, height.ToCut), Term.From("groove above the lower edge", -1, up), Term.From("groove width", -1, wide)), PartRole.BoxEnd);
        book.Define(key, "inside.height", $"{name}, height inside, bottom to upper edge", new Sum(Term.From("side height, as cut", 1, height.AsCut), Term.From("groove above the lower edge", -1, up), Term.From("bottom, as read", -1, box.BottomThickness)));
        foreach (string part in new[] { "side", "front" })
        {
            book.Machinings.Add(new($"{key}.{part}", part == "front" ? "Groove along the inside for the bottom, stopped short of both ends" : "Groove along the inside for the bottom, whole length", [("depth", groove.ToCut), ("width", wide), ("above the lower edge", up)]) { By = [$"{key}.bottom"], On = Face.Inside, IsWholeLength = part == "side" });
            book.Joints.Add(new(JointKind.SlidIn, $"{key}.bottom", Face.AllEdges, $"{key}.{part}", Face.Inside, "no glue") { Depth = groove.AsCut, IsLoose = true });
        }
        solid?.Screws(book, key);
        book.Joints.Add(new(JointKind.Butt, $"{key}.bottom", Face.Top, $"{key}.back", Face.Bottom, solid?.HeldWords ?? "screws from below") { IsLoose = solid is not null });
        book.Hardware.Add(new(key, Fastening.PanelScrew(book, box.Sides, book.Value(box.BottomThickness)), solid?.IsAcross == true ? 1 : Fastening.ScrewsAlong(book.Value(across.AsCut)), "piece", $"bottom up into the back: {Fastening.SpacingWords}"));
        ExactLength depth = book.Value(groove.ToCut), thick = book.Value(box.SideThickness);
        if (depth * 2 > thick && !book.IsUnknown(box.Sides.Name))
            book.NoteOnce("groove.too-deep", depth >= thick ? Severity.Stop : Severity.Warn, key, $"A groove of {book.Say(depth)} leaves {(depth >= thick ? "nothing" : book.Say(thick - depth))} of a side of {book.Say(thick)}.", $"Make it {book.Say(thick / 2)} deep at most, half the side. ({limit.Cited})", kind.GrooveDepth?.Place ?? kind.Place);
        return (across, fore, back);
    }
}

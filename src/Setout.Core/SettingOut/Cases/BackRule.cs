// Over 200 lines: the four ways a back is put in share their clear sizes, their room to move and what holds them.
using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Cases;

/// <summary>
/// The back of a case. Applied, it lies on the rear edges and covers them. Inset, it stands between sides, top and bottom. Rabbeted, it stands in the sides
/// and over the rear edges of top and bottom, which are narrower by the rabbet. Grooved, it stands in all four.
/// </summary>
internal static class BackRule
{
    /// <summary>The least thickness that holds a screw in its edge, or a case on a wall: what is sold as 1/2 in (12 mm). Common practice, no source.</summary>
    public static readonly ExactLength Carries = Fastening.HoldsInEdge;

    /// <summary>How the back is held, before the parts round it are sized.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="described">The case.</param>
    /// <param name="name">For people.</param>
    /// <param name="panel">Its sheet.</param>
    /// <param name="side">The thickness of the sides.</param>
    /// <param name="rail">The thickness of a hanging rail, which stands behind a back that is let in; null for none.</param>
    public static BackSetting? Of(Book book, Case described, string name, Panel? panel, QuantityKey side, QuantityKey? rail)
    {
        BackFit fit = described.BackFit;
        string key = described.Key;
        if (panel is null) return null;
        QuantityKey t = book.ThicknessOf($"{key}.back", panel.Name);
        (Given? Size, string Word)[] needless = fit.Hold switch
        {
            BackHold.Applied => [(fit.Depth, "depth"), (fit.Inset, "inset"), (fit.Play, "play")],
            BackHold.Inset => [(fit.Depth, "depth")],
            _ => [],
        };
        foreach ((Given? size, string word) in needless)
            if (size is { } said)
                book.Note("back.needless-size", Severity.Warn, key, $"A back that is {(fit.Hold == BackHold.Applied ? "applied" : "inset")} has no {word}.", $"Leave {book.Hand.Key(word)} out, {book.Hand.OrWrite("fit", "grooved")} or {book.Hand.Key("fit", "rabbeted")}.", said.Place);
        if (fit.Hold == BackHold.Applied) return new(panel, fit.Hold, t, null, null, null);
        QuantityKey inset = book.Define(key, "back.inset", $"{name}, from the rear edges to its back",
            fit.Inset is { } given ? given.Stated
            : rail is { } behind && fit.Hold != BackHold.Rabbeted ? new Sum(Term.From("hanging rail behind it", 1, behind))
            : fit.Hold == BackHold.Grooved ? Usual.Or(book, null, "CB2", "wood left behind the groove")
            : new Stated(Zero, new(OriginKind.Rule, "flush with the rear edges", "common practice, no source")));
        QuantityKey play = book.Define(key, "back.play", $"{name}, what its back is smaller than its place", Usual.Or(book, fit.Play, "CB1", "in all, each way"));
        return new(panel, fit.Hold, t, inset, Depth(book, key, name, fit, side), play);
    }

    private static PartSize? Depth(Book book, string key, string name, BackFit fit, QuantityKey side)
    {
        if (fit.Hold == BackHold.Inset) return null;
        string word = fit.Hold == BackHold.Rabbeted ? "rabbet" : "groove";
        PartSize depth;
        if (fit.Depth is { } given) depth = book.DefineSize(key, "back.depth", $"{name}, {word} for its back, depth", given.Stated, Rounding.Nearest, "to the nearest step");
        else
        {
            QuantityKey half = book.Define(key, "back.half", $"{name}, half of a side", new Sum([Term.From("side", 1, side)], TradeRules.Get("BX7").Share));
            TradeRule usual = TradeRules.Get("BX6"), most = TradeRules.Get("BX7");
            Working working = fit.Hold == BackHold.Rabbeted ? new Sum(Term.From("half of a side", 1, half))
                : new Extreme([Term.From("usual depth", 1, usual.Length, new(OriginKind.Rule, "for a thin panel", usual.Cited)), Term.From("half of a side", 1, half)], IsLeast: true);
            depth = book.DefineSize(key, "back.depth", $"{name}, {word} for its back, depth", working, Rounding.Down, $"down: never past half the side ({most.Cited})");
        }
        LetInRule.IsSound(book, key, $"{word} for the back", $"the sides of {name}", "CJ2", depth, side, fit.Depth?.Place ?? fit.Place);
        return depth;
    }

    /// <summary>What the back takes of the depth of top and bottom: nothing, or the width of its rabbet.</summary>
    public static ImmutableArray<Term> OffDecks(CaseShape shape) => shape.Back is { Hold: BackHold.Rabbeted } back ? Behind(back) : [];

    /// <summary>What the back takes of the clear depth.</summary>
    public static ImmutableArray<Term> OffClear(CaseShape shape) => shape.Back is { Hold: not BackHold.Applied } back ? Behind(back) : [];

    private static ImmutableArray<Term> Behind(BackSetting back) => [Term.From("back, as read", -1, back.Thickness), Term.From("back, from the rear edges", -1, back.Inset!.Value)];

    /// <summary>Writes an applied back: it covers the case as it comes out, which rounding may leave a little wider than given. The grain stands upright as that of the sides.</summary>
    public static void WriteApplied(Book book, CaseShape shape, BackSetting back, PartSize side, PartSize deck, ExactLength w, ExactLength h, ExactLength rear)
    {
        (string key, string name) = (shape.Key, shape.Name);
        PartSize length = book.DefineSize(key, "back.length", $"{name} back, length", new Sum(Term.From("side, as cut", 1, side.AsCut)), PartRole.Back);
        PartSize across = book.DefineSize(key, "back.width", $"{name} back, width",
            new Sum([Term.From("top and bottom, as cut", 1, deck.AsCut), Term.From("sides", 2, shape.Thickness), .. shape.InBothSides(-1)]), PartRole.Back);
        Add(book, shape, back, length, across, new(Zero, rear, Zero, w, book.Value(back.Thickness), h));
        book.Joints.Add(new(JointKind.Butt, $"{key}.back", Face.Inside, shape.Side, Face.BackEdge, "glue and screws all round"));
        if (WoodMoves.Of(book, $"{key}.back", $"{name} back", back.Panel, across.Made) is { } moves) HeldFast(book, shape, back, moves, across.Made);
        Screws(book, shape, back, w, h);
    }

    /// <summary>Writes a back that is let in.</summary>
    public static void WriteLetIn(Book book, CaseShape shape, BackSetting back, PartSize side, QuantityKey clearWidth, QuantityKey clearHeight, ExactLength w, ExactLength h, ExactLength rear)
    {
        (string key, string name) = (shape.Key, shape.Name);
        const string why = "down: it must go inside";
        ImmutableArray<Term> grooves = back.Depth is { } d ? [Term.From("into both sides", 2, d.AsCut)] : [];
        ImmutableArray<Term> play = [Term.From("play", -1, back.Play!.Value)];
        PanelPlay? solid = WoodMoves.Solid(back.Panel) is null ? null : Solid(book, shape, back, grooves, clearWidth);
        bool isFull = back.Hold == BackHold.Rabbeted;
        ImmutableArray<Term> high = isFull ? [Term.From("side, as cut", 1, side.AsCut)] : [Term.From("between top and bottom", 1, clearHeight), .. back.Depth is { } u ? [Term.From("into top and bottom", 2, u.AsCut)] : ImmutableArray<Term>.Empty];
        ImmutableArray<Term> wide = [Term.From("clear between the sides", 1, clearWidth), .. grooves];
        PartSize length = isFull
            ? book.DefineSize(key, "back.length", $"{name} back, length", new Sum(high), PartRole.Back)
            : book.DefineSize(key, "back.length", $"{name} back, length", new Sum([.. high, .. play]), Rounding.Down, why);
        PartSize across = book.DefineSize(key, "back.width", $"{name} back, width", new Sum([.. wide, .. solid is null ? play : [Term.From("play", -1, solid.Across)]]), Rounding.Down, why);
        if (solid is null) Stays(book, shape, back);
        if (solid is null) Room(book, shape, back, "across", wide, across);
        else if (back.Depth is { } deep) PanelPlayRule.Slack(book, solid, "across", across, clearWidth, deep.AsCut, solid.Across);
        if (!isFull) Room(book, shape, back, "along", high, length);
        ExactLength t = book.Value(back.Thickness), x = book.Value(across.AsCut), z = isFull ? h : book.Value(length.AsCut);
        ExactLength low = isFull ? Zero : book.ValueOr0(shape.Raise) + book.Value(shape.Thickness) + ((book.Value(clearHeight) - z) / 2);
        Add(book, shape, back, length, across, new((w - x) / 2, rear - book.Value(back.Inset!.Value) - t, low, x, t, z));
        if (book.Value(back.Inset!.Value).Sign > 0) book.Show(new(back.Inset.Value, false, rear - book.Value(back.Inset.Value), rear, 0) { IsDeep = true });
        Hold(book, shape, back, w, h);
    }

    /// <summary>
    /// A back of solid wood, its grain upright, has what it moves across its grain and stands loose: in grooves. Held fast all round it would split, whatever its play.
    /// </summary>
    private static PanelPlay Solid(Book book, CaseShape shape, BackSetting back, ImmutableArray<Term> grooves, QuantityKey clearWidth)
    {
        (string key, string name) = (shape.Key, shape.Name);
        QuantityKey room = book.Define(key, "back.room", $"{name}, room for its back across", new Sum([Term.From("clear between the sides", 1, clearWidth), .. grooves]));
        PanelPlay play = PanelPlayRule.Of(book, (key, "back", name, $"the back of {name}"), back.Panel, book.Piece.MoistureChange, room, shape.Described.BackFit.Play, new Sum(Term.From("play", 1, back.Play!.Value)));
        if (back.Hold == BackHold.Grooved) PanelPlayRule.Check(book, play, "case", back.Depth!.AsCut, shape.Described.BackFit.Depth?.Place ?? shape.Described.BackFit.Place);
        else HeldFast(book, shape, back, play.Moves!.Value, room);
        return play;
    }

    private static void HeldFast(Book book, CaseShape shape, BackSetting back, QuantityKey moves, QuantityKey wide)
    {
        ExactLength by = book.Value(moves), most = Usual.Length(book, "WD1");
        if (by > most)
            book.Note("wood.cross-grain", Severity.Warn, shape.Key, $"The back of {shape.Name} of {WoodMoves.Solid(back.Panel)!.Name} moves {book.Say(by)} across its {book.Say(book.Value(wide))}; fixed all round to top and bottom, which do not follow, it splits.",
                $"{book.Hand.Write("fit", "grooved")}, where it has {book.Say(by)} of play without glue, or use plywood for the back. (a joint takes about {book.Say(most)}: {TradeRules.Get("WD1").Cited})", shape.Described.BackFit.Place.IsKnown ? shape.Described.BackFit.Place : shape.Described.Place);
    }

    /// <summary>Whether it stays where it is let in; between the sides, whether its gap is more than a screw bridges.</summary>
    private static void Stays(Book book, CaseShape shape, BackSetting back)
    {
        BackFit fit = shape.Described.BackFit;
        if (back.Depth is { } depth) GrooveHold.Look(book, new(shape.Key, "back.falls-out", $"The back of {shape.Name}", back.Play!.Value, depth.AsCut, back.Hold == BackHold.Grooved), fit.Play, fit.Depth, fit.Place);
        else if (fit.Play is { } all && ExactLength.Min(shape.Described.Width.Value, shape.Described.Height.Value - book.ValueOr0(shape.Raise)) - (book.Value(shape.Thickness) * 2) is var least && all.Value >= least - book.Grid.Step)
            book.Note("back.falls-out", Severity.Stop, shape.Key, $"A play of {book.Say(all.Value)} leaves nothing of the back of {shape.Name}: its place is {book.Say(least)}.", $"Leave {book.SayAtMost(TradeRules.Get("GV1").Length)} at most. ({TradeRules.Get("GV1").Cited})", all.Place);
        else if (fit.Play is { } given && given.Value > TradeRules.Get("GV1").Length)
            book.Note("back.wide-gap", Severity.Warn, shape.Key, $"A back with {book.Say(given.Value)} of play leaves {book.Say(given.Value / 2)} open at each edge.", $"Leave {book.SayAtMost(TradeRules.Get("GV1").Length)} at most. ({TradeRules.Get("GV1").Cited})", given.Place);
    }

    private static void Add(Book book, CaseShape shape, BackSetting back, PartSize length, PartSize across, Placement place) =>
        book.Add(new($"{shape.Key}.back", $"{shape.Key}b", $"{shape.Name} back", PartRole.Back, back.Panel.Name, length, across, back.Thickness, 1, back.Panel.Grain, [place], shape.Described.Place));

    private static void Room(Book book, CaseShape shape, BackSetting back, string way, ImmutableArray<Term> room, PartSize cut)
    {
        TradeRule most = TradeRules.Get("GV1");
        QuantityKey gap = book.Define(shape.Key, $"back.play-{way}", $"{shape.Name}, room of its back {way}", new Sum([.. room, Term.From("back, as cut", -1, cut.AsCut)]));
        book.Gaps.Add(new(gap, $"{shape.Name}, back in its place {way}", Zero, most.Length, $"goes in, and covers: {most.Cited}"));
    }

    private static void Hold(Book book, CaseShape shape, BackSetting back, ExactLength w, ExactLength h)
    {
        (string key, string name, string part) = (shape.Key, shape.Name, $"{shape.Key}.back");
        switch (back.Hold)
        {
            case BackHold.Grooved:
                QuantityKey wide = book.DefineSame(key, "back.groove-width", $"{name}, groove for its back, width", "back, as read", back.Thickness);
                foreach (string round in new[] { shape.Side, shape.Deck })
                {
                    book.Machinings.Add(new(round, "Groove along the inside for the back, whole length; plug its ends where they are seen", [("depth", back.Depth!.ToCut), ("width", wide), ("from the rear edge", back.Inset!.Value)]) { By = [part], On = Face.Inside, IsWholeLength = true });
                    book.Joints.Add(new(JointKind.Groove, part, Face.AllEdges, round, Face.Inside, "no glue") { Depth = back.Depth.AsCut, IsLoose = true });
                }
                return;
            case BackHold.Rabbeted:
                QuantityKey rabbet = book.Define(key, "back.rabbet-width", $"{name}, rabbet for its back, width", new Sum(Term.From("back, as read", 1, back.Thickness), Term.From("back, from the rear edges", 1, back.Inset!.Value)));
                book.Machinings.Add(new(shape.Side, "Rabbet along the inside of the rear edge for the back, whole length", [("depth", back.Depth!.ToCut), ("width", rabbet)]) { By = [part], On = Face.Inside, Edge = Face.BackEdge, IsWholeLength = true });
                book.Joints.Add(new(JointKind.Rabbet, part, Face.AllEdges, shape.Side, Face.BackEdge, "glue and screws all round") { Depth = back.Depth.AsCut });
                Screws(book, shape, back, w, h);
                return;
            default:
                book.Joints.Add(new(JointKind.Butt, part, Face.AllEdges, shape.Side, Face.Inside, "glue and screws through sides, top and bottom into its edges"));
                book.Joints.Add(new(JointKind.Butt, part, Face.Ends, shape.Deck, Face.Inside, "glue and screws through sides, top and bottom into its edges") { IsLoose = WoodMoves.Solid(back.Panel) is not null });
                if (book.Value(back.Thickness) < Carries && !book.IsUnknown(back.Panel.Name))
                    book.Note("case.back-edge-too-thin", Severity.Warn, key, $"A back of {book.Say(book.Value(back.Thickness))} between the sides takes no screw in its edges.",
                        $"Use one of {book.Say(Carries)} or more, {book.Hand.OrWrite("fit", "rabbeted")} or {book.Hand.Key("fit", "grooved")}.", shape.Described.BackFit.Place);
                int screws = (2 * Fastening.ScrewsAlong(w)) + (2 * Fastening.ScrewsAlong(h));
                book.Hardware.Add(new(key, Fastening.PanelScrew(book, back.Panel, book.Value(shape.Thickness)), screws, "piece", $"into the edges of the back, all round: {Fastening.SpacingWords}"));
                return;
        }
    }

    private static void Screws(Book book, CaseShape shape, BackSetting back, ExactLength w, ExactLength h)
    {
        int screws = (2 * Fastening.ScrewsAlong(w)) + (2 * Fastening.ScrewsAlong(h));
        book.Hardware.Add(new(shape.Key, Fastening.PanelScrew(book, back.Panel, book.Value(back.Thickness)), screws, "piece", $"all round: {Fastening.SpacingWords}"));
    }

    /// <summary>The step that puts it in; a back in grooves goes in before the case is closed.</summary>
    public static void Step(Book book, CaseShape shape, BackSetting back, ExactLength w, ExactLength h)
    {
        string part = $"{shape.Key}.back";
        Length diagonal = Diagonals.Of(book.Grid, w, h);
        book.Steps.Add(back.Hold switch
        {
            BackHold.Applied => new(Stage.Back, $"Lay the back of {shape.The} on with its grain upright, flush with one long edge; check the diagonals once more, then glue and screw it all round and trim what stands over. It keeps the case square from here on.", [part], diagonal, ""),
            BackHold.Rabbeted => new(Stage.Back, $"Lay the back of {shape.The} into its rabbets, over the rear edges of top and bottom; check the diagonals once more, then glue and screw it all round and trim its ends. It keeps the case square from here on.", [part], diagonal, ""),
            BackHold.Inset => new(Stage.Back, $"Set the back of {shape.The} between sides, top and bottom on spacers cut to its distance from the rear edges; check the diagonals once more, then glue it and screw it through the case into its edges.", [part], diagonal, "screws"),
            _ => new(Stage.Carcase, $"Slide the back of {shape.The} into its grooves, without glue, before the last side closes them.", [part], null, "") { IsDry = true },
        });
    }
}

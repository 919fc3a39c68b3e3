using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Frames;

/// <summary>
/// Panels that stand in grooves of a frame: between the posts of each end, and in the bays of the back. Each is the clear size and two grooves
/// less its play, and is in before its frame is closed.
/// </summary>
internal static class FramePanelRule
{
    /// <summary>Writes them; gives the keys of those at the ends and of those at the back.</summary>
    public static (ImmutableArray<string> Ends, ImmutableArray<string> Backs) Write(
        Book book, Frame frame, string name, FrameKeys keys, FramePanels panels, PartSize tie, List<(Opening Bay, ExactLength X, PartSize Rail)> bays,
        ImmutableArray<Placement> ties, ExactLength depth)
    {
        string key = frame.Key;
        if (book.PanelOf(panels.Of, key) is not { } panel) return ([], []);
        TradeRule usual = TradeRules.Get("BX6"), slack = TradeRules.Get("BX9");
        QuantityKey t = Book.ThicknessOf(panel.Name);
        QuantityKey groove = book.Define(key, "groove", $"{name}, depth of the grooves for its panels", panels.Groove?.Stated ?? new Stated(usual.Length, new(OriginKind.Rule, "usual groove", usual.Cited)));
        QuantityKey play = book.Define(key, "panel-play", $"{name}, play of a panel in its grooves", panels.Play?.Stated ?? new Stated(slack.Length, new(OriginKind.Rule, "each way, in all", slack.Cited)));
        Depth(book, key, keys, panels, book.Value(groove), bays.Count > 1);
        if (book.Value(t) * 2 > book.Value(keys.RailThin))
            book.Note("frame.panel-too-thick", Severity.Stop, key, $"A panel of {book.Say(book.Value(t))} takes more than half of rails of {book.Say(book.Value(keys.RailThin))}.", "Use a thinner sheet or thicker rails.", panels.Of.Place);
        ExactLength g = book.Value(groove), half = book.Value(play) / 2, thick = book.Value(t), inset = (book.Value(keys.RailThin) - thick) / 2;
        ExactLength z = book.Value(keys.Toe) + book.Value(keys.RailWide) - g + half;
        Term grooves = Term.From("grooves on both sides", 2, groove);
        bool isSolid = WoodMoves.Solid(panel) is not null;
        // Across its grain a solid panel has what it moves; the grain stands upright.
        (PartSize Length, PartSize Width) Size(string owner, string word, string words, (string Words, QuantityKey Key) up, (string Words, QuantityKey Key) across)
        {
            PanelPlay? moving = isSolid ? PanelPlayRule.Of(book, (owner, word, words, $"the {words}"), panel, panels.MoistureChange ?? book.Piece.MoistureChange,
                book.Define(owner, $"{word}.room", $"{words}, between the bottoms of its grooves", new Sum(Term.From(across.Words, 1, across.Key), grooves)), panels.Play, new Sum(Term.From("play", 1, play))) : null;
            PartSize length = book.DefineSize(owner, $"{word}.length", $"{words}, height", new Sum(Term.From(up.Words, 1, up.Key), grooves, Term.From("play", -1, play)), PartRole.FramePanel);
            PartSize width = book.DefineSize(owner, $"{word}.width", $"{words}, width", new Sum(Term.From(across.Words, 1, across.Key), grooves, Term.From("play", -1, moving?.Across ?? play)), PartRole.FramePanel);
            PanelPlayRule.Hold(book, moving ?? new(owner, word, words, $"the {words}", null, groove, null, play, panels.Play), "frame", groove, panels.Groove, panels.Of.Place);
            if (moving is null) return (length, width);
            PanelPlayRule.Slack(book, moving, "across", width, across.Key, groove, moving.Across);
            PanelPlayRule.Slack(book, moving, "along", length, up.Key, groove, play);
            PanelPlayRule.Check(book, moving, "frame", groove, panels.Groove?.Place ?? panels.Of.Place);
            return (length, width);
        }

        ImmutableArray<string> ends = [], backs = [];
        if (panels.AtEnds)
        {
            // Ties stand on edge above and below, whichever way the top rails lie.
            QuantityKey high = book.Define(key, "end.clear-height", $"{name}, height between its ties", new Sum([Term.From("post, as cut", 1, keys.Post.AsCut), Term.From("floor to bottom tie", -1, keys.Toe),
                Term.From("ties, on edge", -2, keys.RailWide), .. keys.Over(-1)]));
            (PartSize length, PartSize width) = Size(key, "end-panel", $"{name} end panel", ("between the ties", high), ("between the posts", tie.Made));
            ExactLength from = book.Value(keys.PostThin) + ((book.Value(tie.Made) - book.Value(width.AsCut)) / 2), deep = book.Value(width.AsCut), tall = book.Value(length.AsCut);
            book.Add(new($"{key}.end-panel", $"{key}e", $"{name} end panel", PartRole.FramePanel, panel.Name, length, width, t, 2, panel.Grain,
                [new(ties[0].X + inset, from, z, thick, deep, tall), new(ties[^1].X + inset, from, z, thick, deep, tall)], panels.Place));
            Grooves(book, $"{key}.end-panel", [$"{key}.post", $"{key}.tie"], groove, t);
            ends = [$"{key}.end-panel"];
        }
        if (panels.AtBack)
        {
            foreach ((Opening bay, ExactLength x, PartSize rail) in bays)
            {
                QuantityKey high = book.Define(bay.Key, "back.clear-height", $"bay {bay.Key}, height between its back rails", new Sum([Term.From("post, as cut", 1, keys.Post.AsCut), Term.From("floor to bottom rail", -1, keys.Toe),
                    Term.From("bottom rail, on edge", -1, keys.RailWide), Term.From("top rail", -1, keys.TopRail), .. keys.Over(-1)]));
                (PartSize length, PartSize width) = Size(bay.Key, "back-panel", $"bay {bay.Key} back panel", ("between the rails", high), ("between the posts", rail.Made));
                book.Add(new($"{bay.Key}.back-panel", $"{bay.Key}k", $"bay {bay.Key} back panel", PartRole.FramePanel, panel.Name, length, width, t, 1, panel.Grain,
                    [new(x + ((book.Value(rail.Made) - book.Value(width.AsCut)) / 2), depth - inset - thick, z, book.Value(width.AsCut), thick, book.Value(length.AsCut))], panels.Place));
                Grooves(book, $"{bay.Key}.back-panel", [$"{key}.post", $"{bay.Key}.rail"], groove, t);
            }
            backs = [.. bays.Select(b => $"{b.Bay.Key}.back-panel")];
        }
        return (ends, backs);
    }

    /// <summary>A groove goes into the edges of rails and ties; into the posts of an end from front or back, into those of the back from one side, or from both.</summary>
    private static void Depth(Book book, string key, FrameKeys keys, FramePanels panels, ExactLength groove, bool areBetween)
    {
        ExactLength usual = book.Value(keys.RailThin) / 2, wide = book.Value(keys.PostWide);
        (ExactLength Most, string Words)[] through =
        [
            (book.Value(keys.RailWide), "go through the rails"),
            .. panels.AtEnds ? [(book.Value(keys.PostThin), "go through the posts")] : Array.Empty<(ExactLength, string)>(),
            .. panels.AtBack ? [areBetween ? (wide / 2, "meet in the posts between the bays") : (wide, "go through the posts")] : Array.Empty<(ExactLength, string)>(),
        ];
        (ExactLength most, string past) = through.MinBy(t => t.Most);
        if (groove < most && groove <= usual) return;
        bool stops = groove >= most;
        book.Note("frame.groove-too-deep", stops ? Severity.Stop : Severity.Warn, key, stops ? $"Grooves of {book.Say(groove)} {past}." : $"Grooves of {book.Say(groove)} are deep for rails of {book.Say(book.Value(keys.RailThin))}.", $"Make them {book.SayAtMost(ExactLength.Min(usual, most / 2))} or less.", panels.Groove?.Place ?? panels.Place);
    }

    /// <summary>What a panel in the back takes of the depth: it stands in the middle of the rails. Null where there is none.</summary>
    public static QuantityKey? BackTakes(Book book, Frame frame, string name, QuantityKey railThin) =>
        frame.Panels is { AtBack: true } panels && book.Piece.Materials.GetValueOrDefault(panels.Of.Text) is Panel panel
            ? book.Define(frame.Key, "back-panel.takes", $"{name}, back panel and the wood behind it", new Sum([Term.From("rail, its smaller size", 1, railThin), Term.From("panel", 1, Book.ThicknessOf(panel.Name))], Rational.Of(1, 2)))
            : null;

    private static void Grooves(Book book, string panel, ImmutableArray<string> into, QuantityKey depth, QuantityKey width)
    {
        foreach (string part in into)
        {
            book.Joints.Add(new(JointKind.Groove, panel, Face.AllEdges, part, Face.Inside, "no glue: the panel moves in it") { Depth = depth, IsLoose = true });
            int there = book.Machinings.FindIndex(m => m.Part == part && m.Words.StartsWith("groove for the panel", StringComparison.Ordinal));
            if (there >= 0) book.Machinings[there] = book.Machinings[there] with { By = [.. book.Machinings[there].By, panel] };
            else book.Machinings.Add(new(part, "groove for the panel, in the middle of the rail's thickness", [("depth", depth), ("width", width)]) { By = [panel] });
        }
    }
}

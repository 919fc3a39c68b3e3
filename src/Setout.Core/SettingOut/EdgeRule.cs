using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>
/// The seen edges of sheets: raw, chamfered, banded or lipped, said once for a material. What covers an edge is taken off the size that is cut,
/// bands are counted by their length, lips are parts of their own, and the work comes before anything is joined.
/// </summary>
internal static class EdgeRule
{
    /// <summary>What a cover adds to the size of a part, an edge.</summary>
    public static QuantityKey ThicknessOf(string material) => QuantityKey.Of(material, "edge");

    /// <summary>Whether what is cut is smaller than what is made.</summary>
    public static bool Covers(Panel panel) => panel.Edges.Work is EdgeWork.Banded or EdgeWork.Lipped;

    /// <summary>The covers of one or two edges, in words.</summary>
    public static string Words(Panel panel, int seen) => (panel.Edges.Work, seen) switch
    {
        (EdgeWork.Lipped, 1) => "lip on one edge",
        (EdgeWork.Lipped, _) => "lips on both edges",
        (_, 1) => "band on one edge",
        _ => "bands on both edges",
    };

    /// <summary>Writes what the cover of a sheet adds.</summary>
    public static void Define(Book book, Panel panel)
    {
        EdgeTreatment edges = panel.Edges;
        if (edges.Band is { } band && edges.Work != EdgeWork.Banded) Idle(book, panel, "band", "banded", band.Place);
        if (edges.Lip is { } idle && edges.Work != EdgeWork.Lipped) Idle(book, panel, "lip", "lipped", idle.Place);
        if (edges.Work == EdgeWork.Banded)
        {
            TradeRule usual = TradeRules.Get("EB1");
            book.Define(panel.Name, "edge", $"{panel.Name}, thickness of its edge band", edges.Band?.Stated ?? new Stated(usual.Length, new(OriginKind.Rule, "usual band", usual.Cited)));
        }
        else if (edges.Work == EdgeWork.Lipped)
        {
            if (edges.Lip is null) book.Note("edge.no-lip", Severity.Stop, panel.Name, $"Nothing says what the lips of {panel.Name} are cut from.", "Add 'lip:' with one of the sticks of the piece.", edges.Place);
            if (edges.Lip is not { } lip || book.StickOf(lip, panel.Name) is not { } stick)
            {
                // A finding says so; sizes are still worked out.
                book.Define(panel.Name, "edge", $"{panel.Name}, thickness of its lip", new Stated(ExactLength.Zero, Origin.Unknown));
                return;
            }
            book.DefineSame(panel.Name, "edge", $"{panel.Name}, thickness of its lip", $"thickness of {stick.Name}", Book.ThicknessOf(stick.Name));
            ExactLength short_ = book.Value(Book.ThicknessOf(panel.Name)) - book.Value(Book.SectionWidthOf(stick.Name));
            if (short_.Sign > 0)
                book.Note("edge.lip-too-narrow", Severity.Warn, panel.Name, $"Lips of {stick.Name} are {book.Say(short_)} narrower than {panel.Name} is thick.", "Use sticks a little wider than the sheet is thick, and plane them flush.", lip.Place);
        }
    }

    private static void Idle(Book book, Panel panel, string key, string word, Place place) =>
        book.Note("edge.idle", Severity.Stop, panel.Name, $"'{key}' says how edges are covered, but those of {panel.Name} are not {word}.", $"{book.Hand.Write("edges", word)}, or leave '{key}' out.", place);

    /// <summary>Writes lips, bands and their steps for all parts with seen edges.</summary>
    public static void Write(Book book)
    {
        foreach (IGrouping<string, Part> parts in book.Parts.Where(p => p.Seen != default).GroupBy(p => p.Material).ToList())
        {
            if (book.Piece.Materials[parts.Key] is not Panel panel || panel.Edges.Work == EdgeWork.Raw) continue;
            ImmutableArray<Part> edged = [.. parts];
            switch (panel.Edges.Work)
            {
                case EdgeWork.Chamfered: Chamfer(book, panel, edged); break;
                case EdgeWork.Banded: Band(book, panel, edged); break;
                case EdgeWork.Lipped when panel.Edges.Lip is { } lip && book.Piece.Materials.GetValueOrDefault(lip.Text) is Stick stick: Lip(book, panel, stick, edged); break;
            }
        }
    }

    /// <summary>When the edges of a part are worked: before anything is joined, or where it waits for a reading as the first thing of the stage that it comes in.</summary>
    private static Stage StageOf(Book book, Part part) =>
        part.HeldUntil.IsDefaultOrEmpty ? Stage.Edges : book.Steps.Where(s => s.Parts.Contains(part.Key)).Select(s => s.Stage).DefaultIfEmpty(Stage.Edges).Min();

    /// <summary>
    /// Writes the steps of edges. What waits for a reading is not cut when the carcase is made: its edges are worked once it is, first in the stage that it comes
    /// in, before it is fitted to its opening.
    /// </summary>
    private static void Steps(Book book, ImmutableArray<Part> parts, Func<ImmutableArray<Part>, bool, (string Words, ImmutableArray<string> Parts)> said)
    {
        foreach (IGrouping<Stage, Part> alike in parts.GroupBy(p => StageOf(book, p)).OrderBy(g => g.Key).ToList())
        {
            (string words, ImmutableArray<string> keys) = said([.. alike], alike.Key == Stage.Edges);
            int first = alike.Key == Stage.Edges ? -1 : book.Steps.FindIndex(s => s.Stage == alike.Key);
            book.Steps.Insert(first < 0 ? book.Steps.Count : first, new(alike.Key, words, keys, null, ""));
        }
    }

    private static void Chamfer(Book book, Panel panel, ImmutableArray<Part> parts)
    {
        TradeRule rule = TradeRules.Get("EB3");
        QuantityKey size = book.Define(panel.Name, "chamfer", $"{panel.Name}, chamfer of its edges", new Stated(rule.Length, new(OriginKind.Rule, "chamfer", rule.Cited)));
        foreach (Part part in parts) book.Machinings.Add(new(part.Key, "chamfer the corners of its seen edges", [("chamfer", size)]) { On = Face.AllEdges });
        Steps(book, parts, (some, isFirst) => ($"Chamfer the seen edges of {Marks(some)}, {book.Say(rule.Length)} on each corner, {(isFirst ? "before anything is joined" : "before they are fixed; chamfer anew what is planed to fit")}.", []));
    }

    private static void Band(Book book, Panel panel, ImmutableArray<Part> parts)
    {
        ExactLength length = ExactLength.Zero, thick = book.Value(Book.ThicknessOf(panel.Name));
        int ends = 0;
        foreach (Part part in parts)
        {
            length += ((book.Value(part.Length.Made) * part.Seen.Long) + (book.Value(part.Width.Made) * part.Seen.Ends)) * part.Count;
            ends += part.Count * (part.Seen.Long + part.Seen.Ends);
        }
        // An inch over at either end of each edge is trimmed off: common practice, no source.
        length += ExactLength.FromInches(2) * ends;
        bool isInch = book.Piece.Unit == LengthUnit.Inch;
        int count = (int)(isInch ? length.Inches / 12 : length.Millimetres / 1000).Round(Rounding.Up);
        TradeRule wide = TradeRules.Get("EB2");
        ExactLength least = ExactLength.Max(wide.Length - ExactLength.FromInches(Rational.Of(3, 4)) + thick, thick);
        book.Hardware.Add(new(panel.Name, $"Edge band {book.Say(book.Value(ThicknessOf(panel.Name)))} thick, at least {book.Say(least)} wide, for {panel.Name}", count, isInch ? "foot" : "metre",
            $"{ends} edges, each with 2 in to trim; {wide.Cited}"));
        Steps(book, parts, (some, isFirst) => ($"Band the seen edges of {Marks(some)}: ends first, then long edges over them; trim flush {(isFirst ? "before anything is joined" : "before they are fitted")}.", []));
    }

    private static void Lip(Book book, Panel panel, Stick stick, ImmutableArray<Part> parts)
    {
        var lips = new List<(string Part, string Lip)>();
        foreach (Part part in parts)
        {
            // Ends first; the long ones run over them.
            Strip(book, panel, stick, part, part.Seen.Ends, "end-lip", "lip on its ends", part.Width.AsCut, lips);
            Strip(book, panel, stick, part, part.Seen.Long, "lip", "lip on its long edges", part.Length.Made, lips);
        }
        Steps(book, parts, (some, isFirst) => (
            $"Glue the lips to the seen edges of {Marks(some)}: ends first, then long edges over them. Plane them flush with both faces {(isFirst ? "before anything is joined" : "before they are fitted: what is trimmed to fit comes off the lips")}.",
            [.. lips.Where(l => some.Any(p => p.Key == l.Part)).Select(l => l.Lip)]));
    }

    private static void Strip(Book book, Panel panel, Stick stick, Part part, int edges, string word, string what, QuantityKey along, List<(string Part, string Lip)> lips)
    {
        if (edges == 0) return;
        string name = $"{part.Name}, {what}";
        PartSize length = book.DefineSize($"{part.Key}.{word}", "length", $"{name}, length", new Sum(Term.From("edge it covers", 1, along)), PartRole.Lip);
        book.Add(new($"{part.Key}.{word}", $"{part.Mark}{word[0]}", name, PartRole.Lip, stick.Name, length, Book.Uncut(Book.SectionWidthOf(stick.Name)), Book.ThicknessOf(stick.Name),
            part.Count * edges, Grain.Keep, [], part.Place, part.HeldUntil));
        book.Joints.Add(new(JointKind.Lip, $"{part.Key}.{word}", Face.Inside, part.Key, word == "lip" ? Face.FrontEdge : Face.Ends, "glue"));
        lips.Add((part.Key, $"{part.Key}.{word}"));
    }

    private static string Marks(ImmutableArray<Part> parts) => string.Join(", ", parts.Select(p => p.Mark));
}

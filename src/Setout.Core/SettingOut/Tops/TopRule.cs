using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Tops;

/// <summary>A top over structures: its sizes, how far it stands over. And parts given by their sizes alone.</summary>
internal static class TopRule
{
    /// <summary>Writes a top over structures that stand in a row.</summary>
    public static void Write(Book book, Top top, IReadOnlyDictionary<string, Structure> standing)
    {
        ImmutableArray<Structure> under = Under(book, top, standing);
        if (under.IsEmpty || TopMakeUp.Of(book, top) is not { } made) return;
        Structure structure = under[0];
        if (!under.All(s => book.Knows(QuantityKey.Of(s.Key, "width")))) return;
        LaidTop laid = Size(book, made, under);
        QuantityKey total = book.Define(top.Key, "height", $"{made.Name}, height above the floor",
            new Sum([.. Standing.Start(book, structure.Key, "up", "from the floor"), Term.From("structure", 1, QuantityKey.Of(structure.Key, "height")), Term.From("top", 1, made.Thickness)]));
        book.Show(new(total, false, -book.Corner.Z, book.Value(total) - book.Corner.Z, 2));
        book.Show(new(made.Thickness, false, laid.Z, laid.Z + book.Value(made.Thickness), 0, laid.X + book.Value(laid.OutLength)) { In = Views.Right });
        book.Show(new(laid.OutLength, true, laid.X, laid.X + book.Value(laid.OutLength), 2) { In = Views.Above });
        book.Show(new(laid.OutWidth, false, laid.Y, laid.Y + book.Value(laid.OutWidth), 2) { IsDeep = true });
        if (top.Laminate is { } laminate) LaminateRule.Write(book, laid, laminate);
        if (top.Edging is { } edging) EdgingRule.Write(book, laid, edging);
        ExactLength deepest = SlotRule.Write(book, laid);
        foreach (Well well in top.Wells) WellRule.CutOut(book, laid, well);
        WellChecks.Apart(book, laid);
        TopHoldRule.Write(book, laid, under, deepest);
        Overhangs(book, made);
        foreach (Well well in top.Wells) WellRule.Write(book, laid, well);
    }

    /// <summary>Its sizes and its parts.</summary>
    private static LaidTop Size(Book book, TopMakeUp made, ImmutableArray<Structure> under)
    {
        (Top top, Structure structure, Panel panel) = (made.Top, under[0], made.Layers[0].Panel);
        string key = top.Key, core = made.HasCore ? $"{made.Name} core" : made.Name;
        Term Over(TopSide side) => Term.From($"overhang, {side.ToString().ToLowerInvariant()}", 1, LaidTop.OverhangKey(key, side));
        foreach (TopSide side in Enum.GetValues<TopSide>())
            book.Define(key, $"overhang-{side.ToString().ToLowerInvariant()}", $"{made.Name}, overhang at the {side.ToString().ToLowerInvariant()}", top.Overhang(side).Stated);
        // Over one structure by what was given, over a row by what comes of it.
        ImmutableArray<Term> wide = under.Length == 1 ? [Term.From("outside width", 1, QuantityKey.Of(structure.Key, "width"))] : [.. under.SelectMany((s, i) => (Term[])[.. i > 0 ? Standing.Fillers(book, under[i - 1].Key, s.Key) : [], Term.From($"{s.Key}, outside as built", 1, Built.Width(s.Key))])];
        (int ends, int longs) = (made.Seen(TopSide.Left, TopSide.Right), made.Seen(TopSide.Front, TopSide.Back));
        PartSize length = book.DefineSize(key, "length", $"{core}, length",
            new Sum([.. wide, Over(TopSide.Left), Over(TopSide.Right), .. made.Covers(-1, TopSide.Left, TopSide.Right)]), PartRole.Top, panel, ends);
        PartSize across = book.DefineSize(key, "width", $"{core}, width",
            new Sum([.. Deep(book, key, made.Name, under), Over(TopSide.Front), Over(TopSide.Back), .. made.Covers(-1, TopSide.Front, TopSide.Back)]), PartRole.Top, panel, longs);
        QuantityKey Outside(string what, PartSize size, params ReadOnlySpan<TopSide> sides) => made.Covers(1, sides) is { IsEmpty: false } covers
            ? book.Define(key, $"outside.{what}", $"{made.Name}, {what} over all", new Sum([Term.From("core, as cut", 1, size.Made), .. covers]))
            : size.Made;
        QuantityKey outLength = Outside("length", length, TopSide.Left, TopSide.Right), outWidth = Outside("width", across, TopSide.Front, TopSide.Back);
        // It lies on what was cut, not on what was given.
        book.Corner = Standing.Of(book, structure.Key);
        ExactLength z = book.Value(Built.Height(structure)), x = -book.Value(LaidTop.OverhangKey(key, TopSide.Left)), y = under.Min(s => Standing.Of(book, s.Key).Y) - book.Corner.Y - book.Value(LaidTop.OverhangKey(key, TopSide.Front)), up = made.Under is { } film ? book.Value(film) : Zero;
        ExactLength coreX = x + book.Value(new Sum(made.Covers(1, TopSide.Left))), coreY = y + book.Value(new Sum(made.Covers(1, TopSide.Front)));
        ImmutableArray<string> parts = [key];
        if (top.Layers.IsEmpty)
            book.Add(new(key, key, core, PartRole.Top, panel.Name, length, across, Book.ThicknessOf(panel.Name), 1, panel.Grain,
                [new(coreX, coreY, z + up, book.Value(length.Made), book.Value(across.Made), book.Value(Book.ThicknessOf(panel.Name)))], top.Place)
            { Seen = new(longs, ends) });
        else
            parts = LayerRule.Write(book, made, length, across, coreX, coreY, z + book.Value(made.Thickness) - (top.Laminate is null ? Zero : book.Value(made.Film)));
        return new(made, structure, length, across, outLength, outWidth, parts, x, y, z);
    }

    /// <summary>From the foremost front to the rearmost back of what it lies on.</summary>
    private static ImmutableArray<Term> Deep(Book book, string key, string name, ImmutableArray<Structure> under)
    {
        if (under.All(s => Standing.Of(book, s.Key).Y == Standing.Of(book, under[0].Key).Y)) return [Term.From("outside depth", 1, QuantityKey.Of(under.MaxBy(s => s.Depth.Value)!.Key, "depth"))];
        ImmutableArray<Term> fronts = [.. under.Select(s => Front(s.Key))], backs = [.. under.Select(s => Term.From($"{s.Key}, back", 1, book.Define(key, $"back-of-{s.Key}", $"{name}, back of {s.Key} from the front of the piece",
            new Sum(Front(s.Key), Term.From($"{s.Key}, outside depth", 1, Built.Depth(s.Key))))))];
        QuantityKey front = book.Define(key, "foremost", $"{name}, foremost front below it", new Extreme(fronts, IsLeast: true)), back = book.Define(key, "rearmost", $"{name}, rearmost back below it", new Extreme(backs, IsLeast: false));
        return [Term.From("rearmost back", 1, back), Term.From("foremost front", -1, front)];

        Term Front(string of) => Standing.Start(book, of, "forward", "front").FirstOrDefault() is { Times.Sign: > 0 } there ? there : Term.From($"{of}, front", 1, ExactLength.Zero, new(OriginKind.Worked, "at the front of the piece"));
    }

    /// <summary>What stands over further than a top carries by itself.</summary>
    private static void Overhangs(Book book, TopMakeUp made)
    {
        // What nothing is known of has its own finding.
        if (made.Layers.Any(l => book.IsUnknown(l.Panel.Name))) return;
        TradeRule usual = TradeRules.Get("TP2");
        ExactLength most = usual.Length * (book.Value(made.Thickness) / ExactLength.FromInches(Rational.Of(3, 4)));
        foreach (TopSide side in Enum.GetValues<TopSide>())
        {
            Given over = made.Top.Overhang(side);
            if (over.Value <= most) continue;
            string where = side is TopSide.Left or TopSide.Right ? $"at the {(side == TopSide.Left ? "left" : "right")}" : side == TopSide.Front ? "at the front" : "at the back";
            book.Note("top.overhang-unsupported", Severity.Warn, made.Top.Key, $"The {made.Name} stands {book.Say(over.Value)} over {where}; one of {book.Say(book.Value(made.Thickness))} carries itself for about {book.Say(most)}.",
                $"Take {book.Say(over.Value - most)} off, make the top thicker, or carry it with brackets and let this stand. (eight times its thickness: {usual.Cited})", over.Place);
        }
    }

    /// <summary>What a top lies on, from the left: what it names, or all that nothing stands on. They must be of one height.</summary>
    public static ImmutableArray<Structure> Under(Book book, Top top, IReadOnlyDictionary<string, Structure> standing)
    {
        if (standing.Count == 0)
        {
            if (!book.Piece.Members.Any(m => m is Structure))
                book.Note("top.nothing-under-it", Severity.Stop, top.Key, "A top needs a frame or a case under it.", "Add one before it, or write it as a part.", top.Place);
            return [];
        }
        foreach (Named unknown in top.On.Where(o => !standing.ContainsKey(o.Text)))
        {
            book.Note("structure.unknown", Severity.Stop, top.Key, $"There is no frame or case '{unknown.Text}' for {top.Key} to lie on.", $"Name one of: {string.Join(", ", standing.Keys.Order(StringComparer.Ordinal))}.", unknown.Place);
            return [];
        }
        HashSet<string> carrying = [.. standing.Values.SelectMany(s => s.Stand.On.Select(o => o.Text))];
        // What stands on this very top is carried by it.
        if (carrying.Contains(top.Key)) carrying = [];
        ImmutableArray<Structure> under = [.. (top.On.IsEmpty ? standing.Values.Where(s => !carrying.Contains(s.Key)) : top.On.Select(o => standing[o.Text])).OrderBy(s => Standing.Of(book, s.Key).X)];
        ExactLength Up(Structure s) => Standing.Of(book, s.Key).Z + book.Value(Built.Height(s));
        if (under.FirstOrDefault(s => Up(s) != Up(under[0])) is { } other)
        {
            book.Note("top.not-level", Severity.Stop, top.Key, $"{under[0].Key} comes up to {book.Say(Up(under[0]))} and {other.Key} to {book.Say(Up(other))}: one top does not lie on both.", $"Give them one height, or say with {book.Hand.Key("on")} which of them it lies on.", top.Place);
            return [];
        }
        return under;
    }

    /// <summary>Writes a part that is given by its sizes alone.</summary>
    public static void Write(Book book, LoosePart part)
    {
        string name = part.Name.Length > 0 ? part.Name : part.Key;
        Material? material = part.Width is null ? book.StickOf(part.Of, part.Key) : book.PanelOf(part.Of, part.Key);
        if (material is null) return;
        PartSize length = book.DefineSize(part.Key, "length", $"{name}, length", part.Length.Stated, PartRole.Loose);
        PartSize width = part.Width is { } w
            ? book.DefineSize(part.Key, "width", $"{name}, width", w.Stated, PartRole.Loose)
            : Book.Uncut(Book.SectionWidthOf(material.Name));
        // Keys of loose parts are words; the mark to pencil on them is their number in the list, which no key can be.
        string mark = $"{book.Parts.Count(p => p.Role == PartRole.Loose) + 1}";
        book.Add(new(part.Key, mark, name, PartRole.Loose, material.Name, length, width, Book.ThicknessOf(material.Name), part.Count,
            material is Panel panel ? panel.Grain : Grain.Keep, [], part.Place));
    }
}

using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Tops;

/// <summary>What a top is made up of: its layers from the top down, strips and films on its sides, films on its faces.</summary>
/// <param name="Top">As described.</param>
/// <param name="Name">For people.</param>
/// <param name="Layers">From the top down, one or more; without a layer where the top is one plain sheet.</param>
/// <param name="Strip">The sticks of its edging; null for none.</param>
/// <param name="Edged">The sides that have a strip.</param>
/// <param name="Laminated">The sides that have a film.</param>
internal sealed record TopMakeUp(
    Top Top, string Name, ImmutableArray<(TopLayer? Layer, Panel Panel)> Layers, Stick? Strip, ImmutableArray<TopSide> Edged, ImmutableArray<TopSide> Laminated)
{
    /// <summary>True for one sheet with nothing on its faces: it is as thick as it is.</summary>
    public bool IsOneSheet => Top.Layers.IsEmpty && Top.Laminate is null;

    /// <summary>True where something lies on a side, so that what is cut is a core.</summary>
    public bool HasCore => !Edged.IsEmpty || !Laminated.IsEmpty;

    /// <summary>The thickness over all.</summary>
    public QuantityKey Thickness => IsOneSheet ? Book.ThicknessOf(Layers[0].Panel.Name) : QuantityKey.Of(Top.Key, "thickness");

    /// <summary>The thickness of the film on the upper face and the sides.</summary>
    public QuantityKey Film => QuantityKey.Of(Top.Key, "laminate");

    /// <summary>The thickness of what is on the underside; null for nothing.</summary>
    public QuantityKey? Under => Top.Laminate switch { { IsOnBothFaces: true } => Film, { Backer: not null } => QuantityKey.Of(Top.Key, "backer"), _ => null };

    /// <summary>The thickness of any top that was written, for what stands on it.</summary>
    public static QuantityKey ThicknessOf(Book book, Top top) =>
        book.Knows(QuantityKey.Of(top.Key, "thickness")) ? QuantityKey.Of(top.Key, "thickness") : Book.ThicknessOf(top.Of.Text);

    /// <summary>Looks materials up and writes what films and layers come to; null where something is missing, with a finding.</summary>
    public static TopMakeUp? Of(Book book, Top top)
    {
        var layers = ImmutableArray.CreateBuilder<(TopLayer?, Panel)>();
        if (top.Layers.IsEmpty)
        {
            if (book.PanelOf(top.Of, top.Key) is not { } sheet) return null;
            layers.Add((null, sheet));
        }
        foreach (TopLayer layer in top.Layers)
        {
            if (book.PanelOf(layer.Of ?? top.Of, top.Key) is not { } panel) return null;
            layers.Add((layer, panel));
        }
        // A top whose layers all name their own sheet still says one, which its wells go by.
        if (top.Layers.All(l => l.Of is not null) && book.PanelOf(top.Of, top.Key) is null) return null;
        Stick? strip = top.Edging is { } edging ? book.StickOf(edging.Of, top.Key) : null;
        if (top.Edging is not null && strip is null) return null;
        // A back edge that stands over nothing goes against the wall.
        ImmutableArray<TopSide> seen = [TopSide.Front, .. top.Back.Value.Sign > 0 ? [TopSide.Back] : ImmutableArray<TopSide>.Empty, TopSide.Left, TopSide.Right];
        ImmutableArray<TopSide> edged = top.Edging is not { } e ? [] : e.Sides.IsEmpty ? seen : e.Sides;
        var made = new TopMakeUp(top, top.Name.Length > 0 ? top.Name : "top", layers.ToImmutable(), strip, edged, top.Laminate?.Edges ?? []);
        if (made.Edged.Intersect(made.Laminated).ToList() is [var twice, ..])
        {
            book.Note("top.edge-twice", Severity.Stop, top.Key, $"The {Word(twice)} of {made.Name} has a strip and laminate.", $"Take it out of the sides of {book.Hand.Key("edging")} or out of the edges of {book.Hand.Key("laminate")}.", top.Laminate!.Place);
            return null;
        }
        if (top.Laminate is { } laminate && !Films(book, made, laminate)) return null;
        if (!made.IsOneSheet) book.Define(top.Key, "thickness", $"{made.Name}, thickness over all", new Sum(made.ThicknessTerms()));
        return made;
    }

    /// <summary>A side in words.</summary>
    public static string Word(TopSide side) => side switch { TopSide.Front => "front edge", TopSide.Back => "back edge", TopSide.Left => "left end", _ => "right end" };

    /// <summary>What covers some sides, as terms.</summary>
    /// <param name="sign">-1 to take it off an outside size, 1 to add it to a core.</param>
    /// <param name="sides">The sides that bound the size.</param>
    public ImmutableArray<Term> Covers(int sign, params ReadOnlySpan<TopSide> sides)
    {
        var terms = ImmutableArray.CreateBuilder<Term>();
        int strips = 0, films = 0;
        foreach (TopSide side in sides)
        {
            if (Edged.Contains(side)) strips++;
            if (Laminated.Contains(side)) films++;
        }
        if (strips > 0) terms.Add(Term.From(strips == 1 ? "edging on one side" : "edging on both sides", sign * strips, Book.ThicknessOf(Strip!.Name)));
        if (films > 0) terms.Add(Term.From(films == 1 ? "laminate on one side" : "laminate on both sides", sign * films, Film));
        return terms.ToImmutable();
    }

    /// <summary>How many of some sides show the edge of the sheet itself. Sheets that are glued up have no edges of their own.</summary>
    public int Seen(params ReadOnlySpan<TopSide> sides)
    {
        int seen = 0;
        foreach (TopSide side in sides)
            if (Top.Layers.IsEmpty && !Edged.Contains(side) && !Laminated.Contains(side) && (side != TopSide.Back || Top.Back.Value.Sign > 0)) seen++;
        return seen;
    }

    private ImmutableArray<Term> ThicknessTerms()
    {
        var terms = ImmutableArray.CreateBuilder<Term>();
        if (Top.Laminate is not null) terms.Add(Term.From(Under == Film ? "laminate on both faces" : "laminate", Under == Film ? 2 : 1, Film));
        foreach (IGrouping<string, (TopLayer?, Panel Panel)> like in Layers.GroupBy(l => l.Panel.Name, StringComparer.Ordinal))
            terms.Add(Term.From(like.Count() == 1 ? $"layer of {like.Key}" : $"layers of {like.Key}", like.Count(), Book.ThicknessOf(like.Key)));
        if (Under is { } under && under != Film) terms.Add(Term.From("backer", 1, under));
        return terms.ToImmutable();
    }

    private static bool Films(Book book, TopMakeUp made, Laminate laminate)
    {
        string key = made.Top.Key;
        LaminateFact? fact = LaminateTable.Find(laminate.Of.Text);
        if (laminate.Thickness is null && fact is null)
        {
            book.Note("laminate.unknown", Severity.Stop, key, $"There is no thickness on record for laminate '{laminate.Of.Text}'.", $"Give its thickness, or one of the grades {string.Join(", ", LaminateTable.Grades)}.", laminate.Of.Place);
            return false;
        }
        book.Define(key, "laminate", $"{made.Name}, thickness of its laminate",
            laminate.Thickness?.Stated ?? new Stated(fact!.Thickness, new(OriginKind.Default, $"nominal for {fact.Grade}, {fact.Words}, until read", fact.Source)), scatter: Scatter.Bought);
        if (laminate is { Backer: { } backer, IsOnBothFaces: false }) book.Define(key, "backer", $"{made.Name}, thickness of its backer", backer.Stated, scatter: Scatter.Bought);
        return true;
    }
}

/// <summary>A top in its place, for what is put on it and cut into it. Measured from the corner of the structure it lies on.</summary>
/// <param name="Made">What it is made up of.</param>
/// <param name="Structure">The leftmost structure it lies on.</param>
/// <param name="Length">Of its core.</param>
/// <param name="Width">Of its core.</param>
/// <param name="OutLength">With what is on its ends.</param>
/// <param name="OutWidth">With what is on its front and back.</param>
/// <param name="Parts">Keys of its parts, the upper face first.</param>
/// <param name="X">Of its finished left end.</param>
/// <param name="Y">Of its finished front edge.</param>
/// <param name="Z">Of its underside.</param>
internal sealed record LaidTop(
    TopMakeUp Made, Structure Structure, PartSize Length, PartSize Width, QuantityKey OutLength, QuantityKey OutWidth, ImmutableArray<string> Parts,
    ExactLength X, ExactLength Y, ExactLength Z)
{
    public Top Top => Made.Top;

    public string Name => Made.Name;

    /// <summary>How far a top stands over on a side.</summary>
    public static QuantityKey OverhangKey(string top, TopSide side) => QuantityKey.Of(top, $"overhang-{side.ToString().ToLowerInvariant()}");

    /// <summary>What is cut out of the top from above goes through these, as far as they reach: layers and strips.</summary>
    public IEnumerable<string> Solid(Book book) => [.. Parts, .. book.Parts.Select(p => p.Key).Where(k => k.StartsWith($"{Top.Key}.edging-", StringComparison.Ordinal))];
}

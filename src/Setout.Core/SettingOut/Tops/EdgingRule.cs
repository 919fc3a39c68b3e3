using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Tops;

/// <summary>
/// Strips of wood round a top: flush with its upper face or raised above it, mitred or butted at the corners. A strip goes by the core as it
/// was cut, and runs past a corner by the thickness of the strip that it covers there.
/// </summary>
internal static class EdgingRule
{
    /// <summary>Writes the strips.</summary>
    public static void Write(Book book, LaidTop laid, Edging edging)
    {
        (TopMakeUp made, string key) = (laid.Made, laid.Top.Key);
        Stick stick = made.Strip!;
        QuantityKey thick = Book.ThicknessOf(stick.Name), high = Book.SectionWidthOf(stick.Name);
        QuantityKey raised = book.Define(key, "edging.raised", $"{made.Name}, edging above its face", edging.Raised?.Stated ?? new Stated(ExactLength.Zero, new(OriginKind.Rule, "flush", "common practice, no source")));
        QuantityKey below = book.Define(key, "edging.below", $"{made.Name}, edging below its underside",
            new Sum(Term.From("strip", 1, high), Term.From("top", -1, made.Thickness), Term.From("above its face", -1, raised)));
        ExactLength hangs = book.Value(below), t = book.Value(thick), most = TradeRules.Get("TP3").Length;
        bool isPlaned = hangs.Sign > 0 && hangs <= most;
        if (hangs.Sign < 0)
            book.Note("edging.too-narrow", Severity.Warn, key, $"Strips of {stick.Name} are {book.Say(-hangs)} too narrow to cover the edge of {made.Name}.", $"Use sticks {book.Say(book.Value(high) - hangs)} wide or a little more.", edging.Of.Place);
        foreach (TopSide side in made.Edged)
        {
            if (hangs > most && laid.Top.Overhang(side).Value < t)
                book.NoteOnce("edging.in-the-way", Severity.Stop, key, $"The strip at the {TopMakeUp.Word(side)} hangs {book.Say(hangs)} below {made.Name}, which stands over by {book.Say(laid.Top.Overhang(side).Value)} only.",
                    $"Give that side an overhang of {book.Say(t)} or more, or use sticks no wider than {book.Say(book.Value(high) - hangs)}.", edging.Place);
        }
        ExactLength height = book.Value(high) - (isPlaned ? hangs : ExactLength.Zero);
        ExactLength top = laid.Z + book.Value(made.Thickness) + book.Value(raised);
        var parts = ImmutableArray.CreateBuilder<string>();
        foreach (TopSide side in made.Edged.Order()) parts.Add(Strip(book, laid, edging.Corners, side, (thick, t), (top - height, height)));
        if (edging.Corners == EdgingCorners.Mitred)
            foreach (TopSide side in made.Edged.Where(s => s is TopSide.Front or TopSide.Back))
                foreach (TopSide end in made.Edged.Where(s => s is TopSide.Left or TopSide.Right))
                    book.Joints.Add(new(JointKind.Mitre, PartOf(laid, side), Face.Ends, PartOf(laid, end), Face.Ends, "glue") { Depth = thick });
        Step(book, laid, edging.Corners, parts.ToImmutable(), book.Value(raised), hangs, isPlaned);
    }

    private static string Strip(Book book, LaidTop laid, EdgingCorners corners, TopSide side, (QuantityKey Key, ExactLength Value) thick, (ExactLength Z, ExactLength High) upright)
    {
        (TopMakeUp made, bool isAlong) = (laid.Made, side is TopSide.Front or TopSide.Back);
        (TopSide before, TopSide after) = isAlong ? (TopSide.Left, TopSide.Right) : (TopSide.Front, TopSide.Back);
        bool pastBefore = RunsPast(corners, side, before) && made.Edged.Contains(before), pastAfter = RunsPast(corners, side, after) && made.Edged.Contains(after);
        int past = (pastBefore ? 1 : 0) + (pastAfter ? 1 : 0);
        string word = side.ToString().ToLowerInvariant(), part = PartOf(laid, side), name = $"{made.Name} edging, {word}";
        // What is laminated at an end and has no strip there is covered too.
        int films = new[] { before, after }.Count(made.Laminated.Contains);
        PartSize length = book.DefineSize(part, "length", corners == EdgingCorners.Mitred && past > 0 ? $"{name}, length over the points" : $"{name}, length", new Sum([
            Term.From("core, as cut", 1, (isAlong ? laid.Length : laid.Width).Made),
            .. films > 0 ? [Term.From("laminate at its ends", films, made.Film)] : ImmutableArray<Term>.Empty,
            .. past > 0 ? [Term.From(past == 1 ? "strip it runs past, one end" : "strips it runs past, both ends", past, thick.Key)] : ImmutableArray<Term>.Empty]), PartRole.EdgeStrip);
        (ExactLength z, ExactLength high) = upright;
        ExactLength size = book.Value(length.AsCut), start = made.Edged.Contains(before) && !pastBefore ? thick.Value : ExactLength.Zero;
        ExactLength x = laid.X, y = laid.Y, far = book.Value(isAlong ? laid.OutWidth : laid.OutLength) - thick.Value;
        Placement box = side switch
        {
            TopSide.Front => new(x + start, y, z, size, thick.Value, high),
            TopSide.Back => new(x + start, y + far, z, size, thick.Value, high),
            TopSide.Left => new(x, y + start, z, thick.Value, size, high),
            _ => new(x + far, y + start, z, thick.Value, size, high),
        };
        book.Add(new(part, $"{laid.Top.Key}{word[0]}", name, PartRole.EdgeStrip, made.Strip!.Name, length, Book.Uncut(Book.SectionWidthOf(made.Strip.Name)), thick.Key, 1, Grain.Keep, [box], laid.Top.Place));
        book.Joints.Add(new(JointKind.Edging, part, Face.Inside, laid.Parts[0], side switch { TopSide.Front => Face.FrontEdge, TopSide.Back => Face.BackEdge, _ => Face.Ends }, "glue"));
        if (corners == EdgingCorners.Mitred && past > 0)
        {
            QuantityKey inside = book.Define(part, "inside", $"{name}, length inside the mitres", new Sum(Term.From("as cut", 1, length.AsCut), Term.From("mitred ends", -past, thick.Key)));
            book.Machinings.Add(new(part, past == 2 ? "mitre both ends to 45 degrees, the points outside" : "mitre the end at the corner to 45 degrees, the point outside", [("over the points", length.ToCut), ("inside", inside)]) { On = Face.Ends });
        }
        return part;
    }

    private static string PartOf(LaidTop laid, TopSide side) => $"{laid.Top.Key}.edging-{side.ToString().ToLowerInvariant()}";

    /// <summary>Whether a strip covers the corner it shares with another. In a pinwheel each covers one: front the right, right the back, and so round.</summary>
    private static bool RunsPast(EdgingCorners corners, TopSide side, TopSide corner) => corners switch
    {
        EdgingCorners.Mitred => true,
        EdgingCorners.LongRunsPast => side is TopSide.Front or TopSide.Back,
        EdgingCorners.EndsRunPast => side is TopSide.Left or TopSide.Right,
        _ => (side, corner) is (TopSide.Front, TopSide.Right) or (TopSide.Right, TopSide.Back) or (TopSide.Back, TopSide.Left) or (TopSide.Left, TopSide.Front),
    };

    private static void Step(Book book, LaidTop laid, EdgingCorners corners, ImmutableArray<string> parts, ExactLength raised, ExactLength hangs, bool isPlaned)
    {
        string order = corners switch
        {
            EdgingCorners.Mitred => "Fit the front strip first, its mitres on the corners of the core, then work round; try the last one dry and shave it until both mitres close.",
            EdgingCorners.LongRunsPast => "Glue left and right first and trim them flush with the core; front and back run past their ends.",
            EdgingCorners.EndsRunPast => "Glue front and back first and trim them flush with the core; left and right run past their ends.",
            _ => "Begin at the front: let the strip run past the right corner by the thickness of a strip, then right, back and left, each butted against the one before it and past the next corner.",
        };
        string level = raised.Sign > 0 ? $"They stand {book.Say(raised)} above the top: set them on a spacer of that thickness." : $"Keep them a hair above the top and {(laid.Top.Laminate is null ? "plane them flush with it" : "take them down to the laminate with a scraper, which is not to touch it")}.";
        string under = isPlaned ? $" Plane off the {book.Say(hangs)} below." : hangs.Sign > 0 ? $" They hang {book.Say(hangs)} below the top." : "";
        book.Steps.Add(new(Stage.Top, $"Edging of the {laid.Name}. {order} {level}{under}", parts, null, "plane") { On = laid.Top.Key });
    }
}

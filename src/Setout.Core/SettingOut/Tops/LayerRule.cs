using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Tops;

/// <summary>
/// The layers of a top, glued face to face. The lower ones go by the upper one as it was cut; where a layer is pieced together the last
/// length takes up what the seams leave.
/// </summary>
internal static class LayerRule
{
    /// <summary>Writes the parts; gives their keys back from the top down.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="made">What the top is made up of; in layers.</param>
    /// <param name="length">Of the core.</param>
    /// <param name="width">Of the core.</param>
    /// <param name="x">Left end of the core.</param>
    /// <param name="y">Front of the core.</param>
    /// <param name="face">Upper face of the first layer.</param>
    public static ImmutableArray<string> Write(Book book, TopMakeUp made, PartSize length, PartSize width, ExactLength x, ExactLength y, ExactLength face)
    {
        var keys = ImmutableArray.CreateBuilder<string>();
        string key = made.Top.Key, above = "";
        ExactLength z = face;
        for (int i = 0; i < made.Layers.Length; i++)
        {
            (TopLayer? layer, Panel panel) = made.Layers[i];
            string owner = $"{key}.layer-{i + 1}", name = $"{made.Name}, layer {i + 1}";
            QuantityKey t = Book.ThicknessOf(panel.Name);
            z -= book.Value(t);
            PartSize along = i == 0 ? length : book.DefineSize(owner, "length", $"{name}, length", new Sum(Term.From("layer 1, as cut", 1, length.AsCut)), PartRole.Top);
            PartSize across = i == 0 ? width : book.DefineSize(owner, "width", $"{name}, width", new Sum(Term.From("layer 1, as cut", 1, width.AsCut)), PartRole.Top);
            ImmutableArray<(string Key, string Mark, string Name, PartSize Length)> pieces = layer!.Seams.IsEmpty
                ? [(owner, $"{key}{i + 1}", name, along)]
                : Pieces(book, layer, owner, $"{key}{i + 1}", name, along);
            ExactLength at = x;
            foreach (var piece in pieces)
            {
                ExactLength size = book.Value(piece.Length.AsCut);
                book.Add(new(piece.Key, piece.Mark, piece.Name, PartRole.Top, panel.Name, piece.Length, across, t, 1, panel.Grain,
                    [new(at, y, z, size, book.Value(across.AsCut), book.Value(t))], made.Top.Place));
                at += size;
                if (keys.Count > 0 && piece.Key != pieces[0].Key) book.Joints.Add(new(JointKind.Butt, piece.Key, Face.Ends, keys[^1], Face.Ends, "glue"));
                if (above.Length > 0) book.Joints.Add(new(JointKind.Face, piece.Key, Face.Top, above, Face.Bottom, "glue"));
                keys.Add(piece.Key);
            }
            above = pieces[0].Key;
            if (panel.Edges.Work != EdgeWork.Raw)
                book.NoteOnce("top.layers-edges", Severity.Note, key, $"The edges of {panel.Name} are treated, but layers that are glued up have no edges of their own.", $"Cover the sides of the top with {book.Hand.Key("edging")} or with laminate, or take them as they are.", panel.Edges.Place);
        }
        Stagger(book, made);
        Step(book, made, keys.ToImmutable());
        return keys.ToImmutable();
    }

    private static ImmutableArray<(string Key, string Mark, string Name, PartSize Length)> Pieces(Book book, TopLayer layer, string owner, string mark, string name, PartSize along)
    {
        var pieces = ImmutableArray.CreateBuilder<(string, string, string, PartSize)>();
        var before = new List<(string Words, QuantityKey AsCut)>();
        ExactLength last = ExactLength.Zero, whole = book.Value(along.ToCut);
        ImmutableArray<Term> Less() => [.. before.Select(b => Term.From(b.Words, -1, b.AsCut))];
        foreach (Given seam in layer.Seams)
        {
            if (seam.Value <= last || seam.Value >= whole)
                book.Note("top.seam-outside", Severity.Stop, new QuantityKey(owner).Owner, $"A seam of {name} at {book.Say(seam.Value)} does not lie between {book.Say(last)} and {book.Say(whole)}.", "Give its seams from the left end, in order.", seam.Place);
            last = ExactLength.Max(last, seam.Value);
            Add(new Sum([Term.From("from the left end to the seam", 1, seam.Value, Origin.Given(seam.Place)), .. Less()]));
            book.Define(owner, $"seam-{pieces.Count}", $"{name}, seam {pieces.Count} from its left end", new Sum([.. before.Select(b => Term.From(b.Words, 1, b.AsCut))]));
        }
        Add(new Sum([Term.From("layer, to cut", 1, along.ToCut), .. Less()]));
        return pieces.ToImmutable();

        void Add(Sum sum)
        {
            int number = pieces.Count + 1;
            string piece = $"{owner}.piece-{number}", called = $"{name}, piece {number} from the left";
            PartSize size = book.DefineSize(piece, "length", $"{called}, length", sum, PartRole.Top);
            pieces.Add((piece, $"{mark}-{number}", called, size));
            before.Add(($"piece {number}, as cut", size.AsCut));
        }
    }

    /// <summary>Seams of neighbouring layers that come over one another break together.</summary>
    private static void Stagger(Book book, TopMakeUp made)
    {
        TradeRule apart = TradeRules.Get("TP1");
        for (int i = 0; i + 1 < made.Layers.Length; i++)
        {
            for (int a = 1; a <= made.Layers[i].Layer!.Seams.Length; a++)
            {
                for (int b = 1; b <= made.Layers[i + 1].Layer!.Seams.Length; b++)
                {
                    ExactLength off = (book.Value(Seam(i, a)) - book.Value(Seam(i + 1, b))).Abs();
                    if (off >= apart.Length) continue;
                    book.Note("top.seams-meet", Severity.Warn, made.Top.Key, $"A seam of layer {i + 1} and one of layer {i + 2} of {made.Name} are {book.Say(off)} apart; {book.Say(apart.Length)} is usual.",
                        $"Move one of them by {book.Say(apart.Length - off)} or more. ({apart.Cited})", made.Layers[i + 1].Layer!.Seams[b - 1].Place);
                }
            }
        }
        QuantityKey Seam(int layer, int number) => QuantityKey.Of($"{made.Top.Key}.layer-{layer + 1}", $"seam-{number}");
    }

    private static void Step(Book book, TopMakeUp made, ImmutableArray<string> parts)
    {
        string seams = made.Layers.Any(l => !l.Layer!.Seams.IsEmpty) ? " Shoot the seams and try them dry first; each comes over solid sheet in the layer beside it." : "";
        if (made.Layers.Length == 1)
            book.Steps.Add(new(Stage.Top, $"Glue the pieces of the {made.Name} end to end on a flat bench, a batten across each seam while it sets.{seams}", parts, null, "lift") { On = made.Top.Key });
        else
            book.Steps.Add(new(Stage.Top, $"Glue up the {made.Name}: layer 1 face down on a flat bench, glue on the whole face, the next layer on with its front edge and left end flush, and so on. Clamp over cauls from the middle outward. Screws only while it sets: none stays where a cutter will pass. Then plane the edges flush.{seams}",
                parts, null, "lift")
            { On = made.Top.Key });
    }
}

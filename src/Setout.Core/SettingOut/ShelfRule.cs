using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut;

/// <summary>Fixed shelves that share the clear height evenly; the space above the top one takes up the residue.</summary>
internal static class ShelfRule
{
    public static void Write(Book book, Space space, Shelves shelves)
    {
        Named of = shelves.Of ?? space.Of;
        if (book.PanelOf(of, space.Owner) is not { } panel) return;
        QuantityKey t = Book.ThicknessOf(panel.Name);
        int count = shelves.Keys.Length;
        QuantityKey setback = book.Define(space.Prefix, "shelf-setback", $"{space.Name}, shelf setback",
            shelves.Setback?.Stated ?? new Stated(ExactLength.Zero, new(OriginKind.Rule, "flush with the front", "common practice, no source")));
        // Spaces from the bottom up are numbered by the shelf that closes them; the last, above the top shelf, takes up the residue.
        ImmutableArray<Sharer> sharers =
        [
            .. shelves.Keys.Reverse().Select(k => new Sharer(k.Text, "clear-below", $"shelf {k.Text}, clear below", ShareOfWhole.Equal)),
            new Sharer(space.Prefix, "clear-above", $"{space.Name}, clear above the top shelf", ShareOfWhole.Equal),
        ];
        ImmutableArray<Term> between = shelves.Keys.All(k => book.ThicknessOf(k.Text, panel.Name) == t)
            ? [Term.From("shelves", count, t)]
            : [.. shelves.Keys.Select(k => Term.From($"shelf {k.Text}", 1, book.ThicknessOf(k.Text, panel.Name)))];
        if (Sharing.Share(book, $"{space.Name}, shelves and spaces in the height", space.Height, between, sharers, restIsCut: false) is not { } spaces) return;

        // A space stands fast once the shelf that closes it, and the one below, are fixed.
        for (int i = 0; i < count; i++)
        {
            if (spaces[i].ToCut != spaces[i].Exact) book.Fixings.Add(new(spaces[i].ToCut, [.. new[] { i - 1, i }.Where(s => s >= 0).Select(s => shelves.Keys[count - 1 - s].Text)]));
        }
        ExactLength z = space.Z, thick = book.Value(t), back = book.Value(setback);
        for (int i = 0; i < count; i++)
        {
            Named key = shelves.Keys[count - 1 - i];
            string name = $"shelf {key.Text}";
            PartSize length = book.DefineSize(key.Text, "length", $"{name}, length", new Sum(Term.From("clear width", 1, space.Width)), PartRole.Shelf);
            PartSize width = book.DefineSize(key.Text, "width", $"{name}, width",
                new Sum(Term.From("clear depth", 1, space.Depth), Term.From("setback", -1, setback)), PartRole.Shelf);
            Joints.Between(book, key.Text, name, space.Width, length);
            z += book.Value(spaces[i].ToCut);
            ExactLength deep = book.Value(width.AsCut);
            book.Add(new(key.Text, key.Text, name, PartRole.Shelf, panel.Name, length, width, t, 1, panel.Grain,
                [new(space.X, space.Y + back, z, book.Value(length.AsCut), deep, thick)], key.Place));
            z += thick;
            int screws = 2 * Fastening.ScrewsAlong(deep);
            book.Joints.Add(new("butt", key.Text, Face.Ends, space.Carrier, Face.Inside, "glue and screws from outside"));
            book.Hardware.Add(new(key.Text, Fastening.PanelScrew(book, panel, thick), screws, "piece", $"2 ends: {Fastening.SpacingWords}"));
        }
        book.Steps.Add(new(Stage.Inside, $"Fix the shelves of {space.Name} from the bottom up on spacers of {book.Say(book.Value(spaces[0].ToCut))}, both ends alike.",
            [.. shelves.Keys.Reverse().Select(k => k.Text)], null, ""));
    }
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Shelves that share the clear height evenly, butted or in dadoes; the space above the top one takes up the residue.</summary>
internal static class ShelfRule
{
    public static void Write(Book book, Space space, Shelves shelves)
    {
        Named of = shelves.Of ?? space.Of;
        if (book.PanelOf(of, space.Owner) is not { } panel) return;
        if (shelves.Fit == ShelfFit.Adjustable)
        {
            PinShelfRule.Write(book, space, shelves, panel);
            return;
        }
        QuantityKey t = Book.ThicknessOf(panel.Name);
        int count = shelves.Keys.Length;
        QuantityKey setback = Setback(book, space, shelves);
        PartSize? dado = shelves.Fit == ShelfFit.Dado ? DadoRule.Depth(book, space, shelves) : null;
        if (shelves.Fit == ShelfFit.Dado && dado is null) return;
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
        ExactLength z = space.Z, thick = book.Value(t), back = book.Value(setback), into = dado is null ? book.ValueOr0(space.Dividers.Depth?.AsCut) : book.Value(dado.ToCut);
        // Said of the shelves themselves, or of all that divides the case.
        PartSize? letIn = dado ?? space.Dividers.Depth;
        for (int i = 0; i < count; i++)
        {
            Named key = shelves.Keys[count - 1 - i];
            string name = $"shelf {key.Text}";
            PartSize length = book.DefineSize(key.Text, "length", $"{name}, length",
                new Sum([Term.From("clear width", 1, space.Width), .. dado is null ? space.Dividers.AtBothEnds : [Term.From("dadoes", 2, dado.ToCut)]]), PartRole.Shelf);
            PartSize width = book.DefineSize(key.Text, "width", $"{name}, width",
                new Sum(Term.From("clear depth", 1, space.Depth), Term.From("setback", -1, setback)), PartRole.Shelf, panel, 1);
            if (dado is null) Joints.Between(book, key.Text, name, space.Width, length, space.Dividers.AtBothEnds, space.Dividers.Depth is not null);
            z += book.Value(spaces[i].ToCut);
            ExactLength deep = book.Value(width.Made);
            book.Add(new(key.Text, key.Text, name, PartRole.Shelf, panel.Name, length, width, t, 1, panel.Grain,
                [new(space.X - into, space.Y + back, z, book.Value(length.AsCut), deep, thick)], key.Place)
            { Seen = new(1, 0) });
            if (dado is not null) DadoRule.Write(book, space, shelves, i, dado, length);
            ShelfStripRule.Write(book, space, shelves, key, length, letIn, new(space.X, space.Y + back, z, Zero, Zero, Zero), book.Value(spaces[i].ToCut));
            z += thick;
            if (dado is not null) continue;
            ImmutableArray<Term> below = [.. spaces.Take(i + 1).Select((s, j) => Term.From($"clear below {shelves.Keys[count - 1 - j].Text}", 1, s.AsCut)),
                .. i > 0 ? [Term.From("shelves below", i, t)] : ImmutableArray<Term>.Empty];
            DividerRule.Join(book, space, new(key.Text, name, panel, book.ThicknessOf(key.Text, panel.Name), width, false, below), "glue and screws from outside");
        }
        ShelfStripRule.Span(book, space, shelves, panel);
        ImmutableArray<string> upwards = [.. shelves.Keys.Reverse().Select(k => k.Text)];
        book.Steps.Add(letIn is null
            ? new(space.Dividers.Stage, $"Fix the shelves of {space.Name} from the bottom up on spacers of {book.Say(book.Value(spaces[0].ToCut))}, both ends alike.", upwards, null, "")
            : dado is null
                ? new(space.Dividers.Stage, $"Put the shelves of {space.Name} into their dadoes, dry at first.", upwards, null, "")
                : new(Stage.Inside, $"Glue the shelves of {space.Name} into their dadoes from the back, or from the front where a back is on, and tap them home with their front edges in line.", upwards, null, ""));
    }

    /// <summary>How far the front edges stand back.</summary>
    internal static QuantityKey Setback(Book book, Space space, Shelves shelves) => book.Define(space.Prefix, "shelf-setback", $"{space.Name}, shelf setback",
        shelves.Setback?.Stated ?? new Stated(Zero, new(OriginKind.Rule, "flush with the front", "common practice, no source")));
}

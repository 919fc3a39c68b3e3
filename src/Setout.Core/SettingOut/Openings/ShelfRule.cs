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
        if (!ShelfBounds.HasDepth(book, space, shelves, setback)) return;
        // Dadoes are said of the shelves themselves, or of all that divides the case.
        if (shelves.Fit == ShelfFit.Dado)
        {
            if (DividerRule.InDadoes(book, space, shelves, t) is not { } own) return;
            space = space with { Dividers = own };
        }
        DividerFit fit = space.Dividers;
        // Spaces from the bottom up are numbered by the shelf that closes them; the last, above the top shelf, takes up the residue.
        // One that lies at the bottom has no space below it.
        PartSize? none = shelves.IsLowestDown ? book.DefineSize(shelves.Keys[^1].Text, "clear-below", $"shelf {shelves.Keys[^1].Text}, clear below", new Stated(Zero, new(OriginKind.Worked, "it lies at the bottom")), Rounding.Nearest, "on the grid as it is") : null;
        ImmutableArray<Sharer> sharers =
        [
            .. shelves.Keys.Reverse().Skip(none is null ? 0 : 1).Select(k => new Sharer(k.Text, "clear-below", $"shelf {k.Text}, clear below", ShareOfWhole.Equal)),
            new Sharer(space.Prefix, "clear-above", $"{space.Name}, clear above the top shelf", ShareOfWhole.Equal),
        ];
        ImmutableArray<Term> between = shelves.Keys.All(k => book.ThicknessOf(k.Text, panel.Name) == t)
            ? [Term.From("shelves", count, t)]
            : [.. shelves.Keys.Select(k => Term.From($"shelf {k.Text}", 1, book.ThicknessOf(k.Text, panel.Name)))];
        if (Sharing.Share(book, $"{space.Name}, shelves and spaces in the height", space.Height, between, sharers, restIsCut: false) is not { } shared) return;
        ImmutableArray<PartSize> spaces = none is null ? shared : [none, .. shared];
        PostNotches? notches = PostNotches.Of(book, space, shelves, setback);

        // A space stands fast once the shelf that closes it, and the one below, are fixed.
        for (int i = 0; i < count; i++)
        {
            if (spaces[i].ToCut != spaces[i].Exact) book.Fixings.Add(new(spaces[i].ToCut, [.. new[] { i - 1, i }.Where(s => s >= 0).Select(s => shelves.Keys[count - 1 - s].Text)]));
        }
        ExactLength z = space.Z, thick = book.Value(t), back = book.Value(setback), into = book.ValueOr0(fit.Depth?.AsCut);
        for (int i = 0; i < count; i++)
        {
            Named key = shelves.Keys[count - 1 - i];
            string name = $"shelf {key.Text}";
            PartSize length = book.DefineSize(key.Text, "length", $"{name}, length", new Sum([Term.From("clear width", 1, space.Width), .. fit.AtBothEnds, .. notches?.Terms ?? []]), PartRole.Shelf);
            PartSize width = book.DefineSize(key.Text, "width", $"{name}, width",
                new Sum([Term.From("clear depth", 1, space.Depth), Term.From("setback", -1, setback), .. SolidShelf.Room(book, space, panel, shelves.IsGrainDeep)]), PartRole.Shelf, panel, 1);
            Joints.Between(book, key.Text, name, space.Width, length, [.. fit.AtBothEnds, .. notches?.Terms ?? []], fit.Depth is not null);
            z += book.Value(spaces[i].ToCut);
            ExactLength deep = book.Value(width.Made);
            ImmutableArray<Placement> places = [new(space.X - into - (notches?.Left ?? Zero), space.Y + back, z, book.Value(length.AsCut), deep, thick)];
            book.Add(Shelf(shelves, key, panel, length, width, t, places));
            notches?.Write(book, space, key.Text);
            ShelfStripRule.Write(book, space, shelves, key, length, fit.Depth, new(space.X, space.Y + back, z, Zero, Zero, Zero), book.Value(spaces[i].ToCut));
            z += thick;
            ImmutableArray<Term> below = [.. spaces.Take(i + 1).Select((s, j) => Term.From($"clear below {shelves.Keys[count - 1 - j].Text}", 1, s.AsCut)),
                .. i > 0 ? [Term.From("shelves below", i, t)] : ImmutableArray<Term>.Empty];
            DividerRule.Join(book, space, new(key.Text, name, panel, book.ThicknessOf(key.Text, panel.Name), width, false, below), "glue and screws from outside");
        }
        ShelfStripRule.Span(book, space, shelves, panel);
        ImmutableArray<string> upwards = [.. shelves.Keys.Reverse().Select(k => k.Text)];
        var step = new AssemblyStep(fit.Stage, fit switch
        {
            { Depth: null } => $"Fix the shelves of {space.Name} from the bottom up{(none is null ? "" : count == 1 ? ", level with the bottom of the opening" : ", the lowest level with the bottom of the opening, those above it")}{(none is not null && count == 1 ? "" : $" on spacers of {book.Say(book.Value(spaces[none is null ? 0 : 1].ToCut))}")}, both ends alike.{(notches is null ? "" : " Their notches go round the posts from the inside of the frame: bring them in before what stands beside them, or from below with the uppermost first.")}",
            { IsSlidIn: true } => $"Glue the shelves of {space.Name} into their dadoes from the front, and tap them home with their front edges in line.",
            _ => $"Put the shelves of {space.Name} into their dadoes, dry at first.",
        }, upwards, null, "")
        { IsDry = fit.Depth is null ? space.Dividers.IsClosedIn : !fit.IsSlidIn };
        // Notched shelves go round the posts from the inside, so before the panel beside them is there.
        int panelIn = notches is null ? -1 : book.Steps.FindIndex(s => s.Stage == step.Stage && s.Parts.Any(p => p == space.Edges.Left.Part || p == space.Edges.Right.Part));
        if (panelIn >= 0) book.Steps.Insert(panelIn, step);
        else book.Steps.Add(step);
    }

    /// <summary>One shelf, its length along its grain: its front edge is seen.</summary>
    internal static Part Shelf(Shelves shelves, Named key, Panel panel, PartSize length, PartSize width, QuantityKey thickness, ImmutableArray<Placement> places) => shelves.IsGrainDeep
        ? new(key.Text, key.Text, $"shelf {key.Text}", PartRole.Shelf, panel.Name, width, length, thickness, 1, panel.Grain, places, key.Place) { Seen = new(0, 1) }
        : new(key.Text, key.Text, $"shelf {key.Text}", PartRole.Shelf, panel.Name, length, width, thickness, 1, panel.Grain, places, key.Place) { Seen = new(1, 0) };

    /// <summary>How far the front edges stand back.</summary>
    internal static QuantityKey Setback(Book book, Space space, Shelves shelves) => book.Define(space.Prefix, "shelf-setback", $"{space.Name}, shelf setback",
        shelves.Setback?.Stated ?? new Stated(Zero, new(OriginKind.Rule, "flush with the front", "common practice, no source")));
}

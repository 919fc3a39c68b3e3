using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut;

/// <summary>Fills an opening: divides it further, or puts drawers or shelves in it, to any depth.</summary>
internal static class OpeningRule
{
    public static void Fill(Book book, Space space, OpeningContent? content)
    {
        string word = content switch
        {
            Division => "divided",
            DrawerBank => "drawers",
            Shelves => "shelves",
            _ => "open",
        };
        book.Openings.Add(new(space.Owner, space.Name, word, new(space.X, space.Y, space.Z, book.Value(space.Width), book.Value(space.Depth), book.Value(space.Height))));
        switch (content)
        {
            case Division division: Divide(book, space, division); break;
            case DrawerBank bank: BankRule.Write(book, space, bank); break;
            case Shelves shelves: ShelfRule.Write(book, space, shelves); break;
        }
    }

    private static void Divide(Book book, Space space, Division division)
    {
        var openings = division.Items.OfType<Opening>().ToImmutableArray();
        var members = new List<(Divider Divider, Panel Panel)>();
        foreach (Divider divider in division.Items.OfType<Divider>())
        {
            if (book.PanelOf(divider.Of ?? space.Of, divider.Key) is not { } panel) return;
            members.Add((divider, panel));
        }
        string memberWord = division.IsAcross ? "partition" : "deck", what = division.IsAcross ? "width" : "height";
        QuantityKey whole = division.IsAcross ? space.Width : space.Height;
        ImmutableArray<Term> between = [.. members.Select(m => Term.From($"{memberWord} {m.Divider.Key}", 1, book.ThicknessOf(m.Divider.Key, m.Panel.Name)) with { Part = m.Divider.Key })];
        ImmutableArray<Sharer> sharers = [.. openings.Select(o => new Sharer(o.Key, "set-" + what, $"opening {o.Key}, {what} as set out", o.Size, [Term.From($"opening {o.Key}", 1, QuantityKey.Of(o.Key, what))]))];
        if (Sharing.Share(book, $"{space.Name}, openings and {memberWord}s in the {what}", whole, between, sharers, restIsCut: false) is not { } sizes) return;

        ExactLength along = division.IsAcross ? space.X : space.Z + book.Value(space.Height);
        for (int i = 0; i < openings.Length; i++)
        {
            Opening opening = openings[i];
            string name = $"opening {opening.Key}";
            QuantityKey set = sizes[i].AsCut;
            ExactLength size = book.Value(set);
            // The one that takes up the rest is bounded by the others; those stand fast once what bounds them does.
            if (sizes[i].ToCut != sizes[i].Exact)
                book.Fixings.Add(new(sizes[i].ToCut, [.. new[] { i - 1, i }.Where(m => m >= 0 && m < members.Count).Select(m => members[m].Divider.Key)]));
            QuantityKey width, height;
            if (division.IsAcross)
            {
                width = book.DefineSame(opening.Key, "width", $"{name}, clear width", "as set out", set, Combining.Narrowest);
                height = book.DefineSame(opening.Key, "height", $"{name}, clear height", "of the whole", space.Height, Combining.Narrowest);
            }
            else
            {
                width = book.DefineSame(opening.Key, "width", $"{name}, clear width", "of the whole", space.Width, Combining.Narrowest);
                height = book.DefineSame(opening.Key, "height", $"{name}, clear height", "as set out", set, Combining.Narrowest);
            }
            QuantityKey depth = book.DefineSame(opening.Key, "depth", $"{name}, clear depth", "of the whole", space.Depth, Combining.Narrowest);
            Edge before = i == 0 ? (division.IsAcross ? space.Edges.Left : space.Edges.Top) : SharedWith(book, members[i - 1]);
            Edge after = i == openings.Length - 1 ? (division.IsAcross ? space.Edges.Right : space.Edges.Bottom) : SharedWith(book, members[i]);
            Edges edges = division.IsAcross ? space.Edges with { Left = before, Right = after } : space.Edges with { Top = before, Bottom = after };
            ExactLength x = division.IsAcross ? along : space.X, z = division.IsAcross ? space.Z : along - size;
            book.Dimensions.Add(new(division.IsAcross ? width : height, division.IsAcross, division.IsAcross ? x : z, division.IsAcross ? x + size : z + size, 0, space.X));

            if (i < members.Count) WriteMember(book, space, members[i].Divider, members[i].Panel, division.IsAcross, division.IsAcross ? x + size : z);
            Fill(book, new(opening.Key, opening.Key, name, width, height, depth, x, space.Y, z, edges, space.Of, space.Carrier, opening.Place, division.IsAcross ? space.Face with { Width = set } : space.Face with { Height = set }, space.TakesSlides), opening.Content);
            ExactLength step = size + (i < members.Count ? book.Value(Book.ThicknessOf(members[i].Panel.Name)) : Zero);
            along = division.IsAcross ? along + step : along - step;
        }
    }

    private static Edge SharedWith(Book book, (Divider Divider, Panel Panel) member) => new(book.ThicknessOf(member.Divider.Key, member.Panel.Name), EdgeKind.Shared, Part: member.Divider.Key);

    private static void WriteMember(Book book, Space space, Divider divider, Panel panel, bool isAcross, ExactLength at)
    {
        string word = isAcross ? "partition" : "deck", name = $"{word} {divider.Key}";
        PartRole role = isAcross ? PartRole.Partition : PartRole.Deck;
        QuantityKey t = book.ThicknessOf(divider.Key, panel.Name);
        // Never to the nearest step: half a step too long would spread the case.
        const string why = "down: it must go between";
        PartSize length = book.DefineSize(divider.Key, "length", $"{name}, length",
            new Sum(Term.From(isAcross ? "clear height" : "clear width", 1, isAcross ? space.Height : space.Width)), Rounding.Down, why);
        PartSize width = book.DefineSize(divider.Key, "width", $"{name}, width", new Sum(Term.From("clear depth", 1, space.Depth)), Rounding.Down, why);
        Joints.Between(book, divider.Key, name, isAcross ? space.Height : space.Width, length);
        ExactLength long_ = book.Value(length.AsCut), deep = book.Value(width.AsCut), thick = book.Value(t);
        Placement placement = isAcross
            ? new(at, space.Y, space.Z, thick, deep, long_)
            : new(space.X, space.Y, at - thick, long_, deep, thick);
        book.Add(new(divider.Key, divider.Key, name, role, panel.Name, length, width, t, 1, panel.Grain, [placement], divider.Place));
        int screws = 2 * Fastening.ScrewsAlong(deep);
        book.Joints.Add(new("butt", divider.Key, Face.Ends, space.Carrier, Face.Inside, "glue and screws from outside, or pocket screws where there is no outside"));
        book.Hardware.Add(new(divider.Key, Fastening.PanelScrew(book, panel, thick), screws, "piece", $"2 ends: {Fastening.SpacingWords}"));
        book.Steps.Add(new(Stage.Inside, $"Set the {name} with spacers cut to the clear {(isAcross ? "widths" : "heights")} beside it, top and bottom alike, and screw it.", [divider.Key], null, ""));
    }
}

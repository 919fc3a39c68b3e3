using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Shelves in dadoes: slots across the panels beside them, as wide as the shelf reads, through from front to back.</summary>
internal static class DadoRule
{
    /// <summary>How deep: as given, else a third of the thinner panel; null where there is no panel to cut it in, with a finding.</summary>
    public static PartSize? Depth(Book book, Space space, Shelves shelves)
    {
        if (!HasPanels(book, space, "dadoes")) return null;
        TradeRule rule = TradeRules.Get("CJ3");
        ImmutableArray<Term> thirds = [.. Carriers(space).Select(c => Term.From($"a third of {c.Part}", Rational.Of(1, 3), c.Member))];
        PartSize depth = book.DefineSize(space.Prefix, "dado.depth", $"{space.Name}, depth of its dadoes", shelves.Dado?.Stated ?? (Working)new Extreme(thirds, IsLeast: true),
            shelves.Dado is null ? Rounding.Down : Rounding.Nearest, shelves.Dado is null ? $"down: 1/4 to 1/3 of the panel ({rule.Cited})" : "to the nearest step");
        ExactLength deep = book.Value(depth.ToCut);
        foreach (Edge edge in Carriers(space))
        {
            ExactLength half = book.Value(edge.Member) / 2;
            if (shelves.Dado is { } given && deep > half)
                book.NoteOnce("shelf.dado-too-deep", Severity.Warn, space.Owner, $"Dadoes {book.Say(deep)} deep leave {book.Say(book.Value(edge.Member) - deep)} of {edge.Part}.", $"1/4 to 1/3 of the panel is usual, half the most: {book.Say(half)}. ({rule.Cited})", given.Place);
        }
        return depth;
    }

    /// <summary>The dadoes for one shelf, counted from the bottom.</summary>
    public static void Write(Book book, Space space, Shelves shelves, int index, PartSize dado, PartSize length)
    {
        Named key = shelves.Keys[shelves.Keys.Length - 1 - index];
        string name = $"shelf {key.Text}";
        var below = ImmutableArray.CreateBuilder<Term>();
        for (int i = 0; i <= index; i++)
        {
            string other = shelves.Keys[shelves.Keys.Length - 1 - i].Text;
            below.Add(Term.From($"clear below {other}", 1, QuantityKey.Of(other, "clear-below").ToCut));
            if (i < index) below.Add(Term.From($"shelf {other}", 1, book.ThicknessOf(other, (shelves.Of ?? space.Of).Text)));
        }
        QuantityKey up = book.Define(key.Text, "dado.up", $"{name}, lower side of its dadoes above the bottom of the opening", new Sum(below.ToImmutable()));
        QuantityKey wide = book.DefineSame(key.Text, "dado.width", $"{name}, width of its dadoes", "shelf, as read", book.ThicknessOf(key.Text, (shelves.Of ?? space.Of).Text));
        QuantityKey between = book.Define(key.Text, "dado.between", $"{name}, between the bottoms of its dadoes", new Sum(Term.From("clear width", 1, space.Width), Term.From("dadoes, as cut", 2, dado.AsCut)));
        Joints.Between(book, key.Text, name, between, length, [], isHidden: true);
        foreach (string part in Carriers(space).Select(e => e.Part).Distinct())
        {
            book.Machinings.Add(new(part, $"Dado across the inside for {name}, through from front to back", [("depth", dado.ToCut), ("width", wide), ("lower side above the bottom of the opening", up)]));
            book.Joints.Add(new("dado", key.Text, Face.Ends, part, Face.Inside, "glue") { Depth = dado.ToCut });
        }
        if (index == 0)
            book.Steps.Add(new(Stage.Edges, $"Cut the dadoes for the shelves of {space.Name} before anything is joined, both sides at one setting of the fence; try the fit with an offcut of the shelf.", [], null, "crosscut"));
    }

    /// <summary>The edges left and right.</summary>
    internal static ImmutableArray<Edge> Carriers(Space space) => [space.Edges.Left with { Member = space.Edges.Left.Beside ?? space.Edges.Left.Member }, space.Edges.Right with { Member = space.Edges.Right.Beside ?? space.Edges.Right.Member }];

    /// <summary>False between bare posts, with a finding.</summary>
    internal static bool HasPanels(Book book, Space space, string what)
    {
        if (Carriers(space).All(e => e.Part.Length > 0)) return true;
        book.Note("shelf.no-panels", Severity.Stop, space.Owner, $"There are no panels beside {space.Name} to cut {what} in.", "Add 'slide panels: MATERIAL' to the opening of the frame, or write 'fit: fixed'.", space.Place);
        return false;
    }
}

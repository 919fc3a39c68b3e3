using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Openings;

/// <summary>
/// Two openings of a frame back to back: one reached from the front, one from behind, each with half of the depth. The rules write the one behind as if the frame
/// were turned round, and the book turns it back.
/// </summary>
internal static class BackToBackRule
{
    /// <summary>Fills an opening with what it holds, what is behind it, and the slats before it.</summary>
    public static void Fill(Book book, Space space, Opening opening)
    {
        if (opening.Behind is not { } behind) OpeningRule.Fill(book, space, opening.Content);
        else if (space.Railing is not { BackTakes: null } railing)
            book.Note("opening.no-behind", Severity.Stop, opening.Key, space.Railing is null ? $"{space.Name} is not in a frame: what is behind it cannot be reached." : $"{space.Name} has a panel in the back: what is behind it cannot be reached.",
                $"Leave {book.Hand.Key("from behind")} out, or the panel in the back.", behind.Place);
        else
        {
            QuantityKey half = book.Define(opening.Key, "half-depth", $"{space.Name}, clear depth of each of two openings back to back", new Sum([Term.From("clear depth", 1, space.Depth)], Rational.Of(1, 2)), Combining.Narrowest);
            OpeningRule.Fill(book, space with { Depth = half }, opening.Content);
            Corner corner = book.Corner;
            book.Corner = corner with { Turned = railing.Whole };
            OpeningRule.Fill(book, Turned(book, space, railing, behind, half), behind.Content);
            book.Corner = corner;
        }
        if (opening.Slats is { } slats) SlatRule.Write(book, space, opening, slats);
    }

    private static Space Turned(Book book, Space space, Railing railing, Opening behind, QuantityKey half)
    {
        string key = behind.Key, name = $"opening {key}";
        return space with
        {
            Owner = key,
            Prefix = key,
            Name = name,
            Width = book.DefineSame(key, "width", $"{name}, clear width", "of the whole", space.Width, Combining.Narrowest),
            Height = book.DefineSame(key, "height", $"{name}, clear height", "of the whole", space.Height, Combining.Narrowest),
            Depth = book.DefineSame(key, "depth", $"{name}, clear depth", "half of the whole", half, Combining.Narrowest),
            X = railing.Whole.Wide - space.X - book.Value(space.Width),
            Y = railing.Whole.Deep - space.Y - book.Value(space.Depth),
            Edges = space.Edges with { Left = space.Edges.Right, Right = space.Edges.Left },
            Place = behind.Place,
        };
    }
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Upright slats before the shelves of an opening, as long as it is high, with even spaces between and beside them; fixed to the edges of the shelves.</summary>
internal static class SlatRule
{
    public static void Write(Book book, Space space, Opening opening, Slats slats)
    {
        string key = opening.Key, name = $"{space.Name} slat";
        if (book.StickOf(slats.Of, key) is not { } stick) return;
        if (opening.Content is not Shelves shelves || shelves.Setback?.Value.Sign > 0)
        {
            book.Note("slats.nothing-behind", Severity.Stop, key, $"The slats of {space.Name} have no edges of shelves behind them to be fixed to.", "Put shelves into the opening, without a setback, or leave the slats out.", slats.Place);
            return;
        }
        if (slats.AtBack && space.Railing is { BackTakes: not null })
        {
            book.Note("slats.behind-panel", Severity.Stop, key, $"The slats at the back of {space.Name} would stand in the panel there.", $"{book.Hand.Write("at", "front")}, or leave the panel in the back out.", slats.Place);
            return;
        }
        QuantityKey wide = Book.SectionWidthOf(stick.Name), thin = Book.ThicknessOf(stick.Name);
        QuantityKey apart = book.Define(key, "slat-space", $"{name}s, space between and beside them", new Sum([Term.From("clear width", 1, space.Width), Term.From("slats", -slats.Count, wide)], Rational.Of(1, slats.Count + 1)));
        ExactLength gap = book.Value(apart), w = book.Value(wide), t = book.Value(thin);
        if (gap.Sign <= 0)
            book.Note("slats.too-many", Severity.Stop, key, $"{slats.Count} slats of {book.Say(w)} leave no space between them in {book.Say(book.Value(space.Width))}.", "Use fewer or narrower ones.", slats.Place);
        PartSize length = book.DefineSize(key, "slat.length", $"{name}, length", new Sum(Term.From("clear height", 1, space.Face.Height)), PartRole.Slat);
        ExactLength high = book.Value(length.AsCut), rear = space.Y + book.Value(space.Depth);
        ImmutableArray<ExactLength> faces = [.. slats.AtFront ? [space.Y - t] : ImmutableArray<ExactLength>.Empty, .. slats.AtBack ? [rear] : ImmutableArray<ExactLength>.Empty];
        ImmutableArray<Placement> places = [.. faces.SelectMany(y => Enumerable.Range(0, slats.Count).Select(i => new Placement(space.X + (gap * (i + 1)) + (w * i), y, space.Z, w, t, high)))];
        book.Add(new($"{key}.slat", $"{key}l", name, PartRole.Slat, stick.Name, length, Book.Uncut(wide), thin, places.Length, Grain.Keep, places, slats.Place));
        foreach (Named shelf in shelves.Keys) book.Joints.Add(new(JointKind.Butt, $"{key}.slat", Face.Inside, shelf.Text, Face.FrontEdge, "glue and brads"));
        book.Hardware.Add(new(key, $"Pin or brad, {book.Say(Fastening.IntoEdge(book.Piece.Unit, t))}", places.Length * shelves.Keys.Length, "piece", "one through each slat into each shelf; common practice, no source"));
        string where = slats is { AtFront: true, AtBack: true } ? "front and back" : slats.AtBack ? "the back" : "the front";
        book.Steps.Add(new(Stage.Inside, $"Glue and pin the slats of {space.Name} to the edges of its shelves, {where}, upright, with {book.Say(gap)} between and beside them.", [$"{key}.slat"], null, ""));
    }
}

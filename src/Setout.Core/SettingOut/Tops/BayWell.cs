using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Tops;

/// <summary>
/// A well in the bay of a frame: as wide as the bay, its bearers on the inner faces of front and rear posts, so that they carry the platform and no sides are
/// wanted.
/// </summary>
/// <param name="Frame">The frame.</param>
/// <param name="Bay">The bay.</param>
/// <param name="Index">Which of its bays, from 0 at the left.</param>
internal sealed record BayWell(Frame Frame, Opening Bay, int Index)
{
    private string Post => $"{Frame.Key}.post";

    /// <summary>The bay of a well; null where it says none, or where there is none such under its top, with a finding.</summary>
    public static BayWell? Of(Book book, LaidTop laid, Well well)
    {
        if (well.Bay is not { } named) return null;
        foreach ((string word, Place? place) in new[] { ("from left", well.FromLeft.Place == named.Place ? null : (Place?)well.FromLeft.Place), ("width", well.Width?.Place), ("sides", well.Sides?.Place) })
            if (place is { } there) book.NoteOnce("well.bay-idle", Severity.Stop, well.Key, $"'{word}' has nothing to say of a well in a bay: the bay gives it.", $"Leave {book.Hand.Key(word)} or {book.Hand.Key("bay")} out.", there);
        foreach (Frame frame in book.Piece.Members.OfType<Frame>().Where(f => laid.Top.On.IsEmpty || laid.Top.On.Any(o => o.Text == f.Key)))
            foreach ((int index, Opening bay) in frame.Bays.Items.OfType<Opening>().Index())
                if (bay.Key == named.Text && book.Knows(QuantityKey.Of(bay.Key, "width")) && book.Parts.Any(p => p.Key == $"{frame.Key}.post")) return new(frame, bay, index);
        book.NoteOnce("well.no-bay", Severity.Stop, well.Key, $"There is no bay '{named.Text}' of a frame under {laid.Name}.", $"Name an opening that stands between the posts of a frame, or say {book.Hand.Key("from left")} and leave {book.Hand.Key("bay")} out.", named.Place);
        return null;
    }

    /// <summary>From the finished left end of the top to the bay, as a working.</summary>
    public Sum FromLeft(Book book, LaidTop laid)
    {
        QuantityKey wide = Book.SectionWidthOf(Frame.Of.Text);
        ImmutableArray<Opening> before = [.. Frame.Bays.Items.OfType<Opening>().Take(Index)];
        return new([Term.From("overhang, left", 1, LaidTop.OverhangKey(laid.Top.Key, TopSide.Left)),
            .. Standing.Start(book, Frame.Key, "left", "from the left"), .. Standing.Start(book, laid.Structure.Key, "left", "from the left").Select(s => s with { Times = -s.Times }),
            Term.From("posts, wide face to the front", Index + 1, wide), .. before.Select(b => Term.From($"bay {b.Key}, between its posts", 1, Clear(book, b)))]);
    }

    // What was cut or set out between the posts, not what is read between slide panels.
    private static QuantityKey Clear(Book book, Opening bay)
    {
        QuantityKey set = QuantityKey.Of(bay.Key, "clear"), rail = QuantityKey.Of(bay.Key, "rail.length"), between = QuantityKey.Of(bay.Key, "rail.length.between");
        return book.Knows(between) ? between : book.Knows(rail) ? rail.AsCut : book.Knows(set.AsCut) ? set.AsCut : set;
    }

    /// <summary>Writes the bearers: from the front of the front post to the back of the rear one, below the platform.</summary>
    public void Bearers(Book book, Well well, string name, Stick stick, ExactLength x, ExactLength open, ExactLength z, ImmutableArray<QuantityKey> held)
    {
        QuantityKey tie = QuantityKey.Of(Frame.Key, "tie.length"), between = QuantityKey.Of(Frame.Key, "tie.length.between");
        PartSize length = book.DefineSize(well.Key, "bearer.length", $"{name} bearer, length", new Sum([Term.From("tie, between its shoulders as cut", 1, book.Knows(between) ? between : tie.AsCut),
            Term.From("posts, front and back", 2, Book.ThicknessOf(Frame.Of.Text)), .. Frame.Run == RailRun.Inside ? [Term.From("rails on the faces of the posts", 2, Book.ThicknessOf((Frame.Rails ?? Frame.Of).Text))] : ImmutableArray<Term>.Empty]), PartRole.WellBearer);
        Placement post = book.Parts.First(p => p.Key == Post).Placements[0];
        ExactLength b = book.Value(Book.ThicknessOf(stick.Name)), wide = book.Value(Book.SectionWidthOf(stick.Name)), long_ = book.Value(length.AsCut), y = post.Y - book.Corner.Y;
        book.Add(new($"{well.Key}.bearer", $"{well.Key}b", $"{name} bearer", PartRole.WellBearer, stick.Name, length, Book.Uncut(Book.SectionWidthOf(stick.Name)), Book.ThicknessOf(stick.Name), 2, Grain.Keep,
            [new(x, y, z - wide, b, long_, wide), new(x + open - b, y, z - wide, b, long_, wide)], well.Place, held));
        book.Joints.Add(new(JointKind.Butt, $"{well.Key}.bearer", Face.Outside, Post, Face.Inside, "glue and two structural screws into each post"));
        if (Fastening.IntoFace(book.Piece.Unit, b, book.Value(Book.SectionWidthOf(Frame.Of.Text))) is { } screw)
            book.Hardware.Add(new(well.Key, $"Structural wood screw, {book.Say(screw)}", 8, "piece", "2 bearers on 2 posts each, 2 screws a post; common practice, no source"));
    }

    /// <summary>The steps of such a well.</summary>
    public void Steps(Book book, Well well, string name, PartSize up, QuantityKey table)
    {
        string key = well.Key;
        QuantityKey drop = QuantityKey.Of(key, "drop");
        book.Steps.Add(new(Stage.Top, $"{name}: stand the {well.Machine}{(well.Load == 0 ? "" : $"{WellChecks.WhichWeighs(book, well)},")} on a flat floor and measure from its feet to its table at four corners{book.Enter(table, "HEIGHT")}. Platform and bearers wait for it.", [], null, ""));
        book.Steps.Add(new(Stage.Top, $"{name}: glue and screw the bearers to the inner faces of the posts of bay {Bay.Key}, upper edges {book.Say(book.Value(up.ToCut))} above the floor, level with one another. Screw the platform down on them, then measure from a straightedge over the opening down to it, {book.Say(book.Value(drop))}{book.Enter(drop, "HEIGHT")}.",
            [$"{key}.bearer", $"{key}.platform"], null, "screws"));
    }
}

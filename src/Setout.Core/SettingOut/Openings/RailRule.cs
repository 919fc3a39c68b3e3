using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>
/// A pair of rails that divides the bay of a frame, one in front and one at the back. Between the posts they are joined as the other rails of the frame
/// and go in with them; between panels they are butted and come in later.
/// </summary>
internal static class RailRule
{
    /// <summary>The pair for what lies on it or hangs below it.</summary>
    public static RailPair Pair(Book book, Space space, Divider divider, Stick stick)
    {
        RailWay way = divider.Rail!;
        (ImmutableArray<Term> deep, ExactLength y) = Line(space);
        QuantityKey high = way.Laid == Laid.Flat ? Book.ThicknessOf(stick.Name) : Book.SectionWidthOf(stick.Name), thick = way.Laid == Laid.Flat ? Book.SectionWidthOf(stick.Name) : Book.ThicknessOf(stick.Name);
        QuantityKey? setback = way.Setback is { } given ? book.Define(divider.Key, "setback", $"rail {divider.Key}, setback from the line of the front", given.Stated) : null;
        return new(divider.Key, $"rail {divider.Key}", high, way.Laid,
            [.. deep, .. setback is { } back ? [Term.From("setback, front and back", -2, back)] : ImmutableArray<Term>.Empty, Term.From(way.Laid == Laid.Flat ? "rails, laid flat" : "rails, on edge", -2, thick)],
            y + book.ValueOr0(setback), y + book.ValueOr0(setback) + book.Value(thick));
    }

    /// <summary>The rails that go in with those of the frame: all that stand between its posts.</summary>
    public static IEnumerable<Divider> BetweenPosts(OpeningContent? content) => content switch
    {
        Division { IsAcross: false } down => down.Items.SelectMany(i => i is Opening opening ? BetweenPosts(opening.Content) : i is Divider { Rail: not null } rail ? [rail] : []),
        DoorFilling doors => BetweenPosts(doors.Behind),
        _ => [],
    };

    /// <summary>Writes the pair.</summary>
    /// <param name="at">Its upper edge.</param>
    /// <param name="from">From the bottom of the division to its lower edge.</param>
    public static void Write(Book book, Space space, Divider divider, Stick stick, RailPair pair, ExactLength at, ImmutableArray<Term> from)
    {
        (string key, Railing railing) = (divider.Key, space.Railing!);
        bool isBetweenPosts = IsBetweenPosts(space);
        QuantityKey? tenon = isBetweenPosts ? railing.Tenon : null;
        // What is cut before the frame is closed goes by what the frame was cut to; what comes in later by what is read.
        QuantityKey clear = isBetweenPosts ? space.Face.Width : space.Width;
        var between = new Sum(Term.From(isBetweenPosts ? "between the posts" : "clear width", 1, clear));
        PartSize length = tenon is { } deep ? book.LetIn(between, key, "length", $"{pair.Name}, length", PartRole.Rail, deep, "tenons")
            : book.DefineSize(key, "length", $"{pair.Name}, length", between, Rounding.Down, "down: it must go between");
        if (tenon is null) Joints.Between(book, key, pair.Name, clear, length, []);
        ImmutableArray<Term> start = [.. space.Edges.Left.Start, .. from];
        QuantityKey up = book.Define(key, "up", $"{pair.Name}, its lower edge {(isBetweenPosts ? "from the lower end of the posts" : "above the bottom of what it divides")}", new Sum(isBetweenPosts ? start : from));

        ExactLength high = book.Value(pair.High), through = pair.Y - pair.Front;
        (ImmutableArray<Term> depth, ExactLength y) = Line(space);
        ExactLength into = book.ValueOr0(tenon), long_ = book.Value(length.AsCut), front = pair.Front, rear = y + book.Value(new Sum(depth)) - (front - y) - through;
        book.Add(new(key, key, pair.Name, PartRole.Rail, stick.Name, length, Book.Uncut(Book.SectionWidthOf(stick.Name)), Book.ThicknessOf(stick.Name), 2, Grain.Keep,
            [new(space.X - into, front, at - high, long_, through, high), new(space.X - into, rear, at - high, long_, through, high)], divider.Place));
        Join(book, space, divider, stick, pair.Name, tenon, up, isBetweenPosts);
        ExactLength misses = pair.Y - y + book.ValueOr0(railing.BackTakes) - book.Value(railing.PostDepth);
        if (isBetweenPosts && misses.Sign > 0)
            book.Note("rail.misses-the-posts", Severity.Stop, key, $"{pair.Name} would stand {book.Say(misses)} out of the posts, which are {book.Say(book.Value(railing.PostDepth))} deep: it would hang in part in the air.",
                divider.Rail!.Setback is null ? "Use thinner rails, lay them on edge, or take the panel out of the back." : $"Make its setback {book.Say(misses)} smaller.", divider.Rail.Setback?.Place ?? divider.Place);
        if (rear < front + through)
            book.Note("rail.no-depth", Severity.Stop, key, $"{space.Name} has no depth for two rails of {book.Say(through)}, {book.Say(front - y)} back.", "Set them back less, or lay them on edge.", divider.Rail!.Setback?.Place ?? divider.Place);
        if (isBetweenPosts) return;
        book.Steps.Add(new(Stage.Inside, $"Set {pair.Name} front and back between what stands beside it, lower edges {book.Say(book.Value(up))} above the bottom of what it divides{(divider.Rail!.Setback is { } s ? $", {book.Say(s.Value)} behind the front and before the back" : "")}; level, and screw it.", [key], null, "screws"));
    }

    /// <summary>What the front and the back of a space go by: between the posts the posts, else the space itself.</summary>
    private static (ImmutableArray<Term> Deep, ExactLength Y) Line(Space space) =>
        IsBetweenPosts(space) ? (space.Railing!.Deep, space.Railing.Y) : ([Term.From("clear depth", 1, space.Depth)], space.Y);

    // Behind an inset door there is no place in line with the posts.
    private static bool IsBetweenPosts(Space space) => space.Railing is { IsBetweenPosts: true } && space.Door is null;

    private static void Join(Book book, Space space, Divider divider, Stick stick, string name, QuantityKey? tenon, QuantityKey up, bool isBetweenPosts)
    {
        (string key, Railing railing) = (divider.Key, space.Railing!);
        QuantityKey thin = Book.ThicknessOf(stick.Name), wide = Book.SectionWidthOf(stick.Name);
        ImmutableArray<(string Part, QuantityKey Deep)> into = isBetweenPosts ? [(railing.Post, railing.PostWidth)]
            : [.. new[] { space.Edges.Left, space.Edges.Right }.Select(e => e.Part.Length > 0 ? (e.Part, e.Own) : (railing.Post, railing.PostWidth)).Distinct()];
        if (tenon is { } length)
        {
            TenonRule.Between(book, key, name, length, (thin, wide), (railing.Post, "front and back"), (up, "from the lower end"), divider.Place);
            return;
        }
        // Between panels that stand already nothing goes onto dowels.
        bool isDowelled = railing.Corner == FrameCorner.Dowels && isBetweenPosts;
        foreach ((string part, QuantityKey _) in into)
            book.Joints.Add(new(isDowelled ? JointKind.Dowels : JointKind.Butt, key, Face.Ends, part, Face.Inside, isDowelled ? "glue and dowels" : "glue and two pocket screws an end, pockets on the side that is not seen"));
        if (isDowelled)
        {
            DowelRule.Write(book, new(key, name, key, "both ends", 4, wide, thin) { From = divider.Rail!.Laid == Laid.Flat ? "front edge" : "lower edge", Where = [("lower edge of the rail from the lower end", up)] }, [.. into.Select(i => (i.Part, i.Deep, $"what faces the ends of {name}"))]);
            return;
        }
        (string pocket, string source) = Fastening.PocketScrew(book, book.Value(thin));
        book.Hardware.Add(new(key, pocket, 8, "piece", $"4 ends, 2 each; {source}"));
    }
}

using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Frames;

/// <summary>The stretchers that go in with a frame, by when they do.</summary>
/// <param name="Faces">With the rails of front and back.</param>
/// <param name="Ends">With the ties of the ends.</param>
/// <param name="Middle">Between those of the ends.</param>
internal sealed record FrameStretchers(ImmutableArray<string> Faces, ImmutableArray<string> Ends, ImmutableArray<string> Middle);

/// <summary>
/// Stretchers: sticks between the posts at a height of their own, in the middle of the posts; one along the middle goes between those of the ends, or lies
/// under what stands in the bays. None hangs in the air.
/// </summary>
internal static class StretcherRule
{
    /// <summary>A stretcher with its sticks and its size from front to back or across, as it lies.</summary>
    private sealed record Member(Stretcher Described, Stick Stick, QuantityKey High, QuantityKey Through)
    {
        public string Name => $"stretcher {Described.Key}";
    }

    /// <summary>Writes those between posts and between one another; gives their keys.</summary>
    public static FrameStretchers Write(Book book, Frame frame, string name, FrameKeys keys, List<(Opening Bay, ExactLength X, PartSize Rail)> bays, Stick slim, (ExactLength Wide, ExactLength Deep) built)
    {
        List<Member> members = [.. frame.Stretchers.Select(s => Of(book, s, slim)).OfType<Member>()];
        var faces = ImmutableArray.CreateBuilder<string>();
        var ends = ImmutableArray.CreateBuilder<string>();
        var middle = ImmutableArray.CreateBuilder<string>();
        ExactLength p = book.Value(keys.PostWide), pt = book.Value(keys.PostThin), post = keys.Run == RailRun.Outside ? book.Value(keys.RailThin) : Zero, between = book.Value(new Sum(keys.BetweenPosts)), into = book.ValueOr0(keys.Tenon);
        foreach (Member member in members.Where(m => m.Described.Short is null))
        {
            (Stretcher s, ExactLength z, ExactLength high, ExactLength w) = (member.Described, member.Described.Up.Value, book.Value(member.High), book.Value(member.Through));
            bool isAtEnds = s.At == StretcherAt.Ends;
            CheckPost(book, keys, member);
            if (isAtEnds)
            {
                PartSize length = Length(book, member, s.Key, member.Name, new Sum(keys.BetweenPosts), keys.Tenon);
                ExactLength inset = (p - w) / 2, y = post + pt - into, long_ = between + (into * 2);
                Add(book, frame, member, s.Key, member.Name, length, $"{frame.Key}.post", keys.PostThin, keys.Tenon, [new(inset, y, z, w, long_, high), new(built.Wide - inset - w, y, z, w, long_, high)]);
                ends.Add(s.Key);
            }
            else if (s.At == StretcherAt.Middle)
            {
                if (members.FirstOrDefault(m => m.Described.At == StretcherAt.Ends && Meets(book, m, member)) is not { } carrier)
                {
                    book.Note("stretcher.hangs", Severity.Stop, s.Key, $"{member.Name} would hang in the air: there is no stretcher at the ends {book.Say(z)} up.",
                        $"Add one with 'at: ends' at that height, or say with {book.Hand.Key("short")} how far it ends from the outside, under what carries it.", s.Place);
                    continue;
                }
                QuantityKey? tenon = keys.Tenon is { } whole ? Shorter(book, member, carrier, whole) : null;
                PartSize length = Length(book, member, s.Key, member.Name, new Sum(Term.From($"{name}, outside width as built", 1, QuantityKey.Of(frame.Key, "outside")), Term.From("halves of the end posts", -1, keys.PostWide),
                    Term.From("halves of the stretchers at the ends", -1, carrier.Through)), tenon);
                ExactLength deep = book.ValueOr0(tenon), x = (p + book.Value(carrier.Through)) / 2;
                Add(book, frame, member, s.Key, member.Name, length, carrier.Described.Key, carrier.Through, tenon, [new(x - deep, (built.Deep - w) / 2, z, book.Value(length.AsCut), w, high)]);
                middle.Add(s.Key);
            }
            else
            {
                ExactLength inset = post + ((pt - w) / 2), y = s.At == StretcherAt.Front ? inset : built.Deep - inset - w;
                foreach ((Opening bay, ExactLength x, PartSize rail) in bays)
                {
                    (string key, string words) = bays.Count == 1 ? (s.Key, member.Name) : ($"{s.Key}.{bay.Key}", $"{member.Name} of bay {bay.Key}");
                    PartSize length = Length(book, member, key, words, new Sum(Term.From(keys.Between, 1, rail.Made)), keys.Tenon);
                    Add(book, frame, member, key, words, length, $"{frame.Key}.post", keys.PostWide, keys.Tenon, [new(x - into, y, z, book.Value(length.AsCut), w, high)]);
                    faces.Add(key);
                }
            }
        }
        return new(faces.ToImmutable(), ends.ToImmutable(), middle.ToImmutable());
    }

    /// <summary>Writes those that lie under what stands in the bays, once that stands.</summary>
    public static void Braces(Book book, Frame frame, FrameKeys keys, Stick slim, (ExactLength Wide, ExactLength Deep) built)
    {
        foreach (Member member in frame.Stretchers.Where(s => s.Short is not null).Select(s => Of(book, s, slim)).OfType<Member>())
        {
            Stretcher s = member.Described;
            QuantityKey short_ = book.Define(s.Key, "short", $"{member.Name}, short of the outside at each end", s.Short!.Value.Stated), up = book.Define(s.Key, "up", $"{member.Name}, floor to its lower edge", s.Up.Stated);
            PartSize length = book.DefineSize(s.Key, "length", $"{member.Name}, length", new Sum(Term.From("outside width as built", 1, QuantityKey.Of(frame.Key, "outside")), Term.From("short at both ends", -2, short_)), PartRole.Rail);
            ExactLength x = book.Value(short_), long_ = book.Value(length.AsCut), w = book.Value(member.Through), high = book.Value(member.High), top = book.Value(up) + high, y = (built.Deep - w) / 2;
            Placement box = new(x, y, book.Value(up), long_, w, high);
            // What lies on it, over either half of it, carries it.
            bool Carries(Placement b, ExactLength from, ExactLength to) => b.Z == top && b.X < to && from < b.X + b.SizeX && b.Y < y + w && y < b.Y + b.SizeY;
            ExactLength half = x + (long_ / 2);
            List<(Part Part, bool Left, bool Right)> carriers = [.. book.Parts.Select(p => (p, p.Placements.Any(b => Carries(Inner(book, b), x, half)), p.Placements.Any(b => Carries(Inner(book, b), half, x + long_)))).Where(c => c.Item2 || c.Item3)];
            if (!carriers.Any(c => c.Left) || !carriers.Any(c => c.Right))
                book.Note("stretcher.hangs", Severity.Stop, s.Key, $"{member.Name} would hang in the air: at {(carriers.Any(c => c.Left) ? "its right end" : carriers.Any(c => c.Right) ? "its left end" : "both ends")} nothing lies on it {book.Say(top)} up.",
                    $"Let it end under a shelf or a deck at each end, with its upper edge against it, or leave {book.Hand.Key("short")} out.", s.Up.Place);
            book.Add(new(s.Key, s.Key, member.Name, PartRole.Rail, member.Stick.Name, length, Book.Uncut(Book.SectionWidthOf(member.Stick.Name)), Book.ThicknessOf(member.Stick.Name), 1, Grain.Keep, [box], s.Place));
            foreach ((Part carrier, _, _) in carriers) book.Joints.Add(new(JointKind.Butt, s.Key, Face.Top, carrier.Key, Face.Bottom, "glue and screws"));
            if (Fastening.IntoFace(book.Piece.Unit, high, carriers.Select(c => book.Value(c.Part.Thickness)).DefaultIfEmpty(high).Min()) is { } screw)
                book.Hardware.Add(new(s.Key, $"Wood screw no. 8 (4 mm), {book.Say(screw)}", 2 * carriers.Count, "piece", "two into each part that it carries or hangs on; common practice, no source"));
            book.Steps.Add(new(Stage.Inside, $"Glue and screw {member.Name} from below under {string.Join(", ", carriers.Select(c => c.Part.Mark))}, in the middle from front to back, {book.Say(x)} short of the outside at each end.", [s.Key], null, "screws"));
        }
    }

    private static Placement Inner(Book book, Placement box) => box with { X = box.X - book.Corner.X, Y = box.Y - book.Corner.Y, Z = box.Z - book.Corner.Z };

    private static Member? Of(Book book, Stretcher described, Stick slim)
    {
        if (described.Short is { } idle && described.At != StretcherAt.Middle)
        {
            book.NoteOnce("stretcher.idle", Severity.Stop, described.Key, "'short' is of a stretcher along the middle.", $"{book.Hand.Write("at", "middle")}, or leave {book.Hand.Key("short")} out.", idle.Place);
            return null;
        }
        if (described.Of is { } named && book.StickOf(named, described.Key) is null) return null;
        Stick stick = described.Of is { } other ? (Stick)book.Piece.Materials[other.Text] : slim;
        (QuantityKey thin, QuantityKey wide) = (Book.ThicknessOf(stick.Name), Book.SectionWidthOf(stick.Name));
        return described.Laid == Laid.Flat ? new(described, stick, thin, wide) : new(described, stick, wide, thin);
    }

    private static bool Meets(Book book, Member a, Member b) =>
        Min(a.Described.Up.Value + book.Value(a.High), b.Described.Up.Value + book.Value(b.High)) > Max(a.Described.Up.Value, b.Described.Up.Value);

    // A tenon may not come out of a stretcher that is thinner than the posts.
    private static QuantityKey Shorter(Book book, Member member, Member carrier, QuantityKey tenon)
    {
        QuantityKey half = book.Define(member.Described.Key, "tenon.most", $"{member.Name}, half of the stretcher it goes into", new Sum([Term.From("stretcher at the ends", 1, carrier.Through)], Rational.Of(1, 2)));
        return book.Define(member.Described.Key, "tenon", $"{member.Name}, length of its tenons", new Extreme([Term.From("as the other tenons", 1, tenon), Term.From("half of what it goes into", 1, half)], IsLeast: true));
    }

    private static void CheckPost(Book book, FrameKeys keys, Member member)
    {
        QuantityKey post = member.Described.At == StretcherAt.Ends ? keys.PostWide : keys.PostThin;
        ExactLength over = book.Value(member.Through) - book.Value(post), above = member.Described.Up.Value + book.Value(member.High) - book.Value(keys.Post.AsCut);
        if (member.Described.At != StretcherAt.Middle && over.Sign > 0)
            book.Note("stretcher.wider-than-post", Severity.Stop, member.Described.Key, $"{member.Name} is {book.Say(over)} wider than the post it meets.", "Lay it on edge, or use thinner sticks.", member.Described.Place);
        if (above.Sign > 0)
            book.Note("stretcher.too-high", Severity.Stop, member.Described.Key, $"{member.Name} would stand {book.Say(above)} over the posts.", $"Set it {book.Say(above)} lower or more.", member.Described.Up.Place);
    }

    private static PartSize Length(Book book, Member member, string key, string name, Sum clear, QuantityKey? tenon)
    {
        book.Define(key, "up", $"{name}, floor to its lower edge", member.Described.Up.Stated);
        return tenon is { } deep ? book.LetIn(clear, key, "length", $"{name}, length", PartRole.Rail, deep, "tenons") : book.DefineSize(key, "length", $"{name}, length", clear, Rounding.Nearest, "to the nearest step");
    }

    private static void Add(Book book, Frame frame, Member member, string key, string name, PartSize length, string into, QuantityKey deep, QuantityKey? tenon, ImmutableArray<Placement> places)
    {
        QuantityKey thin = Book.ThicknessOf(member.Stick.Name), wide = Book.SectionWidthOf(member.Stick.Name);
        book.Add(new(key, key, name, PartRole.Rail, member.Stick.Name, length, Book.Uncut(wide), thin, places.Length, Grain.Keep, places, member.Described.Place));
        QuantityKey up = QuantityKey.Of(key, "up");
        if (tenon is { } long_)
        {
            TenonRule.Between(book, key, name, long_, (thin, wide), (into, "in the middle"), (up, "above the floor"), member.Described.Place);
            return;
        }
        bool isDowelled = frame.Corner == FrameCorner.Dowels;
        book.Joints.Add(new(isDowelled ? JointKind.Dowels : JointKind.Butt, key, Face.Ends, into, Face.Inside, isDowelled ? "glue and dowels" : "glue and two pocket screws an end, pockets below"));
        if (isDowelled)
        {
            DowelRule.Write(book, new(key, name, key, "both ends", 2 * places.Length, wide, thin) { From = member.Described.Laid == Laid.Flat ? "front edge" : "lower edge", Where = [("its lower edge above the floor", up)] }, [(into, deep, $"what faces the ends of {name}")]);
            return;
        }
        (string pocket, string source) = Fastening.PocketScrew(book, book.Value(thin));
        book.Hardware.Add(new(key, pocket, 4 * places.Length, "piece", $"{2 * places.Length} ends, 2 each; {source}"));
    }
}

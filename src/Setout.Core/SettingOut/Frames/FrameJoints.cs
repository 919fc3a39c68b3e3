using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.SettingOut.Openings;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Frames;

/// <summary>How the members of a frame are joined, and in which order it goes together.</summary>
internal static class FrameJoints
{
    /// <summary>The length of the tenons; null where there are none.</summary>
    public static QuantityKey? Tenon(Book book, Frame frame, string name, QuantityKey wide, QuantityKey thin)
    {
        if (frame.Corner != FrameCorner.Tenon)
        {
            if (frame.Tenon is { } idle)
                book.Note("frame.tenon-idle", Severity.Stop, frame.Key, "'tenon' gives the length of tenons, but the corners have none.", $"{book.Hand.Write("corners", "tenon")}, or leave it out.", idle.Place);
            return null;
        }
        QuantityKey tenon = book.Define(frame.Key, "tenon", $"{name}, length of a tenon",
            frame.Tenon?.Stated ?? (Working)new Sum([Term.From("post, the smaller way", 1, thin)], TradeRules.Get("TN5").Share));
        // Rails go into the wide face's edge, ties into the thin one: neither may come out on the other side.
        ExactLength post = ExactLength.Min(book.Value(wide), book.Value(thin)), left = TenonRule.LeftBehind(book);
        TenonRule.Check(book, frame.Key, tenon, frame.Tenon?.Place ?? frame.Place, new TenonLimit("frame.tenon-too-long", Severity.Stop, post - left, $"leaves less than {book.Say(left)} of a post of {book.Say(post)}"));
        return tenon;
    }

    /// <summary>Joints and what holds them.</summary>
    public static void Write(Book book, Frame frame, FrameKeys keys, int postPairs, List<Part> rails)
    {
        string key = frame.Key;
        int ties = postPairs * (keys.HasBottom ? 2 : 1);
        if (frame.Run != RailRun.Between) FrameRunRule.Write(book, frame, keys, postPairs, rails[0]);
        List<Part> ended = frame.Run == RailRun.Between ? rails : [];
        if (frame.Corner == FrameCorner.Tenon) Tenoned(book, key, keys, ended);
        else if (frame.Corner == FrameCorner.Pocket) Screwed(book, frame, keys, ties, ended);
        else FrameDowels.Write(book, frame, keys, ended);
    }

    private static string Held(FrameCorner corner) => corner switch { FrameCorner.Tenon => "glue in the mortise", FrameCorner.Dowels => "glue and dowels", _ => "glue and screws" };

    /// <summary>The steps of the frame, once all that goes in with it is known: rails between its posts that divide its bays too.</summary>
    public static void Steps(Book book, Frame frame, string name, FrameKeys keys, List<Part> rails, FrameStretchers stretchers, ImmutableArray<string> ends, ImmutableArray<string> backs,
        (ExactLength Wide, ExactLength Deep, ExactLength High, ExactLength Toe) built)
    {
        string key = frame.Key;
        ImmutableArray<string> dividing = [.. frame.Bays.Items.OfType<Opening>().SelectMany(b => RailRule.BetweenPosts(b.Content)).Select(r => r.Key)
            .Where(r => book.Parts.Any(p => p.Key == r) && !book.Steps.Any(s => s.Parts.Contains(r)))];
        ImmutableArray<string> across = [.. rails.Select(r => r.Key), .. dividing, .. stretchers.Faces];
        string Up(IEnumerable<string> parts) => string.Concat(parts.Select(r => $", {r} {book.Say(book.Value(QuantityKey.Of(r, "up")))} up"));
        string between = Up([.. dividing, .. stretchers.Faces]), low = keys.HasBottom ? $", bottom rails {book.Say(built.Toe)} up" : "", lowTies = keys.HasBottom ? $", bottom ties {book.Say(built.Toe)} up" : "";
        if (frame.Run != RailRun.Between)
        {
            FrameRunRule.Steps(book, frame, name, keys, across, between, Up([.. stretchers.Ends, .. stretchers.Middle]), [.. stretchers.Ends, .. stretchers.Middle], built);
            return;
        }
        if (frame.Corner == FrameCorner.Pocket && ends.IsEmpty)
        {
            book.Steps.Add(new(Stage.Carcase, $"Lay front and back of {Standing.The(frame, name)} out flat on the floor: rails between posts{low}{between}, pockets to the inside. Glue, clamp and drive two pocket screws an end. Measure both diagonals of each before the last screws; pull the longer one in until they read alike.",
                [$"{key}.post", .. across, .. backs], Diagonals.Of(book.Grid, built.Wide, built.High), "lift"));
            book.Steps.Add(new(Stage.Carcase, $"Stand front and back up with a helper and screw the ties between them{Up([.. stretchers.Ends, .. stretchers.Middle])}, two structural screws an end from outside through the post, pilots drilled. Check the diagonals of both ends.",
                [$"{key}.tie", .. stretchers.Ends, .. stretchers.Middle], Diagonals.Of(book.Grid, built.Deep, built.High), "lift")
            { Whole = [key] });
            return;
        }
        string panel = ends.IsEmpty ? "" : ", the panel of each end in its grooves without glue";
        book.Steps.Add(new(Stage.Carcase, $"Join each pair of posts of {Standing.The(frame, name)} with its {(keys.HasBottom ? "two ties" : "tie at the top")}{lowTies}{Up(stretchers.Ends)}{panel}: {Held(frame.Corner)}. Clamp, measure both diagonals and pull the longer one in until they read alike.",
            [$"{key}.post", $"{key}.tie", .. stretchers.Ends, .. ends], Diagonals.Of(book.Grid, built.Deep, built.High), "lift"));
        book.Steps.Add(new(Stage.Carcase, $"Lay one pair of posts on its side and set the rails into it{between}{Up(stretchers.Middle)}{(backs.IsEmpty ? "" : ", the panels of the back in their grooves")}, then bring the next pair down on them, with a helper. Stand it up, clamp, and check the diagonals of front and back.",
            [.. across, .. stretchers.Middle, .. backs], Diagonals.Of(book.Grid, built.Wide, built.High), "lift")
        { Whole = [key] });
    }

    private static void Tenoned(Book book, string key, FrameKeys keys, List<Part> rails)
    {
        QuantityKey tenon = keys.Tenon!.Value;
        TenonSet set = TenonRule.Of(book, key, "tenon.", "rails and ties", Book.Uncut(tenon), keys.RailThin);
        foreach (string part in (ImmutableArray<string>)[.. rails.Select(r => r.Key), $"{key}.tie"])
        {
            book.Joints.Add(new(JointKind.MortiseAndTenon, part, Face.Ends, $"{key}.post", Face.Inside, "glue in the mortise") { Depth = tenon, Thick = set.Thickness, Shoulder = set.Shoulder });
            TenonRule.Cut(book, part, "Tenon in the middle of both ends", set);
        }
        Place place = book.Parts.First(p => p.Key == $"{key}.post").Place;
        QuantityKey length = TenonRule.MortiseLength(book, key, "tenon.mortise-length", "rail", set, keys.RailWide, [], place);
        ImmutableArray<(string, QuantityKey)> low = keys.HasBottom
            ? [("bottom ones from the lower end", book.Define(key, "tenon.low", "mortises of the bottom rails and ties, from the lower end of a post", new Sum(Term.From("floor to bottom rail", 1, keys.Toe), Term.From("shoulder", 1, set.Shoulder))))]
            : [];
        QuantityKey high = book.Define(key, "tenon.high", "mortises of the top ties, from the lower end of a post", new Sum([Term.From("post, as cut", 1, keys.Post.AsCut), .. keys.Over(-1), Term.From("tie", -1, keys.RailWide), Term.From("shoulder", 1, set.Shoulder)]));
        bool isFlat = keys.TopRail != keys.RailWide;
        book.Machinings.Add(new($"{key}.post", $"Mortises for the tenons of rails and ties, in line with them as they stand; where two meet in a corner, mitre the ends of the tenons{(isFlat ? "; top rails lie flat, their mortises lie level under the top" : "")}",
            [("depth", set.Mortise), ("width", set.Thickness), ("length", length), .. low, ($"top {(isFlat ? "ones of the ties" : "ones")} from the lower end", high)])
        { By = [.. rails.Select(r => r.Key), $"{key}.tie"] });
    }

    private static void Screwed(Book book, Frame frame, FrameKeys keys, int ties, List<Part> rails)
    {
        string key = frame.Key;
        foreach (Part rail in rails) book.Joints.Add(new(JointKind.Butt, rail.Key, Face.Ends, $"{key}.post", Face.Inside, "glue and two pocket screws an end, pockets on the inside"));
        book.Joints.Add(new(JointKind.Butt, $"{key}.tie", Face.Ends, frame.Run == RailRun.Inside ? $"{key}.rail" : $"{key}.post", Face.Inside, "two structural screws an end, through the post"));
        // A screw from outside would go through the wide face of the post and leave half an inch in end grain: rails are pocket-screwed.
        int count = rails.Sum(r => r.Count);
        if (count > 0)
        {
            (string pocket, string source) = Fastening.PocketScrew(book, book.Value(rails[0].Thickness));
            book.Hardware.Add(new(key, pocket, 4 * count, "piece", $"{2 * count} rail ends, 2 each; {source}"));
        }
        ExactLength through = book.Value(keys.PostThin) + book.Value(new Sum(FrameKeys.OnFaces(frame.Run, 1, keys.RailThin))), bite = Fastening.LeastBiteInEdge * 2;
        book.Hardware.Add(new(key, $"Structural wood screw, {book.Say(Fastening.IntoEdge(book.Piece.Unit, through + bite))}", 4 * ties, "piece",
            $"{2 * ties} tie ends, 2 each through the post; common practice, no source"));
    }
}

using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
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
                book.Note("frame.tenon-idle", Severity.Stop, frame.Key, "'tenon' gives the length of tenons, but the corners have none.", "Write 'corners: tenon', or leave it out.", idle.Place);
            return null;
        }
        QuantityKey tenon = book.Define(frame.Key, "tenon", $"{name}, length of a tenon",
            frame.Tenon?.Stated ?? (Working)new Sum([Term.From("post, the smaller way", 1, thin)], Rational.Of(1, 2)));
        // Rails go into the wide face's edge, ties into the thin one: neither may come out on the other side.
        ExactLength post = ExactLength.Min(book.Value(wide), book.Value(thin)), most = post - ExactLength.FromInches(Rational.Of(1, 4));
        if (book.Value(tenon) > most)
            book.Note("frame.tenon-too-long", Severity.Stop, frame.Key, $"A tenon of {book.Say(book.Value(tenon))} leaves less than 1/4 in of a post of {book.Say(post)}.", $"Make it {book.Say(most)} or less.", frame.Tenon?.Place ?? frame.Place);
        return tenon;
    }

    /// <summary>Joints, what holds them, and the steps of the frame.</summary>
    public static void Write(Book book, Frame frame, string name, FrameKeys keys, int postPairs, List<Part> rails, ImmutableArray<string> ends, ImmutableArray<string> backs,
        (ExactLength Wide, ExactLength Deep, ExactLength High, ExactLength Toe) built)
    {
        string key = frame.Key;
        ImmutableArray<string> across = [.. rails.Select(r => r.Key)];
        if (frame.Corner == FrameCorner.Pocket && ends.IsEmpty)
        {
            Screwed(book, key, postPairs, rails);
            book.Steps.Add(new(Stage.Carcase, $"Lay front and back of the {name} out flat on the floor: rails between posts, bottom rails {book.Say(built.Toe)} up, pockets to the inside. Glue, clamp and drive two pocket screws an end. Measure both diagonals of each before the last screws; pull the longer one in until they read alike.",
                [$"{key}.post", .. across, .. backs], Diagonals.Of(book.Grid, built.Wide, built.High), "lift"));
            book.Steps.Add(new(Stage.Carcase, "Stand front and back up with a helper and screw the ties between them, two structural screws an end from outside through the post, pilots drilled. Check the diagonals of both ends.",
                [$"{key}.tie"], Diagonals.Of(book.Grid, built.Deep, built.High), "lift"));
            return;
        }
        string held = frame.Corner switch { FrameCorner.Tenon => "glue in the mortise", FrameCorner.Dowels => "glue and two dowels an end", _ => "glue and screws" };
        if (frame.Corner == FrameCorner.Tenon) Tenoned(book, key, keys, rails);
        else if (frame.Corner == FrameCorner.Pocket) Screwed(book, key, postPairs, rails);
        else
        {
            foreach (string part in (ImmutableArray<string>)[.. across, $"{key}.tie"]) book.Joints.Add(new("butt", part, Face.Ends, $"{key}.post", Face.Inside, held));
            book.Hardware.Add(new(key, $"Dowel, {book.Say(Usual.Length(book, "DW1"))} x {book.Say(Usual.Length(book, "DW3"))}", (16 * rails.Count) + (8 * postPairs), "piece", "two in each end of rails and ties; common practice, no source"));
        }
        string panel = ends.IsEmpty ? "" : ", the panel of each end in its grooves without glue";
        book.Steps.Add(new(Stage.Carcase, $"Join each pair of posts of the {name} with its two ties, bottom ties {book.Say(built.Toe)} up{panel}: {held}. Clamp, measure both diagonals and pull the longer one in until they read alike.",
            [$"{key}.post", $"{key}.tie", .. ends], Diagonals.Of(book.Grid, built.Deep, built.High), "lift"));
        book.Steps.Add(new(Stage.Carcase, $"Lay one pair of posts on its side and set the rails into it{(backs.IsEmpty ? "" : ", the panels of the back in their grooves")}, then bring the next pair down on them, with a helper. Stand it up, clamp, and check the diagonals of front and back.",
            [.. across, .. backs], Diagonals.Of(book.Grid, built.Wide, built.High), "lift"));
    }

    private static void Tenoned(Book book, string key, FrameKeys keys, List<Part> rails)
    {
        QuantityKey tenon = keys.Tenon!.Value;
        QuantityKey thick = book.Define(key, "tenon.thickness", "tenon, thickness", new Sum([Term.From("rail, its smaller size", 1, keys.RailThin)], Rational.Of(1, 3)));
        ImmutableArray<string> tenoned = [.. rails.Select(r => r.Key), $"{key}.tie"];
        foreach (string part in tenoned)
        {
            book.Joints.Add(new("mortise and tenon", part, Face.Ends, $"{key}.post", Face.Inside, "glue in the mortise") { Depth = tenon });
            book.Machinings.Add(new(part, $"tenon on both ends, a third of the thickness ({TradeRules.Get("FF2").Cited})", [("length", tenon), ("thickness", thick)]));
        }
        book.Machinings.Add(new($"{key}.post", "mortises for the tenons of rails and ties, a little deeper than these are long; where two meet in a corner, mitre their ends", [("length of tenon", tenon), ("width", thick)]));
    }

    private static void Screwed(Book book, string key, int postPairs, List<Part> rails)
    {
        foreach (Part rail in rails) book.Joints.Add(new("butt", rail.Key, Face.Ends, $"{key}.post", Face.Inside, "glue and two pocket screws an end, pockets on the inside"));
        book.Joints.Add(new("butt", $"{key}.tie", Face.Ends, $"{key}.post", Face.Inside, "two structural screws an end, through the post"));
        // A screw from outside would go through the wide face of the post and leave half an inch in end grain: rails are pocket-screwed.
        (string pocket, string source) = Fastening.PocketScrew(book, book.Value(rails[0].Thickness));
        book.Hardware.Add(new(key, pocket, 16 * rails.Count, "piece", $"{8 * rails.Count} rail ends, 2 each; {source}"));
        ExactLength through = book.Value(Book.ThicknessOf(book.Parts.First(p => p.Key == $"{key}.post").Material)), bite = Fastening.LeastBiteInEdge * 2;
        book.Hardware.Add(new(key, $"Structural wood screw, {book.Say(Fastening.IntoEdge(book.Piece.Unit, through + bite))}", 8 * postPairs, "piece",
            $"{4 * postPairs} tie ends, 2 each through the post; common practice, no source"));
    }
}

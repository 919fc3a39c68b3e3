using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Frames;

/// <summary>
/// Rails that run through from end to end of a frame: half-lapped into the outer faces of the posts, over these, or along the inner ones. The bays are set
/// out on them.
/// </summary>
internal static class FrameRunRule
{
    /// <summary>False where what is described cannot go together, with a finding.</summary>
    public static bool IsPossible(Book book, Frame frame)
    {
        bool isThrough = frame.Run != RailRun.Between, possible = true;
        void Stop(string code, string words, string remedy, Place place)
        {
            book.Note(code, Severity.Stop, frame.Key, words, remedy, place);
            possible = false;
        }
        if (frame.Lap is { } lap && frame.Run != RailRun.Lapped) Stop("frame.lap-idle", "'lap' is the depth of half laps, but the rails are not lapped.", $"{book.Hand.Write("rails run", "lapped")}, or leave it out.", lap.Place);
        if (isThrough && frame.TopRail == Laid.Flat) Stop("frame.flat-between", "Top rails that lie flat go between the posts, not over them.", $"Leave {book.Hand.Key("top rails")} or {book.Hand.Key("rails run")} out.", frame.Place);
        if (frame.Panels is { } panels && (isThrough || !frame.HasBottomRails))
            Stop("frame.panels-want-rails", isThrough ? "Panels stand in grooves of rails between the posts; these run through." : "Panels stand in grooves all round; there are no bottom rails.", isThrough ? $"Leave {book.Hand.Key("panels")} or {book.Hand.Key("rails run")} out." : $"Leave {book.Hand.Key("panels")} or {book.Hand.Key("bottom rails")} out.", panels.Place);
        if (isThrough && (frame.Corner == FrameCorner.Dowels || (frame.Run == RailRun.Inside && frame.Corner == FrameCorner.Tenon)))
            Stop("frame.corners-run", $"Rails that run past the posts are screwed to them, and {(frame.Run == RailRun.Inside ? "so are the ties to the rails" : "the ties screwed or tenoned")}.", $"{book.Hand.Write("corners", "pocket")}{(frame.Run == RailRun.Inside ? "" : $" or {book.Hand.Key("corners", "tenon")}")}.", frame.Place);
        return possible;
    }

    /// <summary>The length of rails that run through.</summary>
    public static PartSize Length(Book book, Frame frame, string name, QuantityKey width) =>
        book.DefineSize(frame.Key, "rail.length", $"{name} rail, length", new Sum(Term.From("outside width", 1, width)), PartRole.Rail);

    /// <summary>How the rails are held where they pass the posts.</summary>
    public static void Write(Book book, Frame frame, FrameKeys keys, int postPairs, Part rail)
    {
        (string key, string post) = (frame.Key, $"{frame.Key}.post");
        int crossings = rail.Count * postPairs;
        ExactLength through = book.Value(keys.RailThin), into = book.Value(keys.PostThin);
        if (frame.Run == RailRun.Lapped)
        {
            QuantityKey lap = book.Define(key, "lap", $"{rail.Name}, depth of the notches in it", frame.Lap?.Stated ?? (Working)new Sum([Term.From("rail, its smaller size", 1, keys.RailThin)], Rational.Of(1, 2)));
            QuantityKey other = book.Define(key, "lap.post", $"{rail.Name}, depth of the notches in the posts", new Sum(Term.From("rail, its smaller size", 1, keys.RailThin), Term.From("notch in the rail", -1, lap)));
            book.Machinings.Add(new(rail.Key, "notch across the inner face at each post, as wide as the post reads", [("depth", lap), ("width", keys.PostWide), .. Places(keys, frame)]) { On = Face.Inside });
            book.Machinings.Add(new(post, "notch across the outer face for each rail, as wide as the rail reads", [("depth", other), ("width", keys.RailWide), .. keys.HasBottom ? [("bottom rail from the lower end", keys.Toe)] : ImmutableArray<(string, QuantityKey)>.Empty]) { By = [rail.Key], On = Face.Outside });
            // One fills the notch of the other: together they stand in one another by the whole rail.
            book.Joints.Add(new(JointKind.HalfLap, rail.Key, Face.Inside, post, Face.Outside, "glue and two screws at each post") { Depth = keys.RailThin });
            ExactLength left = through - book.Value(lap), kept = into - book.Value(other);
            if (left.Sign <= 0 || book.Value(other) * 2 > into)
                book.Note("frame.lap-too-deep", Severity.Stop, key, left.Sign <= 0 ? $"A lap of {book.Say(book.Value(lap))} leaves nothing of rails of {book.Say(through)}." : $"A lap of {book.Say(book.Value(lap))} cuts {book.Say(book.Value(other))} out of posts of {book.Say(into)}: more than half.",
                    left.Sign <= 0 ? $"Make it {book.Say(through / 2)}, half of the rail." : "Make it deeper, or the posts thicker.", frame.Lap?.Place ?? frame.Place);
            (through, into) = (left, kept);
        }
        else book.Joints.Add(new(JointKind.Butt, rail.Key, Face.Inside, post, frame.Run == RailRun.Outside ? Face.Outside : Face.Inside, "glue and two screws at each post"));
        if (Fastening.IntoFace(book.Piece.Unit, through, into) is { } screw)
            book.Hardware.Add(new(key, $"Wood screw no. 10 (5 mm), {book.Say(screw)}", 2 * crossings, "piece", $"{crossings} places where a rail passes a post, 2 each; common practice, no source"));
        else if (through.Sign > 0)
            book.Note("frame.no-screw", Severity.Warn, key, $"No usual screw holds {book.Say(through)} of rail on {book.Say(into)} of post without coming out.", "Bolt them, or use thicker posts.", frame.Place);
    }

    // The posts stand at these places from the left end of a rail.
    private static ImmutableArray<(string, QuantityKey)> Places(FrameKeys keys, Frame frame) =>
        [.. frame.Bays.Items.OfType<Opening>().Select(b => ($"to the next post across bay {b.Key}", QuantityKey.Of(b.Key, "clear")))];

    /// <summary>The steps of such a frame.</summary>
    public static void Steps(Book book, Frame frame, string name, FrameKeys keys, ImmutableArray<string> across, string between, string ended, ImmutableArray<string> stretchers, (ExactLength Wide, ExactLength Deep, ExactLength High, ExactLength Toe) built)
    {
        string low = keys.HasBottom ? $", bottom rails {book.Say(built.Toe)} up" : "";
        string how = frame.Run switch
        {
            RailRun.Lapped => "cut the laps, knife the width of each to the stick that goes into it, and set the rails into the outer faces of the posts, flush",
            RailRun.Outside => "lay the rails over the outer faces of the posts",
            _ => "lay the posts over the outer faces of the rails",
        };
        book.Steps.Add(new(Stage.Carcase, $"Front and back of {Standing.The(frame, name)}, flat on the floor: {how}, ends flush with the end posts{low}{between}. Glue, clamp, and drive two screws at each post. Measure both diagonals of each before the second screws; pull the longer one in until they read alike.",
            [$"{frame.Key}.post", .. across], Diagonals.Of(book.Grid, built.Wide, built.High), "lift"));
        string ties = frame.Run == RailRun.Inside ? "rails" : "posts";
        book.Steps.Add(new(Stage.Carcase, frame.Corner == FrameCorner.Tenon
            ? $"Glue the ties into their mortises in the front {ties}{ended}, bring the back down on them with a helper, and stand it up. Clamp, and check the diagonals of both ends."
            : $"Stand front and back up with a helper and screw the ties between their {ties}{ended}, two structural screws an end from outside, pilots drilled. Check the diagonals of both ends.",
            [$"{frame.Key}.tie", .. stretchers], Diagonals.Of(book.Grid, built.Deep, built.High), "lift"));
    }
}

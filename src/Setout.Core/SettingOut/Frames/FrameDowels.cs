using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Frames;

/// <summary>Rails and ties on dowels: every hole by the rule of dowels, with where each stick meets its posts.</summary>
internal static class FrameDowels
{
    /// <summary>Writes joints, holes and dowels of rails and ties.</summary>
    public static void Write(Book book, Frame frame, FrameKeys keys, List<Part> rails)
    {
        string key = frame.Key, post = $"{key}.post";
        QuantityKey highRail = book.Define(key, "rail.up", "top rails, lower edge from the lower end of a post", new Sum([Term.From("post, as cut", 1, keys.Post.AsCut), Term.From("top rail", -1, keys.TopRail), .. keys.Over(-1)]));
        QuantityKey highTie = book.Define(key, "tie.up", "top ties, lower edge from the lower end of a post", new Sum([Term.From("post, as cut", 1, keys.Post.AsCut), Term.From("tie, on edge", -1, keys.RailWide), .. keys.Over(-1)]));
        ImmutableArray<(string, QuantityKey)> low = keys.HasBottom ? [("lower edge of the bottom one from the lower end", keys.Toe)] : [];
        bool isFlat = frame.TopRail == Laid.Flat;
        foreach (Part rail in rails)
        {
            book.Joints.Add(new(JointKind.Dowels, rail.Key, Face.Ends, post, Face.Inside, "glue and dowels"));
            DowelRule.Write(book, new(rail.Key, rail.Name, rail.Key, "both ends", 2 * rail.Count, keys.RailWide, keys.RailThin)
            {
                From = isFlat ? "lower edge, or the front edge where it lies flat" : "lower edge",
                Where = [.. low, ("lower edge of the top one from the lower end", highRail)],
            }, [(post, keys.PostWide, $"the inner faces for {rail.Name}, which is flush in front and at the back")]);
        }
        Part tie = book.Parts.First(p => p.Key == $"{key}.tie");
        book.Joints.Add(new(JointKind.Dowels, tie.Key, Face.Ends, post, Face.Inside, "glue and dowels"));
        DowelRule.Write(book, new(tie.Key, tie.Name, tie.Key, "both ends", 2 * tie.Count, keys.RailWide, keys.RailThin) { From = "lower edge", Where = [.. low, ("lower edge of the top one from the lower end", highTie)] },
            [(post, keys.PostThin, $"the faces towards the other post for {tie.Name}; of end posts flush with the outside, of others in the middle")]);
        foreach (Part rail in rails) Meet(book, frame, keys, rail, tie);
    }

    /// <summary>Holes for a rail and for a tie that run into one another in a post.</summary>
    private static void Meet(Book book, Frame frame, FrameKeys keys, Part rail, Part tie)
    {
        ExactLength post = book.Value(keys.PostWide), deep = book.Value(keys.PostThin), thin = book.Value(keys.RailThin);
        ExactLength across = book.Value(QuantityKey.Of(rail.Key, "dowel.in-face")), along = book.Value(QuantityKey.Of(tie.Key, "dowel.in-face"));
        ExactLength half = (book.Value(QuantityKey.Of(rail.Key, "dowel.diameter")) + book.Value(QuantityKey.Of(tie.Key, "dowel.diameter"))) / 4;
        // The rail's holes come from the inner face, in the middle of a rail that is flush in front; the tie's from behind, in the middle of the tie.
        bool inMiddle = frame.Bays.Items.OfType<Opening>().Count() > 1;
        ExactLength tieAt = inMiddle ? post / 2 : thin / 2, meets = ExactLength.Min(tieAt + half - (post - across), (thin / 2) + half - (deep - along));
        // Between two bays holes come from both sides.
        if (inMiddle) meets = ExactLength.Max(meets, (across * 2) - post);
        if (meets.Sign <= 0 || frame.TopRail == Laid.Flat) return;
        book.NoteOnce("frame.dowels-meet", Severity.Warn, frame.Key, $"Holes for {rail.Name} and for the ties run {book.Say(meets)} into one another in the posts.", "Use thicker posts or thinner rails, or drill the ties between the dowels of the rails.", frame.Place);
    }
}

using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Shop.Texts;
using System.Collections.Immutable;
using System.Globalization;

namespace Setout.Shop.Edits;

/// <summary>What stands between two openings.</summary>
public enum Between
{
    /// <summary>A partition across, a deck down; between bays of a frame a pair of posts.</summary>
    Usual,

    /// <summary>A pair of rails, in a frame, down.</summary>
    Rails,

    /// <summary>A pair of posts: a bay of a frame becomes several.</summary>
    Posts,
}

/// <summary>Divides an opening.</summary>
/// <param name="Opening">Its key, or that of a case that is not divided yet.</param>
/// <param name="IsAcross">True from left to right, false from the top down.</param>
/// <param name="Sizes">One for each new opening: as typed, <c>rest</c>, or null for an equal share.</param>
/// <param name="With">What stands between.</param>
public sealed record Divide(string Opening, bool IsAcross, ImmutableArray<string?> Sizes, Between With = Between.Usual) : Edit
{
    /// <summary>The most openings that one is divided into at a time.</summary>
    public const int Most = 50;

    /// <summary>Into so many of one size.</summary>
    public static Divide Equally(string opening, bool isAcross, int count, Between with = Between.Usual) => new(opening, isAcross, [.. new string?[Math.Clamp(count, 0, Most + 1)]], with);

    /// <summary>Into two, the first of which, from the left or the top, has a size; or the second, where that is measured from the right or the bottom.</summary>
    public static Divide At(string opening, bool isAcross, string place, bool fromFar = false, Between with = Between.Usual) => new(opening, isAcross, fromFar ? ["rest", place] : [place, "rest"], with);

    /// <inheritdoc/>
    public override string Words => $"divide {Opening} {(IsAcross ? "across" : "down")} into {Sizes.Length.ToString(CultureInfo.InvariantCulture)}";

    internal override void Do(EditDraft draft)
    {
        if (Sizes.Length is < 2 or > Most) throw draft.Refused("edit.count", Opening, $"An opening is divided into 2 to {Most} at a time.", "Choose another number.");
        Thing opening = draft.FindOpening(Opening);
        if (With == Between.Posts)
        {
            Bays(draft, opening);
            return;
        }
        Fillings.WantOpen(draft, opening);
        bool isFrame = draft.StructureOf(opening) is { Word: "frame" };
        string between = With == Between.Rails ? "rail" : IsAcross ? "partition" : "deck";
        if (With == Between.Rails && (IsAcross || !isFrame)) throw draft.Refused("edit.rails", Opening, "Rails divide the bays of a frame, from the top down.", "Divide it with a partition or a deck.");
        string? of = With == Between.Rails ? null : Fillings.SheetIn(draft, opening);
        string size = IsAcross ? "width" : "height";
        string[] keys = draft.Fresh(draft.StemOf(Opening), Sizes.Length), members = draft.Fresh(between switch { "partition" => "P", "deck" => "E", _ => "H" }, Sizes.Length - 1);
        bool allGiven = Sizes.All(s => s is not (null or "rest"));
        var items = new List<YamlNode>();
        for (int i = 0; i < keys.Length; i++)
        {
            // Where all have sizes the last takes up what is left, for they seldom add up to the step.
            string? own = allGiven && i == keys.Length - 1 ? "rest" : Sizes[i];
            if (own is not (null or "rest")) _ = draft.Length(own, Opening);
            items.Add(Written.Fields(("opening", keys[i]), (size, own)));
            if (i < members.Length) items.Add(Written.Fields((between, members[i]), ("of", of)));
        }
        if (Sizes.Contains("rest") && Sizes.Contains(null)) throw draft.Refused("edit.sizes", Opening, "Beside the rest all others need sizes.", "Type the sizes of all but one, or leave all out for equal shares.");
        draft.Do(Splice.SetLast(opening.Path.To(IsAcross ? "across" : "down"), Written.List(items)));
        draft.Chosen = keys[0];
        draft.Name = $"{opening.Words} divided {(IsAcross ? "across" : "down")} into {keys.Length.ToString(CultureInfo.InvariantCulture)}";
    }

    // A bay keeps its key and what is in it, as the first of those that take its place.
    private void Bays(EditDraft draft, Thing bay)
    {
        if (!IsAcross || draft.StructureOf(bay) is not { Word: "frame" } frame || draft.BayOf(bay)?.Key != bay.Key)
            throw draft.Refused("edit.posts", Opening, "Posts stand between the bays of a frame.", "Choose a bay of a frame and divide it across; elsewhere divide with a partition.");
        foreach (string size in Sizes.OfType<string>().Where(s => s != "rest")) _ = draft.Length(size, Opening, "clear width of a bay");
        var shares = Shares.Beside(draft, bay);
        string?[] sizes = shares.InPlaceOf(bay.Index, Sizes, () => PostWidth(draft, frame, shares) * Rational.Of(Sizes.Length - 1));
        string[] keys = draft.Fresh(draft.StemOf(""), Sizes.Length - 1, mayBeBare: true), posts = draft.Fresh("M", Sizes.Length - 1);
        shares.Write(bay.Index, sizes[0]);
        for (int i = 1; i < sizes.Length; i++)
        {
            draft.Do(Splice.Add(shares.List, bay.Index + (2 * i) - 1, Written.Fields(("posts", posts[i - 1]))));
            draft.Do(Splice.Add(shares.List, bay.Index + (2 * i), Written.Fields(("opening", keys[i - 1]), ("width", sizes[i]))));
        }
        draft.Chosen = keys[0];
        draft.Name = $"bay {bay.Key} divided by posts into {sizes.Length.ToString(CultureInfo.InvariantCulture)}";
    }

    internal static ExactLength PostWidth(EditDraft draft, Thing frame, Shares shares)
    {
        if (draft.Set?.Parts.FirstOrDefault(p => p.Key == $"{frame.Key}.post" && !p.Placements.IsDefaultOrEmpty) is { } post) return post.Placements[0].SizeX;
        throw draft.Refused("edit.size-not-known", frame.Key, $"How wide a post of {frame.Key} is cannot be told: the piece cannot be set out.", $"Mend the findings first, or leave the sizes of the {shares.Members.Length} bays out.");
    }
}

/// <summary>Puts an opening beside another, in the same division, with a member between them.</summary>
/// <param name="Beside">The key of the opening that it stands beside.</param>
/// <param name="IsAfter">True at its right or below it.</param>
/// <param name="Size">As typed; null for a size like that of its neighbour, or an equal share.</param>
public sealed record AddOpening(string Beside, bool IsAfter = true, string? Size = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"put an opening beside {Beside}";

    internal override void Do(EditDraft draft)
    {
        Thing opening = draft.Find(Beside, "opening");
        var shares = Shares.Beside(draft, opening);
        bool isBay = draft.BayOf(opening)?.Key == opening.Key, isAcross = shares.What == "width";
        string between = isBay ? "posts" : isAcross ? "partition" : "deck";
        string? of = isBay ? null : Fillings.SheetIn(draft, opening);
        // In a frame what stands there already says what it is made of.
        string key = draft.Fresh(isBay ? draft.StemOf("") : draft.StemOf(draft.Around(opening)?.Key ?? ""), 1, mayBeBare: isBay)[0], member = draft.Fresh(between switch { "posts" => "M", "partition" => "P", _ => "E" }, 1)[0];
        string? size = Size ?? Like(draft, shares, opening.Index);
        if (Size is not null and not "rest") _ = draft.Length(Size, Beside);
        int at = IsAfter ? opening.Index + 1 : opening.Index;
        YamlNode[] added = [Written.Fields((between, member), ("of", of)), Written.Fields(("opening", key), (shares.What, size))];
        if (!IsAfter) added = [added[1], added[0]];
        draft.Do(Splice.Add(shares.List, at, added[0]));
        draft.Do(Splice.Add(shares.List, at + 1, added[1]));
        int own = shares.Members.First(m => shares.KeyOf(m) == key);
        if (size is not null) shares.Set(own, size);
        else shares.Close(own);
        draft.Chosen = key;
        draft.Name = $"opening {key} {(isAcross ? IsAfter ? "at the right of" : "at the left of" : IsAfter ? "below" : "above")} {Beside}";
    }

    // Beside a rest every other wants a size: as its neighbour, but no more than a third of what the rest has, and than it can spare beside a machine that stands in it.
    private static string? Like(EditDraft draft, Shares shares, int beside)
    {
        if (shares.Members.FirstOrDefault(m => shares.Of(m) == "rest", -1) is not (>= 0 and var rest)) return null;
        ExactLength most = shares.Size(rest) / Rational.Of(3);
        if (draft.Piece is { } piece && MachineBays.WidthOf(piece, shares.KeyOf(rest)) is { } needed)
        {
            ExactLength spare = shares.Size(rest) - needed - (draft.Set?.Parts.FirstOrDefault(p => p.Role == PartRole.Post)?.Placements is [var post, ..] ? post.SizeX : ExactLength.Zero);
            if (spare.Sign > 0 && spare < most) most = spare;
        }
        return shares.Of(beside) is { } own and not "rest" && shares.Size(beside) <= most ? own : draft.Written(draft.Rounded(most));
    }
}

/// <summary>Writes openings that are counted out into the list that they stand for, so that each can be edited by itself. No size and no key changes.</summary>
/// <param name="Opening">The key of the opening or the case that is divided by them.</param>
public sealed record ListOpenings(string Opening) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"list the openings in {Opening} one by one";

    internal override void Do(EditDraft draft)
    {
        Thing opening = draft.FindOpening(Opening);
        string? word = Fillings.Keys[..2].FirstOrDefault(w => opening.Map[w] is YamlMap);
        if (word is null || CountedText.Listed((YamlMap)opening.Map[word]!, word == "across" ? "partition" : "deck") is not { } list)
            throw draft.Refused("edit.not-counted", Opening, $"The openings in {opening.Words} are not counted.", "They can be edited as they are.");
        draft.Do(Splice.Set(opening.Path.To(word), list));
        draft.Chosen = Opening;
    }
}

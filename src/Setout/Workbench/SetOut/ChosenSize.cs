using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Texts;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.SetOut;

/// <summary>A size with the workings behind it, from the sum to the figure as cut.</summary>
/// <param name="Name">For people.</param>
/// <param name="Figure">The figure that counts.</param>
/// <param name="Workings">In order.</param>
public sealed record SizeView(Phrase Name, Phrase Figure, ImmutableArray<WorkingView> Workings)
{
    /// <summary>The figure in the other unit, for whoever holds a rule of that; empty where there is none.</summary>
    public Phrase Beside { get; init; } = Phrase.Empty;
}

/// <summary>A size nearby, to go on to.</summary>
/// <param name="Words">Its name, short.</param>
/// <param name="Figure">Its figure.</param>
/// <param name="Href">Its working.</param>
/// <param name="IsCurrent">Whether it is the one shown.</param>
public sealed record SizeLink(Phrase Words, Phrase Figure, string Href, bool IsCurrent);

/// <summary>Where a part is cut.</summary>
/// <param name="Words">Such as <c>on sheet A, run 5</c>.</param>
/// <param name="Href">The run.</param>
public sealed record PlaceLink(string Words, string Href);

/// <summary>What was chosen on the drawing or in a list.</summary>
/// <param name="Asked">The key in the address; empty when nothing was chosen.</param>
/// <param name="Sizes">Its sizes; empty when the key is not known.</param>
/// <param name="Guess">For a key that is not known: the nearest that is; null where none is near.</param>
/// <param name="GuessHref">Its working.</param>
/// <param name="Owner">What the sizes nearby belong to.</param>
/// <param name="Nearby">All sizes of the same owner.</param>
public sealed record ChosenSize(string Asked, ImmutableArray<SizeView> Sizes, string? Guess, string? GuessHref, string Owner, ImmutableArray<SizeLink> Nearby)
{
    /// <summary>Where the chosen part is cut; empty for what is no part, or while the layouts are worked out.</summary>
    public ImmutableArray<PlaceLink> Places { get; init; } = [];

    /// <summary>The page with nothing chosen.</summary>
    public string Whole { get; init; } = "";

    /// <summary>True where nothing is worked out, because the piece cannot be built as it stands.</summary>
    public bool IsStopped { get; init; }

    private static readonly string[] s_sizesOfAnOpening = ["width", "height"];

    /// <summary>Nothing chosen.</summary>
    public static ChosenSize None { get; } = new("", [], null, null, "", []);

    internal static ChosenSize Of(OpenPiece piece, string? asked)
    {
        if (string.IsNullOrEmpty(asked)) return None;
        SetPiece set = piece.Set;
        ImmutableArray<PartSize> sizes = Resolve(set, asked);
        if (sizes.Length == 0)
        {
            string? guess = NearestWord.Of(asked, set.Worked.Order.Select(k => k.Text).Concat(set.Parts.Select(p => p.Key)));
            return new(asked.Length > 60 ? asked[..60] + "…" : asked, [], guess, guess is null ? null : Links.Size(piece.Name, guess), "", []) { Whole = Links.Stage(piece.Name, ""), IsStopped = set.IsStopped };
        }
        ImmutableArray<SizeView> views = [.. sizes.Select(s => View(piece, s)).Where(v => v.Workings.Length > 0)];
        (string owner, ImmutableArray<SizeLink> nearby) = NearbyOf(piece, sizes[0].Exact, [.. sizes.Select(s => s.Exact)]);
        return new(asked, views, null, null, owner, nearby) { Places = [.. PlacesOf(piece, asked)] };
    }

    /// <summary>What a key means: a quantity, a size with its three figures, both sizes of a part, width and height of an opening, or the sizes of the front of a drawer and of the first part of anything else.</summary>
    internal static ImmutableArray<PartSize> Resolve(SetPiece set, string asked)
    {
        var key = new QuantityKey(asked);
        if (set.Worked.Values.ContainsKey(key)) return [Size(set, key)];
        if (set.Parts.FirstOrDefault(p => p.Key == asked.Split('#')[0]) is { } part) return [.. new[] { part.Length, part.Width }.Distinct()];
        if (set.Parts.OrderBy(p => p.Role != PartRole.FalseFront).FirstOrDefault(p => new QuantityKey(p.Key).Owner == asked) is { } first && !set.Worked.Values.ContainsKey(QuantityKey.Of(asked, "width"))) return [.. new[] { first.Length, first.Width }.Distinct()];
        if (s_sizesOfAnOpening.Select(w => QuantityKey.Of(asked, w)).Where(set.Worked.Values.ContainsKey).Select(k => Size(set, k)).ToImmutableArray() is { Length: > 0 } own) return own;
        // A pair of posts is told by the post.
        return set.Piece.Members.OfType<Core.Pieces.Frame>().FirstOrDefault(f => f.Bays.Items.Any(i => i.Key == asked)) is { } frame && set.Parts.FirstOrDefault(p => p.Key == $"{frame.Key}.post") is { } post ? [.. new[] { post.Length, post.Width }.Distinct()] : [];
    }

    private static IEnumerable<PlaceLink> PlacesOf(OpenPiece piece, string asked)
    {
        QuantityKey exact = new QuantityKey(asked.Split('#')[0]).Exact;
        if (piece.Plan is not { } plan || plan.Set.Parts.FirstOrDefault(p => p.Key == exact.Text || p.Length.Exact == exact || p.Width.Exact == exact) is not { } part) return [];
        return PartPlaces.Of(plan, part.Key).Select(p => new PlaceLink($"{(p.Count > 1 ? $"{p.Count} " : "")}on {p.Stock}{(p.Run is { } run ? $", run {run}" : "")}",
            $"{Links.Stage(piece.Name, "break-down")}{(p.Run is { } number ? $"#run-{number}" : "")}"));
    }

    private static PartSize Size(SetPiece set, QuantityKey key) =>
        set.Worked.Values.ContainsKey(key.AsCut) ? new(key, key.ToCut, key.AsCut) : new(key, key, key);

    private static SizeView View(OpenPiece piece, PartSize size)
    {
        LengthUnit unit = piece.Set.Piece.Shown;
        ImmutableArray<WrittenWorking> workings = WrittenWorking.Of(piece.Set.Worked, size);
        if (workings.Length == 0) return new(Phrase.Empty, Phrase.Empty, []);
        return new(Figures.Phrase(workings[0].Name), Headline(LengthFormat.For(unit).Bare.Format(workings[^1].Value)),
            [.. workings.Select(w => WorkingView.Of(w with { Remark = SpotWords.Of(piece.Set, w.Key, piece.Source.Shop.Accuracy) }, unit, piece.Name))])
        { Beside = InOther(workings[^1].Value, unit) };
    }

    // The nearest 1/64 or tenth is told as that.
    private static Phrase Headline(Figure figure) => Phrase.Of(figure.IsExact ? "" : $"{SumFigure.Near} ").Add(figure);

    private static Phrase InOther(ExactLength value, LengthUnit unit)
    {
        Figure figure = LengthFormat.For(unit.Other).Format(value);
        return Figures.Phrase(figure.IsExact ? "" : "about ").Add(figure);
    }

    private static (string Owner, ImmutableArray<SizeLink> Links) NearbyOf(OpenPiece piece, QuantityKey chosen, ImmutableArray<QuantityKey> current)
    {
        WorkedPiece worked = piece.Set.Worked;
        LengthFormat bare = LengthFormat.For(piece.Set.Piece.Shown).Bare;
        List<Worked> all =
        [
            .. worked.Order.Where(k => k.Owner == chosen.Owner && !k.Text.EndsWith(QuantityKey.ToCutSuffix, StringComparison.Ordinal)
                && !k.Text.EndsWith(QuantityKey.AsCutSuffix, StringComparison.Ordinal) && worked.Values.ContainsKey(k)).Select(k => worked.Values[k]),
        ];
        if (all.Count < 2) return ("", []);
        string owner = CommonStart([.. all.Select(w => w.Quantity.Name)]);
        return (owner.Length == 0 ? chosen.Owner : owner,
        [
            .. all.Select(w =>
            {
                QuantityKey figure = worked.Values.ContainsKey(w.Quantity.Key.ToCut) ? w.Quantity.Key.ToCut : w.Quantity.Key;
                // Planned and read stand side by side, and say which they are.
                Phrase said = Phrase.Of(bare.Format(worked[figure]));
                if (ReadAsCut.Of(worked, w.Quantity.Key) is { } read) said = said.Add(" to cut, ").Add(bare.Format(read)).Add(" read");
                return new SizeLink(Figures.Phrase(w.Quantity.Name[owner.Length..].TrimStart(',', ' ')), said,
                    Links.Size(piece.Name, w.Quantity.Key.Text), current.Contains(w.Quantity.Key));
            }),
        ]);
    }

    /// <summary>The words that all names begin with, whole words only, leaving each at least one of its own.</summary>
    private static string CommonStart(ImmutableArray<string> names)
    {
        string first = names[0];
        int length = names.Min(n => first.Zip(n).TakeWhile(p => p.First == p.Second).Count());
        if (names.Any(n => n.Length == length || (length < n.Length && n[length] is not (' ' or ',')))) length = Math.Max(0, first.LastIndexOf(' ', Math.Max(0, length - 1)));
        return first[..length].TrimEnd(',', ' ');
    }
}

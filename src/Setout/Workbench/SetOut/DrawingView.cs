using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Drawing.Turning;
using Setout.Shop.Drawings;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.SetOut;

/// <summary>A line of the outline: the same thing as a group of the drawing.</summary>
/// <param name="Words">What it is, with its figures.</param>
/// <param name="Href">Its working.</param>
/// <param name="Key">Its key, as on the drawing.</param>
/// <param name="IsChosen">Whether it is the one shown.</param>
public sealed record OutlineLine(Phrase Words, string Href, string Key, bool IsChosen);

/// <summary>A way to a view.</summary>
/// <param name="Word">Its name.</param>
/// <param name="Href">Where it is shown.</param>
/// <param name="IsCurrent">Whether it is the one shown.</param>
public sealed record ViewLink(string Word, string Href, bool IsCurrent);

/// <summary>A view of the piece with the outline that is equal to it.</summary>
/// <param name="Name">What it is, such as <c>Front elevation</c>.</param>
/// <param name="Tabs">All views.</param>
/// <param name="Wide">For a desk.</param>
/// <param name="Narrow">For a phone: the same on smaller paper, so that figures stay legible.</param>
public sealed record DrawingView(string Name, ImmutableArray<ViewLink> Tabs, string Wide, string Narrow)
{
    /// <summary>What turns it; null for a view that stands still.</summary>
    public TurningControls? Turning { get; init; }

    /// <summary>Dimensions and members as a tree.</summary>
    public ImmutableArray<OutlineItem> Outline { get; init; } = [];

    /// <summary>What lets sizes be typed and dividers be dragged on it; null for a view that turns.</summary>
    public LiveData? Live { get; init; }

    /// <summary>The word of the view that cuts the piece.</summary>
    internal const string SectionWord = "section";

    private static readonly PaperBox s_wide = new(200, 116);

    /// <summary>The paper of a phone: about 4 px to the millimetre there, so that the numerals of fractions have 11 px and more.</summary>
    internal static PaperBox Phone { get; } = new(88, 130) { LeastShrunk = 1 };

    /// <summary>Null when there is nothing to draw.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="piece">Its name in addresses.</param>
    /// <param name="asked">The chosen size; null for none.</param>
    /// <param name="view">The word of the view; null for the front.</param>
    /// <param name="standpoint">From where it is looked at where it can be turned.</param>
    /// <param name="shop">The shop, for what can be typed; null for a usual one.</param>
    /// <param name="isTextOnly">Only the outline, where the drawing itself is there already.</param>
    internal static DrawingView? Of(SetPiece set, string piece, string? asked, string? view, Standpoint standpoint, Shop.Texts.Shop? shop = null, bool isTextOnly = false)
    {
        if (set.IsStopped || !PieceView.Has(set)) return null;
        if (view == TurningControls.Word) return Turned(set, piece, asked, standpoint);
        if (view == SectionWord && WholeSection.Has(set)) return Cut(set, piece, asked, shop ?? Shop.Texts.Shop.Usual, isTextOnly);
        Views from = PieceView.All.FirstOrDefault(v => PieceView.Word(v) == view, Views.Front);
        string Word(Views v) => v == Views.Front ? "" : PieceView.Word(v);
        ElevationDrawing wide = PieceView.Draw(set, from, s_wide), narrow = isTextOnly ? wide : PieceView.DrawFew(set, from, Phone, asked ?? "");
        Scene scene = wide.Scene;
        List<GroupItem> all = [.. GroupsOf(scene.Items).Where(g => g.Key.Length > 0 && g.Title.Length > 0)];
        List<GroupItem> groups = [.. all.DistinctBy(g => g.Key.Split('#')[0])];
        ILookup<string, string> members = all.ToLookup(g => g.Key.Split('#')[0], g => g.Key);
        ImmutableHashSet<string> chosen = Chosen(set, [.. groups.Select(g => g.Key.Split('#')[0])], asked);
        OutlineLine Line(GroupItem group)
        {
            string key = group.Key.Split('#')[0];
            return new(Figures.Phrase(Several(group.Title, members[key])), Links.Size(piece, key, Word(from)), key, chosen.Contains(key));
        }
        bool IsDimension(GroupItem group) => set.Worked.Values.ContainsKey(new(group.Key));
        ImmutableArray<OutlineLine> lines = [.. groups.Select(Line)];
        return new(from switch { Views.Above => "Plan", Views.Right => "Side elevation", _ => "Front elevation" },
            TabsOf(piece, asked, Word(from)), isTextOnly ? "" : Marked(set, scene, chosen), isTextOnly ? "" : Marked(set, narrow.Scene, chosen))
        {
            Outline = OutlineTree.Of(set, piece, Word(from), asked, lines),
            Live = isTextOnly ? null : LiveData.Of(set, piece, groups.Where(IsDimension).Select(g => g.Key), from, wide, narrow, shop ?? Shop.Texts.Shop.Usual, asked),
        };
    }

    /// <summary>One drawing alone, for what is waited for at each key; empty when there is nothing to draw.</summary>
    internal static string One(SetPiece set, string? asked, string? view, Standpoint standpoint, bool isNarrow)
    {
        if (set.IsStopped || !PieceView.Has(set)) return "";
        Scene scene;
        if (view == TurningControls.Word)
        {
            (Scene wide, Scene narrow, _) = TurningControls.Of(set, "", asked, standpoint);
            scene = isNarrow ? narrow : wide;
        }
        else if (view == SectionWord && WholeSection.Has(set)) scene = WholeSection.Draw(set, asked, isNarrow ? Phone : s_wide);
        else
        {
            Views from = PieceView.All.FirstOrDefault(v => PieceView.Word(v) == view, Views.Front);
            scene = (isNarrow ? PieceView.DrawFew(set, from, Phone, asked ?? "") : PieceView.Draw(set, from, s_wide)).Scene;
        }
        return Marked(set, scene, Chosen(set, [.. GroupsOf(scene.Items).Where(g => g.Key.Length > 0).Select(g => g.Key.Split('#')[0])], asked));
    }

    private static ImmutableArray<ViewLink> TabsOf(string piece, string? asked, string current)
    {
        string Named(Views v) => v == Views.Front ? "" : PieceView.Word(v);
        return
        [
            .. PieceView.All.Select(v => new ViewLink(PieceView.Word(v), Links.View(piece, Named(v), asked ?? ""), Named(v) == current)),
            new(SectionWord, Links.View(piece, SectionWord, asked ?? ""), current == SectionWord),
            new(TurningControls.Word, Links.View(piece, TurningControls.Word, asked ?? ""), current == TurningControls.Word),
        ];
    }

    private static DrawingView Cut(SetPiece set, string piece, string? asked, Shop.Texts.Shop shop, bool isTextOnly)
    {
        Scene wide = WholeSection.Draw(set, asked, s_wide);
        List<(string Key, string Title)> cut = [.. GroupsOf(wide.Items).Where(g => g.Key.Length > 0 && g.Title.Length > 0).Select(g => (g.Key.Split('#')[0], g.Title)).DistinctBy(g => g.Item1)];
        ImmutableHashSet<string> chosen = Chosen(set, [.. cut.Select(g => g.Key)], asked);
        ImmutableArray<OutlineLine> lines = [.. cut.Select(g => new OutlineLine(Figures.Phrase(g.Title), Links.Size(piece, g.Key, SectionWord), g.Key, chosen.Contains(g.Key)))];
        return new("Section", TabsOf(piece, asked, SectionWord), isTextOnly ? "" : Marked(set, wide, chosen), isTextOnly ? "" : Marked(set, WholeSection.Draw(set, asked, Phone), chosen))
        {
            Outline = OutlineTree.Of(set, piece, SectionWord, asked, lines),
            Live = isTextOnly ? null : LiveData.OfSizes(set, piece, cut.Select(g => g.Key).Where(k => set.Worked.Values.ContainsKey(new(k))), shop, asked),
        };
    }

    private static DrawingView Turned(SetPiece set, string piece, string? asked, Standpoint standpoint)
    {
        (Scene wide, Scene narrow, TurningControls controls) = TurningControls.Of(set, piece, asked, standpoint);
        // Nearest first would change with each turn: the list keeps the order of the piece.
        List<(string Key, string Title)> parts = [.. TurningPiece.Input(set).Blocks.Select(b => (b.Key.Split('#')[0], b.Title)).DistinctBy(b => b.Item1)];
        ImmutableHashSet<string> chosen = Chosen(set, [.. parts.Select(p => p.Key)], asked);
        ImmutableArray<OutlineLine> lines = [.. parts.Select(p => new OutlineLine(Figures.Phrase(p.Title), Links.Size(piece, p.Key, TurningControls.Seen(standpoint)), p.Key, chosen.Contains(p.Key)))];
        return new("The piece, turned", TabsOf(piece, asked, TurningControls.Word), Marked(set, wide, chosen), Marked(set, narrow, chosen))
        { Turning = controls, Outline = OutlineTree.Of(set, piece, TurningControls.Seen(standpoint), asked, lines) };
    }

    private static IEnumerable<GroupItem> GroupsOf(ImmutableArray<SceneItem> items) =>
        items.OfType<GroupItem>().SelectMany(g => GroupsOf(g.Items).Prepend(g));

    /// <summary>What of the drawing belongs to the chosen size: its dimension and its member; else its opening; else the front of the drawer it is inside.</summary>
    private static ImmutableHashSet<string> Chosen(SetPiece set, ImmutableHashSet<string> drawn, string? asked)
    {
        if (string.IsNullOrEmpty(asked)) return [];
        string size = new QuantityKey(asked.Split('#')[0]).Exact.Text;
        bool IsInside(string key) => size.StartsWith(key + ".", StringComparison.Ordinal);
        ImmutableHashSet<string> found = [.. drawn.Where(d => new QuantityKey(d).Exact.Text == size || (IsInside(d) && set.Parts.Any(p => p.Key == d)))];
        if (found.Count == 0) found = [.. drawn.Where(IsInside)];
        if (found.Count == 0) found = [.. drawn.Where(d => new QuantityKey(d).Owner == size && set.Parts.Any(p => p.Key == d))];
        if (found.Count == 0) found = [.. set.Parts.Where(p => p.Role == PartRole.FalseFront && drawn.Contains(p.Key) && IsInside(new QuantityKey(p.Key).Owner)).Select(p => p.Key)];
        return found;
    }

    // What is chosen is told by a class, and what is drawn alike by where it stands: to whoever does not see it all posts would be one.
    private static string Marked(SetPiece set, Scene scene, ImmutableHashSet<string> chosen)
    {
        string svg = SvgWriter.Write(scene, SvgOptions.Inline);
        foreach ((string key, string where) in GroupsOf(scene.Items).Where(g => g.Title.Length > 0).Select(g => g.Key).Distinct().Select(k => (k, WhereOf(set, k))).Where(k => k.Item2.Length > 0))
            svg = svg.Replace($"\" data-key=\"{key}\"", $", {where}\" data-key=\"{key}\"", StringComparison.Ordinal);
        foreach (string key in GroupsOf(scene.Items).Select(g => g.Key).Distinct().Where(k => chosen.Contains(k.Split('#')[0])))
            svg = svg.Replace($" data-key=\"{key}\"", $" data-key=\"{key}\" class=\"is-chosen\"", StringComparison.Ordinal);
        return svg;
    }

    private static string WhereOf(SetPiece set, string key) =>
        key.Split('#') is [var part, var number] && set.Parts.FirstOrDefault(p => p.Key == part) is { } found && int.TryParse(number, CultureInfo.InvariantCulture, out int at) ? MemberPlaces.Of(found, at) : "";

    /// <summary>What stands for several in the text says how many of them are drawn.</summary>
    private static string Several(string title, IEnumerable<string> keys) =>
        keys.Where(k => k.Contains('#', StringComparison.Ordinal)).Distinct().Count() is > 1 and int count ? $"{title}, {count} drawn" : title;
}

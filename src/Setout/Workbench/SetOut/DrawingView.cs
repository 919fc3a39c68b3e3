using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
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

/// <summary>The front elevation with the outline that is equal to it.</summary>
/// <param name="Wide">For a desk.</param>
/// <param name="Narrow">For a phone: the same on smaller paper, so that figures stay legible.</param>
/// <param name="Dimensions">The dimensions drawn.</param>
/// <param name="Members">The members and openings drawn.</param>
public sealed record DrawingView(string Wide, string Narrow, ImmutableArray<OutlineLine> Dimensions, ImmutableArray<OutlineLine> Members)
{
    private static readonly string[] s_figures = [QuantityKey.ToCutSuffix, QuantityKey.AsCutSuffix];
    private static readonly PaperBox s_wide = new(200, 116), s_narrow = new(100, 130);

    /// <summary>Null when there is nothing to draw.</summary>
    internal static DrawingView? Of(SetPiece set, string piece, string? asked)
    {
        if (set.IsStopped || !PieceFront.Has(set)) return null;
        Scene scene = PieceFront.Draw(set, s_wide).Scene;
        var groups = GroupsOf(scene.Items).Where(g => g.Key.Length > 0 && g.Title.Length > 0).DistinctBy(g => g.Key.Split('#')[0]).ToList();
        ImmutableHashSet<string> chosen = Chosen(set, [.. groups.Select(g => g.Key.Split('#')[0])], asked);
        OutlineLine Line(GroupItem group)
        {
            string key = group.Key.Split('#')[0];
            return new(Figures.Phrase(group.Title), Links.Size(piece, key), key, chosen.Contains(key));
        }
        bool IsDimension(GroupItem group) => set.Worked.Values.ContainsKey(new(group.Key));
        return new(Marked(scene, chosen), Marked(PieceFront.Draw(set, s_narrow).Scene, chosen),
            [.. groups.Where(IsDimension).Select(Line)], [.. groups.Where(g => !IsDimension(g)).Select(Line)]);
    }

    private static IEnumerable<GroupItem> GroupsOf(ImmutableArray<SceneItem> items) =>
        items.OfType<GroupItem>().SelectMany(g => GroupsOf(g.Items).Prepend(g));

    /// <summary>What of the drawing belongs to the chosen size: its dimension and its member; else its opening; else the front of the drawer it is inside.</summary>
    private static ImmutableHashSet<string> Chosen(SetPiece set, ImmutableHashSet<string> drawn, string? asked)
    {
        if (string.IsNullOrEmpty(asked)) return [];
        string size = Exact(asked.Split('#')[0]);
        bool IsInside(string key) => size.StartsWith(key + ".", StringComparison.Ordinal);
        ImmutableHashSet<string> found = [.. drawn.Where(d => Exact(d) == size || (IsInside(d) && set.Parts.Any(p => p.Key == d)))];
        if (found.Count == 0) found = [.. drawn.Where(IsInside)];
        if (found.Count == 0) found = [.. set.Parts.Where(p => p.Role == PartRole.FalseFront && drawn.Contains(p.Key) && IsInside(new QuantityKey(p.Key).Owner)).Select(p => p.Key)];
        return found;
    }

    /// <summary>The key of a size without the word for its figure to cut or as cut.</summary>
    private static string Exact(string key)
    {
        foreach (string suffix in s_figures)
            if (key.EndsWith(suffix, StringComparison.Ordinal)) return key[..^suffix.Length];
        return key;
    }

    private static string Marked(Scene scene, ImmutableHashSet<string> chosen)
    {
        string svg = SvgWriter.Write(scene, SvgOptions.Inline);
        foreach (string key in GroupsOf(scene.Items).Select(g => g.Key).Distinct().Where(k => chosen.Contains(k.Split('#')[0])))
            svg = svg.Replace($" data-key=\"{key}\"", $" data-key=\"{key}\" class=\"is-chosen\"", StringComparison.Ordinal);
        return svg;
    }
}

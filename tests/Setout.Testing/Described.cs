using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Testing;

/// <summary>Short ways to describe pieces in tests. A bare number is in inches.</summary>
public static class Described
{
    /// <summary>A length from its text.</summary>
    public static ExactLength Of(string text) => LengthText.Parse(text, LengthUnit.Inch) is { IsRead: true } read
        ? read.Value
        : throw new ArgumentException($"'{text}' is no length.", nameof(text));

    /// <summary>A length as it stands in a piece file.</summary>
    public static Given Given(string text) => new(Of(text), Place.None);

    /// <summary>A length as it stands in a piece file.</summary>
    public static Given Given(ExactLength length) => new(length, Place.None);

    /// <summary>A word as it stands in a piece file.</summary>
    public static Named Named(string text) => new(text, Place.None);

    /// <summary>A given share of a whole.</summary>
    public static ShareOfWhole Share(ExactLength length) => new(length, false, Place.None);

    /// <summary>The share that takes what is left.</summary>
    public static ShareOfWhole Rest => new(null, true, Place.None);

    /// <summary>A sheet of a given thickness.</summary>
    public static Panel Sheet(string name, ExactLength thickness) => new(name, "own sheet", "", Given(thickness), Grain.Keep, [], Place.None);

    /// <summary>Sticks of a given section.</summary>
    public static Stick Sticks(string name, ExactLength thin, ExactLength wide) => new(name, "", Given(thin), Given(wide), "pine", [], Place.None);

    /// <summary>A kind of drawer of the sheets <c>thin</c>, <c>bottom</c> and <c>wood</c>.</summary>
    public static DrawerKind Kind(string name, Given? gap = null, Given? overlay = null, Given? play = null, Given? slide = null) =>
        new(name, Named("thin"), Named("bottom"), Named("wood"), gap, overlay, play, slide, Place.None);

    /// <summary>A plain drawer.</summary>
    public static Drawer Drawer(string key, ShareOfWhole front = default) => new(key, front, null, null, Place.None);

    /// <summary>An opening of a division.</summary>
    public static Opening Opening(string key, ShareOfWhole size = default, OpeningContent? content = null, string? slidePanels = null) =>
        new(key, size, content, slidePanels is null ? null : Named(slidePanels), Place.None);

    /// <summary>A case of the sheet <c>wood</c>, with no back unless one is named.</summary>
    public static Case Case(ExactLength width, ExactLength height, ExactLength depth, OpeningContent? content, string? back = null) =>
        new("C", "", Named("wood"), Given(width), Given(height), Given(depth), back is null ? null : Named(back), content, false, Place.None);

    /// <summary>A frame of the sticks <c>stick</c>.</summary>
    public static Frame Frame(ExactLength width, ExactLength height, ExactLength depth, ExactLength toe, Laid topRail, params ImmutableArray<DivisionItem> bays) =>
        new("F", "", Named("stick"), Given(width), Given(height), Given(depth), Given(toe), topRail, new(true, bays), Place.None);

    /// <summary>A piece.</summary>
    public static Piece Piece(LengthUnit unit, IEnumerable<Material> materials, IEnumerable<DrawerKind> kinds, params ImmutableArray<Member> members) =>
        new("piece", "", unit, null, materials.ToImmutableDictionary(m => m.Name), kinds.ToImmutableDictionary(k => k.Name), members, ImmutableDictionary<string, Place>.Empty);

    /// <summary>The sheets that the short forms above name: 23/32 in wood, 15/32 in thin, 7/32 in bottom.</summary>
    public static IEnumerable<Material> UsualMaterials =>
        [Sheet("wood", Of("23/32")), Sheet("thin", Of("15/32")), Sheet("bottom", Of("7/32")), Sticks("stick", Of("1 1/2"), Of("3 1/2"))];
}

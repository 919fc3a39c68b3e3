using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Cases;

/// <summary>A case while it is set out: what its rules need of one another.</summary>
/// <param name="Described">As described.</param>
/// <param name="Name">For people.</param>
/// <param name="Panel">The sheet of sides, top and bottom.</param>
/// <param name="Thickness">Of that sheet.</param>
/// <param name="LetIn">How far top and bottom go into each side; null where they only meet.</param>
/// <param name="Raise">From the floor to the underside of the bottom; null where sides and bottom begin level.</param>
/// <param name="FrameThickness">Of the face frame; null for none.</param>
/// <param name="Back">Its back; null for none.</param>
internal sealed record CaseShape(Case Described, string Name, Panel Panel, QuantityKey Thickness, PartSize? LetIn, QuantityKey? Raise, QuantityKey? FrameThickness, BackSetting? Back)
{
    public string Key => Described.Key;

    /// <summary>How a sentence speaks of it.</summary>
    public string The => Standing.The(Described, Name);

    /// <summary>The sides of the case as one part.</summary>
    public string Side => $"{Key}.side";

    /// <summary>Its bottom and its top, in this order, as one part.</summary>
    public string Deck => $"{Key}.deck";

    /// <summary>How far top and bottom go into both sides, to be added (1) or taken away (-1).</summary>
    public ImmutableArray<Term> InBothSides(int sign) => LetIn is null ? [] : [Term.From("let into the sides", 2 * sign, LetIn.AsCut)];

    /// <summary>The outside width as built, as terms.</summary>
    public ImmutableArray<Term> Outside(Book book, PartSize deckLength) =>
        [Term.From("top and bottom, as cut", 1, deckLength.AsCut), .. book.Thicknesses("sides", 1, Side, Panel.Name, 2), .. InBothSides(-1)];
}

/// <summary>The back of a case while it is set out.</summary>
/// <param name="Panel">Its sheet.</param>
/// <param name="Hold">How it is held.</param>
/// <param name="Thickness">Its thickness.</param>
/// <param name="Inset">From the rear edges to its rear face; null where it is applied.</param>
/// <param name="Depth">Of its rabbet or groove; null where there is none.</param>
/// <param name="Play">What it is smaller than its place, in all, each way; null where it is applied.</param>
internal sealed record BackSetting(Panel Panel, BackHold Hold, QuantityKey Thickness, QuantityKey? Inset, PartSize? Depth, QuantityKey? Play);

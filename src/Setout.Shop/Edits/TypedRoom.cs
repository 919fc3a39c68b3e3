using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Shop.Edits;

/// <summary>
/// How much there is room for, where what was typed is too big: found by trying, so that whoever is told so can type it. It is looked for downwards from what was typed, first by halves, then between the last
/// that did not go and the first that did.
/// </summary>
/// <param name="offer">The edit, as it was offered.</param>
/// <param name="values">What was typed, by the names of the fields.</param>
/// <param name="unit">The unit of bare figures.</param>
/// <param name="goes">Whether the edit goes with other values.</param>
internal sealed partial class TypedRoom(EditChoice offer, IReadOnlyDictionary<string, string> values, LengthUnit unit, Func<IReadOnlyDictionary<string, string>, bool> goes)
{
    // A 256th of what was typed is no slip of one key any more.
    private const int MostHalvings = 8;

    private readonly Grid _step = unit == LengthUnit.Inch ? Grid.FromStep(Length.FromInches(1, 16)) : Grid.FromStep(Length.FromMillimetres(1));

    [GeneratedRegex(@"\s*[x\u00D7]\s*", RegexOptions.IgnoreCase)]
    private static partial Regex By();

    /// <summary>The most that goes in a field, as it is typed, where less of it would go: of two lengths the one that is too big is made smaller. Null where it would not.</summary>
    /// <param name="name">Of the field.</param>
    public string? In(string name)
    {
        EditField field = offer.Fields.First(f => f.Name == name);
        if (field.Kind is not (FieldKind.Length or FieldKind.Share or FieldKind.Size) || !values.TryGetValue(name, out string? typed)) return null;
        string[] parts = Parts(field, typed);
        ImmutableArray<ExactLength> lengths = Lengths(field, typed, unit);
        if (lengths.Length < parts.Length) return null;
        string With(int at, ExactLength length) => string.Join(" x ", parts.Select((p, i) => i == at ? Typed(length) : p));
        bool Goes(int at, ExactLength length) => length.Sign > 0 && goes(values.Where(v => v.Key != name).Append(new(name, With(at, length))).ToDictionary(StringComparer.Ordinal));
        for (int at = 0; at < parts.Length; at++)
            if (Most(lengths[at], l => Goes(at, l)) is { } most) return With(at, most);
        return null;
    }

    /// <summary>The lengths above zero that stand in a field: one, or those of a size; none where it is for none.</summary>
    /// <param name="field">The field.</param>
    /// <param name="typed">What was typed into it.</param>
    /// <param name="unit">The unit of bare figures.</param>
    public static ImmutableArray<ExactLength> Lengths(EditField field, string typed, LengthUnit unit) => field.Kind is not (FieldKind.Length or FieldKind.Share or FieldKind.Size) ? []
        : [.. Parts(field, typed).Select(p => LengthText.Parse(p, unit)).Where(p => p.IsRead && p.Value.Sign > 0).Select(p => p.Value)];

    private static string[] Parts(EditField field, string typed) => field.Kind == FieldKind.Size ? By().Split(typed.Trim()) : [typed.Trim()];

    private ExactLength? Most(ExactLength typed, Func<ExactLength, bool> goes)
    {
        ExactLength over = typed, room = Down(typed / 2);
        for (int i = 0; i < MostHalvings && !goes(room); i++) (over, room) = (room, Down(room / 2));
        if (room.Sign <= 0 || !goes(room)) return null;
        while (over - room > _step.Step.ToExact())
        {
            ExactLength between = Down((over + room) / 2);
            if (between <= room) break;
            if (goes(between)) room = between;
            else over = between;
        }
        return room;
    }

    private ExactLength Down(ExactLength length) => length.RoundTo(_step, Rounding.Down).Value;

    private string Typed(ExactLength length) => LengthFormat.For(unit).Bare.Format(length).ToString();
}

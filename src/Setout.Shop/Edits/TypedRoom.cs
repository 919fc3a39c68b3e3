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
        string[] parts = field.Kind == FieldKind.Size ? By().Split(typed.Trim()) : [typed.Trim()];
        var lengths = ImmutableArray.CreateBuilder<ExactLength>();
        foreach (string part in parts)
        {
            if (LengthText.Parse(part, unit) is not { IsRead: true, Value: { Sign: > 0 } length }) return null;
            lengths.Add(length);
        }
        string With(int at, ExactLength length) => string.Join(" x ", parts.Select((p, i) => i == at ? Typed(length) : p));
        bool Goes(int at, ExactLength length) => length.Sign > 0 && goes(values.Where(v => v.Key != name).Append(new(name, With(at, length))).ToDictionary(StringComparer.Ordinal));
        for (int at = 0; at < parts.Length; at++)
            if (Most(lengths[at], l => Goes(at, l)) is { } most) return With(at, most);
        return null;
    }

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

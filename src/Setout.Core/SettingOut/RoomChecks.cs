using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>
/// No two parts in one place, unless a joint lets one into the other. The rules see to it within a structure as far as they can; this looks at all that came
/// out, so that neighbours with doors, fillers and frames that stand out are looked at too.
/// </summary>
internal static class RoomChecks
{
    private sealed record Member(int Number, Part Part, Placement Box, double From, double To);

    /// <summary>Notes each pair of owners that would take the same room; nothing where the piece cannot be set out for another reason.</summary>
    public static void Look(Book book)
    {
        // A size that is wrong has its own finding; what it runs into is only its echo.
        if (book.Findings.Any(f => f.Severity == Severity.Stop)) return;
        ILookup<(string, string), QuantityKey> letIn = book.Joints.Where(j => j.Depth is not null).SelectMany(j => new[] { (j.Part, j.Against, j.Depth!.Value), (j.Against, j.Part, j.Depth!.Value) })
            .ToLookup(j => (j.Item1, j.Item2), j => j.Value);
        // Along the length first, in floating point with a margin; what may meet is then looked at exactly.
        const double margin = 0.001;
        List<Member> members = [.. book.Parts.Index().SelectMany(p => p.Item.Placements.Select(b => new Member(p.Index, p.Item, b, b.X.ApproximateMillimetres - margin, (b.X + b.SizeX).ApproximateMillimetres + margin))).OrderBy(m => m.From)];
        ExactLength step = book.Grid.Step.ToExact();
        var said = new HashSet<(string, string)>();
        for (int i = 0; i < members.Count; i++)
        {
            for (int j = i + 1; j < members.Count && members[j].From < members[i].To; j++)
            {
                // What is written later is in the way of what was there.
                (Member a, Member b) = members[i].Number < members[j].Number ? (members[i], members[j]) : (members[j], members[i]);
                ExactLength deep = a.Box.Within(b.Box);
                // Less than a step of the grid is what rounding leaves.
                if (deep < step || letIn[(a.Part.Key, b.Part.Key)].Any(d => deep <= book.Value(d))) continue;
                string first = new QuantityKey(a.Part.Key).Owner, second = new QuantityKey(b.Part.Key).Owner;
                if (!said.Add(string.CompareOrdinal(first, second) <= 0 ? (first, second) : (second, first))) continue;
                // A reading tells what is there; whether it can stay is for the fit to say.
                book.Note("part.in-the-way", book.Facts.Pins.Count == 0 ? Severity.Stop : Severity.Warn, b.Part.Key, $"{b.Part.Name} and {a.Part.Name} would be in one place, {book.Say(deep)} deep.",
                    $"Make one of them {book.Say(deep)} smaller, or give it another place.", b.Part.Place);
            }
        }
    }
}

using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>What is looked at once all rules have written: sizes, fronts, what is cut and what was read.</summary>
internal static class BookChecks
{
    public static void Look(Book book, WorkedPiece worked)
    {
        CheckSizes(book, worked);
        CheckFronts(book);
        RoomChecks.Look(book);
        DrawerWay.Look(book);
        CheckCut(book, worked);
        CheckReadings(book, worked);
    }

    private static void CheckReadings(Book book, WorkedPiece worked)
    {
        foreach (QuantityKey key in book.Facts.Pins.Keys.Order())
            if (worked.Values.TryGetValue(key, out Worked? read) && FarOff(read, book.Format, book.Hand) is { } finding) book.Findings.Add(finding);
    }

    /// <summary>Further off than wood, saw or tape explain: more than a fifth of the size and more than 1/4 in. Common practice, no source.</summary>
    internal static bool IsFarOff(ExactLength value, ExactLength expected) =>
        (value - expected).Abs() is var off && off > expected.Abs() / 5 && off > ExactLength.FromInches(Rational.Of(1, 4));

    /// <summary>The finding of a reading that is far off.</summary>
    internal static Finding? FarOff(Worked read, LengthFormat format, Hand hand)
    {
        if (read.Pin is not { IsFact: false } pin) return null;
        foreach (ExactLength value in pin.Values)
        {
            if (!IsFarOff(value, read.Expected)) continue;
            return new("reading.far-off", Severity.Warn, read.Quantity.Key.Owner, $"{read.Quantity.Name} reads {format.Text(value)} where {format.Text(read.Expected)} was expected.",
                $"Measure again; {hand.VoidReading(pin.EntryId)} if it was a slip of the pen or of the unit.");
        }
        return null;
    }

    /// <summary>book.Parts that are cut and no longer what the plan asks for.</summary>
    private static void CheckCut(Book book, WorkedPiece worked)
    {
        foreach (Part part in book.Parts)
        {
            foreach ((string word, PartSize size) in new[] { ("length", part.Length), ("width", part.Width) })
            {
                if (size.ToCut == size.Exact || !worked.Values.TryGetValue(size.ToCut, out Worked? cut) || cut.Pin is null || cut.Over.Sign == 0) continue;
                string way = cut.Over.Sign > 0 ? "more" : "less";
                book.Note("part.cut-differs", Severity.Warn, part.Key, $"{part.Name} is cut to a {word} of {book.Say(cut.Value)}; the plan now asks for {book.Say(cut.Expected)}.",
                    $"It is {book.Say(cut.Over.Abs())} {way}: {book.Hand.Fit} says whether it may stand and what can be done. What is not cut yet goes by the part as it is.", part.Place);
            }
        }
    }

    private static void CheckSizes(Book book, WorkedPiece worked)
    {
        foreach (Part part in book.Parts)
        {
            foreach ((string word, PartSize size) in new[] { ("length", part.Length), ("width", part.Width) })
            {
                if (!worked.Values.TryGetValue(size.ToCut, out Worked? cut) || cut.Value.Sign > 0) continue;
                // What is too wide or too tall has its own finding; a size below nothing is only its echo.
                if (book.Findings.Any(f => f.Severity == Severity.Stop && (f.Code.EndsWith("falls-out", StringComparison.Ordinal) || part.Key == f.Key || part.Key.StartsWith(f.Key + ".", StringComparison.Ordinal)))) continue;
                book.Note("part.no-size", Severity.Stop, part.Key, $"The {word} of {part.Name} comes out at {book.Say(cut.Value)}.",
                    $"It wants {book.Say(book.Grid.Step.ToExact() - cut.Value)} more to be cut at all: {book.Hand.Working(size.Exact, book.NameOf(size.Exact))} shows what takes it.", part.Place);
            }
        }
    }

    /// <summary>Fronts and doors beside or above one another that take the same room; the first such pair says it all.</summary>
    private static void CheckFronts(Book book)
    {
        static bool IsFront(PartRole role) => role is PartRole.FalseFront or PartRole.Door or PartRole.DoorStile or PartRole.DoorRail;
        List<(Part Part, Placement Box)> fronts = [.. book.Parts.Where(p => IsFront(p.Role)).SelectMany(p => p.Placements.Select(b => (p, b)))];
        for (int i = 0; i < fronts.Count; i++)
        {
            for (int j = i + 1; j < fronts.Count; j++)
            {
                // What is joined in one door is no neighbour.
                if (new QuantityKey(fronts[i].Part.Key).Owner == new QuantityKey(fronts[j].Part.Key).Owner) continue;
                (Placement a, Placement b) = (fronts[i].Box, fronts[j].Box);
                (ExactLength across, _, ExactLength up) = a.Shared(b);
                if (a.Within(b).Sign <= 0) continue;
                book.Note("front.overlap", Severity.Stop, fronts[j].Part.Key, $"{fronts[i].Part.Name} and {fronts[j].Part.Name} overlap by {book.Say(ExactLength.Min(across, up))}.",
                    "Give their kind a smaller overlay, or leave it out: an edge between two banks is then halved.", fronts[j].Part.Place);
                return;
            }
        }
    }
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>What all checks of readings need: the piece, what is known of it, how closely the shop reads, and how things are said.</summary>
internal sealed record ReadingBench(SetPiece Set, Spreads Spreads, Accuracy Accuracy)
{
    public LengthFormat Format { get; } = LengthFormat.For(Set.Piece.Shown);

    /// <summary>True for a figure that somebody decides: nothing moves it but a decision.</summary>
    public static bool IsDecided(Quantity quantity) => quantity is { Scatter: Scatter.None, Working: Stated };

    /// <summary>True for a figure that stands in the piece file.</summary>
    public static bool IsGiven(Quantity quantity) => quantity.Working is Stated { Origin.Kind: OriginKind.Given };

    /// <summary>A length in words: on the usual grid as a fraction, else finer, as a calliper shows it.</summary>
    public string Say(ExactLength length)
    {
        if (Format.Format(length).Residue.Sign == 0) return Format.Text(length);
        if (Set.Piece.Shown == LengthUnit.Millimetre) return LengthFormat.Millimetres(2).Text(length);
        decimal thousandths = (decimal)(length.Inches * 1000).Round(Rounding.Nearest);
        return FormattableString.Invariant($"{thousandths / 1000:0.###} in");
    }

    /// <summary>How far the instrument of one value may be off.</summary>
    public Length AccuracyOf(Worked read, int index) => Spreads.AccuracyOf(Spreads.InstrumentOf(read.Quantity, read.Pin!, index));

    /// <summary>How far what counts of a reading may be off: the mean of what is averaged.</summary>
    public ExactLength AccuracyOf(Worked read)
    {
        int[] counted = Counted(read);
        return counted.Aggregate(ExactLength.Zero, (sum, i) => sum + AccuracyOf(read, i)) / counted.Length;
    }

    /// <summary>The values of a reading that count.</summary>
    public static int[] Counted(Worked read) => read.Quantity.Combining switch
    {
        Combining.Narrowest => [read.Pin!.Values.IndexOf(read.Pin.Values.Min())],
        Combining.Widest => [read.Pin!.Values.IndexOf(read.Pin.Values.Max())],
        _ => [.. Enumerable.Range(0, read.Pin!.Values.Length)],
    };

    /// <summary>The coarsest instrument that is as good as this; null where the shop has none.</summary>
    public string? CoarsestWithin(ExactLength accuracy) => Accuracy.Instruments.Where(i => i.Value.ToExact() <= accuracy)
        .OrderByDescending(i => i.Value).ThenBy(i => i.Key, StringComparer.Ordinal).Select(i => i.Key).FirstOrDefault();

    /// <summary>How far a quantity may lie to either side, together.</summary>
    public ExactLength RangeOf(QuantityKey key) => Spreads.Of(key) is { } spread ? spread.WorstHigh - spread.WorstLow : ExactLength.Zero;

    /// <summary>Of what a quantity is worked from and an instrument can be put to, the one not read yet that moves it most; null where there is none.</summary>
    public QuantityKey? LargestUnread(Quantity quantity)
    {
        var shares = new Dictionary<QuantityKey, Rational>();
        Gather(quantity, Rational.One, shares);
        // The members of a lot may be of sheets that differ.
        ExactLength Range(QuantityKey key) => RangeOf(key) + (Set.Worked.Values[key].Quantity.Scatter == Scatter.Sheet ? Accuracy.Sheet * 2 : Length.Zero);
        return shares.Select(s => (s.Key, Range: Range(s.Key) * (s.Value.Sign < 0 ? -s.Value : s.Value))).Where(s => s.Range.Sign > 0)
            .OrderByDescending(s => s.Range).ThenBy(s => s.Key).Select(s => (QuantityKey?)s.Key).FirstOrDefault();
    }

    private void Gather(Quantity quantity, Rational times, Dictionary<QuantityKey, Rational> shares)
    {
        // A figure to cut is known, whatever it is worked from.
        (ImmutableArray<Term> terms, Rational share) = quantity.Working switch
        {
            Sum sum => (sum.Terms, sum.Share),
            Extreme extreme => (extreme.Of, Rational.One),
            _ => ([], Rational.One),
        };
        foreach (Term term in terms)
        {
            if (term.Of is not { } of || !Set.Worked.Values.TryGetValue(of, out Worked? from) || from.Pin is not null) continue;
            Rational by = times * share * term.Times;
            if (IsRead(from.Quantity)) shares[of] = shares.GetValueOrDefault(of) + by;
            else Gather(from.Quantity, by, shares);
        }
    }

    // Where a partition was set out cannot be read apart from the opening that came of it.
    private static bool IsRead(Quantity quantity) =>
        quantity.Scatter is Scatter.Sheet or Scatter.Section or Scatter.Cut or Scatter.Bought || quantity.Combining != Combining.Mean;

    /// <summary>A quantity for people, with what to type, or where.</summary>
    public string Named(QuantityKey key)
    {
        string typed = key.IsAsCut ? key.Text[..^QuantityKey.AsCutSuffix.Length] : key.Text;
        return Set.Piece.Hand.Named(new(typed), Set.Worked.Values[key].Quantity.Name);
    }

    /// <summary>A finding about a quantity, at the place of its owner.</summary>
    public Finding Finding(string code, Severity severity, QuantityKey key, string words, string remedy) => new(code, severity, key.Owner, words, remedy, PlaceOf(key.Owner));

    private Place PlaceOf(string owner) =>
        Set.Piece.Keys.TryGetValue(owner, out Place place) ? place
        : Set.Piece.Materials.TryGetValue(owner, out Material? material) ? material.Place
        : Set.Piece.DrawerKinds.TryGetValue(owner, out DrawerKind? kind) ? kind.Place
        : Set.Piece.DoorKinds.TryGetValue(owner, out DoorKind? door) ? door.Place : Place.None;
}

// Over 200 lines: every reason why a real thing may lie off its figure, in one list.
using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>
/// What each quantity of a piece may really come to, from what is known now. The figure set on the saw is known; what comes off it is not. A
/// thickness is lot, sheet and spot; a cut is the setting, which all parts cut at it share, and the repeat; a reading is the instrument, half
/// of whose accuracy is shared by all that is read with it (one tape for the whole job), and half the reading's own. The halves are common
/// practice, no source. Workings are walked as they are, so what two sizes share stays shared. Mutable inside: it remembers what it worked out.
/// </summary>
/// <param name="set">The piece set out.</param>
/// <param name="accuracy">How closely the shop works.</param>
public sealed class Spreads(SetPiece set, Accuracy accuracy)
{
    private readonly Dictionary<QuantityKey, Spread?> _prior = [], _known = [];
    private readonly SortedDictionary<string, FirstCut> _firstCuts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SortedSet<QuantityKey>> _cutsAt = new(StringComparer.Ordinal);
    private Learned? _learned;
    private readonly LengthFormat _format = LengthFormat.For(set.Piece.Shown);
    private readonly Dictionary<string, ExactLength> _sheetsDiffer = new(StringComparer.Ordinal);

    // Only once something is asked for that is cut.
    private Dictionary<QuantityKey, Part> CutOf
    {
        get
        {
            if (field is not null) return field;
            var cutOf = new Dictionary<QuantityKey, Part>(Set.Parts.Length * 2);
            foreach (Part part in Set.Parts)
            {
                cutOf.TryAdd(part.Length.AsCut, part);
                cutOf.TryAdd(part.Width.AsCut, part);
            }
            return field = cutOf;
        }
    }

    /// <summary>The piece.</summary>
    public SetPiece Set { get; } = set;

    /// <summary>What a quantity may really come to; null when it has no value, or something it is worked from has none.</summary>
    public Spread? Of(QuantityKey key)
    {
        if (_known.TryGetValue(key, out Spread? known)) return known;
        return _known[key] = Prior(key) is { } prior ? Learned.In(prior) : null;
    }

    /// <summary>What readings say about the errors behind others.</summary>
    internal Learned Learned => _learned ??= Learned.From(Set, this);

    /// <summary>The settings met so far at which something is still to be cut.</summary>
    internal IEnumerable<FirstCut> FirstCuts => _firstCuts.Values;

    /// <summary>True when a size of a part has the error of a setting.</summary>
    internal bool IsCutAt(string id, Part part) => new[] { part.Length, part.Width }.Any(s => s.ToCut != s.Exact && Expected(s.AsCut)?.Effects.Any(e => e.Cause.Id == id) == true);

    /// <summary>All figures still to be cut at a setting, all parts walked.</summary>
    internal IEnumerable<FirstCut> CutsAt(string id)
    {
        foreach (Part part in Set.Parts)
            foreach (PartSize size in new[] { part.Length, part.Width })
                Prior(size.AsCut);
        return _cutsAt.TryGetValue(id, out SortedSet<QuantityKey>? cuts) ? cuts.Select(c => _firstCuts[id] with { AsCut = c }) : [];
    }

    /// <summary>
    /// What is left of the error of a setting when the first part cut at it is measured and the stop set right before the rest is cut: what the
    /// instrument may be off, a calliper for up to 6 in, else a rule (common practice, no source).
    /// </summary>
    internal Cause Careful(FirstCut first)
    {
        ExactLength half = ExactLength.Min(AccuracyOf(first.Instrument), accuracy.Setting);
        return new(first.Id, CauseKind.Setting, first.Words, -half, half, Shape.Even);
    }

    /// <summary>
    /// What the working gives where no reading is taken of the quantity itself: the spread of what is expected of it.
    /// </summary>
    public Spread? Expected(QuantityKey key) => Set.Worked.Values.TryGetValue(key, out Worked? worked) && FromWorking(worked, worked.Expected) is { } expected
        ? new(expected.Value, [.. expected.Effects.Select(e => FirstCut.IsStill(e.Cause) ? e with { Cause = FirstCut.AsItStands(e.Cause) } : e)])
        : null;

    /// <summary>What a quantity may come to by its own working and readings, before readings of others are made use of.</summary>
    internal Spread? Prior(QuantityKey key)
    {
        if (_prior.TryGetValue(key, out Spread? known)) return known;
        return _prior[key] = Set.Worked.Values.TryGetValue(key, out Worked? worked) ? Work(worked) : null;
    }

    /// <summary>What a reading of a quantity, taken with care, may be off: the errors of one reading, around zero.</summary>
    public Spread ReadingOf(Quantity quantity)
    {
        Spread error = Instrument(CarefulInstrument(quantity), quantity.Key, 0);
        return quantity.Scatter == Scatter.Sheet ? error + Spot($"{quantity.Key}:read:0", 1, $"the spot where {quantity.Key.Owner} is read") : error;
    }

    /// <summary>How far an instrument may be off; that of a tape for one the shop does not know.</summary>
    public Length AccuracyOf(string instrument) => accuracy.Instruments.TryGetValue(instrument, out Length known) ? known : accuracy.Instruments.GetValueOrDefault("tape");

    /// <summary>What a quantity is usually read with, where the reading does not say: a calliper for what is thin, else a tape.</summary>
    public static string UsualInstrument(Quantity quantity) => quantity.Scatter is Scatter.Sheet or Scatter.Bought ? "calliper" : "tape";

    /// <summary>What a quantity is best read with: inside widths with two sticks and a rule rather than a bent tape (common practice, no source).</summary>
    public static string CarefulInstrument(Quantity quantity) => quantity.Combining == Combining.Narrowest ? "rule" : UsualInstrument(quantity);

    private Spread? Work(Worked worked) => worked.Pin is { } pin ? Read(worked, pin) : FromWorking(worked, worked.Value);

    private Spread? FromWorking(Worked worked, ExactLength value)
    {
        Quantity quantity = worked.Quantity;
        Spread? from = quantity.Working switch
        {
            Sum sum => Total(quantity, sum),
            // The one that decides at the best values: no rule puts a least or a greatest between the saw and a gap.
            Extreme extreme => Decides(quantity, extreme),
            // A person sets this figure, so it is known.
            _ => Spread.Of(value),
        };
        return from is null ? null : from + Own(quantity, value);
    }

    private Spread? Total(Quantity quantity, Sum sum)
    {
        Spread total = Spread.Of(ExactLength.Zero);
        foreach (Term term in sum.Terms)
        {
            if (Term(quantity, term) is not { } spread) return null;
            total += spread;
        }
        return total * sum.Share;
    }

    private Spread? Decides(Quantity quantity, Extreme extreme)
    {
        Spread? best = null;
        foreach (Term term in extreme.Of)
        {
            if (Term(quantity, term) is not { } spread) return null;
            if (best is null || (extreme.IsLeast ? spread.Value < best.Value : spread.Value > best.Value)) best = spread;
        }
        return best;
    }

    private Spread? Term(Quantity user, Term term)
    {
        if (term.Figure is { } figure) return Spread.Of(figure.Value * term.Times);
        QuantityKey of = term.Of!.Value;
        if (Prior(of) is not { } spread) return null;
        return Set.Worked.Values[of].Quantity.Scatter == Scatter.Sheet && user.Scatter != Scatter.Sheet
            ? (spread * term.Times) + Members(user, term, of)
            : spread * term.Times;
    }

    /// <summary>The members of a part share the sheet they came from; each has a spot of its own.</summary>
    private Spread Members(Quantity user, Term term, QuantityKey thickness)
    {
        string part = term.Part.Length > 0 ? term.Part : user.Key.Text;
        string sheet = thickness.Text[..^".thickness".Length];
        Spread members = Spread.Of(ExactLength.Zero);
        // Which sheet is known and read, or is known and is a cause of its thickness; else the part's own guess.
        if (!sheet.Contains(BenchFacts.SheetWord, StringComparison.Ordinal)) members += Sheet(part, sheet) * term.Times;
        int count = term.Times.IsWhole ? Math.Abs((int)term.Times.Floor()) : 1;
        Rational each = term.Times / Rational.Of(count);
        for (int i = 0; i < count; i++) members += Spot($"{part}:{sheet}:{i}", each, $"spots of the sheet in {Called(part)}");
        return members;
    }

    private Spread Sheet(string id, string material)
    {
        if (!_sheetsDiffer.TryGetValue(material, out ExactLength half)) _sheetsDiffer[material] = half = SheetsDiffer(material);
        return Caused($"sheet:{id}", CauseKind.Sheet, $"sheets of {material} that differ", half);
    }

    private ExactLength SheetsDiffer(string material)
    {
        // Sheets read so far may differ by more than the shop thought.
        string sheets = material + BenchFacts.SheetWord;
        ExactLength[] read = [.. Set.Facts.Pins.Keys.Where(k => k.Text.StartsWith(sheets, StringComparison.Ordinal))
            .Select(k => Set.Worked.Values.GetValueOrDefault(k)).Where(w => w?.Pin is not null).Select(w => w!.Value)];
        return ExactLength.Max(accuracy.Sheet, read.Length > 1 ? (read.Max() - read.Min()) / 2 : ExactLength.Zero);
    }

    private Spread Spot(string id, Rational times, string words) => Caused($"spot:{id}", CauseKind.Spot, words, accuracy.Spot) * times;

    private Spread Own(Quantity quantity, ExactLength value) => quantity.Scatter switch
    {
        Scatter.Sheet => Thickness(quantity, value),
        Scatter.Section => Caused($"section:{quantity.Key}", CauseKind.Section, quantity.Name, accuracy.Section),
        Scatter.Cut => Cut(quantity.Key, value),
        Scatter.Placed => Caused($"placed:{quantity.Key}", CauseKind.Placing, $"placing: {quantity.Name}", accuracy.Placing),
        Scatter.Bought => Caused($"bought:{quantity.Key}", CauseKind.Bought, quantity.Name, accuracy.Bought),
        _ => Spread.Of(ExactLength.Zero),
    };

    private Spread Thickness(Quantity quantity, ExactLength value)
    {
        string owner = quantity.Key.Text[..^".thickness".Length];
        bool isLot = !owner.Contains(BenchFacts.SheetWord, StringComparison.Ordinal);
        // What is worked from sheets that were read has their errors and no others.
        if (quantity.Working is Sum) return isLot ? Spread.Of(ExactLength.Zero) : Sheet(owner, quantity.Key.Owner);
        return Lot(quantity.Key.Owner, value);
    }

    /// <summary>The published limits of the label; a thickness that was given is taken as read with a rule.</summary>
    private Spread Lot(string material, ExactLength value)
    {
        string words = $"{material}: thickness not read";
        PanelFact? fact = Set.Piece.Materials.GetValueOrDefault(material) is Panel { Thickness: null } panel ? PanelTable.Find(panel.Kind, panel.Label) : null;
        if (fact is { Least: { } least, Most: { } most } && least <= value && value <= most)
            return Spread.Of(ExactLength.Zero, new Cause($"lot:{material}", CauseKind.Lot, words, least - value, most - value, Shape.Even));
        return Caused($"lot:{material}", CauseKind.Lot, words, AccuracyOf("rule"));
    }

    private Spread Cut(QuantityKey asCut, ExactLength value)
    {
        // Equal parts of a material are cut at one setting, and share its error.
        string material = CutOf.TryGetValue(asCut, out Part? part) ? part.Material : "grooves";
        string of = part is null ? "grooves" : material;
        string id = $"setting:{material}:{value.Ticks}", words = $"setting {_format.Text(value)} for {of}";
        QuantityKey toCut = new QuantityKey(asCut.Text[..^QuantityKey.AsCutSuffix.Length]).ToCut;
        // What is cut already can no longer be cut with care: what is still to be cut has the setting as an error of its own, which is that of what
        // was cut at it before, unless the stop is set anew.
        if (Set.Worked.Values.TryGetValue(toCut, out Worked? cut) && cut.Pin is null && Set.Worked.Values[asCut].Pin is null)
        {
            if (!_cutsAt.TryGetValue(id, out SortedSet<QuantityKey>? cuts)) _cutsAt[id] = cuts = [];
            cuts.Add(asCut);
            if (!_firstCuts.TryGetValue(id, out FirstCut? first)) _firstCuts[id] = first = new(id + FirstCut.Still, asCut, words, value);
            id = first.Id;
        }
        return Caused(id, CauseKind.Setting, words, accuracy.Setting)
            + Caused($"repeat:{asCut}", CauseKind.Repeat, $"one cut from another: {Called(asCut.Text[..^QuantityKey.AsCutSuffix.Length])}", accuracy.Repeat, Shape.Peaked);
    }

    // A part or a size by its name: its key is for who types it.
    private string Called(string key)
    {
        _partNames ??= Set.Parts.GroupBy(p => p.Key, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Name, StringComparer.Ordinal);
        return _partNames.TryGetValue(key, out string? name) ? name
            : Set.Worked.Values.TryGetValue(new(key), out Worked? size) || Set.Worked.Values.TryGetValue(new QuantityKey(key).ToCut, out size) ? size.Quantity.Name : key;
    }

    private Dictionary<string, string>? _partNames;

    private Spread Read(Worked worked, Pin pin)
    {
        if (pin.IsFact) return Spread.Of(worked.Value);
        Quantity quantity = worked.Quantity;
        Spread total = Spread.Of(worked.Value);
        int[] counted = quantity.Combining switch
        {
            Combining.Narrowest => [pin.Values.IndexOf(pin.Values.Min())],
            Combining.Widest => [pin.Values.IndexOf(pin.Values.Max())],
            _ => [.. Enumerable.Range(0, pin.Values.Length)],
        };
        foreach (int i in counted)
        {
            Spread error = Instrument(InstrumentOf(quantity, pin, i), quantity.Key, i);
            if (quantity.Scatter == Scatter.Sheet) error += Spot($"{quantity.Key}:read:{i}", 1, $"the spot where {quantity.Key.Owner} is read");
            total += error * Rational.Of(1, counted.Length);
        }
        return total;
    }

    /// <summary>The instrument of one value of a reading, the usual one where it was not said.</summary>
    public static string InstrumentOf(Quantity quantity, Pin pin, int index) =>
        index < pin.With.Length && pin.With[index].Length > 0 ? pin.With[index] : UsualInstrument(quantity);

    private Spread Instrument(string instrument, QuantityKey key, int index)
    {
        ExactLength half = AccuracyOf(instrument).ToExact() / 2;
        return Caused($"scale:{instrument}", CauseKind.Scale, $"the {instrument} itself", half)
            + Caused($"reading:{key}:{index}", CauseKind.Reading, $"reading {Called(key.Text)}", half);
    }

    private static Spread Caused(string id, CauseKind kind, string words, ExactLength half, Shape shape = Shape.Even) =>
        half.Sign == 0 ? Spread.Of(ExactLength.Zero) : Spread.Of(ExactLength.Zero, new Cause(id, kind, words, -half, half, shape));
}

/// <summary>The first part cut at a setting.</summary>
/// <param name="Id">The id of the setting's error for what is still to be cut.</param>
/// <param name="AsCut">The figure that is measured.</param>
/// <param name="Words">The setting, for people.</param>
/// <param name="Value">What is set.</param>
internal sealed record FirstCut(string Id, QuantityKey AsCut, string Words, ExactLength Value)
{
    /// <summary>What follows the id of a setting for what is still to be cut at it.</summary>
    public const string Still = ":still";

    /// <summary>True for the error of a setting at which something is still to be cut.</summary>
    public static bool IsStill(Cause cause) => cause.Kind == CauseKind.Setting && cause.Id.EndsWith(Still, StringComparison.Ordinal);

    /// <summary>The error of the setting as it stands, for what is still to be cut and what is cut alike.</summary>
    public static Cause AsItStands(Cause still) => new(still.Id[..^Still.Length], still.Kind, still.Words, still.Low, still.High, still.Shape);

    /// <summary>What it is best measured with.</summary>
    public string Instrument => Value <= ExactLength.FromInches(6) ? "calliper" : "rule";
}

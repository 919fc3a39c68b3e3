using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>A piece as it stands on the bench: how far each part has come, what can still be moved, and which gaps it takes part in.</summary>
internal sealed class Bench(SetPiece set)
{
    private readonly Dictionary<QuantityKey, IReadOnlyDictionary<QuantityKey, Rational>> _reach = [];

    // Asked of every part for every gap: worked out once.
    private readonly Dictionary<string, PartState> _states = new(StringComparer.Ordinal);
    private readonly Dictionary<QuantityKey, ImmutableArray<(Part Part, PartSize Size)>> _madeIn = [];

    public SetPiece Set { get; } = set;

    public Proof Proof { get; } = new(set);

    private LengthFormat Format { get; } = LengthFormat.For(set.Piece.Shown);

    /// <summary>A length for people.</summary>
    public string Say(ExactLength length) => Format.Text(length);

    /// <summary>A length to be typed: exact where any text can be.</summary>
    public string Exactly(ExactLength length)
    {
        if (Format.Format(length).Residue.Sign == 0) return Format.Text(length);
        // In the unit of the piece where a decimal says it; a part of a tick is no part of wood.
        Rational places = length.Inches * 100_000;
        return Set.Piece.Unit == LengthUnit.Inch && places.IsWhole
            ? ((decimal)places.Numerator / 100_000m).ToString("0.##### in", System.Globalization.CultureInfo.InvariantCulture)
            : LengthFormat.Millimetres(6).Text(length);
    }

    /// <summary>Tells a reading.</summary>
    public MendingAct Record(QuantityKey key, ExactLength value) => new ReadAnew(key, value, $"setout record FILE {key} {Exactly(value)}");

    /// <summary>Takes an entry back.</summary>
    public static MendingAct Void(string entry) => new TakeBack(entry, $"setout void FILE {entry}");

    /// <summary>Tells what a part was cut to: a mark that names the figure, unless only readings say that it is cut.</summary>
    public MendingAct Cut(Part part, IEnumerable<PartSize> sizes, Func<PartSize, ExactLength> figure)
    {
        bool isAgain = PinOf(part.Length.ToCut) is not null || PinOf(part.Width.ToCut) is not null;
        ImmutableArray<(QuantityKey Size, ExactLength Figure)> figures = [.. sizes.Select(s => (s.Exact, figure(s)))];
        return new CutTo(part.Key, isAgain, figures, $"setout mark FILE cut {part.Key}{(isAgain ? " --again" : "")}{string.Concat(figures.Select(f => $" --to \"{f.Size}={Exactly(f.Figure)}\""))}");
    }

    /// <summary>By how much a gap moves with each quantity, as things stand.</summary>
    public IReadOnlyDictionary<QuantityKey, Rational> Reach(QuantityKey gap) =>
        _reach.TryGetValue(gap, out var reach) ? reach : _reach[gap] = new Sensitivity(Set.Worked).Of(gap);

    /// <summary>The sizes of a part that are cut; the section of a stick is none.</summary>
    public static IEnumerable<PartSize> Sizes(Part part) => new[] { part.Length, part.Width }.Where(s => s.ToCut != s.Exact);

    /// <summary>What a size of a part is called.</summary>
    public string Word(Part part, PartSize size) => SizeWords.Of(Set, size.Exact, size == part.Length);

    /// <summary>When a part comes in: the first step that names it; the carcase where none does.</summary>
    public Stage StageOf(string part) => Set.Steps.Where(s => s.Parts.Contains(part)).Select(s => s.Stage).DefaultIfEmpty(Stage.Carcase).Min();

    /// <summary>True where a size is simply that of something bought, as a box side is as long as its slide.</summary>
    public bool GoesByBought(PartSize size) => Set.Worked.Values[size.Exact].Quantity.Working.WorkedFrom.Any(k => Set.Choices.Any(c => c.Key == k));

    /// <summary>The width of the box that a part belongs to, as built.</summary>
    public static QuantityKey Built(Part part) => QuantityKey.Of(new QuantityKey(part.Key).Owner, "box.as-built");

    /// <summary>True for what a drawer box is made of.</summary>
    public static bool IsOfBox(Part part) => part.Role is PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom;

    /// <summary>All parts of the box that a part belongs to.</summary>
    public IEnumerable<Part> Box(Part part) => Set.Parts.Where(p => IsOfBox(p) && new QuantityKey(p.Key).Owner == new QuantityKey(part.Key).Owner);

    /// <summary>True for what is cut from sticks.</summary>
    public bool IsStick(Part part) => Set.Piece.Materials.GetValueOrDefault(part.Material) is Stick;

    /// <summary>The reading or fact that pins a quantity.</summary>
    public Pin? PinOf(QuantityKey key) => Set.Worked.Values.TryGetValue(key, out Worked? worked) ? worked.Pin : null;

    /// <summary>How far a part has come: as marked; a box that is read as built is together, and what is read as cut is cut.</summary>
    public PartState StateOf(Part part) => _states.TryGetValue(part.Key, out PartState known) ? known : _states[part.Key] = State(part);

    private PartState State(Part part)
    {
        PartState state = Set.Facts.StateOf(part);
        if (state < PartState.Assembled && IsOfBox(part) && PinOf(Built(part)) is not null) return PartState.Assembled;
        return state == PartState.Planned && Sizes(part).Any(s => PinOf(s.ToCut) is not null || PinOf(s.AsCut) is not null) ? PartState.Cut : state;
    }

    /// <summary>True for a part whose figures are facts.</summary>
    public bool IsMade(Part part) => StateOf(part) >= PartState.Cut;

    /// <summary>True for a part that is joined to its neighbours.</summary>
    public bool IsTogether(Part part) => StateOf(part) >= PartState.Assembled;

    /// <summary>True for a part that cannot come off again once it is together: glued, or caught in the groove of what is glued.</summary>
    public bool IsFast(Part part) => IsGlued(part.Key) || Set.Joints.Any(j => j.Kind == JointKind.Groove && j.Part == part.Key && IsGlued(j.Against));

    private bool IsGlued(string key) => Set.Joints.Any(j => (j.Part == key || j.Against == key)
        && j.Held.Contains("glue", StringComparison.Ordinal) && !j.Held.Contains("no glue", StringComparison.Ordinal));

    /// <summary>How many members of a part are made.</summary>
    public int Made(Part part) => Set.Facts.CutOf(part) is > 0 and int marked ? marked : part.Count;

    /// <summary>The made parts, with their sizes, that move a gap.</summary>
    public ImmutableArray<(Part Part, PartSize Size)> MadeIn(QuantityKey gap) =>
        _madeIn.TryGetValue(gap, out ImmutableArray<(Part, PartSize)> known) ? known : _madeIn[gap] = [.. Made(gap)];

    private IEnumerable<(Part Part, PartSize Size)> Made(QuantityKey gap)
    {
        IReadOnlyDictionary<QuantityKey, Rational> reach = Reach(gap);
        return from part in Set.Parts
               where IsMade(part)
               from size in Sizes(part)
               where Moves(reach, size.AsCut) || (part.Role == PartRole.BoxEnd && size == part.Length && PinOf(Built(part)) is not null && Moves(reach, Built(part)))
               select (part, size);
    }

    /// <summary>The gaps that a size of a part moves.</summary>
    public IEnumerable<Gap> GapsOf(Part part, PartSize size) => Set.Gaps.Where(g => MadeIn(g.Key).Any(m => m.Part.Key == part.Key && m.Size == size));

    /// <summary>True where a reach goes to a quantity and does not cancel out.</summary>
    public static bool Moves(IReadOnlyDictionary<QuantityKey, Rational> reach, QuantityKey key) => reach.TryGetValue(key, out Rational factor) && factor.Sign != 0;

    /// <summary>
    /// Figures of a quantity, on a step, that by its sums bring a gap inside its limits: nearest the middle first, then nearest to what it
    /// is. Empty when no step lands inside.
    /// </summary>
    public IEnumerable<ExactLength> Figures(Gap gap, QuantityKey quantity, Length step)
    {
        Rational factor = Reach(gap.Key)[quantity];
        ExactLength now = Set.Worked[quantity], at = Set.Worked[gap.Key];
        ExactLength For(ExactLength wanted) => now + ((wanted - at) / factor);
        bool IsIn(ExactLength figure) => at + ((figure - now) * factor) is var then && then >= gap.Least && then <= gap.Most;
        var grid = Grid.FromStep(step);
        ExactLength middle = For((gap.Least + gap.Most) / 2), near = For(at < gap.Least ? gap.Least : gap.Most);
        ExactLength[] landed = [.. new[] { Rounding.Nearest, Rounding.Down, Rounding.Up }.SelectMany(r => new ExactLength[] { middle.RoundTo(grid, r).Value, near.RoundTo(grid, r).Value })];
        return landed.Distinct().Where(f => IsIn(f) && f != now).OrderBy(f => (f - middle).Abs()).ThenBy(f => (f - now).Abs());
    }
}

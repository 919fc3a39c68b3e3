// Over 200 lines: every rule writes here, so this is the one list of what a rule may say.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>
/// What the rules of setting out write into: quantities first, then parts, joints, hardware. It can be asked for the value of what
/// stands in it already, which is how choices are made before the arithmetic that follows from them. Dies at <see cref="Finish"/>.
/// </summary>
internal sealed class Book(Piece piece, Grid grid, BenchFacts facts)
{
    private readonly Evaluation _evaluation = new(facts.Pins);

    public Piece Piece { get; } = piece;
    public Grid Grid { get; } = grid;
    public Hand Hand { get; } = piece.Hand;
    public LengthFormat Format { get; } = LengthFormat.For(piece.Shown);
    public List<Part> Parts { get; } = [];
    public List<Joint> Joints { get; } = [];
    public List<HardwareItem> Hardware { get; } = [];
    public List<Machining> Machinings { get; } = [];
    public List<Choice> Choices { get; } = [];
    public List<ClosedChain> Chains { get; } = [];
    public List<Gap> Gaps { get; } = [];
    public List<Fixing> Fixings { get; } = [];
    public List<AssemblyStep> Steps { get; } = [];
    public List<Unit> Units { get; } = [];
    public List<Bore> Bores { get; } = [];
    public List<DowelRows> DowelRows { get; } = [];
    private readonly List<CutOut> _cutOuts = [];
    private readonly List<SetOpening> _openings = [];
    private readonly List<SetDimension> _dimensions = [];
    public List<Finding> Findings { get; } = [];

    /// <summary>Writes a quantity and gives its key back.</summary>
    public QuantityKey Define(string owner, string what, string name, Working working, Combining combining = Combining.Mean, Scatter scatter = Scatter.None)
    {
        QuantityKey key = QuantityKey.Of(owner, what);
        _evaluation.Define(new(key, name, working, combining, scatter));
        return key;
    }

    /// <summary>A quantity that is the same as another until it is read.</summary>
    public QuantityKey DefineSame(
        string owner, string what, string name, string termWords, QuantityKey of, Combining combining = Combining.Mean, Scatter scatter = Scatter.None) =>
        Define(owner, what, name, new Sum(Term.From(termWords, 1, of)), combining, scatter);

    /// <summary>A size that is cut: its exact working, the figure to cut and the figure as cut.</summary>
    public PartSize DefineSize(string owner, string what, string name, Working exact, PartRole role) =>
        DefineSize(owner, what, name, exact, RoundingFor.Role(role), RoundingFor.Reason(role));

    /// <summary>A size that is cut, with its safe direction.</summary>
    public PartSize DefineSize(string owner, string what, string name, Working exact, Rounding rounding, string why, Scatter scatter = Scatter.Cut)
    {
        QuantityKey key = Define(owner, what, name, exact);
        _evaluation.Define(new(key.ToCut, $"{name}, to cut", new ToCut(key, Grid, rounding, why)));
        _evaluation.Define(new(key.AsCut, $"{name}, as cut", new Sum(Term.From("to cut", 1, key.ToCut)), Scatter: scatter));
        return new(key, key.ToCut, key.AsCut);
    }

    /// <summary>
    /// A size of a sheet part whose seen edges may be covered: what is cut is smaller by what covers them. <see cref="PartSize.Made"/> is the
    /// size with its edges on.
    /// </summary>
    /// <param name="owner">The key it belongs to.</param>
    /// <param name="what">What it is called in its key.</param>
    /// <param name="name">For people.</param>
    /// <param name="finished">The size with its edges on.</param>
    /// <param name="role">Of the part.</param>
    /// <param name="panel">Its sheet.</param>
    /// <param name="seen">How many of the two edges that bound this size are seen: 0 to 2.</param>
    /// <param name="rounding">Which way it is landed; null for that of the role.</param>
    /// <param name="coreName">What the core is called, where it is not the size itself; null for <paramref name="name"/>.</param>
    public PartSize DefineSize(string owner, string what, string name, Sum finished, PartRole role, Panel panel, int seen, (Rounding Way, string Why)? rounding = null, string? coreName = null)
    {
        (Rounding way, string why) = rounding ?? (RoundingFor.Role(role), RoundingFor.Reason(role));
        if (seen == 0 || !EdgeRule.Covers(panel)) return DefineSize(owner, what, name, finished, way, why);
        string cover = EdgeRule.Words(panel, seen);
        PartSize core = DefineSize(owner, what, coreName ?? name, new Sum([.. Spread(finished), Term.From(cover, -seen, EdgeRule.ThicknessOf(panel.Name))]), way, why);
        return core with { Made = Define(owner, what + ".finished", $"{name}, with its edges", new Sum(Term.From("as cut", 1, core.AsCut), Term.From(cover, seen, EdgeRule.ThicknessOf(panel.Name)))) };
    }

    /// <summary>What is cut of a size that was shared out, where edges that bound it are covered: the core, and with it the size with its edges on.</summary>
    public PartSize Core(PartSize shared, string owner, string what, string name, PartRole role, Panel panel, int seen) =>
        EdgeRule.Covers(panel) ? DefineSize(owner, what, name, new Sum(Term.From("as shared out", 1, shared.ToCut)), role, panel, seen, coreName: $"{name} without its edges") : shared;

    /// <summary>
    /// What is cut of a clear size where both ends go into what bounds it, as tenons do: longer by twice the depth. <see cref="PartSize.Made"/> is
    /// the clear size again, from shoulder to shoulder as cut.
    /// </summary>
    public PartSize LetIn(Sum clear, string owner, string what, string name, PartRole role, QuantityKey depth, string words)
    {
        PartSize whole = DefineSize(owner, what, name, new Sum([.. Spread(clear), Term.From(words, 2, depth)]), role);
        return whole with { Made = Define(owner, what + ".between", $"{name}, between shoulders as cut", new Sum(Term.From("as cut", 1, whole.AsCut), Term.From(words, -2, depth))) };
    }

    /// <summary>The terms of a sum with its share in each, so that more can be added that is not shared.</summary>
    private static IEnumerable<Term> Spread(Sum sum) => sum.Terms.Select(t => t with { Times = t.Times * sum.Share });

    /// <summary>A size that is not cut, such as the section of a stick: the three figures are one.</summary>
    public static PartSize Uncut(QuantityKey key) => new(key, key, key);

    /// <summary>The value of a quantity; zero where it could not be worked out (a finding says so already).</summary>
    public ExactLength Value(QuantityKey key) => _evaluation.Work(key)?.Value ?? ExactLength.Zero;

    /// <summary>The value of a sum that is not written yet; all its terms must be.</summary>
    public ExactLength Value(Sum sum) =>
        sum.Terms.Aggregate(ExactLength.Zero, (total, term) => total + ((term.Figure?.Value ?? Value(term.Of!.Value)) * term.Times)) * sum.Share;

    /// <summary>Whether a quantity has been written.</summary>
    public bool Knows(QuantityKey key) => _evaluation.Knows(key);

    /// <summary>A length in words, in the piece's unit.</summary>
    public string Say(ExactLength length) => Format.Text(length);

    /// <summary>The same, with on which side of it the value lies where it is no mark of a rule.</summary>
    public string SayByTheRule(ExactLength length) => Format.Format(length).ByTheRule;

    /// <summary>The least length in words that a remedy may ask for: up to the next step of the grid, so that following it does.</summary>
    public string SayAtLeast(ExactLength length) => Say(length.RoundTo(Grid, Rounding.Up).Value);

    /// <summary>The most in words that a remedy may allow: down to a step of the grid.</summary>
    public string SayAtMost(ExactLength length) => Say(length.RoundTo(Grid, Rounding.Down).Value);

    /// <summary>What is less than the length, in words: a step of the grid below it where it lies on one.</summary>
    public string SayBelow(ExactLength length) => SayAtMost(length.RoundTo(Grid, Rounding.Down).Value == length ? length - Grid.Step : length);

    /// <summary>Goes on from what is to be read, before the full stop: where the reading is entered.</summary>
    /// <param name="key">What is read; written already.</param>
    /// <param name="values">What stands for the values in a command.</param>
    public string Enter(QuantityKey key, string values = "READING") => Hand.Enter(key, NameOf(key), values);

    /// <summary>The name of a quantity that is written.</summary>
    public string NameOf(QuantityKey key) => _evaluation.NameOf(key);

    /// <summary>Notes a finding.</summary>
    public void Note(string code, Severity severity, string key, string words, string remedy, Place place = default) =>
        Findings.Add(new(code, severity, key, words, remedy, place));

    /// <summary>
    /// Notes a finding unless the same place has it already: one wrong word that many drawers refer to is one thing to put right.
    /// </summary>
    public void NoteOnce(string code, Severity severity, string key, string words, string remedy, Place place)
    {
        if (!place.IsKnown || !Findings.Any(f => f.Code == code && f.Place == place)) Note(code, severity, key, words, remedy, place);
    }

    /// <summary>What is known from the bench.</summary>
    public BenchFacts Facts => facts;

    /// <summary>Whether a quantity has been read at the facts.</summary>
    public bool IsRead(QuantityKey key) => facts.Pins.ContainsKey(key);

    /// <summary>Whether one quantity was read after another; false where either was not, or there is no log to tell.</summary>
    public bool IsReadLater(QuantityKey key, QuantityKey than) =>
        facts.Pins.TryGetValue(key, out Pin? pin) && facts.Pins.TryGetValue(than, out Pin? other) && pin.Position > other.Position;

    /// <summary>Whether a material has been measured: as a lot, or one of its sheets.</summary>
    public bool IsMeasured(string material) => IsRead(ThicknessOf(material)) || SheetsOf(material).Any(s => IsRead(ThicknessOf(s)));

    /// <summary>The sheets of a material that the bench knows: read, or cut from; in the order of their names.</summary>
    public IEnumerable<string> SheetsOf(string material) => SheetNames.GetValueOrDefault(material, []);

    private ImmutableDictionary<string, ImmutableSortedSet<string>> SheetNames => _sheetNames ??= facts.Pins.Keys
        .Where(k => k.Text.EndsWith(".thickness", StringComparison.Ordinal) && k.Text.Contains(BenchFacts.SheetWord, StringComparison.Ordinal))
        .Select(k => k.Text[..^".thickness".Length]).Concat(facts.Sheets.Values)
        .GroupBy(s => new QuantityKey(s).Owner, StringComparer.Ordinal)
        .ToImmutableDictionary(g => g.Key, g => g.ToImmutableSortedSet(StringComparer.Ordinal));
    private ImmutableDictionary<string, ImmutableSortedSet<string>>? _sheetNames;

    /// <summary>The thickness of a material, defined once by <see cref="MaterialRule"/>.</summary>
    public static QuantityKey ThicknessOf(string material) => QuantityKey.Of(material, "thickness");

    /// <summary>The thickness of a part: of the sheet that its members came from where that is known and one, else of the lot.</summary>
    public QuantityKey ThicknessOf(string part, string material, int count = 1)
    {
        if (facts.Sheets.Count == 0) return ThicknessOf(material);
        QuantityKey first = MemberThickness(part, 1, material);
        return Enumerable.Range(2, count - 1).All(i => MemberThickness(part, i, material) == first) ? first : ThicknessOf(material);
    }

    /// <summary>The thicknesses of a part's members as terms of a sum: one term while they share a sheet, else one for each sheet.</summary>
    /// <param name="words">What they are, such as <c>sides</c>.</param>
    /// <param name="sign">1 to add, -1 to take away.</param>
    /// <param name="part">The key of the part.</param>
    /// <param name="material">Its material.</param>
    /// <param name="count">How many members.</param>
    public ImmutableArray<Term> Thicknesses(string words, int sign, string part, string material, int count)
    {
        if (facts.Sheets.Count == 0) return [Term.From(words, sign * count, ThicknessOf(material)) with { Part = part }];
        var bySheet = Enumerable.Range(1, count).GroupBy(i => MemberThickness(part, i, material)).ToList();
        return [.. bySheet.Select(s => Term.From(bySheet.Count == 1 ? words : $"{words}, no. {string.Join(" and ", s)}", sign * s.Count(), s.Key) with { Part = part })];
    }

    private QuantityKey MemberThickness(string part, int number, string material) =>
        facts.SheetOf(part, number) is { } sheet && new QuantityKey(sheet).Owner == material ? ThicknessOf(sheet) : ThicknessOf(material);

    /// <summary>The greater size of a stick's section.</summary>
    public static QuantityKey SectionWidthOf(string material) => QuantityKey.Of(material, "width");

    /// <summary>The panel of a name, or null with a finding.</summary>
    public Panel? PanelOf(Named name, string user)
    {
        if (Piece.Materials.GetValueOrDefault(name.Text) is Panel panel) return panel;
        NoteOnce("material.not-a-panel", Severity.Stop, user, $"{user} wants sheet goods, but '{name.Text}' is {Describe(name)}.",
            $"Name one of the panels: {Listed(Piece.Materials.Values.OfType<Panel>().Select(m => m.Name))}.", name.Place);
        return null;
    }

    /// <summary>The stick of a name, or null with a finding.</summary>
    public Stick? StickOf(Named name, string user)
    {
        if (Piece.Materials.GetValueOrDefault(name.Text) is Stick stick) return stick;
        NoteOnce("material.not-a-stick", Severity.Stop, user, $"{user} wants sticks, but '{name.Text}' is {Describe(name)}.",
            $"Name one of the sticks: {Listed(Piece.Materials.Values.OfType<Stick>().Select(m => m.Name))}.", name.Place);
        return null;
    }

    /// <summary>True when a material's thickness is not known and a finding says so: nothing more need be said of what follows from it.</summary>
    public bool IsUnknown(string material) => Findings.Any(f => f.Code == "material.unknown" && f.Key == material);

    /// <summary>True when the thickness of any material is not known: what follows from it is not worth saying until it is.</summary>
    public bool HasUnknown => Findings.Any(f => f.Code == "material.unknown");

    /// <summary>Where the corner of the structure that is being written stands: its rules measure from there.</summary>
    public Corner Corner { get; set; }

    /// <summary>Adds a part.</summary>
    public void Add(Part part)
    {
        // A key may happen to look like another part's mark: two parts never carry the same one.
        string mark = part.Mark;
        for (int i = 2; Parts.Any(p => p.Mark == mark); i++) mark = $"{part.Mark}-{i}";
        Parts.Add(part with { Mark = mark, Placements = [.. part.Placements.Select(Corner.Place)] });
    }

    /// <summary>The value of a quantity that may not be there.</summary>
    public ExactLength ValueOr0(QuantityKey? key) => key is { } there ? Value(there) : ExactLength.Zero;

    /// <summary>Adds an opening.</summary>
    public void Open(SetOpening opening) => _openings.Add(opening with { Space = Corner.Place(opening.Space) });

    /// <summary>Adds what is cut out of parts and stays empty.</summary>
    public void CutOut(string key, string name, IEnumerable<string> parts, Placement space) =>
        _cutOuts.AddRange(parts.Select(p => new CutOut(key, name, p, Corner.Place(space))));

    /// <summary>Adds a size worth drawing.</summary>
    public void Show(SetDimension dimension)
    {
        // What is seen from behind is no size of the front.
        if (Corner.Turned is not null) return;
        (ExactLength along, ExactLength at) = dimension.IsAcross ? (Corner.X, Corner.Z) : (dimension.IsDeep ? Corner.Y : Corner.Z, Corner.X);
        _dimensions.Add(dimension with { From = dimension.From + along, To = dimension.To + along, At = dimension.At + at });
    }

    /// <summary>Closes the book.</summary>
    public SetPiece Finish()
    {
        WorkedPiece worked = _evaluation.Finish();
        BookChecks.Look(this, worked);
        // What a piece has not while something stops it may be there again: no reason to void what was read of it.
        bool isStopped = worked.Findings.Concat(Findings).Any(f => f.Severity == Severity.Stop);
        IEnumerable<Finding> known = isStopped ? worked.Findings.Where(f => f.Code != Evaluation.NoQuantity) : worked.Findings;
        return new(Piece, Grid, worked, [.. Parts], [.. Joints], [.. Hardware], [.. Machinings], [.. Choices], [.. Chains], [.. Gaps],
            InOrder(), [.. _openings], [.. _dimensions], [.. known, .. Findings])
        { Facts = facts, Fixings = [.. Fixings], Units = [.. Units], CutOuts = [.. _cutOuts], Bores = [.. Bores] };
    }

    /// <summary>The steps by stage. A caution stands beside the first step it belongs to; repeated at each it would be passed over.</summary>
    private ImmutableArray<AssemblyStep> InOrder()
    {
        var said = new HashSet<string>(StringComparer.Ordinal) { "" };
        return [.. Steps.OrderBy(s => s.Stage).Select(s => (said.Add(s.Caution) ? s : s with { Caution = "" }) with { On = s.On ?? "" })];
    }

    private string Describe(Named name) => Piece.Materials.GetValueOrDefault(name.Text) switch
    {
        Panel => "sheet goods",
        Stick => "a stick",
        _ => "not among the materials",
    };

    private static string Listed(IEnumerable<string> names)
    {
        string list = string.Join(", ", names.Order(StringComparer.Ordinal));
        return list.Length == 0 ? "there are none yet" : list;
    }
}

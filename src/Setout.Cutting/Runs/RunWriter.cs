using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>Follows the saw through cuts that have their order: every blank there ever is gets its size and its id, every side the run that made it true.</summary>
internal sealed class RunWriter
{
    private readonly ImmutableArray<RunMaterial> _materials;
    private readonly List<RunBlank> _blanks = [];
    private readonly Dictionary<Wood, int> _idOf = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<CutGroup, (int Blank, int Left)> _at = new(ReferenceEqualityComparer.Instance);
    private readonly List<int?[]> _sides = [];

    public RunWriter(ImmutableArray<RunMaterial> materials, IEnumerable<Wood> stock)
    {
        _materials = materials;
        foreach (Wood blank in stock) Add(blank, [.. Enum.GetValues<BlankSide>().Select(s => Raw(blank.Trim, s) ? (int?)null : 0)]);
    }

    public ImmutableArray<RunBlank> Blanks => [.. _blanks];

    /// <summary>The id of a blank that is there by now; the stock it comes from for one that never is.</summary>
    public int IdOf(Wood blank) => _idOf.TryGetValue(blank, out int id) ? id : _blanks.First(b => b.Material == blank.Material && b.Stock == blank.Stock).Id;

    /// <summary>Makes a cut.</summary>
    public RunCut Make(PlannedCut cut, int run)
    {
        CutGroup group = cut.Group;
        (int id, int left) = _at.TryGetValue(group, out var known) ? known : (_idOf[group.Whole], group.Cuts.Count);
        RunBlank blank = _blanks[id];
        int?[] sides = _sides[id];
        GrainAxis axis = group.Axis;
        BlankSide from = group.From, far = axis == GrainAxis.Along ? BlankSide.FarEnd : BlankSide.FarEdge;
        bool isTrued = cut.Kind is RunKind.True or RunKind.Clear;
        Length extent = axis == GrainAxis.Along ? blank.Along : blank.Across;
        Length rest = extent - cut.Figure - (isTrued ? Length.Zero : cut.Kerf + cut.PlanedRest);
        int? off = null, remains = null;
        if (cut.Off is { } piece) off = Add(piece, With(sides, far, cut.Kind == RunKind.Rough ? null : run));
        if (rest.Sign > 0)
        {
            int?[] made = With(sides, from, run);
            if (left == 1) remains = Add(group.Rest!, made);
            else
            {
                // What is left before the next cut of the group.
                EdgeTrim trim = axis == GrainAxis.Along ? blank.Trim with { AlongStart = Length.Zero } : blank.Trim with { AcrossStart = Length.Zero };
                RunBlank between = axis == GrainAxis.Along ? blank with { Along = rest } : blank with { Across = rest };
                Length gone = axis == GrainAxis.Along ? extent - rest : Length.Zero;
                remains = _blanks.Count;
                _blanks.Add(between with { Id = remains.Value, Use = BlankUse.Work, Trim = trim, Waiting = [], Flaws = BoardBreaking.Shifted(blank.Flaws, gone, between.Along) });
                _sides.Add(made);
            }
        }
        if (off is { } came && remains is { } over && cut.Kind == RunKind.Size) Spare(_blanks[came], over, axis, cut);
        if (remains is { } next) _at[group] = (next, left - 1);
        bool isHeavy = _materials[blank.Material].MostArea is { } most && blank.Along * blank.Across > most;
        return new(id, axis, from, cut.Figure, cut.Kerf, off, remains)
        {
            FromRun = sides[(int)from],
            Against = cut.Against,
            AgainstRun = cut.Against is { } against ? sides[(int)against] : null,
            Planed = cut.Planed,
            PlanedRest = cut.PlanedRest,
            TakesTwo = isHeavy,
            NeedsCarrier = cut.NeedsCarrier,
        };
    }

    // While the saw stands set up, waste may give the same part once more.
    private void Spare(RunBlank part, int over, GrainAxis axis, PlannedCut cut)
    {
        RunBlank waste = _blanks[over];
        bool isAlong = axis == GrainAxis.Along;
        Length sound = isAlong ? waste.Along - waste.Trim.AlongEnd : waste.Across - waste.Trim.AcrossEnd;
        Length beside = isAlong ? waste.Trim.AcrossStart + waste.Trim.AcrossEnd : waste.Trim.AlongStart + waste.Trim.AlongEnd;
        int spares = (int)((sound.Ticks + cut.Kerf.Ticks) / (cut.Figure.Ticks + cut.Kerf.Ticks));
        if (part.Use != BlankUse.Part || waste.Use != BlankUse.Waste || beside.Sign > 0 || !waste.Flaws.IsEmpty || spares < 1) return;
        _blanks[over] = waste with { PartId = part.PartId, Turn = part.Turn, Spares = spares };
    }

    private int Add(Wood wood, int?[] sides)
    {
        int id = _blanks.Count;
        _idOf[wood] = id;
        _sides.Add(sides);
        _blanks.Add(new(id, wood.Material, wood.Stock, wood.Along, wood.Across, wood.Use)
        {
            PartId = wood.PartId,
            Turn = wood.Turn,
            Waiting = [.. wood.Waiting],
            Trim = wood.Trim,
            Flaws = wood.Flaws,
        });
        return id;
    }

    private static int?[] With(int?[] sides, BlankSide side, int? run)
    {
        int?[] made = [.. sides];
        made[(int)side] = run;
        return made;
    }

    private static bool Raw(EdgeTrim trim, BlankSide side) => (side switch
    {
        BlankSide.NearEdge => trim.AcrossStart,
        BlankSide.FarEdge => trim.AcrossEnd,
        BlankSide.NearEnd => trim.AlongStart,
        _ => trim.AlongEnd,
    }).Sign > 0;
}

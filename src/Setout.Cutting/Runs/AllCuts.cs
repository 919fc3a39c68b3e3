using System.Collections.Immutable;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>All cuts of all layouts before they have an order, and what writes the layouts again once they have.</summary>
internal sealed class AllCuts
{
    private readonly List<CutGroup> _groups = [];
    private readonly List<NoWay> _refusals = [];
    private readonly List<NoWay> _later = [];
    private readonly List<Wood> _stock = [];
    private readonly List<(int Material, Func<CutTurns, LaidSheet> Ordered)> _sheets = [];
    private readonly List<(int Material, Func<CutTurns, LaidBoard> Ordered)> _boards = [];

    public AllCuts(ImmutableArray<RunMaterial> materials, CutWays ways)
    {
        Materials = materials;
        for (int m = 0; m < materials.Length; m++)
        {
            if (materials[m] is RunSheets panel)
            {
                var breaking = new SheetBreaking(panel, m, ways, _groups, _refusals, _later);
                for (int i = 0; i < panel.Layout.Sheets.Length; i++)
                {
                    (Wood blank, Func<CutTurns, LaidSheet> ordered) = breaking.Break(i);
                    _stock.Add(blank);
                    _sheets.Add((m, ordered));
                }
            }
            else if (materials[m] is RunBoards stick)
            {
                var breaking = new BoardBreaking(stick, m, ways, _groups, _refusals);
                for (int i = 0; i < stick.Layout.Boards.Length; i++)
                {
                    (Wood blank, Func<CutTurns, LaidBoard> ordered) = breaking.Break(i);
                    _stock.Add(blank);
                    _boards.Add((m, ordered));
                }
            }
        }
    }

    public ImmutableArray<RunMaterial> Materials { get; }

    public IReadOnlyList<CutGroup> Groups => _groups;

    public IReadOnlyList<NoWay> Refusals => _refusals;

    /// <summary>What would be refused next, once those are mended.</summary>
    public IReadOnlyList<NoWay> Later => _later;

    public IReadOnlyList<Wood> Stock => _stock;

    public int Count => _groups.Sum(g => g.Cuts.Count);

    /// <summary>The layouts of sheets with their slices in the order of sawing.</summary>
    public ImmutableDictionary<int, SheetLayout> Sheets(CutTurns turns) => Given<RunSheets, LaidSheet, SheetLayout>(_sheets, turns, (m, laid) => m.Layout with { Sheets = laid });

    /// <summary>The layouts of boards with their lanes and parts in the order of sawing.</summary>
    public ImmutableDictionary<int, BoardLayout> Boards(CutTurns turns) => Given<RunBoards, LaidBoard, BoardLayout>(_boards, turns, (m, laid) => m.Layout with { Boards = laid });

    private ImmutableDictionary<int, TLayout> Given<TMaterial, TLaid, TLayout>(
        List<(int Material, Func<CutTurns, TLaid> Ordered)> laid, CutTurns turns, Func<TMaterial, ImmutableArray<TLaid>, TLayout> with)
        where TMaterial : RunMaterial
    {
        ILookup<int, TLaid> of = laid.ToLookup(l => l.Material, l => l.Ordered(turns));
        return Enumerable.Range(0, Materials.Length).Where(m => Materials[m] is TMaterial).ToImmutableDictionary(m => m, m => with((TMaterial)Materials[m], [.. of[m]]));
    }
}

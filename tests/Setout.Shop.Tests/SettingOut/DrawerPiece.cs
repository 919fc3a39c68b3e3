using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>
/// One case with drawers in an opening of 16 x 10 x 21 in; sides of 1/2 in, bottoms of 1/4 in, fronts of 3/4 in, grid 1/64 in. The box of D is 5 3/4 in
/// high; by the rules of side-mounted slides it is 16 - 1 - 1/32 = 14 31/32 wide and 20 long.
/// </summary>
internal static class DrawerPiece
{
    public const string Box = "{drawer: D, box height: 5 3/4}";

    public static string Written(string kind, string drawers = Box, string bank = "", string unit = "in", string depth = "21 in", string side = "1/2 in", string grid = "1/64 in") => $$$"""
        setout: 1
        name: Ways of drawers
        unit: {{{unit}}}
        grid: {{{grid}}}
        materials:
          wood: {panel: hardwood plywood, thickness: 3/4 in}
          thin: {panel: hardwood plywood, thickness: {{{side}}}}
          flat: {panel: hardwood plywood, thickness: 1/4 in}
          strips: {stick: beech, section: 3/4 in x 1 in}
        drawers:
          k: {sides: thin, bottom: flat, front: wood{{{(kind.Length > 0 ? ", " + kind : "")}}}}
        assembly:
          - {case: C, of: wood, width: 17 1/2 in, height: 11 1/2 in, depth: {{{depth}}}, drawers: {like: k{{{(bank.Length > 0 ? ", " + bank : "")}}}, down: [{{{drawers}}}]}}
        """;

    public static SetPiece Out(string kind, string drawers = Box, string bank = "", string unit = "in", string depth = "21 in", string side = "1/2 in", string grid = "1/64 in") =>
        SetOut(Written(kind, drawers, bank, unit, depth, side, grid));

    /// <summary>Set out with nothing to remark, and buildable as the checker of finished pieces sees it.</summary>
    public static SetPiece Sound(string kind, string drawers = Box, string bank = "", string unit = "in", string depth = "21 in", string side = "1/2 in")
    {
        SetPiece set = Out(kind, drawers, bank, unit, depth, side);
        Assert.DoesNotContain(set.Findings, f => f.Severity != Severity.Note);
        Assert.Empty(SetPieceChecker.Violations(set));
        return set;
    }

    /// <summary>The only finding over a note, with its code; null for none.</summary>
    public static (string Code, Severity Severity)? Only(SetPiece set) =>
        set.Findings.Where(f => f.Severity != Severity.Note).ToList() is { Count: > 0 } found ? (Assert.Single(found).Code, found[0].Severity) : null;

    public static Placement Place(this SetPiece set, string part, int index = 0) => set.Parts.Single(p => p.Key == part).Placements[index];

    public static Machining Cut(this SetPiece set, string part, string words) => set.Machinings.Single(m => m.Part == part && m.Words.Contains(words, StringComparison.Ordinal));
}

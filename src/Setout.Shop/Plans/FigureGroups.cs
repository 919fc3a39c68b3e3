using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Cutting.Sheets;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>The fronts of a bank whose figure runs through, as figure groups of a layout.</summary>
internal static class FigureGroups
{
    /// <summary>
    /// A group for each bank, and for each row over several banks, of this material that asks for it. The figure of a front runs from side to side, so its fronts follow each other across
    /// the grain. A front that is cut already parts its bank: those above and those below it run through among themselves.
    /// </summary>
    /// <param name="set">The piece.</param>
    /// <param name="panel">The material that is laid out.</param>
    /// <param name="parts">What is to be laid out of it.</param>
    /// <param name="findings">Told where the material has no grain to keep.</param>
    public static ImmutableArray<FigureGroup> Of(SetPiece set, Panel panel, IEnumerable<Part> parts, List<Finding> findings)
    {
        Dictionary<string, Part> there = parts.ToDictionary(p => p.Key, StringComparer.Ordinal);
        ImmutableArray<FigureGroup>.Builder groups = ImmutableArray.CreateBuilder<FigureGroup>();
        foreach (DrawerBank bank in Banks(set.Piece).Where(b => b.FigureThrough))
        {
            Part[] fronts = [.. bank.Drawers.Select(d => there.GetValueOrDefault($"{d.Key}.front")).OfType<Part>()];
            if (fronts.FirstOrDefault(f => f.Grain != Grain.Keep) is { } free)
            {
                findings.Add(new("figure.no-grain", Severity.Warn, free.Key, $"The figure of {free.Name} and of those below it cannot be made to run through: {panel.Name} has no grain to keep.",
                    $"Take 'figure: through' off, {set.Piece.Hand.OrWrite("grain", "keep")} for {panel.Name}.", free.Place));
                continue;
            }
            var run = new List<string>();
            foreach (Drawer drawer in bank.Drawers)
            {
                if (there.TryGetValue($"{drawer.Key}.front", out Part? front)) run.Add(front.Key);
                else Close(run, groups);
            }
            Close(run, groups);
        }
        foreach (ImmutableArray<DrawerBank> face in Faces(set.Piece)) AddRows(set.Piece.Hand, face, panel, there, groups, findings);
        return groups.ToImmutable();
    }

    /// <summary>Row by row the fronts of banks side by side, along the grain; a front that is cut already, or of another sheet, parts its row.</summary>
    private static void AddRows(Hand hand, ImmutableArray<DrawerBank> face, Panel panel, Dictionary<string, Part> there, ImmutableArray<FigureGroup>.Builder groups, List<Finding> findings)
    {
        Part[] fronts = [.. face.SelectMany(b => b.Drawers).Select(d => there.GetValueOrDefault($"{d.Key}.front")).OfType<Part>()];
        if (fronts.Length == 0) return;
        if (fronts.FirstOrDefault(f => f.Grain != Grain.Keep) is { } free)
        {
            findings.Add(new("figure.no-grain", Severity.Warn, free.Key, $"The figure of {free.Name} and of those beside it cannot be made to run through: {panel.Name} has no grain to keep.",
                $"Take 'figure: in rows' off, {hand.OrWrite("grain", "keep")} for {panel.Name}.", free.Place));
            return;
        }
        if (face.Length < 2 || face.Any(b => b.Drawers.Length != face[0].Drawers.Length))
        {
            findings.Add(new("figure.no-rows", Severity.Warn, fronts[0].Key, face.Length < 2
                ? $"The figure of {fronts[0].Name} has no bank beside it to run on to."
                : $"The figure of {fronts[0].Name} cannot run on from bank to bank: they have {string.Join(", ", face.Select(b => b.Drawers.Length))} drawers.",
                "Give banks that stand side by side as many drawers each, all with 'figure: in rows', or take it off.", fronts[0].Place));
            return;
        }
        for (int row = 0; row < face[0].Drawers.Length; row++)
        {
            var run = new List<string>();
            foreach (DrawerBank bank in face)
            {
                if (there.TryGetValue($"{bank.Drawers[row].Key}.front", out Part? front)) run.Add(front.Key);
                else Close(run, groups, GrainAxis.Along);
            }
            Close(run, groups, GrainAxis.Along);
        }
    }

    /// <summary>Says of each group that fits no stock that it does not, once; gives the reasons that are left.</summary>
    public static IEnumerable<CuttingReason> Report(
        SetPiece set, Panel panel, ImmutableArray<StockLine> stock, SheetInstance instance, ImmutableArray<CuttingReason> reasons, List<Finding> findings)
    {
        foreach (FigureGroup group in instance.Groups.Where(g => reasons.Any(r => r.Kind == ReasonKind.FigureTooLarge && r.Subject == g.PartIds[0])))
        {
            Part[] parts = [.. group.PartIds.Select(id => set.Parts.First(p => p.Key == id))];
            findings.Add(new("figure.too-large", Severity.Stop, parts[0].Key,
                $"{string.Join(", ", parts.Select(p => p.Name))} cannot be cut {(group.Axis == GrainAxis.Along ? "beside" : "below")} each other from one sheet of {panel.Name}: {string.Join("; ", stock.Select(s => s.Words))}.",
                $"Offer a larger size in {set.Piece.Hand.Shop}, or take 'figure: {(group.Axis == GrainAxis.Along ? "in rows' off the banks" : "through' off the bank")}.", parts[0].Place));
        }
        return reasons.Where(r => r.Kind != ReasonKind.FigureTooLarge);
    }

    private static void Close(List<string> run, ImmutableArray<FigureGroup>.Builder groups, GrainAxis axis = GrainAxis.Across)
    {
        if (run.Count > 1) groups.Add(new($"figure of {run[0]}", axis, [.. run]));
        run.Clear();
    }

    /// <summary>Banks side by side whose figure runs on from one to the next, from the left.</summary>
    /// <param name="Banks">The banks.</param>
    /// <param name="AtLeft">Whether they begin at the left side of their structure.</param>
    /// <param name="AtRight">Whether they go on to its right side.</param>
    private sealed record Face(ImmutableArray<DrawerBank> Banks, bool AtLeft, bool AtRight);

    /// <summary>The faces of a piece: banks that follow each other in one division, and on over structures that stand side by side with nothing between.</summary>
    private static IEnumerable<ImmutableArray<DrawerBank>> Faces(Piece piece)
    {
        var faces = new List<Face>();
        // Where the last face of a structure stands in the list, for the one beside it.
        var ends = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (Structure structure in piece.Members.OfType<Structure>())
        {
            List<Face> own = [.. structure switch { Frame frame => FacesOf(frame.Bays), Case box => FacesOf(box.Content), _ => [] }];
            if (own.Count > 0 && own[0].AtLeft && structure.Stand.Beside is { } left && ends.TryGetValue(left.Text, out int at) && faces[at].AtRight && !HasFiller(piece, left.Text, structure.Key))
            {
                faces[at] = new(faces[at].Banks.AddRange(own[0].Banks), faces[at].AtLeft, own[0].AtRight);
                ends[structure.Key] = at;
                own.RemoveAt(0);
            }
            if (own.Count == 0) continue;
            faces.AddRange(own);
            ends[structure.Key] = faces.Count - 1;
        }
        return faces.Select(f => f.Banks);
    }

    private static bool HasFiller(Piece piece, string left, string right) =>
        piece.Members.OfType<Case>().Any(c => (c.Key == left && c.Fillers.Any(f => f.IsAtRight)) || (c.Key == right && c.Fillers.Any(f => !f.IsAtRight)));

    private static IEnumerable<Face> FacesOf(OpeningContent? content)
    {
        if (content is DrawerBank { FigureInRows: true } alone) yield return new([alone], true, true);
        if (content is DoorFilling doors)
            foreach (Face behind in FacesOf(doors.Behind)) yield return behind with { AtLeft = false, AtRight = false };
        if (content is not Core.Pieces.Division division) yield break;
        var face = ImmutableArray.CreateBuilder<DrawerBank>();
        Opening[] openings = [.. division.Items.OfType<Opening>()];
        int from = 0;
        foreach ((int i, Opening opening) in openings.Index())
        {
            bool follows = division.IsAcross && opening.Content is DrawerBank { FigureInRows: true };
            if (follows && face.Count == 0) from = i;
            if (follows) face.Add((DrawerBank)opening.Content!);
            if (!follows && face.Count > 0) yield return new(face.DrainToImmutable(), from == 0, false);
            // What stands in a part of the height meets no neighbour over the whole of it.
            if (!follows) foreach (Face inner in FacesOf(opening.Content)) yield return inner with { AtLeft = false, AtRight = false };
            foreach (Face behind in FacesOf(opening.Behind?.Content)) yield return behind with { AtLeft = false, AtRight = false };
        }
        if (face.Count > 0) yield return new(face.DrainToImmutable(), from == 0, true);
    }

    private static IEnumerable<DrawerBank> Banks(Piece piece) => piece.Members.SelectMany(m => m switch
    {
        Frame frame => frame.Bays.Within(true),
        Case box => box.Content.Within(true),
        _ => [],
    }).OfType<DrawerBank>();
}

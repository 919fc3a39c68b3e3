using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>Cuts that no saw of the shop makes safely stop the plan. Such a stop is about safety: it cannot be let stand.</summary>
public static class RunFindings
{
    /// <summary>The codes, all of them about safety.</summary>
    public static ImmutableArray<string> Codes { get; } = ["run.nothing-trues", "run.too-narrow", "run.too-large", "run.against-fence"];

    /// <summary>One finding for each refusal, and for each that would come once those are mended, so that all is mended at once; those that say the same of the same part are one.</summary>
    public static ImmutableArray<Finding> Of(Plan plan)
    {
        if (plan.Runs.Refusals.IsEmpty) return [];
        BlankNames names = BlankNames.Of(plan);
        Finding Now(RunRefusal refusal) => Of(plan, names, refusal, plan.Runs.Blanks[refusal.Blank].Along, plan.Runs.Blanks[refusal.Blank].Across, "");
        // Of what comes of a sheet only one is told for each remedy: the others go with it.
        IEnumerable<Finding> next = plan.Runs.Later.Select(l => Of(plan, names, l.Refusal, l.Along, l.Across, "what comes off ")).DistinctBy(f => (f.Code, f.Remedy));
        return [.. plan.Runs.Refusals.Select(Now).Concat(next).DistinctBy(f => (f.Code, f.Key, f.Words))];
    }

    private static Finding Of(Plan plan, BlankNames names, RunRefusal refusal, Length along, Length across, string off)
    {
        SetPiece set = plan.Set;
        SawLimits saws = plan.Source.Shop.Saws;
        LengthFormat bare = LengthFormat.For(set.Piece.Shown).Bare, format = LengthFormat.For(set.Piece.Shown);
        RunBlank blank = plan.Runs.Blanks[refusal.Blank];
        bool isSheet = names.IsSheet(blank.Material), isRip = refusal.Axis == GrainAxis.Across;
        Material material = isSheet ? plan.Sheets[blank.Material].Material : plan.Boards[blank.Material - plan.Sheets.Length].Material;
        Part? part = refusal.PartIds.Select(id => set.Parts.FirstOrDefault(p => p.Key == id)).FirstOrDefault(p => p is not null);
        // The saw runs as far as the piece is wide in the other direction.
        Length cut = isRip ? along : across;
        string marks = refusal.PartIds.IsEmpty ? "" : $" for {CutLines.List(refusal.PartIds.Distinct().Select(id => set.Parts.First(p => p.Key == id).Mark).Distinct().Take(6))}";
        string figure = format.Text(refusal.Figure), on = $"{material.Name}, {off}{names.Spoken(refusal.Blank)} ({bare.Text(along)} x {format.Text(across)})";
        string line = isRip ? "rip" : "crosscut";
        (string code, string words) = refusal.Kind switch
        {
            RefusalKind.NothingTrues => ("run.nothing-trues", $"No saw of the shop makes the raw {(isRip ? "edge" : "end")} of {on} true; {figure} would go off it{marks}."),
            RefusalKind.TooNarrow => ("run.too-narrow", $"The {line} at {figure} on {on}{marks} leaves less between fence and blade than {(saws.Fence is { } f ? $"the {format.Text(f.NarrowestCarried)} that a carrier brings past" : "may pass")}, and no other saw makes it."),
            RefusalKind.AgainstTheFence => ("run.against-fence", $"The {line} at {figure} on {on}{marks} would have an edge of {format.Text(cut)} on the fence: no longer than the distance to the blade, so it turns and is thrown back. No sled or straight edge of the shop takes it."),
            _ => ("run.too-large", $"No saw of the shop takes the {line} at {figure} on {on}{marks}: {CutLines.List(Limits(set.Piece.Hand, saws, refusal, isSheet, isRip, cut, format))}."),
        };
        return new(code, Severity.Stop, part?.Key ?? material.Name, words, Remedy(set.Piece.Hand, saws, refusal, isSheet, isRip, cut, format), part?.Place ?? material.Place);
    }

    // Each limit that stands in the way, with what the cut would need there.
    private static IEnumerable<string> Limits(Hand hand, SawLimits saws, RunRefusal refusal, bool isSheet, bool isRip, Length cut, LengthFormat format)
    {
        bool isBoardCrosscut = !isSheet && !isRip, found = false;
        IEnumerable<string> Each()
        {
            if (saws.Fence is { } fence && !isBoardCrosscut)
            {
                if (refusal.Figure > fence.Widest) yield return $"the fence goes {format.Text(fence.Widest)} from the blade, it would be {format.Text(refusal.Figure)} {hand.Saw("fence", "widest")}";
                if (cut > fence.Room) yield return $"there is room for {format.Text(fence.Room)} along the fence, it would be {format.Text(cut)} {hand.Saw("fence", "room")}";
            }
            if (saws is { Fence: not null, Sled: { } sled } && (isSheet || !isRip))
            {
                if (cut > sled.Deepest) yield return $"the sled takes {format.Text(sled.Deepest)}, it would be {format.Text(cut)} {hand.Saw("sled", "deepest")}";
                if (refusal.Figure > sled.Longest) yield return $"its stop goes {format.Text(sled.Longest)} from the blade, it would be {format.Text(refusal.Figure)} {hand.Saw("sled", "longest")}";
            }
            if (isBoardCrosscut && saws.Boards is { } boards && cut > boards.Widest) yield return $"the crosscut saw takes {format.Text(boards.Widest)}, it would be {format.Text(cut)} {hand.Saw("boards", "widest")}";
            if (saws.Guided is { } guided && (isSheet || !isRip) && cut > guided.Longest) yield return $"the straight edge leads {format.Text(guided.Longest)}, it would be {format.Text(cut)} {hand.Saw("guided", "longest")}";
        }
        foreach (string limit in Each())
        {
            found = true;
            yield return limit;
        }
        if (!found) yield return "there is no saw for it that is safe";
    }

    private static string Remedy(Hand hand, SawLimits saws, RunRefusal refusal, bool isSheet, bool isRip, Length cut, LengthFormat format)
    {
        var ways = new List<string>();
        if (!isSheet && isRip)
            return $"Take another board for it: {hand.Say("write 'rip: no' for this one in the shop file", $"set “rip” to no for this one among {ShopHands.WoodOfPage}")}; or, where the fence has the reach, tell it there: widest at least {format.Text(refusal.Figure)}, room at least {format.Text(cut)}, carrier at most {format.Text(refusal.Figure)} {hand.Saw("fence")}.";
        if (!isSheet) ways.Add($"a crosscut saw for boards at least {format.Text(cut)} wide {hand.Saw("boards", "widest")}");
        ways.Add(saws.Guided is null
            ? $"a hand-held saw with a straight edge of at least {format.Text(cut)} {hand.Saw("guided", "longest")}"
            : $"a straight edge of at least {format.Text(cut)} for the hand-held saw {hand.Saw("guided", "longest")}");
        if (refusal.Kind != RefusalKind.NothingTrues) return $"It takes {string.Join(", or ", ways)}, in {hand.Shop}; or have it cut where there is a saw for it.";
        string later = isSheet && saws.Guided is null ? Later(saws, format) : "";
        return $"It takes {string.Join(", or ", ways)}, in {hand.Shop}; or {hand.Say("write 'trim: 0' at its line of stock, in the file where that stands", $"set “trim” to 0 at its line among {ShopHands.WoodOfPage}, or of the sizes of the piece")}, if it is true already.{later}";
    }

    // A sheet that is true still has to be parted: what only the hand-held saw would do is told at once.
    private static string Later(SawLimits saws, LengthFormat format)
    {
        string fence = saws.Fence is { } f ? $" rips up to {format.Text(f.Widest)} wide and {format.Text(f.Room)} long at the fence" : "";
        string sled = saws is { Fence: not null, Sled: { } d } ? $"{(fence.Length > 0 ? " and" : "")} cuts up to {format.Text(d.Deepest)} long on the sled" : "";
        return fence.Length + sled.Length > 0 ? $" Without a hand-held saw the rest of the sheet must do with{fence}{sled}; larger cuts are stopped next." : "";
    }
}

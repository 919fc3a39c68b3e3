using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>Says which saws of the runs are taken as usual, because the shop file says nothing of them.</summary>
internal static class UsualSaws
{
    /// <summary>One sentence; empty where the shop file tells of all that are used.</summary>
    public static string Of(Plan plan)
    {
        LengthFormat format = LengthFormat.For(plan.Set.Piece.Shown);
        SawLimits saws = plan.Source.Shop.Saws;
        HashSet<SawWay> used = [.. plan.Runs.Runs.Select(r => r.Way)];
        string[] said =
        [
            .. Enum.GetValues<SawWay>().Where(w => used.Contains(w) && !plan.Source.Shop.SawsTold.Contains(w)).Select(w => w switch
            {
                SawWay.Fence => $"a fence up to {format.Text(saws.Fence!.Widest)} from the blade",
                SawWay.Sled => $"a sled for cuts up to {format.Text(saws.Sled!.Deepest)}, its stop up to {format.Text(saws.Sled.Longest)} from the blade",
                SawWay.Guide => $"a hand-held saw with a straight edge of {format.Text(saws.Guided!.Longest)}",
                _ => $"a crosscut saw for boards up to {format.Text(saws.Boards!.Widest)} wide",
            }),
        ];
        return said.Length == 0 ? "" : $"Taken as usual, because {plan.Set.Piece.Hand.Shop} says nothing of it: {CutLines.List(said)}. Where yours is another, or you have none, {plan.Set.Piece.Hand.Say("write it under saws in the shop file", $"say so among {ShopHands.SawsOfPage}")} before you cut.";
    }
}

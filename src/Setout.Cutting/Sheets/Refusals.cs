using Setout.Core.Measures;

namespace Setout.Cutting.Sheets;

/// <summary>Words for parts that fit no stock, with the figures that say why.</summary>
internal static class Refusals
{
    /// <summary>Why a part, or the block of a figure group it belongs to, fits no stock.</summary>
    /// <param name="instance">The order.</param>
    /// <param name="part">The part that is refused.</param>
    /// <param name="block">The block it belongs to; null when it stands alone.</param>
    public static CuttingReason Of(SheetInstance instance, SheetPart part, FigureBlock? block)
    {
        SheetPart unit = block?.Block ?? part;
        string size = block is null
            ? $"part {part.Id} ({part.Along} along by {part.Across} across the grain)"
            : $"the {block.Members.Length} parts {string.Join(", ", block.Members.Select(m => m.Id))} together ({unit.Along} along by {unit.Across} across the grain, kerfs between them counted; their figure runs through)";
        CuttingReason Say(ReasonKind kind, string words) => new(block is null ? kind : ReasonKind.FigureTooLarge, part.Id, $"{size} {words}");

        SheetStock[] there = [.. instance.Stock.Where(s => s.Limit != 0)];
        if (there.Length == 0) return new(ReasonKind.StockTooLittle, part.Id, $"{size} {(block is null ? "has" : "have")} no stock to come from: every limit is 0");
        string fit = block is null ? "would fit" : "would fit as a block";
        if (there.FirstOrDefault(s => FitsSomehow(instance, unit, s)) is { } deep)
            return Say(ReasonKind.StagesTooFew, $"{fit} stock {deep.Id}, {deep.TruedAlong} by {deep.TruedAcross} once trued, but {(block is null ? "takes" : "take")} {SheetInstance.StagesAlone(unit, block, instance.Fits(unit, Turn.None, deep) ? Turn.None : Turn.Quarter, deep)} divisions there, and at most {instance.MostStages} may be made");
        SheetInstance tight = instance with { Slack = Length.Zero };
        if (there.FirstOrDefault(s => FitsSomehow(tight, unit, s)) is { } short_)
            return Say(ReasonKind.PartTooLarge, $"{fit} stock {short_.Id}, {short_.TruedAlong} by {short_.TruedAcross} once trued, but for the slack of {instance.Slack} that stays free");
        SheetPart free = unit with { Grain = GrainRule.Free };
        if (there.FirstOrDefault(s => instance.Fits(free, Turn.Quarter, s)) is { } turned)
            return Say(ReasonKind.PartNeedsTurning, $"{fit} stock {turned.Id} only if {(block is null ? "it were turned, and its grain is" : "they were turned, and their grain is")} to be kept");
        Length longest = there.Max(instance.UsableAlong), widest = there.Max(instance.UsableAcross);
        string once = instance.Slack.Sign > 0 ? $"once trued and with a slack of {instance.Slack}" : "once trued";
        string is_ = block is null ? "is" : "are";
        return Say(ReasonKind.PartTooLarge,
            unit.Grain == GrainRule.Keep && unit.Along > longest ? $"{is_} longer than any stock, which is {longest} at most {once}"
            : unit.Grain == GrainRule.Keep && unit.Across > widest ? $"{is_} wider than any stock, which is {widest} at most {once}"
            : $"{(block is null ? "fits" : "fit")} no stock whichever way it may lie; {once}, stock is {longest} along and {widest} across at most");
    }

    private static bool FitsSomehow(SheetInstance instance, SheetPart part, SheetStock stock) =>
        instance.Fits(part, Turn.None, stock) || instance.Fits(part, Turn.Quarter, stock);
}

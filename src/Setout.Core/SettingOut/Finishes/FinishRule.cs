using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Finishes;

/// <summary>What the finishes of a piece come to: cans to buy, and what is still to be said of them. How far a can goes is never assumed.</summary>
internal static class FinishRule
{
    /// <summary>Adds it to a piece that is set out.</summary>
    public static SetPiece Into(SetPiece set)
    {
        if (set.Piece.Finishes.IsEmpty || set.IsStopped) return set;
        ImmutableArray<FinishWork> all = FinishWork.Of(set);
        return set with { Hardware = [.. set.Hardware, .. all.Where(w => !w.Parts.IsEmpty).Select(w => Item(set, w))], Findings = [.. set.Findings, .. all.SelectMany(w => Findings(set, w))] };
    }

    private static HardwareItem Item(SetPiece set, FinishWork work)
    {
        (Finish finish, LengthUnit unit) = (work.Finish, set.Piece.Shown);
        string sum = $"{AmountText.Of(work.Area, unit)}{(finish.Coats > 1 ? $" x {finish.Coats} coats = {AmountText.Of(work.Coated, unit)}" : "")}";
        if (work.Needed is not { } needed || finish.Covers is not { } covers)
            return new(finish.Name, $"{finish.Product.Text}, to coat {AmountText.Of(work.Coated, set.Piece.Unit)}", 1, "", $"{sum}; how far a can goes stands on the can") { IsByAmount = true };
        string takes = $"{sum}; {AmountText.Of(covers)}, as its label says: {AmountText.Needed(needed)}";
        return finish.Can is { } can && work.Cans is { } cans
            ? new(finish.Name, $"{finish.Product.Text}, can of {AmountText.Of(can)}", cans, "can", takes)
            : new(finish.Name, $"{finish.Product.Text}, {AmountText.Needed(needed)}", 1, "", takes) { IsByAmount = true };
    }

    private static IEnumerable<Finding> Findings(SetPiece set, FinishWork work)
    {
        Finish finish = work.Finish;
        foreach (Named word in finish.On)
        {
            Part[] parts = [.. FinishWork.PartsOf(set, word.Text)];
            if (parts.Length == 0)
                yield return new("finish.unknown", Severity.Warn, finish.Name, $"Finish {finish.Name} is to go on '{word.Text}', and no part is that, belongs to it or is of it.", "Name parts, what they belong to, or materials of the piece.", word.Place);
            else if (parts.All(p => Surface.Of(set, p).Flats.IsEmpty))
                yield return new("finish.idle", Severity.Warn, finish.Name, $"Finish {finish.Name} is to go on '{word.Text}', which takes none: {Surface.Of(set, parts[0]).Without}.", "Leave it out.", word.Place);
        }
        if (finish.On.IsEmpty && work.Parts.IsEmpty)
            yield return new("finish.idle", Severity.Warn, finish.Name, $"Nothing is left for finish {finish.Name}: the others name all that takes one.", $"Say with {set.Piece.Hand.Key("on")} what it goes on, or leave it out.", finish.Place);
        if (work.IsBeyondCans)
            yield return new("finish.too-many-cans", Severity.Warn, finish.Name, $"Finish {finish.Name} would take more than {FinishWork.MostCans} cans of {AmountText.Of(finish.Can!.Value)}.", $"Look at the label again, and mend {set.Piece.Hand.Key("covers")} or {set.Piece.Hand.Key("can")}.", finish.Place);
        if (finish.Covers is null && !work.Parts.IsEmpty)
            yield return new("finish.no-coverage", Severity.Note, finish.Name, $"Nobody has said how far {finish.Product.Text} goes, so nothing can be said of how much of it to buy{(finish.Can is { } can ? $" in cans of {AmountText.Of(can)}" : "")}.",
                "Read it on the can, the smaller figure where two stand there, and write for example 'covers: 125 sq ft per quart' or 'covers: 12 m2 per l'.", finish.Place);
    }
}

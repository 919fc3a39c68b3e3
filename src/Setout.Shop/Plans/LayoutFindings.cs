using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>What there is to say about stock and layouts, in the words of the piece.</summary>
internal static class LayoutFindings
{
    /// <summary>
    /// Leaves out what nothing can be cut from, with a warning about each; where nothing else is offered, or nothing at all, that stops the plan. True when
    /// nothing is left to lay parts on.
    /// </summary>
    public static bool NoStock(ref ImmutableArray<StockLine> stock, Hand hand, Material material, Length trim, Length slack, LengthFormat format, List<Finding> findings)
    {
        ILookup<bool, StockLine> byUse = stock.ToLookup(l => StockOffers.Survives(l, trim, slack));
        stock = [.. byUse[true]];
        bool goesOn = !stock.IsEmpty;
        findings.AddRange(byUse[false].Select(l => StockOffers.Refusal(l, material, trim, slack, format)).Select(f => goesOn ? f with { Severity = Severity.Warn, Words = $"{f.Words} It is left out of the layouts." } : f));
        if (goesOn) return false;
        if (byUse[false].Any()) return true;
        findings.Add(new("stock.none", Severity.Stop, material.Name, $"No stock is known for {material.Name}.",
            material is Panel ? $"Add 'sizes: [{{size: 96 x 48, price: 60}}]' to it, or put it in {hand.Shop}." : $"Add 'lengths: [{{length: 96, price: 6}}]' to it, or put it in {hand.Shop}.", material.Place));
        return true;
    }

    public static void NotPriced(bool priced, Hand hand, Material material, List<Finding> findings)
    {
        if (priced) return;
        // Said once, with every material it is true of.
        int said = findings.FindIndex(f => f.Code == "stock.no-price");
        string names = said >= 0 ? $"{findings[said].Key}, {material.Name}" : material.Name;
        var note = new Finding("stock.no-price", Severity.Note, names, $"Not every size of {names} has a price; the least wood was laid out instead of the least money.", $"Put prices into {hand.Shop}.", said >= 0 ? findings[said].Place : material.Place);
        if (said >= 0) findings[said] = note;
        else findings.Add(note);
    }

    public static void Report(SetPiece set, Material material, ImmutableArray<StockLine> stock, IEnumerable<CuttingReason> reasons, List<Finding> findings, Length trim, Length slack)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        foreach (CuttingReason reason in reasons)
        {
            Part? part = set.Parts.FirstOrDefault(p => p.Key == reason.Subject);
            string size = part is null ? "" : $"{part.Name} ({format.Bare.Text(set.ToCut(part.Length))} x {format.Text(set.ToCut(part.Width))})";
            string offered = string.Join("; ", stock.Select(s => s.Words));
            string trimmed = $"{format.Text(trim)} is trued off each {(material is Panel ? "edge" : "end")} unless the stock says otherwise{(slack.Sign > 0 ? $", and a slack of {format.Text(slack)} stays free" : "")}";
            Finding? finding = reason.Kind switch
            {
                ReasonKind.PartTooLarge => new("part.too-long", Severity.Stop, reason.Subject, $"{size} is larger than any stock of {material.Name}: {offered}; {trimmed}.",
                    $"Offer a larger size in {set.Piece.Hand.Shop}, make the part smaller, or join it.", part?.Place ?? default),
                ReasonKind.PartNeedsTurning => new("part.against-grain", Severity.Stop, reason.Subject, $"{size} fits the stock of {material.Name} only across its grain: {offered}.",
                    $"{set.Piece.Hand.Write("grain", "free")} for {material.Name} if the grain does not matter, or offer a longer size.", part?.Place ?? default),
                ReasonKind.StockTooLittle or ReasonKind.StockRanOut => new("stock.too-little", Severity.Stop, part?.Key ?? material.Name,
                    $"The stock of {material.Name} does not suffice: {offered}.", "Add a size that can be bought.", part?.Place ?? material.Place),
                _ => null,
            };
            if (finding is not null && !findings.Any(f => f.Code == finding.Code && f.Key == finding.Key)) findings.Add(finding);
        }
    }
}

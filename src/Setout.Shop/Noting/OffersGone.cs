using System.Collections.Immutable;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;

namespace Setout.Shop.Noting;

/// <summary>What is not upset any more, and what is offered no longer where something is: when one of two remedies that undo each other is carried out, the other goes, with why.</summary>
public static class OffersGone
{
    /// <summary>A sentence each; empty where nothing was upset before.</summary>
    /// <param name="before">The piece before.</param>
    /// <param name="after">The piece after.</param>
    /// <param name="shop">The shop with its rack as it stands after it.</param>
    public static ImmutableArray<string> Of(SetPiece before, SetPiece after, Texts.Shop shop)
    {
        if (before.IsStopped || after.IsStopped) return [];
        ImmutableArray<Upset> was = Remedies.UpsetsOf(before), @is = Remedies.UpsetsOf(after);
        LengthFormat format = LengthFormat.For(after.Piece.Shown);
        string Now(Upset gone) => gone.Kind == UpsetKind.GapOut && after.Worked.Values.TryGetValue(gone.Key, out var worked) ? $": it comes to {format.Text(worked.Value)} now" : "";
        Upset[] gone = [.. was.Where(w => @is.All(i => i.Key != w.Key) && after.Worked.Values.ContainsKey(w.Key))];
        Upset[] stay = [.. was.Where(w => @is.Any(i => i.Key == w.Key)).Take(FactAccount.MostUpsets)];
        return [.. gone.Where(g => g.Kind != UpsetKind.PartDiffers).Select(g => $"no longer upset, and nothing is offered for it any more: {g.Name}{Now(g)}"), .. stay.Length == 0 || was.Select(u => u.Words).SequenceEqual(@is.Select(u => u.Words)) ? [] : Fewer(before, after, shop, stay)];
    }

    private static IEnumerable<string> Fewer(SetPiece before, SetPiece after, Texts.Shop shop, Upset[] stay)
    {
        ImmutableArray<MendingAdvice> Advice(SetPiece set) => Remedies.For(set, shop.Shims, Plans.Blanks.Of(set, shop), u => stay.Any(s => s.Key == u.Key), FactAccount.MostUpsets);
        ImmutableArray<MendingAdvice> now = Advice(after);
        foreach (MendingAdvice then in Advice(before))
        {
            HashSet<string> kept = [.. now.First(a => a.Upset.Key == then.Upset.Key).Remedies.Select(r => r.Lead)];
            foreach (Remedy remedy in then.Remedies.Where(r => !r.Acts.IsEmpty && !kept.Contains(r.Lead)))
                yield return $"no longer offered for {then.Upset.Name}: {remedy.Lead}; it would undo what was done or read now, or something else would be put out by it";
        }
    }
}

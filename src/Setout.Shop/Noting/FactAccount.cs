using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Fit.Mending;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;

namespace Setout.Shop.Noting;

/// <summary>What a fact or an edit came to: what moved, what it says now that it did not say before, what it upset and what can be done about that.</summary>
/// <param name="Before">The piece before.</param>
/// <param name="After">The piece after.</param>
/// <param name="Ripple">What changed; a finding whose figures changed counts as new and not as gone.</param>
/// <param name="Upset">What is upset now and was not, with its remedies; at most <see cref="MostUpsets"/> by default.</param>
/// <param name="MoreUpset">How many more are.</param>
public sealed record FactAccount(SetPiece Before, SetPiece After, Ripple Ripple, ImmutableArray<MendingAdvice> Upset, int MoreUpset)
{
    /// <summary>More at once than a person would mend before reading on.</summary>
    public const int MostUpsets = 8;

    /// <summary>The findings worth telling at once: all but notes, and what is said of readings and choices.</summary>
    public IEnumerable<Finding> Told => Ripple.NewFindings.Where(f => f.Severity > Severity.Note || f.Code.StartsWith("reading.", StringComparison.Ordinal) || f.Code.StartsWith("choice.", StringComparison.Ordinal));

    /// <summary>The account of a change.</summary>
    /// <param name="before">The piece before.</param>
    /// <param name="after">The piece after.</param>
    /// <param name="shop">The shop with its rack as it stands after it.</param>
    /// <param name="most">For so many remedies are worked out, which takes longer than all the rest; the others only count.</param>
    public static FactAccount Of(SetPiece before, SetPiece after, Texts.Shop shop, int most = MostUpsets)
    {
        Ripple ripple = Ripple.Of(before, after);
        // A finding whose figures changed is told once, as it is now.
        ripple = ripple with { GoneFindings = [.. ripple.GoneFindings.Where(g => !ripple.NewFindings.Any(n => n.Code == g.Code && n.Key == g.Key))] };
        HashSet<string> known = [.. Remedies.UpsetsOf(before).Select(u => u.Words)];
        ImmutableArray<Upset> fresh = [.. Remedies.UpsetsOf(after).Where(u => !known.Contains(u.Words))];
        ImmutableArray<MendingAdvice> upset = fresh.IsEmpty || most == 0 ? [] : Remedies.For(after, shop.Shims, Blanks.Of(after, shop), u => !known.Contains(u.Words), most);
        return new(before, after, ripple, upset, fresh.Length - upset.Length);
    }

    /// <summary>How the chances changed, in one line; none where nothing could fail to fit. It takes longer than the rest.</summary>
    /// <param name="accuracy">How closely the shop works.</param>
    public IEnumerable<string> Chances(Accuracy accuracy) => FitLines.Change(After, FitCheck.Now(Before, accuracy), FitCheck.Now(After, accuracy));
}

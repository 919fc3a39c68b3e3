using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>
/// How deep rabbets and dadoes are, and how deep they may be. A rabbet: half the thickness of what it holds at least (a woodworking reference page), two
/// thirds of the panel it is cut in at most (a furniture-building book). A dado: a third of the panel, half at most (common practice, no source).
/// </summary>
internal static class LetInRule
{
    /// <summary>How far one goes into the other; null where they only meet.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="owner">The key it belongs to.</param>
    /// <param name="what">What the depth is called in its key, before <c>.depth</c>.</param>
    /// <param name="name">For people.</param>
    /// <param name="choice">The joint.</param>
    /// <param name="cuts">The thicknesses of the panels that are cut, one or more; the thinnest decides.</param>
    /// <param name="held">The thickness of what goes in.</param>
    public static PartSize? Depth(Book book, string owner, string what, string name, JointChoice choice, ImmutableArray<QuantityKey> cuts, QuantityKey held)
    {
        (string key, string said) = ($"{what}.depth", $"{name}, depth");
        if (choice.Joint is not (CaseJoint.Rabbet or CaseJoint.Dado))
        {
            if (choice.Depth is { } unused)
                book.Note("joint.depth-unused", Severity.Warn, owner, $"{name}: a depth is given, but this joint has none.", "Leave the depth out, or choose dado.", unused.Place);
            return null;
        }
        if (choice.Depth is { } given) return book.DefineSize(owner, key, said, given.Stated, Rounding.Nearest, "to the nearest step");
        if (choice.Joint == CaseJoint.Rabbet)
        {
            TradeRule least = TradeRules.Get("CJ1");
            return book.DefineSize(owner, key, said, new Sum([Term.From("what it holds", 1, held)], least.Share), Rounding.Up, $"up: at least {Say(least)} of the width ({least.Cited})");
        }
        TradeRule usual = TradeRules.Get("CJ3");
        Working share = cuts is [var only]
            ? new Sum([Term.From("panel it is cut in", 1, only)], usual.Share)
            : new Extreme([.. cuts.Select(c => Term.From($"{Say(usual)} of {c.Owner}", usual.Share, c))], IsLeast: true);
        return book.DefineSize(owner, key, said, share, Rounding.Down, $"down: {Say(usual)} of the panel at most ({usual.Cited})");
    }

    private static string Say(TradeRule share) => share.Figure switch { "1/2" => "half", "1/3" => "a third", "2/3" => "two thirds", var other => other };

    /// <summary>How much of a panel stays between dadoes from both its faces, at least: what two of the usual depth leave.</summary>
    public static Rational LeftBetween => Rational.One - (TradeRules.Get("CJ3").Share * Rational.Of(2, 1));

    /// <summary>Says where a cut goes through the panel, or deeper than is usual.</summary>
    public static void Check(Book book, string owner, string into, JointChoice choice, PartSize depth, QuantityKey thickness, QuantityKey? held = null)
    {
        bool isRabbet = choice.Joint == CaseJoint.Rabbet;
        Place place = choice.Depth?.Place ?? choice.Place;
        if (!IsSound(book, owner, isRabbet ? "rabbet" : "dado", into, isRabbet ? "CJ2" : "CJ4", depth, thickness, place) || !isRabbet || held is not { } width) return;
        TradeRule rule = TradeRules.Get("CJ1");
        (ExactLength deep, ExactLength least) = (book.Value(depth.AsCut), book.Value(width) * rule.Share);
        if (deep < least)
            book.NoteOnce("joint.too-shallow", Severity.Warn, owner, $"A rabbet of {book.Say(deep)} in {into} holds little of what is {book.Say(book.Value(width))} thick.", $"Make it {book.Say(least)} deep at least. ({rule.Cited})", place);
    }

    /// <summary>Whether a cut leaves as much of a panel as is usual; else a finding says what is left.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="owner">The key it belongs to.</param>
    /// <param name="word">What is cut: rabbet, dado, groove.</param>
    /// <param name="into">What it is cut in, in words.</param>
    /// <param name="rule">The rule with the most as a share of the panel.</param>
    /// <param name="depth">How deep it is.</param>
    /// <param name="thickness">Of the panel.</param>
    /// <param name="place">Where it is written.</param>
    public static bool IsSound(Book book, string owner, string word, string into, string rule, PartSize depth, QuantityKey thickness, Place place)
    {
        TradeRule most = TradeRules.Get(rule);
        ExactLength deep = book.Value(depth.AsCut), thick = book.Value(thickness);
        if (deep.Sign <= 0 && !book.HasUnknown)
        {
            bool isGrid = thick * most.Share < book.Grid.Step;
            book.NoteOnce("joint.no-depth", Severity.Stop, owner, $"A {word} in {into} comes out {book.Say(deep)} deep on a grid of {book.Say(book.Grid.Step)}.", isGrid ? $"Write a finer {book.Hand.Key("grid")}, or choose another joint." : $"Make it {book.Say(book.Grid.Step)} deep or more.", place);
            return false;
        }
        if (deep <= thick * most.Share) return true;
        string limit = book.Say(thick * most.Share);
        if (deep >= thick)
            book.NoteOnce("joint.through", Severity.Stop, owner, $"A {word} of {book.Say(deep)} goes through {into}, {book.Say(thick)} thick.", $"Make it {limit} deep at most.", place);
        else
            book.NoteOnce("joint.too-deep", Severity.Warn, owner, $"A {word} of {book.Say(deep)} leaves {book.Say(thick - deep)} of {into}, {book.Say(thick)} thick.", $"Make it {limit} deep at most. ({most.Cited})", place);
        return false;
    }
}

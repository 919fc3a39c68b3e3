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
    /// <param name="cut">The thickness of the panel that is cut.</param>
    /// <param name="held">The thickness of what goes in.</param>
    public static PartSize? Depth(Book book, string owner, string what, string name, JointChoice choice, QuantityKey cut, QuantityKey held)
    {
        (string key, string said) = ($"{what}.depth", $"{name}, depth");
        if (choice.Joint is not (CaseJoint.Rabbet or CaseJoint.Dado))
        {
            if (choice.Depth is { } unused)
                book.Note("joint.depth-unused", Severity.Warn, owner, $"{name}: a depth is given, but this joint has none.", "Leave the depth out, or choose dado.", unused.Place);
            return null;
        }
        if (choice.Depth is { } given) return book.DefineSize(owner, key, said, given.Stated, Rounding.Nearest, "to the nearest step");
        return choice.Joint == CaseJoint.Rabbet
            ? book.DefineSize(owner, key, said, new Sum([Term.From("what it holds", 1, held)], Rational.Of(1, 2)), Rounding.Up, $"up: at least half of the width ({TradeRules.Get("CJ1").Cited})")
            : book.DefineSize(owner, key, said, new Sum([Term.From("panel it is cut in", 1, cut)], Rational.Of(1, 3)), Rounding.Down, $"down: a third of the panel at most ({TradeRules.Get("CJ3").Cited})");
    }

    /// <summary>Says where a cut goes through the panel, or deeper than is usual.</summary>
    public static void Check(Book book, string owner, string into, JointChoice choice, PartSize depth, QuantityKey thickness, QuantityKey? held = null)
    {
        bool isRabbet = choice.Joint == CaseJoint.Rabbet;
        (string word, TradeRule most, Rational share) = isRabbet ? ("rabbet", TradeRules.Get("CJ2"), Rational.Of(2, 3)) : ("dado", TradeRules.Get("CJ4"), Rational.Of(1, 2));
        Place place = choice.Depth?.Place ?? choice.Place;
        ExactLength deep = book.Value(depth.AsCut), thick = book.Value(thickness);
        string limit = book.Say(thick * share);
        if (deep >= thick)
            book.NoteOnce("joint.through", Severity.Stop, owner, $"A {word} of {book.Say(deep)} goes through {into}, {book.Say(thick)} thick.", $"Make it {limit} deep at most.", place);
        else if (deep > thick * share)
            book.NoteOnce("joint.too-deep", Severity.Warn, owner, $"A {word} of {book.Say(deep)} leaves {book.Say(thick - deep)} of {into}, {book.Say(thick)} thick.",
                $"Make it {limit} deep at most. ({most.Cited})", place);
        else if (isRabbet && held is { } width && deep < book.Value(width) / 2)
            book.NoteOnce("joint.too-shallow", Severity.Warn, owner, $"A rabbet of {book.Say(deep)} in {into} holds little of what is {book.Say(book.Value(width))} thick.", $"Make it {book.Say(book.Value(width) / 2)} deep at least. ({TradeRules.Get("CJ1").Cited})", place);
    }
}

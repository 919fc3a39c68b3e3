using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>What tenons that are cut at one setting have in common.</summary>
/// <param name="Length">Of the tenon.</param>
/// <param name="Thickness">Of the tenon, and the width of its mortise.</param>
/// <param name="Shoulder">Wood at each edge of the tenon, and beyond its mortise; of a tenon that fills a groove its haunch, at the outer edge only.</param>
/// <param name="Mortise">How deep its mortise is.</param>
internal sealed record TenonSet(PartSize Length, QuantityKey Thickness, QuantityKey Shoulder, QuantityKey Mortise)
{
    /// <summary>True where the tenon is as thick as a groove that it fills.</summary>
    public bool IsOfGroove { get; init; }
}

/// <summary>How long a tenon may be.</summary>
/// <param name="Code">Of the finding past it.</param>
/// <param name="Severity">Of that finding.</param>
/// <param name="Most">The longest that will do.</param>
/// <param name="Past">What happens past it, after the length: <c>goes through ...</c>.</param>
/// <param name="Wanted">What to make it instead, where that is less than the longest that will do; null for that.</param>
internal sealed record TenonLimit(string Code, Severity Severity, ExactLength Most, string Past, ExactLength? Wanted = null);

/// <summary>
/// Tenons and their mortises in frames, face frames and doors: a third of the stock thick, 1/4 in (6 mm) of shoulder at each edge, the mortise 1/16 in (2 mm)
/// deeper for glue. All common practice, no source. Their length is for what they join.
/// </summary>
internal static class TenonRule
{
    /// <summary>Writes thickness, shoulder and mortise once for an owner; the length is written already.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="owner">The key it belongs to.</param>
    /// <param name="prefix">What its quantities' keys begin with, such as <c>frame.</c>; empty for nothing.</param>
    /// <param name="name">For people.</param>
    /// <param name="length">The length of the tenons.</param>
    /// <param name="stock">The thickness of the stock, or of a groove that the tenons fill.</param>
    /// <param name="fillsGroove">True where <paramref name="stock"/> is a groove.</param>
    public static TenonSet Of(Book book, string owner, string prefix, string name, PartSize length, QuantityKey stock, bool fillsGroove = false)
    {
        TradeRule third = TradeRules.Get("TN1"), room = TradeRules.Get("TN3");
        QuantityKey Once(string what, string words, Working working) => book.Knows(QuantityKey.Of(owner, prefix + what)) ? QuantityKey.Of(owner, prefix + what) : book.Define(owner, prefix + what, $"{name}, {words}", working);
        return new(length,
            fillsGroove ? stock : Once("thickness", "tenon thickness", new Sum([Term.From($"stock, {third.Figure} of it ({third.Cited})", 1, stock)], third.Share)),
            fillsGroove ? Once("haunch", "stile beyond a mortise", Usual.Or(book, null, "TN6", "so that its end does not break out")) : Once("shoulder", "shoulder at each edge of a tenon", Usual.Or(book, null, "TN2", "and wood beyond its mortise")),
            Once("mortise", "mortise depth", new Sum(Term.From("tenon", 1, length.AsCut), Term.From("room for glue", 1, Usual.Length(book, "TN3"), new(OriginKind.Rule, "at its end", room.Cited)))))
        { IsOfGroove = fillsGroove };
    }

    /// <summary>What stays of a stick for tenons from both its edges, each with the room of its mortise, as a working.</summary>
    public static Sum ToTheMiddle(Book book, QuantityKey width) => new([Term.From("narrowest stick", 1, width),
        Term.From("room in both mortises", -2, Usual.Length(book, "TN3"), new(OriginKind.Rule, "for glue", TradeRules.Get("TN3").Cited))], Rational.Of(1, 2));

    /// <summary>A tenon that leaves less than this goes through: one tick, as far as a length can tell.</summary>
    public static readonly ExactLength LeastLeft = Length.FromTicks(1).ToExact();

    /// <summary>The wood that stays behind the end of a tenon.</summary>
    public static ExactLength LeftBehind(Book book) => Usual.Length(book, "TN4");

    /// <summary>Notes the first limit that a tenon is past.</summary>
    public static void Check(Book book, string owner, QuantityKey length, Place place, params ReadOnlySpan<TenonLimit> limits)
    {
        ExactLength tenon = book.Value(length);
        if (tenon.Sign <= 0)
            book.NoteOnce("tenon.no-length", Severity.Stop, owner, $"A tenon of {book.Say(tenon)} is none.", $"Make it {book.Say(book.Grid.Step.ToExact())} long or more, or use another joint.", place);
        foreach (TenonLimit limit in limits)
        {
            if (tenon <= limit.Most) continue;
            book.NoteOnce(limit.Code, limit.Severity, owner, $"A tenon of {book.Say(tenon)} {limit.Past}.", $"Make it {book.Say(limit.Wanted ?? limit.Most)} at most.", place);
            return;
        }
    }

    /// <summary>The cut on what has the tenons.</summary>
    public static void Cut(Book book, string part, string words, TenonSet set) =>
        book.Machinings.Add(new(part, words, [("length", set.Length.ToCut), ("thickness", set.Thickness), ("shoulder at each edge", set.Shoulder)]) { On = Face.Ends });

    /// <summary>How long a mortise is: as wide as what has the tenon, less its shoulders; a finding where they leave nothing.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="owner">The key it belongs to.</param>
    /// <param name="what">What it is called in its key.</param>
    /// <param name="name">For people: what has the tenon.</param>
    /// <param name="set">Its tenons.</param>
    /// <param name="width">Of what has the tenon.</param>
    /// <param name="off">What else the tenon loses of its width.</param>
    /// <param name="place">Where it is written.</param>
    public static QuantityKey MortiseLength(Book book, string owner, string what, string name, TenonSet set, QuantityKey width, ImmutableArray<Term> off, Place place)
    {
        Walls(book, owner, name, set, place);
        QuantityKey length = book.Define(owner, what, $"{name}, mortise length", new Sum([Term.From("its width", 1, width), .. off.IsEmpty ? [Term.From("shoulders", -2, set.Shoulder)] : off]));
        if (book.Value(length).Sign <= 0)
            book.NoteOnce("tenon.no-width", Severity.Stop, owner, $"{name} is {book.Say(book.Value(width))} wide: its shoulders leave nothing of a tenon.", $"Use sticks more than {book.Say(book.Value(width) - book.Value(length))} wide, or another joint. ({TradeRules.Get("TN2").Cited})", place);
        return length;
    }

    /// <summary>Stock too thin for a tenon of a third of it: the walls beside the mortise, each as thick, break out.</summary>
    private static void Walls(Book book, string owner, string name, TenonSet set, Place place)
    {
        TradeRule least = TradeRules.Get("TN7"), third = TradeRules.Get("TN1");
        if (set.IsOfGroove || book.HasUnknown || book.Value(set.Thickness) >= least.Length) return;
        book.NoteOnce("tenon.thin", Severity.Warn, owner, $"A tenon of {name} is {book.Say(book.Value(set.Thickness))} thick, and so are the walls of its mortise: they break out.",
            $"Use stock of {book.SayAtLeast(least.Length * 3)} or more, or another joint. ({least.Cited}; {third.Figure} of the stock)", place);
    }

    /// <summary>A stick between posts at a height of its own: its tenons, their mortises and the joint.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="part">The part with the tenons, and the owner of their figures.</param>
    /// <param name="name">For people.</param>
    /// <param name="length">The length of the tenons.</param>
    /// <param name="section">Its thickness and its width.</param>
    /// <param name="into">The part with the mortises, and where they are in it.</param>
    /// <param name="up">From where its mortises are measured to its lower edge, and how that is said.</param>
    /// <param name="place">Where it is written.</param>
    public static void Between(Book book, string part, string name, QuantityKey length, (QuantityKey Thickness, QuantityKey Width) section, (string Part, string Where) into, (QuantityKey Key, string Words) up, Place place)
    {
        TenonSet set = Of(book, part, "tenon.", name, Book.Uncut(length), section.Thickness);
        Cut(book, part, "Tenon in the middle of both ends", set);
        QuantityKey long_ = MortiseLength(book, part, "tenon.mortise-length", name, set, section.Width, [], place);
        QuantityKey from = book.Define(part, "tenon.mortise-from", $"{name}, lower end of its mortises {up.Words}", new Sum(Term.From("its lower edge", 1, up.Key), Term.From("shoulder", 1, set.Shoulder)));
        book.Machinings.Add(new(into.Part, $"Mortises for {name}, {into.Where}", [("depth", set.Mortise), ("width", set.Thickness), ("length", long_), ($"lower end {up.Words}", from)]) { By = [part] });
        book.Joints.Add(new(JointKind.MortiseAndTenon, part, Face.Ends, into.Part, Face.Inside, "glue in the mortise") { Depth = length });
    }
}

using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>The corners of a box: what its joint does to the lengths of sides and ends, which is geometry, and how deep it goes.</summary>
/// <param name="Box">The box.</param>
/// <param name="Depth">How far an end goes into a side, or a tail into the front; null where nothing goes in, or goes through.</param>
/// <param name="Lap">What is left on the front before the tails of half-blind dovetails; null elsewhere.</param>
/// <param name="Behind">What is left of the side behind the dado of the back; null elsewhere.</param>
/// <param name="Tongue">Thickness of the tongue of a lock rabbet; null elsewhere.</param>
internal sealed record BoxCorners(Box Box, PartSize? Depth, QuantityKey? Lap, QuantityKey? Behind, PartSize? Tongue)
{
    private CornerJoint Joint => Box.Kind.Corners;

    /// <summary>True where front and back reach the outside of the box.</summary>
    public bool IsThrough => Joint is CornerJoint.BoxJoint or CornerJoint.HalfBlindDovetail or CornerJoint.ThroughDovetail;

    /// <summary>True where front and back are let into the sides, by <see cref="Depth"/>.</summary>
    public bool IsLetIn => Joint is CornerJoint.Rabbet or CornerJoint.Dado or CornerJoint.LockRabbet;

    /// <summary>From the outside width of the box to the length of its ends.</summary>
    public ImmutableArray<Term> EndLess => IsThrough ? [] : [.. Box.BothSides(-1), .. LetIn(2, false)];

    /// <summary>From an end as cut to the outside width of the box as it is made.</summary>
    public ImmutableArray<Term> BuiltMore => IsThrough ? [] : [.. Box.BothSides(1), .. LetIn(-2, true)];

    /// <summary>From an end as cut to the width inside.</summary>
    public ImmutableArray<Term> InsideLess(bool asCut) => IsThrough ? Box.BothSides(-1) : LetIn(-2, asCut);

    /// <summary>From a side as cut to the length inside.</summary>
    public ImmutableArray<Term> InsideLengthLess =>
        [.. LapTerm(1), .. Box.BothEnds(-1), .. Behind is { } left ? [Term.From("left behind the back", -1, left)] : ImmutableArray<Term>.Empty];

    /// <summary>What the lap takes off the length of the box to give that of its sides.</summary>
    public ImmutableArray<Term> LapTerm(int sign) => Lap is { } lap ? [Term.From("lap at the front", sign, lap)] : [];

    private ImmutableArray<Term> LetIn(int times, bool asCut) => IsLetIn ? [Term.From(Joint == CornerJoint.Rabbet ? "rabbets in the sides" : "let into the sides", times, asCut ? Depth!.AsCut : Depth!.ToCut)] : [];
}

/// <summary>How deep the corners of a box go, and what is cut for them.</summary>
internal static class BoxCornerRule
{
    public static BoxCorners Define(Box box)
    {
        Book book = box.Book;
        (string key, string name) = (box.Key, box.Name);
        switch (box.Kind.Corners)
        {
            case CornerJoint.Rabbet:
                return new(box, DefineDepth(box, "depth of the rabbets in the ends of its sides", "side", box.SideThickness, TradeRules.Get("DJ1").Shares[0]), null, null, null);
            case CornerJoint.Dado:
                TradeRule behind = TradeRules.Get("DJ7");
                return new(box, DefineDepth(box, "depth of rabbets and dadoes in its sides", "side", box.SideThickness, TradeRules.Get("DJ5").Shares[^1]), null,
                    book.Define(key, "corner.behind", $"{name}, side left behind the dado of its back", new Stated(behind.Length, new(OriginKind.Rule, "so that it does not break out", behind.Cited))), null);
            case CornerJoint.LockRabbet:
                PartSize depth = DefineDepth(box, "depth of the dadoes in its sides", "side", box.SideThickness, TradeRules.Get("DJ5").Shares[^1]);
                PartSize tongue = book.DefineSize(key, "corner.tongue", $"{name}, thickness of the tongues on its ends", new Sum([Term.From(box.EndWord, 1, box.EndThickness)], TradeRules.Get("DJ8").Share),
                    Rounding.Down, $"down: the tongue must go in ({TradeRules.Get("DJ8").Cited})");
                return new(box, depth, null, null, tongue);
            case CornerJoint.HalfBlindDovetail:
                PartSize tail = DefineDepth(box, "length of the tails into its front", "front of the box", box.EndThickness, TradeRules.Get("DJ2").Shares[^1]);
                return new(box, tail, book.Define(key, "corner.lap", $"{name}, lap left on its front",
                    new Sum(Term.From("front of the box", 1, box.EndThickness), Term.From("tails", -1, tail.ToCut))), null, null);
            default:
                return new(box, null, null, null, null);
        }
    }

    private static string RuleOf(CornerJoint joint) => joint switch { CornerJoint.Rabbet => "DJ1", CornerJoint.HalfBlindDovetail => "DJ2", _ => "DJ5" };

    private static PartSize DefineDepth(Box box, string words, string of, QuantityKey thickness, Rational share)
    {
        string cited = TradeRules.Get(RuleOf(box.Kind.Corners)).Cited;
        return box.Book.DefineSize(box.Key, "corner.depth", $"{box.Name}, {words}",
            box.Kind.CornerDepth?.Stated ?? (Working)new Sum([Term.From(of, 1, thickness)], share), Rounding.Down, $"down: {share} of the thickness at most ({cited})");
    }

    /// <summary>
    /// A joint deeper than the wood allows: at the whole thickness there is nothing left; past the share that is on record what is left is weak.
    /// </summary>
    public static void Check(BoxCorners corners)
    {
        if (corners.Depth is not { } size) return;
        Box box = corners.Box;
        Book book = box.Book;
        bool isLap = box.Kind.Corners == CornerJoint.HalfBlindDovetail, isRabbet = box.Kind.Corners == CornerJoint.Rabbet;
        ExactLength depth = book.Value(size.ToCut), thick = book.Value(isLap ? box.EndThickness : box.SideThickness);
        (Rational most, string rule) = isLap || isRabbet ? (TradeRules.Get(RuleOf(box.Kind.Corners)).Shares[^1], TradeRules.Get(RuleOf(box.Kind.Corners)).Cited) : (Rational.Of(1, 2), TradeRules.Get("BX7").Cited);
        if (book.IsUnknown(box.Sides.Name) || (depth.Sign > 0 && depth <= thick * most)) return;
        (string what, string wood) = isLap ? ("Tails", "front of the box") : (isRabbet ? "Rabbets" : "Dadoes", "side");
        Place place = box.Kind.CornerDepth?.Place ?? box.Kind.Place;
        if (depth.Sign <= 0)
            book.NoteOnce("corner.no-depth", Severity.Stop, box.Key, $"{what} of {box.Name} come out {book.Say(depth)} deep on a grid of {book.Say(book.Grid.Step)}.",
                box.Kind.CornerDepth is null ? $"Write a finer {book.Hand.Key("grid")}, or other {book.Hand.Key("corners")}." : $"Make {book.Hand.Key("corner depth")} {book.Say(book.Grid.Step)} or more.", place);
        else if (depth >= thick)
            book.NoteOnce("corner.too-deep", Severity.Stop, box.Key, $"{what} of {book.Say(depth)} leave nothing of a {wood} of {book.Say(thick)}.", $"Make {book.Hand.Key("corner depth")} {book.Say(thick * most)} at most.", place);
        else
            book.NoteOnce("corner.too-deep", Severity.Warn, box.Key, $"{what} of {book.Say(depth)} leave {book.Say(thick - depth)} of a {wood} of {book.Say(thick)}.", $"Make {book.Hand.Key("corner depth")} {book.Say(thick * most)} at most. ({rule})", place);
    }

    /// <summary>What is cut for the corners, with its figures, and the joint.</summary>
    public static void Write(BoxCorners corners, BoxSizes sizes)
    {
        Box box = corners.Box;
        Book book = box.Book;
        string key = box.Key;
        string[] ends = box.HasOwnBack ? [$"{key}.end", $"{key}.back"] : [$"{key}.end"];
        void Cut(string part, string words, params ImmutableArray<(string, QuantityKey)> figures) => book.Machinings.Add(new($"{key}.{part}", words, figures) { On = words.StartsWith("Dado", StringComparison.Ordinal) ? Face.Inside : Face.Ends });
        void Join(JointKind kind, string held, QuantityKey? depth)
        {
            foreach (string end in ends) book.Joints.Add(new(kind, end, Face.Ends, $"{key}.side", Face.Inside, held) { Depth = depth, Thick = corners.Tongue?.AsCut, IsAtInside = true });
        }
        QuantityKey t = box.EndThickness;
        switch (box.Kind.Corners)
        {
            case CornerJoint.Pocket: Join(JointKind.Butt, "glue and pocket screws", null); break;
            case CornerJoint.Butt: Join(JointKind.Butt, "glue and screws through the side", null); break;
            case CornerJoint.Rabbet:
                Cut("side", "Rabbet across both ends, on the inside", ("depth", corners.Depth!.ToCut), ("width", t));
                Join(JointKind.Rabbet, "glue and pins through the side", corners.Depth.AsCut);
                break;
            case CornerJoint.Dado:
                Cut("side", "Rabbet across the front end, on the inside", ("depth", corners.Depth!.ToCut), ("width", t));
                Cut("side", "Dado across the inside for the back", ("depth", corners.Depth.ToCut), ("width", box.BackThickness), ("left behind it", corners.Behind!.Value));
                Join(JointKind.Dado, "glue", corners.Depth.AsCut);
                break;
            case CornerJoint.LockRabbet:
                QuantityKey shoulder = book.Define(key, "corner.shoulder", $"{box.Name}, from the end of a side to its dado", new Sum(Term.From(box.EndWord, 1, t), Term.From("tongue", -1, corners.Tongue!.ToCut)));
                Cut("side", "Dado across the inside near both ends", ("depth", corners.Depth!.ToCut), ("width", corners.Tongue.ToCut), ("from the end", shoulder));
                foreach (string end in ends) book.Machinings.Add(new(end, "Rabbet across both ends, on the outside, that leaves a tongue", [("depth", shoulder), ("width", corners.Depth.ToCut), ("tongue", corners.Tongue.ToCut)]) { On = Face.Ends });
                Join(JointKind.LockRabbet, "glue", corners.Depth.AsCut);
                break;
            case CornerJoint.BoxJoint: WriteFingers(corners, sizes, ends, Join); break;
            case CornerJoint.HalfBlindDovetail:
                Cut("side", "Tails on both ends: the front ones enter the lap, the back ones go through", ("front tails", corners.Depth!.ToCut), ("back tails", box.BackThickness));
                Cut("end", box.HasOwnBack ? "Sockets for the tails, stopped by the lap" : "Sockets for the tails, stopped by the lap on the front, through on the back", ("lap", corners.Lap!.Value), ("depth", corners.Depth.ToCut), ("from the end", box.SideThickness));
                if (box.HasOwnBack) Cut("back", "Pins on both ends, through", ("length", box.SideThickness));
                Join(JointKind.HalfBlindDovetail, "glue", box.SideThickness);
                break;
            case CornerJoint.ThroughDovetail:
                Cut("side", "Tails on both ends, through", ("length", t));
                foreach (string end in ends) book.Machinings.Add(new(end, "Pins on both ends, through", [("length", box.SideThickness)]) { On = Face.Ends });
                Join(JointKind.ThroughDovetail, "glue", box.SideThickness);
                break;
        }
    }

    /// <summary>
    /// Fingers as wide as the height takes an odd number of, nearest to the width meant, so that both edges of a side are fingers; one is a share of
    /// the height, so that they close over it exactly.
    /// </summary>
    private static void WriteFingers(BoxCorners corners, BoxSizes sizes, string[] ends, Action<JointKind, string, QuantityKey?> join)
    {
        Box box = corners.Box;
        Book book = box.Book;
        string key = box.Key;
        TradeRule usual = TradeRules.Get("DJ6");
        QuantityKey meant = book.Define(key, "finger.meant", $"{box.Name}, finger to aim for",
            box.Kind.Finger?.Stated ?? (Working)new Sum(Term.From($"side: {usual.Cited}", 1, box.SideThickness)));
        ExactLength high = book.Value(sizes.SideHeight.ToCut), aim = book.Value(meant);
        if (high.Sign <= 0 || aim.Sign <= 0) return;
        int count = Math.Max(3, (int)(((high / aim) - 1) / 2).Round(Rounding.Nearest) * 2 + 1);
        QuantityKey finger = book.Define(key, "finger.width", $"{box.Name}, finger: {count} fingers and slots in the height", new Sum([Term.From("side height, to cut", 1, sizes.SideHeight.ToCut)], Rational.Of(1, count)));
        book.Chains.Add(new($"{box.Name}, fingers in the height", sizes.SideHeight.ToCut, [Term.From("fingers and slots", count, finger)], finger));
        book.Machinings.Add(new($"{key}.side", $"Fingers across both ends, {count} fingers and slots in turn, a finger at both edges", [("finger", finger), ("depth", box.EndThickness)]) { On = Face.Ends });
        foreach (string end in ends)
            book.Machinings.Add(new(end, $"Fingers across both ends to fit the sides, {count} in turn{(end.EndsWith(".back", StringComparison.Ordinal) ? " counted from the upper edge" : "")}, a slot at the {(end.EndsWith(".back", StringComparison.Ordinal) ? "upper edge" : "edges")}", [("finger", finger), ("depth", box.SideThickness)]) { On = Face.Ends });
        join(JointKind.BoxJoint, "glue", box.SideThickness);
        ExactLength least = book.Value(box.SideThickness) / 4;
        if (book.Value(finger) < least && !book.IsUnknown(box.Sides.Name))
            book.NoteOnce("corner.thin-fingers", Severity.Warn, key, $"Fingers of {book.Say(book.Value(finger))} break off a side of {book.Say(book.Value(box.SideThickness))}.",
                $"Make {book.Hand.Key("finger")} {book.Say(book.Value(box.SideThickness) / 2)} or more. ({usual.Cited})", box.Kind.Finger?.Place ?? box.Kind.Place);
    }
}

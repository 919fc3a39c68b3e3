using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>
/// Wooden runners: a stick under each side of a box, laid flat and screwed to what stands beside it. What is overhead keeps the drawer from tipping when
/// it is pulled out: the runners of the drawer above, a deck, or under open rails a pair of kickers.
/// </summary>
internal static class RunnerRule
{
    /// <summary>The sticks of the runners of a kind; null with a finding where there are none.</summary>
    public static Stick? StickOf(Book book, DrawerKind kind, string user)
    {
        if (kind.Runner is { } named) return book.StickOf(named, user);
        book.NoteOnce("drawer.no-runner", Severity.Stop, user, $"Drawers like {kind.Name} run on runners, but nothing says what those are made of.", "Add 'runner: STICK' to the kind of drawer.", kind.Place);
        return null;
    }

    /// <summary>Whether a pair of kickers belongs above: there is nothing level overhead that would do.</summary>
    public static bool WantsKicker(Box box) => box.Kind.Slides == SlideWay.Runners && !box.Slot.IsOnRails && box.Slot.IsTop && box.Space.Edges.Top.Kind == EdgeKind.Frame;

    /// <summary>Where the runners lie: behind the lower edge of the front, or on the floor of the opening where that is off it by the residue of the bank only.</summary>
    public static ExactLength Ground(Box box) => box.Slot.IsOnRails || box.Slot.Z - box.Space.Z < box.Book.Grid.Step.ToExact() ? box.Space.Z : box.Slot.Z;

    /// <summary>The length of a box on runners: what the depth leaves.</summary>
    public static QuantityKey Length(Box box)
    {
        TradeRule rear = TradeRules.Get("SS10");
        return box.Book.Define(box.Key, "box.length", $"{box.Name}, box length", new Sum([.. SlideRule.Depth(box.Book, box.Space, box.Kind),
            box.Kind.Sheet.Rear is { } given ? Term.From("clearance behind", -1, given.Value, Origin.Given(given.Place)) : Term.From("clearance behind", -1, rear.Length, new(OriginKind.Rule, "at least", rear.Cited))]));
    }

    /// <summary>Writes runners, and kickers where they are wanted, with their screws.</summary>
    public static void Write(Box box, Stick stick)
    {
        (Book book, Space space, string key) = (box.Book, box.Space, box.Key);
        ExactLength thick = book.Value(Book.ThicknessOf(stick.Name)), wide = book.Value(Book.SectionWidthOf(stick.Name)), clear = book.Value(space.Width);
        if (wide * 2 > clear)
            book.NoteOnce("runner.no-room", Severity.Stop, key, $"Two runners {book.Say(wide)} wide do not lie side by side in {space.Name}, {book.Say(clear)} wide.", "Make the opening wider, or use narrower runners.", box.Drawer.Place);
        string[] words = WantsKicker(box) ? ["runner", "kicker"] : ["runner"];
        int screws = 0;
        foreach (string word in words)
        {
            bool isRunner = word == "runner";
            PartRole role = isRunner ? PartRole.Runner : PartRole.Kicker;
            PartSize length = book.DefineSize(key, $"{word}.length", $"{box.Name} {word}, length", new Sum(SlideRule.Depth(book, space, box.Kind)), role);
            ExactLength along = book.Value(length.AsCut), z = isRunner ? Ground(box) : space.Z + book.Value(space.Height) - thick;
            book.Add(new($"{key}.{word}", $"{key}{word[0]}", $"{box.Name} {word}", role, stick.Name, length, Book.Uncut(Book.SectionWidthOf(stick.Name)), Book.ThicknessOf(stick.Name), 2, Grain.Keep,
                [new(space.X, box.Y, z, wide, along, thick), new(space.X + clear - wide, box.Y, z, wide, along, thick)], box.Drawer.Place));
            Rational moves = new[] { space.Edges.Left, space.Edges.Right }.Select(e => GrainWay.Moves(book, e.Part.Length > 0 ? e.Part : space.Carrier, Along.Y)).Max();
            book.Joints.Add(new(JointKind.Butt, $"{key}.{word}", Face.Outside, space.Carrier, Face.Inside, moves.Sign > 0 ? "a screw in front, the others in slots" : "screws") { IsLoose = moves.Sign > 0 });
            if (moves.Sign > 0) InSlots(box, word, moves, length);
            screws += 2 * Fastening.ScrewsAlong(along);
        }
        QuantityKey up = book.Define(key, "runner.up", $"{box.Name}, upper face of its runners above the {box.Space.Ground}", new Sum(
            Term.From($"behind its front, above the {box.Space.Ground}", 1, Ground(box) - space.Z, new(OriginKind.Worked, "from the fronts below it")), Term.From("runner", 1, Book.ThicknessOf(stick.Name))));
        ExactLength into = ExactLength.Min(Behind(space.Edges.Left), Behind(space.Edges.Right));
        if (Fastening.IntoFace(book.Piece.Unit, wide, into) is { } screw)
            book.Hardware.Add(new(key, $"Wood screw no. 8 (4 mm), {book.Say(screw)}", screws, "piece", $"through the {string.Join(" and ", words)}s into what stands beside them: {Fastening.SpacingWords}"));
        else
            book.NoteOnce("runner.no-screw", Severity.Warn, key, $"No usual screw holds a runner {book.Say(wide)} wide on {book.Say(into)} without coming out.", "Use narrower sticks, or sink the screws.", box.Kind.Runner!.Value.Place);
        string overhead = WantsKicker(box) ? "The kickers go right under the top of the opening, above its sides."
            : box.Slot.IsTop ? "What closes the opening above keeps it from tipping." : "The runners above keep it from tipping.";
        book.Steps.Add(new(Stage.Drawers, $"Runners for {key}: their upper faces {book.Say(book.Value(up))} above the {box.Space.Ground}, level and parallel, front ends flush with the {(box.Kind.Fronts == FrontWay.Inset ? "back of the front" : "face")}; drill, sink and screw them to what stands beside them. {overhead} Wax what rubs.",
            [.. words.Select(w => $"{key}.{w}")], null, "screws"));

        // Behind a face frame that is the packing, and what this is fixed to.
        ExactLength Behind(Edge edge) => edge.Frame is { } frame ? ExactLength.Max(ExactLength.Zero, book.Value(frame.In)) + book.Value(frame.Behind) : book.Value(edge.Own);
    }

    /// <summary>What stands beside them moves along them, across its grain: they are fixed in front, and the other screws stand in slots.</summary>
    private static void InSlots(Box box, string word, Rational moves, PartSize length)
    {
        QuantityKey slot = box.Book.Define(box.Key, $"{word}.slot", $"{box.Name} {word}, length of the slots for its screws", new Sum(
            Term.From("screw", 1, Usual.Length(box.Book, "WD2"), new(OriginKind.Rule, "its shank", TradeRules.Get("WD2").Cited)),
            Term.From("what stands beside it moves, of its length", moves, length.AsCut)));
        box.Book.Machinings.Add(new($"{box.Key}.{word}", "Slots along it for all screws but the foremost", [("length", slot)]) { On = Face.Outside });
    }
}

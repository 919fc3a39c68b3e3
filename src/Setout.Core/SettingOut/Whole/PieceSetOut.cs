using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Cases;
using Setout.Core.SettingOut.Finishes;
using Setout.Core.SettingOut.Frames;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.SettingOut.Tops;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Whole;

/// <summary>Sets a piece out: from what is described and what has been read to quantities, parts, joints and hardware. Pure.</summary>
public static class PieceSetOut
{
    /// <summary>
    /// The version of the rules. It stands in every plan; it changes whenever the same piece would come out with another size.
    /// </summary>
    public const string RuleSet = "1";

    /// <summary>Sets a piece out.</summary>
    /// <param name="piece">As described.</param>
    /// <param name="grid">The shop's grid, used where the piece names none.</param>
    /// <param name="pins">Readings by the quantity they pin; empty for none.</param>
    public static SetPiece Of(Piece piece, Grid grid, IReadOnlyDictionary<QuantityKey, Pin> pins) => Of(piece, grid, BenchFacts.Of(pins));

    /// <summary>Sets a piece out.</summary>
    /// <param name="piece">As described.</param>
    /// <param name="grid">The shop's grid, used where the piece names none.</param>
    /// <param name="facts">What is known from the bench.</param>
    public static SetPiece Of(Piece piece, Grid grid, BenchFacts facts)
    {
        var book = new Book(piece, piece.Grid ?? grid, facts);
        MaterialRule.Write(book);
        CheckGrid(book);
        var standing = new OrderedDictionary<string, Structure>();
        foreach (Member member in piece.Members)
        {
            book.Corner = default;
            switch (member)
            {
                case Structure structure: Write(book, structure, standing); break;
                case Top top: TopRule.Write(book, top, standing); break;
                case LoosePart loose: TopRule.Write(book, loose); break;
            }
        }
        AnchorRule.Write(book, standing.Values);
        EdgeRule.Write(book);
        CrossGrainRule.Look(book);
        WayInRule.Write(book);
        DowelPlaces.Write(book);
        BoreRoom.Look(book);
        CutPlaces.Write(book);
        IdleRule.Write(book);
        foreach (Material unread in piece.Materials.Values.OrderBy(m => m.Place.Line).Where(m => m is Panel { Thickness: null } && !book.IsMeasured(m.Name)))
        {
            if (book.Findings.Any(f => f.Code == "material.unknown" && f.Key == unread.Name)) continue;
            book.Note("material.not-read", Severity.Note, unread.Name, $"The thickness of {unread.Name} is a default of {book.Say(book.Value(Book.ThicknessOf(unread.Name)))}.",
                $"Read the sheet with a calliper at two spots before anything that meets it is cut{book.Enter(Book.ThicknessOf(unread.Name))}.", unread.Place);
        }
        return FinishRule.Into(book.Finish());
    }

    /// <summary>A step is halved at each cut: past 1/8 in (3 mm) gaps and play of 1/16 in are lost in it. Common practice, no source.</summary>
    private static void CheckGrid(Book book)
    {
        if (book.Grid.Step > ExactLength.FromInches(Rational.Of(1, 8)))
            book.Note("grid.coarse", Severity.Warn, "", $"On a grid of {book.Say(book.Grid.Step)} parts come out up to {book.Say(book.Grid.Step.ToExact() / 2)} off: gaps and play are lost in that.",
                $"{book.Hand.Write("grid", book.Say(book.Piece.Unit == LengthUnit.Inch ? ExactLength.FromInches(Rational.Of(1, 16)) : ExactLength.FromMillimetres(1)))} or finer. (common practice, no source)");
    }

    private static void Write(Book book, Structure structure, OrderedDictionary<string, Structure> standing)
    {
        if (StandRule.Corner(book, structure, standing) is not { } corner) return;
        book.Corner = corner;
        int before = book.Steps.Count;
        switch (structure)
        {
            case Frame frame: FrameRule.Write(book, frame); break;
            case Case @case: CaseRule.Write(book, @case); break;
        }
        // What could not be set out carries nothing; its own finding says why.
        if (!book.Knows(Built.Width(structure.Key))) return;
        FaceFrameRule.CheckBeside(book, structure);
        StandRule.CheckRoom(book, structure, standing.Values);
        StandRule.Step(book, structure, standing, before);
        standing[structure.Key] = structure;
    }
}

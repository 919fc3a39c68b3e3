using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>A panel that stands loose in grooves, of a door or of a frame, and how much play it has across its grain.</summary>
/// <param name="Owner">The key it belongs to.</param>
/// <param name="Prefix">What its quantities' keys begin with, such as <c>panel</c>.</param>
/// <param name="Name">For people: what holds it, such as <c>door D1</c>.</param>
/// <param name="Words">For people: the panel itself, such as <c>the panel of door D1</c>.</param>
/// <param name="Wood">Its wood where it is solid; null for sheet goods and for what is not on record.</param>
/// <param name="Room">Between the bottoms of the grooves, across its grain.</param>
/// <param name="Moves">What it moves across its grain; null where that is not known.</param>
/// <param name="Across">The play kept across its grain.</param>
/// <param name="Given">What was given for it; null where it is worked out.</param>
internal sealed record PanelPlay(string Owner, string Prefix, string Name, string Words, WoodFact? Wood, QuantityKey Room, QuantityKey? Moves, QuantityKey Across, Given? Given);

/// <summary>
/// Panels in grooves. Sheet goods have a hair of play; a solid panel has as much across its grain as it moves between dry and damp: its width times the change
/// a unit of width and per cent of moisture that is published for its wood.
/// </summary>
internal static class PanelPlayRule
{
    /// <summary>Writes what it moves and the play kept across its grain.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="of">Owner, prefix, name and words, as of <see cref="PanelPlay"/>.</param>
    /// <param name="panel">Its sheet.</param>
    /// <param name="change">By how many per cent of moisture it may change.</param>
    /// <param name="room">Between the bottoms of the grooves.</param>
    /// <param name="given">The play that was given; null to work it out.</param>
    /// <param name="usual">The play of sheet goods.</param>
    public static PanelPlay Of(Book book, (string Owner, string Prefix, string Name, string Words) of, Panel panel, int change, QuantityKey room, Given? given, Working usual)
    {
        WoodFact? wood = WoodMoves.Solid(panel);
        QuantityKey? moves = wood is null ? null : book.Define(of.Owner, $"{of.Prefix}.moves", $"{of.Name}, movement of its panel across the grain", new Sum(WoodMoves.Term(panel, wood, change, room)));
        QuantityKey play = book.Define(of.Owner, $"{of.Prefix}.play-kept", $"{of.Name}, play kept across its panel",
            given?.Stated ?? (moves is { } m ? new Sum(Term.From("what it moves", 1, m)) : usual));
        return new(of.Owner, of.Prefix, of.Name, of.Words, wood, room, moves, play, given);
    }

    /// <summary>The play that comes of the panel as cut, with its limits.</summary>
    public static void Slack(Book book, PanelPlay panel, string way, PartSize size, QuantityKey clear, QuantityKey grooveAsCut, QuantityKey play)
    {
        TradeRule most = TradeRules.Get("GV1");
        QuantityKey slack = book.Define(panel.Owner, $"{panel.Prefix}.slack-{way}", $"{panel.Name}, play of its panel {way}",
            new Sum(Term.From("between", 1, clear), Term.From("grooves, as cut", 2, grooveAsCut), Term.From("panel, as cut", -1, size.AsCut)));
        ExactLength meant = book.Value(play), half = most.Length / 2;
        book.Gaps.Add(new(slack, $"{panel.Name}, panel {way} in its grooves", ExactLength.Max(ExactLength.Zero, meant - half), meant + half, "goes in, and within 1/16 in of the play meant: common practice, no source"));
    }

    /// <summary>Says where sheet goods fall out of their grooves, or hardly hold in them; a solid panel moves, and is looked at by that.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="area">What its findings begin with: door, frame.</param>
    /// <param name="depth">Of the grooves.</param>
    /// <param name="groove">The depth where it was given.</param>
    /// <param name="place">Where the panel is named.</param>
    public static void Hold(Book book, PanelPlay panel, string area, QuantityKey depth, Given? groove, Place place)
    {
        if (panel.Moves is not null) return;
        string words = char.ToUpperInvariant(panel.Words[0]) + panel.Words[1..];
        GrooveHold.Look(book, new(panel.Owner, $"{area}.panel-falls-out", words, panel.Across, depth, true), panel.Given, groove, place);
    }

    /// <summary>Says where a solid panel is held too tight, or may come out of its grooves.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="area">What its findings begin with: door, frame.</param>
    /// <param name="depth">Of the grooves.</param>
    /// <param name="place">Where the grooves are written, or the panel.</param>
    public static void Check(Book book, PanelPlay panel, string area, QuantityKey depth, Place place)
    {
        if (panel.Moves is not { } moves) return;
        ExactLength needs = book.Value(moves), has = book.Value(panel.Across), deep = book.Value(depth);
        if (panel.Given is { } given && has < needs)
            book.NoteOnce($"{area}.panel-captured", Severity.Warn, panel.Owner, $"A panel of {panel.Wood!.Name} {book.Say(book.Value(panel.Room))} wide moves {book.Say(needs)} across its grain; {book.Say(has)} of play splits it or bursts the frame.",
                $"Leave {book.Say(needs)} or more, or leave {book.Hand.Key("play")} out to have it worked out; sheet goods need hardly any.", given.Place);
        // No wider than what is between the edges of the grooves: there is nothing to hold it on the day it goes in.
        if (deep * 2 <= has)
        {
            book.NoteOnce($"{area}.panel-falls-out", Severity.Stop, panel.Owner, $"Nothing holds {panel.Words}: its grooves are {book.Say(deep)} deep and its play is {book.Say(has)}.",
                $"Make the grooves deeper than {book.Say((has + needs) / 2)}, leave less play, or divide the panel.", place);
            return;
        }
        // Cut damp, it shrinks by all it moves: what is left in each groove is the groove less half the play and half the movement.
        if (deep * 2 <= has + needs)
            book.NoteOnce($"{area}.panel-leaves-groove", Severity.Warn, panel.Owner, $"When it is dry, {panel.Words} may come out of its grooves: they are {book.Say(deep)} deep, its play is {book.Say(has)}, and it shrinks by up to {book.Say(needs)}.",
                $"Make the grooves deeper than {book.Say((has + needs) / 2)}, or divide the panel.", place);
    }
}

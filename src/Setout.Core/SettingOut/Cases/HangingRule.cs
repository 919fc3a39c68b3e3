using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Cases;

/// <summary>
/// How a case hangs on a wall: by a back that carries, of what is sold as 1/2 in (12 mm) or more, or by a rail under the top behind a thinner back. Common
/// practice, no source.
/// </summary>
internal static class HangingRule
{
    /// <summary>The rail, sized by what is there before the case is; null for none.</summary>
    public static StripStock? Rail(Book book, Case described, string name) => described.HangingRail is { } rail
        ? StripRule.Of(book, described.Key, "rail.width", $"{name} hanging rail, width", rail, "CB3", "usual rail")
        : null;

    /// <summary>Writes the rail between the sides under the top, flush with the rear edges.</summary>
    public static void WriteRail(Book book, CaseShape shape, StripStock stock, QuantityKey clearWidth, ExactLength w, ExactLength h, ExactLength rear)
    {
        (string key, string name) = (shape.Key, shape.Name);
        PartSize length = book.DefineSize(key, "rail.length", $"{name} hanging rail, length", new Sum(Term.From("clear between the sides", 1, clearWidth)), Rounding.Down, "down: it must go between");
        ExactLength t = book.Value(shape.Thickness), thick = book.Value(stock.Thickness), high = book.Value(stock.Width.AsCut);
        book.Add(new($"{key}.rail", $"{key}r", $"{name} hanging rail", PartRole.HangingRail, stock.Material, length, stock.Width, stock.Thickness, 1, Grain.Keep,
            [new((w - book.Value(length.AsCut)) / 2, rear - thick, h - t - high, book.Value(length.AsCut), thick, high)], shape.Described.Place));
        book.Joints.Add(new(JointKind.Butt, $"{key}.rail", Face.Ends, shape.Side, Face.Inside, "glue and screws through the side"));
        book.Joints.Add(new(JointKind.Butt, $"{key}.rail", Face.Top, shape.Deck, Face.Inside, "glue and screws through the top"));
        int screws = 4 + Fastening.ScrewsAlong(w);
        book.Hardware.Add(new(key, Fastening.PanelScrew(book, shape.Panel, t), screws, "piece", $"hanging rail: 2 through each side, the others through the top: {Fastening.SpacingWords}"));
        // Behind a back on the rear edges there is no room for it.
        if (shape.Back is { } back && (back.Hold is BackHold.Applied or BackHold.Rabbeted || book.Value(back.Inset!.Value) < thick))
            book.Note("case.no-room-for-rail", Severity.Stop, key, $"The hanging rail is {book.Say(thick)} thick; behind the back there is {book.Say(book.ValueOr0(back.Inset))}.",
                $"Let the back in by {book.Say(thick)}: 'back: {{of: {back.Panel.Name}, fit: grooved}}' does it by itself.", shape.Described.BackFit.Inset?.Place ?? shape.Described.HangingRail!.Place);
    }

    /// <summary>The step that puts the rail in: behind the back, so after it.</summary>
    public static void RailStep(Book book, CaseShape shape) =>
        book.Steps.Add(new(Stage.Back, $"Glue and screw the hanging rail of {shape.The} between the sides, tight under the top and flush with the rear edges.", [$"{shape.Key}.rail"], null, "screws"));

    /// <summary>Fixings and their step; a finding where nothing carries.</summary>
    public static void Write(Book book, CaseShape shape, ExactLength width)
    {
        Case described = shape.Described;
        bool byRail = described.HangingRail is not null;
        if (!byRail && (shape.Back is null || book.Value(Book.ThicknessOf(shape.Back.Panel.Name)) < BackRule.Carries))
        {
            book.Note("case.back-cannot-carry", Severity.Stop, described.Key,
                shape.Back is null ? "A case that hangs on a wall needs a back to hang by." : $"The back of {book.Say(book.Value(Book.ThicknessOf(shape.Back.Panel.Name)))} is too thin to hang a case by.",
                "Give it a back of 1/2 in (12 mm) plywood or more. What the wall bears, and with which fixing, is for local codes and licensed practice.", described.Back?.Place ?? described.Place);
            return;
        }
        if (described.Toe is not null || described.Base is not null || described.Feet is not null)
            book.Note("case.hangs-and-stands", Severity.Warn, described.Key, $"{shape.Name} hangs, yet it has something to stand on.", $"Leave out {book.Hand.Key("hung")}, or the toe kick, base or feet.", described.Toe?.Place ?? described.Base?.Place ?? described.Feet!.Place);
        int row = Math.Max(2, (int)(width.Inches / 16).Round(Rounding.Up)), fixings = byRail ? row : 2 * row;
        book.Hardware.Add(new(described.Key, "Wall fixing to suit the wall and the load", fixings, "piece", $"{(byRail ? "one row" : "two rows")}, one about every 16 in; common practice, no source"));
        book.Steps.Add(new(Stage.Fixing, byRail
            ? $"Hang {shape.The} empty, with a helper: {fixings} fixings through the hanging rail, into studs or solid masonry and never into board alone."
            : $"Hang {shape.The} empty, with a helper: {fixings} fixings through the back, near the top and near the bottom, into studs or solid masonry and never into board alone.", [], null, "hang")
        { Whole = [described.Key] });
    }
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>What a row of dowels is drilled in.</summary>
/// <param name="Owner">The key it belongs to.</param>
/// <param name="Name">For people.</param>
/// <param name="Ended">The part whose ends are drilled.</param>
/// <param name="Ends">Which ends, in words.</param>
/// <param name="Rows">How many rows there are in all.</param>
/// <param name="Width">How long a row is: the width of the part.</param>
/// <param name="Thickness">Of the part.</param>
internal sealed record DowelRow(string Owner, string Name, string Ended, string Ends, int Rows, QuantityKey Width, QuantityKey Thickness)
{
    /// <summary>The edge that the first hole is measured from.</summary>
    public string From { get; init; } = "front edge";

    /// <summary>Where the joint is written; unknown for where the part is.</summary>
    public Place Place { get; init; }

    /// <summary>Further figures for what it goes into, such as where the part meets it.</summary>
    public ImmutableArray<(string, QuantityKey)> Where { get; init; } = [];
}

/// <summary>
/// Dowels between the end of one panel and the face of another: how thick, how long, how many, and where each hole is. All common practice, no source.
/// </summary>
internal static class DowelRule
{
    /// <summary>Writes the holes on both parts and what to buy.</summary>
    public static void Write(Book book, DowelRow row, ImmutableArray<(string Part, QuantityKey Thickness, string Where)> into)
    {
        (string owner, string name) = (row.Owner, row.Name);
        bool isThin = book.Value(row.Thickness) < ExactLength.FromInches(Rational.Of(5, 8));
        QuantityKey diameter = book.Define(owner, "dowel.diameter", $"{name}, dowel diameter", Usual.Or(book, null, isThin ? "DW2" : "DW1", "for this thickness"));
        QuantityKey length = book.Define(owner, "dowel.length", $"{name}, dowel length", Usual.Or(book, null, "DW3", "usual dowel"));
        QuantityKey left = book.Define(owner, "dowel.left", $"{name}, wood left behind a hole", Usual.Or(book, null, "DW4", "no hole comes through"));
        QuantityKey room = book.Define(owner, "dowel.room", $"{name}, wood before the far face", new Sum(Term.From("thinnest that it goes into", 1, into.MinBy(i => book.Value(i.Thickness)).Thickness), Term.From("left behind it", -1, left)));
        QuantityKey half = book.Define(owner, "dowel.half", $"{name}, half a dowel", new Sum([Term.From("dowel", 1, length)], Rational.Of(1, 2)));
        QuantityKey face = book.Define(owner, "dowel.in-face", $"{name}, hole in the face, depth", new Extreme([Term.From("wood before the far face", 1, room), Term.From("half a dowel", 1, half)], IsLeast: true));
        QuantityKey end = book.Define(owner, "dowel.in-end", $"{name}, hole in the end, depth", new Sum(Term.From("dowel", 1, length), Term.From("hole in the face", -1, face),
            Term.From("room for glue", 1, Usual.Length(book, "DW7"), new(OriginKind.Rule, "at the end", Materials.TradeRules.Get("DW7").Cited))));
        ExactLength wide = book.Value(row.Width);
        ExactLength least = Usual.Length(book, "DW5"), narrow = wide / 4;
        QuantityKey first = least * 2 < wide - narrow
            ? book.Define(owner, "dowel.first", $"{name}, first hole from the {row.From}", Usual.Or(book, null, "DW5", row.From == "front edge" ? "and the last from the rear edge" : "and the last from the other edge"))
            : book.Define(owner, "dowel.first", $"{name}, first hole from the {row.From}", new Sum([Term.From("narrow panel", 1, row.Width)], Rational.Of(1, 4)));
        int count = Math.Max(2, (int)((wide - (book.Value(first) * 2)) / Usual.Length(book, "DW6")).Round(Rounding.Up) + 1);
        QuantityKey apart = book.Define(owner, "dowel.apart", $"{name}, holes apart, middle to middle", new Sum([Term.From("width", 1, row.Width), Term.From("first and last from the edges", -2, first)], Rational.Of(1, count - 1)));
        QuantityKey middle = book.Define(owner, "dowel.middle", $"{name}, holes from the face of the part", new Sum([Term.From("thickness", 1, row.Thickness)], Rational.Of(1, 2)));
        ImmutableArray<(string, QuantityKey)> places = [($"first from the {row.From}", first), ("apart", apart)];
        book.Machinings.Add(new(row.Ended, $"{count} dowel holes in {row.Ends}", [("diameter", diameter), ("depth", end), .. places, ("from the face", middle)]) { By = [owner], On = Face.Ends, Caution = "drill" });
        foreach ((string part, QuantityKey _, string where) in into)
            book.Machinings.Add(new(part, $"{count} dowel holes in {where}; from the line of its face", [("diameter", diameter), ("depth", face), .. places, ("from the line", middle), .. row.Where]) { By = [owner], Caution = "drill" });
        DowelChecks.Look(book, row, (diameter, end, face, first, left), into);
        book.DowelRows.Add(new(owner, row.Ended, [.. into.Select(i => i.Part).Distinct()], count));
        book.Hardware.Add(new(new QuantityKey(owner).Owner, $"Dowel, {book.Say(book.Value(diameter))} x {book.Say(book.Value(length))}", count * row.Rows, "piece", $"{count} in each of {row.Rows} ends; common practice, no source"));
    }
}

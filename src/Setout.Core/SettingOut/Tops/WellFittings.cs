using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Tops;

/// <summary>What is drilled in the platform of a well: hold-down bolts where the machine has its holes, exits for cables and chips. None over a bearer.</summary>
internal static class WellFittings
{
    /// <summary>Writes holes and hardware. The machine stands in the middle of the room beside it, what turns or travels counted in.</summary>
    public static void Write(Book book, Well well, string name, PartSize length, PartSize width, QuantityKey? bearer)
    {
        (string key, string part) = (well.Key, $"{well.Key}.platform");
        TradeRule usual = TradeRules.Get("WL5");
        int screws = 2 * Fastening.ScrewsAlong(book.Value(width.AsCut));
        if (bearer is not null) book.Hardware.Add(new(key, "Wood screw for the platform of a well, to suit", screws, "piece", $"into both bearers, 3/4 in of bite or more: {Fastening.SpacingWords}"));
        if (!well.Bolts.IsEmpty)
        {
            QuantityKey size = book.Define(key, "bolt-size", $"{name}, diameter of its hold-down bolts", well.BoltSize?.Stated ?? new Stated(usual.Length, new(OriginKind.Rule, "until the machine's holes are measured", usual.Cited)));
            QuantityKey left = Machine("left", "left", "across", well.Swing.Left, length), front = Machine("front", "front", "along", well.Swing.Front, width);
            for (int i = 0; i < well.Bolts.Length; i++)
            {
                Spot spot = well.Bolts[i];
                QuantityKey x = Hole($"bolt-{i + 1}", "left", $"bolt {i + 1}", [Term.From("machine, from the left of the platform", 1, left), Given("hole in its foot", spot.FromLeft)]);
                QuantityKey y = Hole($"bolt-{i + 1}", "front", $"bolt {i + 1}", [Term.From("machine, from the front of the platform", 1, front), Given("hole in its foot", spot.FromFront)]);
                if (spot.FromLeft.Value > well.Footprint.Across.Value || spot.FromFront.Value > well.Footprint.Along.Value)
                    book.Note("well.bolt-outside", Severity.Warn, key, $"Bolt {i + 1} of {name} lies outside the footprint of the {well.Machine}.", "Measure from the left and the front of its feet.", spot.Place);
                book.Machinings.Add(new(part, $"hole for hold-down bolt {i + 1}, through", [("from the left", x), ("from the front", y), ("diameter", size)]) { On = Face.Top, Caution = "drill" });
                Bore("bolt", x, y, size);
                OverBearer(x, size, $"Bolt {i + 1}", spot.Place);
            }
            book.Hardware.Add(new(key, $"Hold-down bolt {book.Say(book.Value(size))} with nut and two washers, to suit the machine's foot and the platform", well.Bolts.Length, "piece", $"one for each hole; {(well.BoltSize is null ? usual.Cited : "given")}"));
        }
        for (int i = 0; i < well.Exits.Length; i++)
        {
            Exit exit = well.Exits[i];
            QuantityKey size = book.Define(key, $"exit-{i + 1}.size", $"{name}, hole for {exit.For}, diameter", exit.Size.Stated);
            QuantityKey x = book.Define(key, $"exit-{i + 1}.left", $"{name}, hole for {exit.For}, from the left of the platform", exit.At.FromLeft.Stated);
            QuantityKey y = book.Define(key, $"exit-{i + 1}.front", $"{name}, hole for {exit.For}, from the front of the platform", exit.At.FromFront.Stated);
            ExactLength half = exit.Size.Value / 2, out_ = new[] { half - book.Value(x), half - book.Value(y), book.Value(x) + half - book.Value(length.AsCut), book.Value(y) + half - book.Value(width.AsCut) }.Max();
            if (out_.Sign > 0) book.Note("well.exit-outside", Severity.Warn, key, $"The hole for {exit.For} runs {book.Say(out_)} over the edge of the platform of {name}.", $"Move it {book.Say(out_)} inwards, or make it smaller.", exit.At.Place);
            else OverBearer(x, size, $"The hole for {exit.For}", exit.At.Place);
            book.Machinings.Add(new(part, $"hole for {exit.For}, through, its edges rounded", [("from the left", x), ("from the front", y), ("diameter", size)]) { On = Face.Top, Caution = "drill" });
            Bore(exit.For, x, y, size);
        }

        void Bore(string what, QuantityKey x, QuantityKey y, QuantityKey size)
        {
            foreach ((int number, Placement box) in Bored.Members(book, part))
                book.Bores.Add(new(key, what, part, number, Along.Z, box.X + book.Value(x), box.Y + book.Value(y), box.Z + box.SizeZ, book.Value(size), ExactLength.Zero));
        }
        static Term Given(string words, Given given) => Term.From(words, 1, given.Value, Origin.Given(given.Place));
        QuantityKey Machine(string side, string word, string way, Given? swing, PartSize of) => book.Define(key, $"machine.{side}", $"{name}, its machine from the {word} of the platform", new Sum([
            Term.From("platform", Rational.Of(1, 2), of.AsCut), Term.From("machine, with what turns or travels", -Rational.Of(1, 2), QuantityKey.Of(key, $"machine.{way}")), .. swing is { } s ? [Given("what turns or travels there", s)] : ImmutableArray<Term>.Empty]));
        QuantityKey Hole(string what, string side, string words, ImmutableArray<Term> terms) => book.Define(key, $"{what}.{side}", $"{name}, {words} from the {side} of the platform", new Sum(terms));
        void OverBearer(QuantityKey x, QuantityKey size, string words, Place place)
        {
            if (bearer is not { } stick) return;
            // The bearers stand at the sides of the well; the platform is a hair narrower.
            ExactLength clear = book.Value(stick) + (book.Value(size) / 2), at = ExactLength.Min(book.Value(x), book.Value(length.AsCut) - book.Value(x));
            if (at < clear) book.Note("well.hole-over-bearer", Severity.Warn, key, $"{words} of {name} meets a bearer: its middle is {book.Say(at)} from the edge and wants {book.Say(clear)}.", "Move it, or use thinner bearers.", place);
        }
    }
}

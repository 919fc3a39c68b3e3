using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Testing;

namespace Setout.Core.Tests.Fit.Mending;

/// <summary>
/// A small random piece halfway through its making: some parts cut, some of them off their figure, some together, some openings and boxes read
/// off what was planned. By a seed.
/// </summary>
internal static class UpsetBench
{
    public static SetPiece Of(int seed)
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        SetPiece plan = PieceSetOut.Of(piece, grid, BenchFacts.Empty);
        var random = new Random(seed);
        bool Chance(int percent) => random.Next(100) < percent;
        ExactLength Off(int most) => plan.Grid.Step.ToExact() * Rational.Of(random.Next(-most, most + 1), 2);
        var pins = ImmutableDictionary.CreateBuilder<QuantityKey, Pin>();
        var states = ImmutableDictionary.CreateBuilder<string, PartState>();
        void Pin(QuantityKey key, ExactLength value, bool isFact) => pins[key] = new([value], new(OriginKind.Reading, "read"), $"e{pins.Count}") { IsFact = isFact };
        foreach (Part part in plan.Parts)
        {
            if (!Chance(45)) continue;
            states[part.Key] = (PartState)random.Next((int)PartState.Cut, (int)PartState.Fitted + 1);
            foreach (PartSize size in new[] { part.Length, part.Width }.Where(s => s.ToCut != s.Exact))
            {
                // Set on the saw in whole steps, now and then wrongly; it comes off the saw as it may.
                Pin(size.ToCut, plan.Worked[size.ToCut] + (Chance(30) ? Off(6) * 2 : ExactLength.Zero), true);
                if (Chance(15)) Pin(size.AsCut, pins[size.ToCut].Values[0] + Off(2), false);
            }
        }
        foreach (QuantityKey key in plan.Worked.Order.Where(k => !plan.Parts.Any(p => p.Key == k.Text)))
        {
            string what = key.Text[(key.Text.IndexOf('.', StringComparison.Ordinal) + 1)..];
            if (what is "width" or "opening" or "opening.width" && Chance(30) && plan.Openings.Any(o => o.Key == key.Owner || what == "opening")) Pin(key, plan.Worked[key] + Off(8), false);
            if (what == "box.as-built" && Chance(30)) Pin(key, plan.Worked[key] + Off(12), false);
            if (what == "front.gap" && Chance(15)) Pin(key, ExactLength.Max(ExactLength.Zero, plan.Worked[key] + Off(8)), false);
        }
        return PieceSetOut.Of(piece, grid, BenchFacts.Of(pins.ToImmutable()) with { States = states.ToImmutable() });
    }
}

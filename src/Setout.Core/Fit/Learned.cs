using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>
/// What a reading of one thing says about others. A test box that reads 1/32 wide, its sheets being known, was cut at a stop that stands
/// 1/32 long: all that is cut at that setting will come out so. The reading is an equation between errors; the shared error that it pins down
/// best is solved for and put in terms of the others wherever it acts (Gaussian elimination, one error a reading). What was believed of that error
/// before is dropped, so this is done only where the reading knows it better.
/// </summary>
internal sealed class Learned
{
    private readonly SortedDictionary<string, Spread> _instead = new(StringComparer.Ordinal);

    private Learned() { }

    public static Learned From(SetPiece set, Spreads spreads)
    {
        var learned = new Learned();
        foreach (QuantityKey key in set.Worked.Order)
        {
            // Only sums tell of what they are worked from; a fact was decided, not measured.
            if (!set.Worked.Values.TryGetValue(key, out Worked? worked) || worked is not { Pin.IsFact: false, Quantity.Working: Sum }) continue;
            if (spreads.Expected(key) is { } expected && spreads.Prior(key) is { } read) learned.Take(learned.In(expected), read);
        }
        return learned;
    }

    /// <summary>A spread with what is known now in the place of what was believed.</summary>
    public Spread In(Spread spread)
    {
        if (_instead.Count == 0 || !spread.Effects.Any(e => _instead.ContainsKey(e.Cause.Id))) return spread;
        var result = new Spread(spread.Value, [.. spread.Effects.Where(e => !_instead.ContainsKey(e.Cause.Id))]);
        foreach (Effect effect in spread.Effects)
            if (_instead.TryGetValue(effect.Cause.Id, out Spread? instead)) result += instead * effect.Times;
        return result;
    }

    private void Take(Spread expected, Spread read)
    {
        // expected + errors = read + errors of reading: the difference is nothing, whatever the errors are.
        Spread equation = read - expected;
        Effect? pivot = null;
        Spread? solved = null;
        foreach (Effect effect in expected.Effects.Where(e => IsShared(e.Cause.Kind)))
        {
            if (equation.Effects.FirstOrDefault(e => e.Cause.Id == effect.Cause.Id) is not { Cause: not null } own) continue;
            // own.Times * error + rest = 0
            var rest = new Spread(equation.Value, [.. equation.Effects.Where(e => e.Cause.Id != own.Cause.Id)]);
            Spread instead = rest * (Rational.Of(-1) / own.Times);
            if (instead.WorstHigh - instead.WorstLow >= own.Cause.Range || (pivot is { } best && Gain(own.Cause, instead) <= Gain(best.Cause, solved!))) continue;
            (pivot, solved) = (own, instead);
        }
        if (pivot is not { } known) return;
        foreach (string id in _instead.Keys.ToList())
        {
            Spread older = _instead[id];
            if (older.Effects.FirstOrDefault(e => e.Cause.Id == known.Cause.Id) is not { Cause: not null } used) continue;
            _instead[id] = new Spread(older.Value, [.. older.Effects.Where(e => e.Cause.Id != known.Cause.Id)]) + (solved! * used.Times);
        }
        _instead[known.Cause.Id] = solved!;
    }

    private static ExactLength Gain(Cause cause, Spread instead) => cause.Range - (instead.WorstHigh - instead.WorstLow);

    private static bool IsShared(CauseKind kind) => kind is CauseKind.Lot or CauseKind.Sheet or CauseKind.Section or CauseKind.Setting or CauseKind.Bought;
}

using System.Collections.Immutable;
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
            if (!set.Worked.Values.TryGetValue(key, out Worked? worked) || worked is not { Pin: { IsFact: false, IsReread: false }, Quantity.Working: Sum }) continue;
            if (spreads.Expected(key) is { } expected && spreads.Prior(key) is { } read) learned.Take(learned.In(expected), read);
        }
        return learned;
    }

    /// <summary>What is known of errors now, in terms of others, by the id of their cause.</summary>
    public IEnumerable<(string Id, Spread Instead)> Known => _instead.Select(i => (i.Key, i.Value));

    /// <summary>A spread with what is known now in the place of what was believed.</summary>
    /// <param name="spread">As it was believed.</param>
    /// <param name="anew">Settings that will be set anew: what was learned of them is no more.</param>
    public Spread In(Spread spread, ImmutableArray<Cause> anew = default)
    {
        if (!spread.Effects.Any(e => FirstCut.IsStill(e.Cause) || _instead.ContainsKey(e.Cause.Id))) return spread;
        var effects = ImmutableArray.CreateBuilder<Effect>(spread.Effects.Length);
        Spread learned = Spread.Of(spread.Value);
        foreach (Effect effect in spread.Effects)
        {
            Cause cause = effect.Cause;
            if (FirstCut.IsStill(cause))
            {
                // Left as it stands, the stop is off as it was for what is cut at it already.
                string id = cause.Id;
                if (!anew.IsDefaultOrEmpty && anew.FirstOrDefault(c => c.Id == id) is { } set)
                {
                    effects.Add(effect with { Cause = set });
                    continue;
                }
                cause = FirstCut.AsItStands(cause);
            }
            if (_instead.TryGetValue(cause.Id, out Spread? instead)) learned += instead * effect.Times;
            else effects.Add(effect with { Cause = cause });
        }
        return learned + new Spread(ExactLength.Zero, effects.ToImmutable());
    }

    private void Take(Spread expected, Spread read)
    {
        // expected + errors = read + errors of reading: the difference is nothing, whatever the errors are.
        Spread equation = read - expected;
        // Half as far again as all errors at their worst explain, a reading contradicts what is known: it teaches doubt, not figures.
        ExactLength reach = (equation.WorstHigh - equation.WorstLow) / 2;
        if ((equation.WorstLow + reach).Abs() > reach * Rational.Of(3, 2)) return;
        Effect? pivot = null;
        Spread? solved = null;
        double most = 0;
        foreach (Effect effect in expected.Effects.Where(e => IsShared(e.Cause.Kind)))
        {
            if (equation.Effects.FirstOrDefault(e => e.Cause.Id == effect.Cause.Id) is not { Cause: not null } own) continue;
            // own.Times * error + rest = 0
            var rest = new Spread(equation.Value, [.. equation.Effects.Where(e => e.Cause.Id != own.Cause.Id)]);
            Spread instead = rest * (Rational.Of(-1) / own.Times);
            double gain = Gain(own.Cause, instead);
            if (gain <= most) continue;
            most = gain;
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

    // By the likely range: errors that add up to more at their very worst still say more when all of them together are seldom so.
    private static double Gain(Cause cause, Spread instead) =>
        Spread.Of(ExactLength.Zero, cause).StandardDeviation.Millimetres.Value - instead.StandardDeviation.Millimetres.Value;

    private static bool IsShared(CauseKind kind) => kind is CauseKind.Lot or CauseKind.Sheet or CauseKind.Section or CauseKind.Setting or CauseKind.Bought;
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>
/// How a gap would stand if some quantities were read before what depends on them is cut. A reading moves the figures to cut that are worked
/// from it, so that what the real thing is off by comes back with the opposite sign: of the thickness of two sides, only the error of the
/// calliper is left in the play. What is cut already, or pinned by a reading, does not move any more. Linear, as the workings are.
/// </summary>
/// <param name="spreads">What is known now.</param>
internal sealed class WhatIf(Spreads spreads)
{
    private readonly SetPiece _set = spreads.Set;
    private readonly Sensitivity _sensitivity = new(spreads.Set.Worked);
    private ImmutableHashSet<QuantityKey>? _readFor;
    private Dictionary<QuantityKey, Spread> _real = [];
    private ImmutableHashSet<QuantityKey>? _landedFor;
    private Dictionary<QuantityKey, Spread?> _landed = [];

    /// <summary>The figures to cut that a gap hangs on and that still may move, with how much it moves with each.</summary>
    public ImmutableArray<(QuantityKey ToCut, Rational Times)> Figures(QuantityKey gap)
    {
        Dictionary<QuantityKey, Rational> reached = _sensitivity.Of([(gap, Rational.One)], throughFigures: false, ImmutableHashSet<QuantityKey>.Empty);
        return [.. reached.Where(r => IsFigure(r.Key) && r.Value.Sign != 0 && _set.Worked.Values[r.Key].Pin is null).OrderBy(r => r.Key).Select(r => (r.Key, r.Value))];
    }

    /// <summary>All quantities that figures still to be cut are worked from.</summary>
    /// <param name="figures">From <see cref="Figures"/>.</param>
    /// <param name="read">Taken as read: nothing is looked for behind them.</param>
    public Dictionary<QuantityKey, Rational> WorkedFrom(ImmutableArray<(QuantityKey ToCut, Rational Times)> figures, ImmutableHashSet<QuantityKey> read) =>
        _sensitivity.Of([.. figures.Select(f => (Exact(f.ToCut), f.Times))], throughFigures: true, read);

    /// <summary>How much a sum moves with each quantity it is worked from, through figures to cut and all; nothing is looked for behind a reading or a fact.</summary>
    public Dictionary<QuantityKey, Rational> WorkedFrom(ImmutableArray<(QuantityKey Key, Rational Times)> sum) => _sensitivity.Of(sum, throughFigures: true, []);

    /// <summary>A quantity as it would stand with these read; as it stands now when none of them bears on it.</summary>
    /// <param name="quantity">A gap, or what is to be read itself.</param>
    /// <param name="now">As it stands by its own working (<see cref="Spreads.Prior"/>).</param>
    /// <param name="figures">From <see cref="Figures"/>.</param>
    /// <param name="read">Taken as read.</param>
    /// <param name="settings">Settings whose first part is measured, each with what is left of its error.</param>
    public Spread With(
        QuantityKey quantity, Spread now, ImmutableArray<(QuantityKey ToCut, Rational Times)> figures, ImmutableHashSet<QuantityKey> read, ImmutableArray<Cause> settings) =>
        spreads.Learned.In(Moved(quantity, now, figures, read), settings);

    private Spread Moved(QuantityKey quantity, Spread now, ImmutableArray<(QuantityKey ToCut, Rational Times)> figures, ImmutableHashSet<QuantityKey> read)
    {
        Dictionary<QuantityKey, Rational> all = WorkedFrom(figures, read);
        Spread then = now;
        foreach (QuantityKey key in read.Order())
        {
            if (key == quantity || !all.TryGetValue(key, out Rational times) || times.Sign == 0 || spreads.Prior(key) is not { } known) continue;
            // What is read is the real thing, as it came out of what was read before it, and the error of reading it.
            then += (Real(key, known, read) - known.Value + spreads.ReadingOf(_set.Worked.Values[key].Quantity)) * times;
        }
        // What one figure is rounded by goes on into the figures that are worked from it: the bottom of a box follows its end as that was landed.
        var rounded = figures.ToDictionary(f => f.ToCut, f => f.Times);
        foreach ((QuantityKey key, Rational times) in all)
            if (IsFigure(key) && !_sensitivity.Ends(key, throughFigures: true, read)) rounded[key] = rounded.GetValueOrDefault(key) + times;
        foreach ((QuantityKey figure, Rational times) in rounded)
            if (times.Sign != 0 && Landing(figure, read) is { } landing) then += landing * times;
        return then;
    }

    private Spread Real(QuantityKey key, Spread now, ImmutableHashSet<QuantityKey> read)
    {
        if (!ReferenceEquals(_readFor, read)) (_readFor, _real) = (read, []);
        if (_real.TryGetValue(key, out Spread? real)) return real;
        ImmutableArray<(QuantityKey, Rational)> figures = Figures(key);
        return _real[key] = figures.Length == 0 ? now : Moved(key, now, figures, read);
    }

    /// <summary>
    /// A figure that will be landed on the grid anew: by how much is not known, so what is known of it now no longer counts. Null where these
    /// readings do not move it, or move it by whole steps alone because only other figures stand between them and it. Figures that now lie as far
    /// off the grid as each other, and move alike, are landed alike.
    /// </summary>
    private Spread? Landing(QuantityKey figure, ImmutableHashSet<QuantityKey> read)
    {
        if (!ReferenceEquals(_landedFor, read)) (_landedFor, _landed) = (read, []);
        if (_landed.TryGetValue(figure, out Spread? known)) return known;
        Dictionary<QuantityKey, Rational> own = _sensitivity.Of([(Exact(figure), Rational.One)], throughFigures: false, read);
        List<KeyValuePair<QuantityKey, Rational>> moves = [.. own.Where(o => o.Value.Sign != 0 && (read.Contains(o.Key) || (!o.Value.IsWhole && IsFigure(o.Key) && Landing(o.Key, read) is not null))).OrderBy(o => o.Key)];
        return _landed[figure] = moves.Count == 0 ? null : Rounded(figure, string.Join(' ', moves.Select(m => $"{m.Value}*{m.Key}")));
    }

    private Spread Rounded(QuantityKey figure, string moves)
    {
        Worked worked = _set.Worked.Values[figure];
        var cut = (ToCut)worked.Quantity.Working;
        ExactLength step = cut.Grid.Step, now = worked.Value - _set.Worked[cut.Exact];
        (ExactLength low, ExactLength high) = cut.Rounding switch
        {
            Rounding.Down => (-step, ExactLength.Zero),
            Rounding.Up => (ExactLength.Zero, step),
            _ => (-step / 2, step / 2),
        };
        return Spread.Of(-now, new Cause($"rounding:{cut.Rounding}:{step}:{now}:{moves}", CauseKind.Rounding, $"landing {(_set.Worked.Values.TryGetValue(cut.Exact, out Worked? exact) ? exact.Quantity.Name : worked.Quantity.Name)} on the grid", low, high, Shape.Even));
    }

    private bool IsFigure(QuantityKey key) => _set.Worked.Values.TryGetValue(key, out Worked? worked) && worked.Quantity.Working is ToCut;

    private QuantityKey Exact(QuantityKey figure) => ((ToCut)_set.Worked.Values[figure].Quantity.Working).Exact;
}

using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Testing;

/// <summary>
/// Small cases and frames from a seed: odd thicknesses, sizes off the grid, divisions, drawers, shelves. All can be built: none is so small that
/// a drawer does not fit. A seed that fails is a test case by itself.
/// </summary>
public sealed class RandomPieces
{
    private readonly Random _random;
    private int _keys;
    private bool _isFrame;

    private RandomPieces(int seed) => _random = new(seed);

    /// <summary>The piece of a seed with the grid it is to be set out on.</summary>
    public static (Piece Piece, Grid Grid) Of(int seed)
    {
        var maker = new RandomPieces(seed);
        Grid grid = maker.OneOf(Grid.ThirtySecond, Grid.SixtyFourth, Grid.HalfMillimetre);
        return (maker.Make(), grid);
    }

    private Piece Make()
    {
        Material[] materials =
        [
            Described.Sheet("wood", Size(0.67, 0.76)), Described.Sheet("thin", Size(0.44, 0.62)), Described.Sheet("bottom", Size(0.19, 0.38)),
            Described.Sticks("stick", Size(1.4, 1.6), Size(2.4, 3.6)),
        ];
        DrawerKind kind = Described.Kind("box", gap: Maybe(0.07, 0.17), play: Maybe(0.01, 0.031));
        Member structure = _random.Next(3) == 0 ? Frame() : Case();
        ImmutableArray<Member> members = _random.Next(2) == 0
            ? [structure]
            : [structure, new Top("T", "", Described.Named("wood"), Over(), Over(), Over(), Over(), Place.None)];
        return Described.Piece(OneOf(LengthUnit.Inch, LengthUnit.Millimetre), materials, [kind], members);
    }

    private Case Case() => Described.Case(Size(24, 44), Size(24, 44), Size(13, 26), Content(false, false, false), _random.Next(2) == 0 ? "bottom" : null);

    private Frame Frame()
    {
        _isFrame = true;
        int count = _random.Next(1, 4);
        int rest = _random.Next(-1, count);
        var items = ImmutableArray.CreateBuilder<DivisionItem>();
        for (int i = 0; i < count; i++)
        {
            if (i > 0) items.Add(new Divider(Key("M"), null, Place.None));
            bool panelled = _random.Next(2) == 0;
            OpeningContent? content = panelled ? Content(true, false, true) : _random.Next(2) == 0 ? Shelves(3) : null;
            items.Add(Described.Opening(Key("B"), ShareOf(i, rest, 8, 9), content, panelled ? "wood" : null));
        }
        return Described.Frame(Size(42, 90), Size(28, 40), Size(20, 30), Size(3, 6), OneOf(Laid.Flat, Laid.OnEdge), items.ToImmutable());
    }

    private OpeningContent? Content(bool acrossUsed, bool downUsed, bool wanted)
    {
        int pick = _random.Next(wanted ? 4 : 5);
        if (pick == 0 && !acrossUsed) return Division(true, downUsed);
        if (pick == 1 && !downUsed) return Division(false, acrossUsed);
        if (pick == 2) return Shelves(downUsed ? 2 : 3);
        return pick == 4 ? null : Drawers(downUsed ? 2 : 4);
    }

    private Division Division(bool isAcross, bool otherUsed)
    {
        // A frame is too low for three openings with drawers above each other.
        int count = _isFrame ? 2 : _random.Next(2, 4), rest = _random.Next(-1, count);
        var items = ImmutableArray.CreateBuilder<DivisionItem>();
        for (int i = 0; i < count; i++)
        {
            if (i > 0) items.Add(new Divider(Key("P"), null, Place.None));
            items.Add(Described.Opening(Key("O"), ShareOf(i, rest, 6, 6.8), Content(isAcross || otherUsed, !isAcross || otherUsed, false)));
        }
        return new(isAcross, items.ToImmutable());
    }

    private DrawerBank Drawers(int most)
    {
        // Where the height is shared already, equal fronts: what given ones leave could be too low for a box.
        int count = _random.Next(1, most + 1), rest = most > 2 ? _random.Next(-1, count) : -1;
        return new(Described.Named("box"), [.. Enumerable.Range(0, count).Select(i => Described.Drawer(Key("D"), ShareOf(i, rest, 2.6, 3.2)))]);
    }

    private Shelves Shelves(int most) =>
        new(Described.Named("wood"), Maybe(0, 1), [.. Enumerable.Range(0, _random.Next(1, most + 1)).Select(_ => Described.Named(Key("S")))]);

    // Without a rest all share alike.
    private ShareOfWhole ShareOf(int index, int rest, double least, double most) =>
        rest < 0 ? ShareOfWhole.Equal : index == rest ? Described.Rest : Described.Share(Size(least, most));

    private Given? Maybe(double least, double most) => _random.Next(2) == 0 ? null : Described.Given(Size(least, most));

    private Given Over() => Described.Given(Size(0, 2));

    /// <summary>A length in inches, in 64ths, sevenths of a 16th or tenths of a millimetre: on the grid only by chance.</summary>
    private ExactLength Size(double least, double most)
    {
        (double step, Func<long, ExactLength> make) = OneOf<(double, Func<long, ExactLength>)>(
            (1 / 64.0, n => ExactLength.FromInches(Rational.Of(n, 64))), (1 / 112.0, n => ExactLength.FromInches(Rational.Of(n, 112))), (0.1 / 25.4, n => ExactLength.FromMillimetres(Rational.Of(n, 10))));
        return make(_random.NextInt64((long)Math.Ceiling(least / step), (long)Math.Floor(most / step) + 1));
    }

    private T OneOf<T>(params ReadOnlySpan<T> values) => values[_random.Next(values.Length)];

    private string Key(string letter) => $"{letter}{++_keys}";
}

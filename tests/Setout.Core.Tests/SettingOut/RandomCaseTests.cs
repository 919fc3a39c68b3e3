using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Testing;

namespace Setout.Core.Tests.SettingOut;

/// <summary>What must hold for any small case with any joints, back, foot and face frame.</summary>
public class RandomCaseTests
{
    private static readonly Gen<(int Seed, int Pick)> s_cases = Gen.Select(Gen.Int[0, 1_000_000], Gen.Int[0, 100_000_000]);

    private static (Piece Piece, Grid Grid)? Of(int seed, int pick)
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        if (piece.Members[0] is not Case plain) return null;
        int Next(int count)
        {
            int next = pick % count;
            pick /= count;
            return next;
        }
        Named? back = Next(4) == 0 ? null : Described.Named("bottom");
        Case with = plain with
        {
            Back = back,
            Corners = new((CaseJoint)Next(5), null, Place.None),
            Dividers = new(new[] { CaseJoint.Butt, CaseJoint.Pocket, CaseJoint.Dowels, CaseJoint.Dado }[Next(4)], null, Place.None),
            BackFit = back is null ? BackFit.Applied : new((BackHold)Next(4), null, null, null, Place.None),
            Toe = Next(3) == 0 ? new(Described.Given("3 1/2"), null, null, Place.None) : null,
            Base = Next(3) == 0 ? new(Described.Named("wood"), Described.Given("4"), null, Place.None) : null,
            FaceFrame = Next(3) == 0 ? new(Described.Named("face"), null, null, null, (FaceFrameJoint)Next(3), null, Next(2) == 0 ? Described.Given("1/4") : null, null, true, Place.None) : null,
            Fillers = Next(4) == 0 ? [new(Described.Named("wood"), Described.Given("2"), null, Next(2) == 0, Place.None)] : [],
        };
        // Higher and deeper, so that drawers still go behind a face frame and over a toe kick.
        with = with with { Height = Described.Given(plain.Height.Value + Described.Of("14")), Width = Described.Given(plain.Width.Value + Described.Of("10")), Depth = Described.Given(plain.Depth.Value + Described.Of("3")) };
        return (piece with { Members = piece.Members.SetItem(0, with), Materials = piece.Materials.Add("face", Described.Sticks("face", Described.Of("3/4"), Described.Of("1 1/2"))) }, grid);
    }

    [Fact]
    public void SetOut_AnyCase_CanBeBuilt()
    {
        s_cases.Holds((seed, pick) =>
        {
            if (Of(seed, pick) is not { } made) return;
            SetPiece set = PieceSetOut.Of(made.Piece, made.Grid, ImmutableDictionary<QuantityKey, Pin>.Empty);
            // Packing is planed from sticks of 3/4; where more is wanted the finding says so.
            if (set.Findings.Any(f => f.Code == "packing.too-thin")) return;
            Assert.Empty(SetPieceChecker.Violations(set));
        }, iter: 600);
    }

    [Fact]
    public void SetOut_AnyCase_OutsideIsInsideAndWhatIsRoundIt() => s_cases.Holds((seed, pick) =>
    {
        if (Of(seed, pick) is not { } made) return;
        SetPiece set = PieceSetOut.Of(made.Piece, made.Grid, ImmutableDictionary<QuantityKey, Pin>.Empty);
        ExactLength Value(string key) => set.Worked.Values.TryGetValue(new(key), out Worked? w) ? w.Value : ExactLength.Zero;
        ExactLength sides = Value("wood.thickness") * 2;
        Assert.Equal(Value("C.outside"), Value("C.opening.width") + sides);
        Assert.Equal(Value("C.side.length.as-cut"), Value("C.opening.height") + sides + Value("C.toe.height"));
        // Within half a step for each size that lands on the grid.
        ExactLength off = Value("C.width") - Value("C.outside");
        Assert.True(off.Abs() <= made.Grid.Step.ToExact(), $"{off.Inches}");
    }, iter: 200);

    [Fact]
    public void SetOut_AnyCase_EveryReferenceLeadsSomewhere() => s_cases.Holds((seed, pick) =>
    {
        if (Of(seed, pick) is not { } made) return;
        SetPiece set = PieceSetOut.Of(made.Piece, made.Grid, ImmutableDictionary<QuantityKey, Pin>.Empty);
        var parts = set.Parts.Select(p => p.Key).ToHashSet();
        Assert.Equal(set.Parts.Length, parts.Count);
        Assert.Equal(set.Parts.Length, set.Parts.Select(p => p.Mark).Distinct().Count());
        Assert.All(set.Steps.SelectMany(s => s.Parts), k => Assert.Contains(k, parts));
        Assert.All(set.Machinings, m => Assert.Contains(m.Part, parts));
        Assert.All(set.Machinings.SelectMany(m => m.Figures), f => Assert.True(set.Worked[f.Key].Sign >= 0, f.Key.Text));
        Assert.All(set.Joints, j => Assert.Contains(j.Part, parts));
        Assert.All(set.Parts, p => Assert.Contains(set.Steps, s => s.Parts.Contains(p.Key)));
    }, iter: 200);
}

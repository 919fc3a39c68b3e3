using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Testing;
using Setout.Workbench.SetOut;

namespace Setout.Tests.Browser;

/// <summary>The figures of a sum on the page are those that the command and the paper tell.</summary>
public class WorkingViewTests
{
    /// <summary>Sides of 12 mm in a bench in inches, and a bay that reads 500 mm. By hand: 12 / 25.4 = 0.47244..., 500 / 25.4 = 19.68503..., 19 11/16 is 19.6875; 0.12253 more than the 19 9/16 planned is 31.4/256.</summary>
    [Fact]
    public void Of_SumsThatDoNotEnd_IsToldAsTheCommandTellsThem()
    {
        WorkingView width = Of("L3.end.length");
        Assert.Equal("\u2212 2 × \u2248 0.4724", width.Terms[1].Figure.PlainText);
        // 19.68503 - 1 1/32 - 0.94488 is 17.70890: it is cut, so where it lies on a rule is no matter.
        Assert.Equal(("\u2248 17.7089", ""), (width.Sum.PlainText, width.OnTheRule.PlainText));
        WorkingView toCut = Of("L3.end.length.to-cut");
        Assert.Equal(("\u2248 17.7089", "17 11/16"), (toCut.Terms[0].Figure.PlainText, toCut.Sum.PlainText));
        WorkingView opening = Of("L3.opening");
        Assert.Equal(("\u2248 19.685", "19 11/16 to the nearest 1/64"), (opening.Sum.PlainText, opening.OnTheRule.PlainText));
        Assert.Equal(("\u2248 19.685", "read at the bench: about 31/256 in over"), (Of("L.width").Reading!.Figure.PlainText, Of("L.width").Reading!.Words.PlainText));
    }

    /// <summary>What is read finer than a rule shows is told as it was read, and by how much it is over: 0.471 less 15/32 is 0.00225, about 1/256.</summary>
    [Fact]
    public void Of_AReadingFinerThanTheRule_IsToldAsItWasRead()
    {
        WorkingView sides = Of("boxes.thickness", "0.471 in");
        Assert.Equal(("0.471", "read at the bench: about 1/256 in over"), (sides.Reading!.Figure.PlainText, sides.Reading.Words.PlainText));
    }

    private static WorkingView Of(string key, string sides = "12 mm")
    {
        PieceSource source = PieceFiles.Of(Samples.File("luthiers-bench"), null).Read().Source!;
        ReadingEntry Read(string id, string of, string value) => new(id, "2026-05-04T09:00:00Z", new(of), [LengthText.Parse(value, LengthUnit.Inch).Value], "calliper", "");
        WorkedPiece worked = (source with { Log = new([Read("e1", "boxes.thickness", sides), Read("e2", "L.width", "500 mm")]) }).SetOut().Worked;
        return WorkingView.Of(WrittenWorking.Of(worked, new QuantityKey(key))!, LengthUnit.Inch, "bench");
    }
}

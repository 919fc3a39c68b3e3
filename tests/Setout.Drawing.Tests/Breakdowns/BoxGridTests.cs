using CsCheck;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Testing;

namespace Setout.Drawing.Tests.Breakdowns;

public sealed class BoxGridTests
{
    private static readonly Gen<Box> s_boxes =
        from left in Gen.Double[-40, 260]
        from top in Gen.Double[-40, 260]
        from width in Gen.OneOf(Gen.Double[0, 6], Gen.Double[0, 300])
        from height in Gen.OneOf(Gen.Double[0, 6], Gen.Double[0, 300])
        select Box.At(left, top, width, height);

    [Fact]
    public void Near_AnyBoxes_IsWhatLookingAtEachFinds() =>
        Gen.Select(s_boxes.Array[0, 60], s_boxes).Holds((boxes, asked) =>
        {
            var grid = new BoxGrid();
            foreach (Box box in boxes) grid.Add(box);
            int[] each = [.. Enumerable.Range(0, boxes.Length).Where(i =>
                boxes[i].Left <= asked.Right && asked.Left <= boxes[i].Right && boxes[i].Top <= asked.Bottom && asked.Top <= boxes[i].Bottom)];

            Assert.Equal(each, grid.Near(asked));
        });
}

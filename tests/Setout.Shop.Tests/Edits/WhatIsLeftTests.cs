using Setout.Shop.Edits;
using Setout.Shop.Tests.SettingOut;

namespace Setout.Shop.Tests.Edits;

/// <summary>What is looked at when what was looked at is gone.</summary>
public class WhatIsLeftTests
{
    private static readonly string s_text = Sample.Text(Sample.Bench);

    [Theory]
    // The bench without drawer L3, then without what is in the bay, then without the frame.
    [InlineData("            - {drawer: L3, front: 6}\n", "L3", "L")]
    [InlineData("            - {drawer: L3, front: 6}\n", "L3.front.height", "L")]
    [InlineData("            - {drawer: L3, front: 6}\n", "L2", "L2")]
    [InlineData("            - {drawer: L3, front: 6}\n", "F.width", "F.width")]
    [InlineData("            - {drawer: L3, front: 6}\n", "Z", "Z")]
    [InlineData("            - {drawer: L3, front: 6}\n", "", "")]
    public void Key_ThatIsGone_LeadsToWhatItStoodIn(string without, string key, string left)
    {
        Assert.Contains(without, s_text, StringComparison.Ordinal);
        Assert.Equal(left, WhatIsLeft.Of(s_text, s_text.Replace(without, "", StringComparison.Ordinal), key));
    }

    [Theory]
    [InlineData("L1", "")]
    [InlineData("F", "")]
    [InlineData("T", "T")]
    [InlineData("slab.thickness", "slab.thickness")]
    public void Key_OfWhatStoodInNothing_LeadsToTheWholePiece(string key, string left)
    {
        int from = s_text.IndexOf("  - frame: F", StringComparison.Ordinal), to = s_text.IndexOf("  - top: T", StringComparison.Ordinal);
        Assert.Equal(left, WhatIsLeft.Of(s_text, s_text[..from] + s_text[to..], key));
    }

    [Fact]
    public void Text_ThatCannotBeRead_LeavesNothing() => Assert.Equal("", WhatIsLeft.Of(s_text, "assembly: [", "L1"));
}

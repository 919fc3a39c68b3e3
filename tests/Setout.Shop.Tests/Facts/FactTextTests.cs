using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Shop.Facts;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Facts;

public class FactTextTests
{
    private static readonly ImmutableArray<LogEntry> s_three = [.. Enumerable.Range(1, 3).Select(i =>
        new ReadingEntry($"n{i}", "2026-05-04T09:40:00Z", new("L.width"), [ExactLength.FromInches(Rational.Of(60 + i, 7))], "tape", "a \"spot\""))];

    /// <summary>Adding several at once is only a quicker way of adding one after the other.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("setout-log: 1\n")]
    [InlineData("setout-log: 1\nentries:\n")]
    [InlineData("setout-log: 1\nentries:\n  - id: x\n    at: 2026-05-04T09:00:00Z\n    cut: [C] # at last")]
    [InlineData("setout-log: 1\nentries:\n- id: x\n  at: 2026-05-04T09:00:00Z\n  cut: [C]\n")]
    [InlineData("setout-log: 1\nentries:\n- {id: x, at: 2026-05-04T09:00:00Z, cut: [C]}\n")]
    [InlineData("setout-log: 1\r\nentries:\r\n      - {id: x, at: 2026-05-04T09:00:00Z, cut: [C]}\r\n")]
    public void Append_Several_IsTheTextOfOneAfterTheOther(string log) =>
        Assert.Equal((s_three.Aggregate(log, LogText.Append), 3), FactText.Append(log, s_three));

    [Fact]
    public void Append_SomeThereAlready_LeavesThemOut()
    {
        string log = LogText.Append(null, s_three[1]);
        Assert.Equal((LogText.Append(LogText.Append(log, s_three[0]), s_three[2]), 2), FactText.Append(log, s_three));
        Assert.Equal((log, 0), FactText.Append(log, [s_three[1]]));
    }

    [Fact]
    public void Append_WhatReadsDifferentlyButSaysTheSame_IsThereAlready()
    {
        const string log = "setout-log: 1\nentries:\n  - {void: \"x\", id: y, at: '2026-05-04T09:40:00Z'}\n";
        Assert.Equal((log, 0), FactText.Append(log, [new VoidEntry("y", "2026-05-04T09:40:00Z", "x")]));
    }

    [Theory]
    [InlineData("")]
    [InlineData("nothing")]
    [InlineData("  - {id: y}\n")]
    [InlineData("  - {id: y, at: 2026-05-04T09:40:00Z, void: x}\n  - {id: z, at: 2026-05-04T09:40:00Z, void: x}\n")]
    public void Read_WhatIsNotOneEntry_IsRefused(string text) => Assert.Throws<FactStoreException>(() => FactText.Read(text));
}

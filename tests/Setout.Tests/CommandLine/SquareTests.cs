using System.Text.Json;
using Setout.Commands;

namespace Setout.Tests.CommandLine;

/// <summary><c>setout square</c>: words joined into lengths, answers in words and JSON, bad sizes refused.</summary>
public sealed class SquareTests
{
    [Theory]
    [InlineData("--sides 23 1/4 36 23 1/4 36", "--sides=23 1/4;36;23 1/4;36")]
    [InlineData("--sides 600 720 600 720 --diagonals 937 938 --json", "--sides=600;720;600;720 --diagonals=937;938 --json")]
    [InlineData("--lift 1/8 --unit mm", "--lift=1/8 --unit mm")]
    public void Joined_WordsAfterAnOption_BecomeItsLengths(string words, string joined) =>
        Assert.Equal(joined, string.Join(' ', SquareCommand.Joined(words.Split(' '))));

    [Fact]
    public async Task Square_RackedFrameAsJson_SaysWhichDiagonalToShortenAndByHowMuch()
    {
        // 24 x 36 with 1/8 in between the diagonals: 0.179 degrees (law of cosines); half the difference sits in each.
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("square", "--sides", "24", "36", "24", "36", "--diagonals", "43", "5/16", "43", "7/32", "--json"));
        using JsonDocument answer = JsonDocument.Parse(terminal.Out);
        JsonElement root = answer.RootElement;
        Assert.Equal("AC", root.GetProperty("shorten").GetString());
        Assert.Equal(0.135, root.GetProperty("out_of_square_deg").GetDouble(), 0.001);
        Assert.False(root.GetProperty("equal_diagonals_mislead").GetBoolean());
        // By and target belong together: what it reads less by is the target.
        decimal by = root.GetProperty("by").GetProperty("mm").GetDecimal(), target = root.GetProperty("target").GetProperty("mm").GetDecimal();
        Assert.Equal(43.3125m * 25.4m, by + target, 3);
        Assert.Equal(Math.Sqrt((24 * 24) + (36 * 36)) * 25.4, (double)target, 0.2);
    }

    [Fact]
    public async Task Square_EqualDiagonalsOfATrapezoid_SaysThatTheyMislead()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("square", "--sides", "600", "720", "590", "720", "--diagonals", "934.5", "934.5", "--unit", "mm"));
        Assert.Contains("opposite sides differ", terminal.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("square --sides 24 36 24 --diagonals 43 43", "wants 4 lengths and has 3")]
    [InlineData("square --sides 24 36 24 36 --diagonals 43 x", "'x' is not a length")]
    [InlineData("square --sides 24 36 24 36 --diagonals 90 43", "cannot meet")]
    [InlineData("square --sides 24 36 24 36 --diagonals 43 43 --unit ell", "There is no unit")]
    [InlineData("square --sides 24 36 24 36", "diagonals")]
    public async Task Square_BadWords_AreAUsageErrorThatSaysWhy(string words, string why)
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await terminal.RunAsync(words.Split(' ')));
        Assert.Contains(why, terminal.Error, StringComparison.Ordinal);
        Assert.Empty(terminal.Out);
    }
}

using Setout.Commands;

namespace Setout.Tests;

/// <summary>A terminal that keeps what is written, with a clock that stands still.</summary>
internal sealed class TestTerminal(CancellationToken cancel = default)
{
    private readonly StringWriter _out = new() { NewLine = "\n" };
    private readonly StringWriter _error = new() { NewLine = "\n" };

    public string Out => _out.ToString();

    public string Error => _error.ToString();

    public Terminal Terminal => new(TextWriter.Synchronized(_out), TextWriter.Synchronized(_error), TextReader.Null, false, new StandingClock(), cancel);

    /// <summary>Runs one command and gives its exit code.</summary>
    public Task<int> RunAsync(params string[] words) => SetoutProgram.RunAsync(words, Terminal);

    private sealed class StandingClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 14, 9, 40, 0, TimeSpan.Zero);

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}

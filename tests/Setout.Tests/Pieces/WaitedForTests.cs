using Setout.Workbench.Pieces;

namespace Setout.Tests.Pieces;

/// <summary>Layouts rest while somebody waits for what is quick, and not for ever. A look takes 4 ms, and 60 ms are left to a browser.</summary>
public sealed class WaitedForTests
{
    private readonly Clock _clock = new();
    private readonly WaitedFor _waited;
    private int _looks;
    private (int After, WaitedFor.Served? Served) _ends;

    public WaitedForTests() => _waited = new(_clock, (time, _) =>
    {
        _clock.Now += time;
        if (++_looks == _ends.After) _ends.Served!.Dispose();
    });

    [Fact]
    public void Rest_NobodyWaits_IsNone()
    {
        _waited.Rest(default);
        Assert.Equal(0, _looks);
    }

    [Fact]
    public void Rest_SomebodyIsServed_LastsUntilThenAndALittleMore()
    {
        _ends = (5, _waited.Begin());
        _waited.Rest(default);
        Assert.Equal(5 + (60 / 4), _looks);
        _waited.Rest(default);
        Assert.Equal(5 + (60 / 4), _looks);
    }

    [Fact]
    public void Rest_TwoWait_LastsUntilTheSecondIsServed()
    {
        WaitedFor.Served first = _waited.Begin();
        _ends = (30, _waited.Begin());
        first.Dispose();
        _waited.Rest(default);
        Assert.Equal(30 + (60 / 4), _looks);
    }

    [Fact]
    public void Rest_SomebodyIsNeverServed_EndsAfter400Milliseconds()
    {
        _waited.Begin();
        _waited.Rest(default);
        Assert.Equal(400 / 4, _looks);
    }

    [Fact]
    public void Rest_OfASearchThatIsGivenUp_IsNone()
    {
        _waited.Begin();
        _waited.Rest(new(true));
        Assert.Equal(0, _looks);
    }

    private sealed class Clock : TimeProvider
    {
        public TimeSpan Now { get; set; }

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => Now.Ticks;
    }
}

namespace Setout.Workbench.Pieces;

/// <summary>What somebody who is typing waits for goes before what is worked out in the background: searches for layouts rest meanwhile. They find the same, since they count steps and no time.</summary>
/// <param name="clock">What time is taken by.</param>
/// <param name="hold">Holds the thread that calls it for so long, or until a search is given up.</param>
internal sealed class WaitedFor(TimeProvider clock, Action<TimeSpan, CancellationToken> hold)
{
    // While it is served, and as long after as a browser takes to draw it and to ask for the rest.
    private static readonly TimeSpan s_after = TimeSpan.FromMilliseconds(60), s_look = TimeSpan.FromMilliseconds(4), s_longest = TimeSpan.FromMilliseconds(400);

    private long _until;
    private int _served;

    /// <summary>Somebody waits from now on, until what is returned is disposed of.</summary>
    public Served Begin()
    {
        Interlocked.Increment(ref _served);
        return new(this);
    }

    /// <summary>Rests while somebody waits; not for long, so that a search comes to its end whoever asks for whatever.</summary>
    /// <param name="cancel">Ends it at once.</param>
    public void Rest(CancellationToken cancel)
    {
        for (long begun = clock.GetTimestamp(); IsSomebodyWaiting && !cancel.IsCancellationRequested && clock.GetElapsedTime(begun) < s_longest;) hold(s_look, cancel);
    }

    private bool IsSomebodyWaiting => Volatile.Read(ref _served) > 0 || clock.GetTimestamp() < Interlocked.Read(ref _until);

    private void End()
    {
        Interlocked.Exchange(ref _until, clock.GetTimestamp() + (long)(s_after.TotalSeconds * clock.TimestampFrequency));
        Interlocked.Decrement(ref _served);
    }

    /// <summary>Somebody waiting.</summary>
    internal sealed class Served(WaitedFor all) : IDisposable
    {
        public void Dispose() => all.End();
    }
}

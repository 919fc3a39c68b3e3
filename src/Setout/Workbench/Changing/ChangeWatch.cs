using System.Collections.Immutable;
using System.Threading.Channels;

namespace Setout.Workbench.Changing;

/// <summary>Tells open windows that something was changed; each then looks what. A window that sleeps misses nothing: it looks when it wakes.</summary>
internal sealed class ChangeWatch
{
    private readonly Lock _lock = new();
    private ImmutableList<Channel<bool>> _windows = [];

    /// <summary>Something was changed.</summary>
    public void Tell()
    {
        ImmutableList<Channel<bool>> windows;
        lock (_lock) windows = _windows;
        foreach (Channel<bool> window in windows) window.Writer.TryWrite(true);
    }

    // Another program may append to the store beside this one: it is looked at so often.
    private static readonly TimeSpan s_look = TimeSpan.FromSeconds(2);

    /// <summary>Gives true each time something was changed or may have been, until the window goes.</summary>
    public async IAsyncEnumerable<bool> Changes([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel)
    {
        // One is enough: whoever is slow looks once for many changes.
        var window = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
        lock (_lock) _windows = _windows.Add(window);
        try
        {
            while (true)
            {
                using var look = CancellationTokenSource.CreateLinkedTokenSource(cancel);
                look.CancelAfter(s_look);
                try
                {
                    await window.Reader.ReadAsync(look.Token);
                }
                catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
                {
                    // Nobody here changed anything.
                }
                yield return true;
            }
        }
        finally
        {
            lock (_lock) _windows = _windows.Remove(window);
        }
    }
}

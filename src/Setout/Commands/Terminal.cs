namespace Setout.Commands;

/// <summary>
/// Where commands write: results to <see cref="Out"/>, progress, hints and errors to <see cref="Error"/>. Tests hand in their own writers.
/// </summary>
/// <param name="Out">Results.</param>
/// <param name="Error">All else.</param>
/// <param name="ErrorIsTerminal">Whether progress may be shown.</param>
/// <param name="Clock">The time for new entries of a log.</param>
/// <param name="Cancel">Set when the person presses Ctrl-C.</param>
public sealed record Terminal(TextWriter Out, TextWriter Error, bool ErrorIsTerminal, TimeProvider Clock, CancellationToken Cancel)
{
#pragma warning disable RS0030 // the one place that may touch the console
    /// <summary>The real terminal.</summary>
    public static Terminal Real()
    {
        var cancel = new CancellationTokenSource();
        Console.CancelKeyPress += (_, pressed) =>
        {
            pressed.Cancel = true;
            cancel.Cancel();
        };
        Console.OutputEncoding = new System.Text.UTF8Encoding(false);
        return new(Console.Out, Console.Error, !Console.IsErrorRedirected, TimeProvider.System, cancel.Token);
    }
#pragma warning restore RS0030
}

using System.Text;
using Setout.Commands;

namespace Setout.Tests;

/// <summary>A terminal that keeps what is written, with a clock that stands still.</summary>
internal sealed class TestTerminal(CancellationToken cancel = default)
{
    private readonly KeptText _out = new();
    private readonly KeptText _error = new();

    public string Out => _out.Text;

    public string Error => _error.Text;

    public Terminal Terminal => new(_out.Open(), _error.Open(), false, new StandingClock(), cancel);

    /// <summary>Runs one command and gives its exit code.</summary>
    public Task<int> RunAsync(params string[] words) => SetoutProgram.RunAsync(words, Terminal);

    /// <summary>Ends when standard output holds a text.</summary>
    public Task UntilOutHolds(string text) => _out.UntilItHolds(text);

    private sealed class StandingClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 14, 9, 40, 0, TimeSpan.Zero);

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }

    /// <summary>Text that may be read while another thread writes it.</summary>
    private sealed class KeptText
    {
        private readonly Lock _lock = new();
        private readonly StringBuilder _text = new();
        private readonly List<(string Text, TaskCompletionSource Seen)> _awaited = [];

        public string Text
        {
            get
            {
                lock (_lock) return _text.ToString();
            }
        }

        public TextWriter Open() => new Writer(this) { NewLine = "\n" };

        public Task UntilItHolds(string text)
        {
            lock (_lock)
            {
                var seen = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
                _awaited.Add((text, seen));
                Look();
                return seen.Task;
            }
        }

        private void Add(ReadOnlySpan<char> text)
        {
            lock (_lock)
            {
                _text.Append(text);
                Look();
            }
        }

        private void Look()
        {
            if (_awaited.Count == 0) return;
            string now = _text.ToString();
            foreach ((string text, TaskCompletionSource seen) in _awaited)
                if (now.Contains(text, StringComparison.Ordinal)) seen.TrySetResult();
        }

        private sealed class Writer(KeptText kept) : TextWriter
        {
            public override Encoding Encoding => Encoding.UTF8;

            public override void Write(char value) => kept.Add([value]);

            public override void Write(string? value) => kept.Add(value);

            public override void Write(char[] buffer, int index, int count) => kept.Add(buffer.AsSpan(index, count));
        }
    }
}

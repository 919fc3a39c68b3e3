using System.Collections.Concurrent;
using System.Diagnostics;

namespace Setout.Soak;

/// <summary>The workbench as a program of its own, on a data folder.</summary>
internal sealed class RealProgram : IDisposable
{
    private readonly Process _process;
    private readonly ConcurrentQueue<string> _told = new();

    private RealProgram(Process process, string address)
    {
        (_process, Address) = (process, address);
        // What it says later is read, so that it never waits for a reader.
        _ = process.StandardOutput.ReadToEndAsync();
        process.ErrorDataReceived += (_, line) => { if (line.Data is { Length: > 0 } told) _told.Enqueue(told); };
        process.BeginErrorReadLine();
        Client = new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new(address), Timeout = TimeSpan.FromMinutes(2) };
        Client.DefaultRequestHeaders.Add("Origin", address);
    }

    /// <summary>Its number in the system; what started it has become it, where it was started by something that ends in <c>exec</c>.</summary>
    public int Id => _process.Id;

    /// <summary>Where it answers.</summary>
    public string Address { get; }

    /// <summary>Takes what it told of faults since this was asked last; empty for nothing.</summary>
    public string Told()
    {
        var lines = new List<string>();
        while (_told.TryDequeue(out string? line)) lines.Add(line);
        return string.Join('\n', lines);
    }

    /// <summary>Asks it, with its own origin; follows nowhere.</summary>
    public HttpClient Client { get; }

    /// <summary>Starts it and waits until it answers.</summary>
    /// <param name="data">Its data folder.</param>
    /// <param name="port">0 for any free one.</param>
    /// <param name="by">A program that starts it, with what it is told before; none by default.</param>
    /// <exception cref="InvalidOperationException">It did not start; with what it said.</exception>
    public static async Task<RealProgram> StartAsync(string data, int port = 0, params string[] by)
    {
        string[] words = [.. by, Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "setout.exe" : "setout"), "serve", "--data", data, "--port", $"{port}"];
        var start = new ProcessStartInfo(words[0], words[1..]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true };
        var process = Process.Start(start)!;
        const string begin = "Setout workbench: ";
        string? line = await process.StandardOutput.ReadLineAsync();
        if (line is null || !line.StartsWith(begin, StringComparison.Ordinal))
        {
            string wrong = line + await process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            int code = process.ExitCode;
            process.Dispose();
            throw new InvalidOperationException($"It did not start ({code}): {wrong}");
        }
        return new(process, line[begin.Length..].Trim());
    }

    /// <summary>Ends it at once, in the middle of whatever it does: SIGKILL where there are signals.</summary>
    public void Kill()
    {
        if (!_process.HasExited) _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Kill();
        Client.Dispose();
        _process.Dispose();
    }
}

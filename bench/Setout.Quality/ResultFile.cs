using System.Globalization;

namespace Setout.Quality;

/// <summary>One line of results. Peers that prove nothing have no bound. Parts left out are only possible where stock is limited.</summary>
internal sealed record Result(string Id, string Variant, int StockUsed, decimal Cost, decimal? Bound, bool Proven, double Seconds, int Violations, int LeftOut)
{
    public string Line => string.Join(',',
        Id, Variant, StockUsed, Cost.ToString("0.##", CultureInfo.InvariantCulture), Bound?.ToString("0.##", CultureInfo.InvariantCulture) ?? "",
        Proven ? "1" : "0", Seconds.ToString("0.000", CultureInfo.InvariantCulture), Violations, LeftOut);

    public static Result? Parse(string line)
    {
        string[] c = line.Split(',');
        if (c.Length != 9) return null;
        bool numbers = int.TryParse(c[2], out int used) & decimal.TryParse(c[3], out decimal cost)
            & double.TryParse(c[6], CultureInfo.InvariantCulture, out double seconds) & int.TryParse(c[7], out int violations) & int.TryParse(c[8], out int left);
        decimal? bound = decimal.TryParse(c[4], out decimal b) ? b : null;
        return numbers ? new(c[0], c[1], used, cost, bound, c[5] == "1", seconds, violations, left) : null;
    }
}

/// <summary>The file of results: a head line, then one line an instance, written at once so that a broken run loses one instance at most.</summary>
internal sealed class ResultFile
{
    public const string Head = "id,variant,stock_used,cost,bound,proven,seconds,violations,left_out";
    private readonly string? _path;

    public ResultFile(string? path, bool resume)
    {
        _path = path;
        if (path is null) return;
        if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder) Directory.CreateDirectory(folder);
        if (resume && File.Exists(path)) Done = Complete(File.ReadAllText(path));
        // A last line that a broken run left unfinished goes.
        File.WriteAllText(path, Head + "\n" + string.Concat(Done.Select(r => r.Line + "\n")));
    }

    public IReadOnlyList<Result> Done { get; } = [];

    /// <summary>The whole lines of a file of results.</summary>
    public static IReadOnlyList<Result> Complete(string text) =>
        [.. text[..(text.LastIndexOf('\n') + 1)].Split('\n').Select(Result.Parse).OfType<Result>()];

    public void Add(Result result)
    {
        if (_path is not null) File.AppendAllText(_path, result.Line + "\n");
    }
}

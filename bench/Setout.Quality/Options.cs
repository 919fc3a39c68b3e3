using System.Globalization;

namespace Setout.Quality;

/// <summary>Options of the form <c>--name value</c> or <c>--name</c>; a name that nobody asks for is an error.</summary>
internal sealed class Options
{
    private static readonly string[] Words =
    [
        "instances", "variant", "seconds", "seed", "out", "resume", "best", "ids", "budget", "stages", "solver",
        "kerf-check", "everyday", "long-seconds", "long-jobs", "many", "runs", "parts", "cancel-after", "subset", "cost",
    ];

    private readonly Dictionary<string, string> _values = new(StringComparer.Ordinal);

    public Options(string[] args)
    {
        for (int i = 0; i < args.Length; i++)
        {
            string name = args[i].StartsWith("--", StringComparison.Ordinal) ? args[i][2..] : "";
            if (!Words.Contains(name)) throw new UsageException($"'{args[i]}' is not an option. Options: {string.Join(", ", Words.Select(w => "--" + w))}.");
            _values[name] = i + 1 < args.Length && !args[i + 1].StartsWith("--", StringComparison.Ordinal) ? args[++i] : "";
        }
    }

    public bool Has(string name) => _values.ContainsKey(name);

    public string? Text(string name) => _values.GetValueOrDefault(name);

    public string Needed(string name) => _values.TryGetValue(name, out string? value) && value.Length > 0
        ? value
        : throw new UsageException($"--{name} is missing or has no value.");

    public long? Whole(string name) => !Has(name) ? null
        : long.TryParse(_values[name], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value) ? value
        : throw new UsageException($"--{name} needs a whole number, not '{_values[name]}'.");

    public double Number(string name, double otherwise) => !Has(name) ? otherwise
        : double.TryParse(_values[name], NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value >= 0 ? value
        : throw new UsageException($"--{name} needs a number of 0 or more, not '{_values[name]}'.");

    public int Seed => checked((int)(Whole("seed") ?? 1));
}

/// <summary>The command line asks for something that is not there.</summary>
internal sealed class UsageException(string message) : Exception(message);

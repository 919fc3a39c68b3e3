namespace Setout.Cutting.Programs;

/// <summary>
/// The port to a library of linear and integer programming. What comes back is never trusted for a proof: prices are rounded to
/// whole numbers and every bound that rests on them is worked out again exactly, and every choice of whole numbers is counted again.
/// </summary>
public interface IPrograms
{
    /// <summary>An empty linear program, to be minimised. Rows and columns may be added between two solves.</summary>
    ILinearProgram Linear();

    /// <summary>Looks for the cheapest choice of whole numbers.</summary>
    /// <param name="program">What may be chosen.</param>
    /// <param name="options">How long and from what seed.</param>
    /// <param name="stop">Ends the search early, within a tenth of a second.</param>
    IntegerAnswer Choose(IntegerProgram program, IntegerOptions options, CancellationToken stop);
}

/// <summary>
/// A linear program, minimised: each row's sum lies between two limits, each column's share between 0 and its most. Deterministic: the same
/// calls give the same answers.
/// </summary>
public interface ILinearProgram : IDisposable
{
    /// <summary>Adds a row without columns; gives its index, from 0.</summary>
    /// <param name="low">The least sum; may be minus infinity.</param>
    /// <param name="high">The greatest sum; may be infinity.</param>
    int AddRow(double low, double high);

    /// <summary>Adds a column; gives its index, from 0.</summary>
    /// <param name="cost">For one.</param>
    /// <param name="most">The greatest share; may be infinity.</param>
    /// <param name="entries">What one adds to each row; a row at most once.</param>
    int AddColumn(double cost, double most, IEnumerable<(int Row, double Count)> entries);

    /// <summary>Gives a row other limits; the next solve starts from the last basis all the same.</summary>
    /// <param name="row">Its index.</param>
    /// <param name="low">The least sum; may be minus infinity.</param>
    /// <param name="high">The greatest sum; may be infinity.</param>
    void SetRow(int row, double low, double high);

    /// <summary>Gives a column another greatest share; zero strikes it out.</summary>
    /// <param name="column">Its index.</param>
    /// <param name="most">The greatest share; may be infinity.</param>
    void SetMost(int column, double most);

    /// <summary>Solves from the last basis. False when there is no answer, or it was stopped.</summary>
    bool Solve(CancellationToken stop);

    /// <summary>Cost of the last answer.</summary>
    double Cost { get; }

    /// <summary>Share of a column in the last answer.</summary>
    double Share(int column);

    /// <summary>What one more of a row's sum would cost in the last answer: its dual value.</summary>
    double Price(int row);
}

/// <summary>A row of an integer program: its sum must lie between <paramref name="Low"/> and <paramref name="High"/>.</summary>
/// <param name="Low">The least sum.</param>
/// <param name="High">The greatest sum.</param>
public readonly record struct ProgramRow(long Low, long High);

/// <summary>A column of an integer program.</summary>
/// <param name="Cost">For one; any whole number, a common measure for all columns.</param>
/// <param name="Most">How often it may be chosen; zero or more.</param>
/// <param name="Entries">What one adds to each row; a row at most once.</param>
/// <param name="Hint">How often a known answer chooses it.</param>
public sealed record ProgramColumn(long Cost, int Most, IReadOnlyList<(int Row, long Count)> Entries, int Hint = 0);

/// <summary>Columns to choose from, as cheaply as possible.</summary>
/// <param name="Rows">The rows.</param>
/// <param name="Columns">The columns.</param>
/// <param name="Below">Only answers that cost less than this are wanted; null for any.</param>
public sealed record IntegerProgram(IReadOnlyList<ProgramRow> Rows, IReadOnlyList<ProgramColumn> Columns, long? Below = null);

/// <summary>How long and from what seed an integer program is searched.</summary>
/// <param name="Effort">Work in units that take about a second each on a small machine but are counted, never timed.</param>
/// <param name="Seed">Any whole number.</param>
public sealed record IntegerOptions(double Effort, int Seed);

/// <summary>What was found.</summary>
/// <param name="Counts">How often each column is chosen; null when nothing was found.</param>
/// <param name="Finished">
/// True when the search came to its end: the counts are the cheapest, or, without counts, there is no answer. It rests on the library alone.
/// </param>
/// <param name="Effort">Work used, in the units of <see cref="IntegerOptions.Effort"/>.</param>
public sealed record IntegerAnswer(int[]? Counts, bool Finished, double Effort);

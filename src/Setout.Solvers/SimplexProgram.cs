using Google.OrTools.LinearSolver;
using Setout.Cutting.Programs;

namespace Setout.Solvers;

/// <summary>A linear program in the library's simplex method, which keeps its basis between two solves.</summary>
internal sealed class SimplexProgram : ILinearProgram
{
    private readonly Solver _solver = Solver.CreateSolver("GLOP")
        ?? throw new InvalidOperationException("The optimisation library has no simplex method on this machine.");

    private readonly List<Constraint> _rows = [];
    private readonly List<Variable> _columns = [];
    private bool _isMoved;

    public SimplexProgram() => _solver.Objective().SetMinimization();

    public double Cost => _solver.Objective().Value();

    public int AddRow(double low, double high)
    {
        _rows.Add(_solver.MakeConstraint(low, high));
        return _rows.Count - 1;
    }

    public int AddColumn(double cost, double most, IEnumerable<(int Row, double Count)> entries)
    {
        Variable column = _solver.MakeNumVar(0, most, "");
        _solver.Objective().SetCoefficient(column, cost);
        foreach ((int row, double count) in entries) _rows[row].SetCoefficient(column, count);
        _columns.Add(column);
        return _columns.Count - 1;
    }

    public void SetRow(int row, double low, double high)
    {
        _rows[row].SetBounds(low, high);
        _isMoved = true;
    }

    public void SetMost(int column, double most)
    {
        _columns[column].SetUb(most);
        _isMoved = true;
    }

    public bool Solve(CancellationToken stop)
    {
        if (stop.IsCancellationRequested) return false;
        using CancellationTokenRegistration ending = stop.Register(() => _solver.InterruptSolve());
        // New limits leave the last prices sound, new columns the last shares: each asks for the method that goes on from them.
        _solver.SetSolverSpecificParametersAsString(_isMoved ? "use_dual_simplex:true" : "use_dual_simplex:false");
        _isMoved = false;
        return _solver.Solve() == Solver.ResultStatus.OPTIMAL;
    }

    public double Share(int column) => _columns[column].SolutionValue();

    public double Price(int row) => _rows[row].DualValue();

    public void Dispose() => _solver.Dispose();
}

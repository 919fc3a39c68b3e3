using System.Globalization;
using System.Numerics;
using Google.OrTools.Sat;

namespace Setout.Quality.Peers;

/// <summary>Two questions put to the constraint solver, with its own rule that rectangles may not lie over each other.</summary>
internal static class OverlapModel
{
    /// <summary>As much area as possible on one sheet, the first piece among it; null when nothing is found in time.</summary>
    public static PeerLaidSheet? MostOn(PeerSheet sheet, IReadOnlyList<PeerPiece> pieces, PeerLaidSheet hint, double seconds)
    {
        long step = Step(pieces);
        var model = new CpModel();
        NoOverlap2dConstraint rule = model.AddNoOverlap2D();
        Box[] boxes = [.. pieces.Select(p => new Box(model, rule, p, step, sheet.Width / step, sheet.Height / step, optional: true))];
        model.Add(boxes[0].There == 1);
        long[] areas = [.. pieces.Select(p => p.Width / step * (p.Height / step))];
        var area = LinearExpr.WeightedSum(boxes.Select(b => b.There), areas);
        model.Add(area <= sheet.Width / step * (sheet.Height / step));
        model.Maximize(area);
        List<Laid> given = [.. hint.Laid];
        foreach (Box box in boxes) box.Hint(Take(given, box.Piece), 0);
        CpSolver? solver = Solved(model, seconds);
        return solver is null ? null : new(0, [.. boxes.Where(b => solver.Value(b.There) == 1).Select(b => b.Where(solver, 0).Laid)]);
    }

    /// <summary>Everything on so many sheets, which lie side by side in one model; null when nothing is found in time.</summary>
    public static IReadOnlyList<PeerLaidSheet>? AllOn(PeerSheet sheet, int sheets, IReadOnlyList<PeerLaidSheet> hint, double seconds)
    {
        PeerPiece[] pieces = [.. hint.SelectMany(s => s.Laid).Select(l => l.Piece).OrderByDescending(p => p.Area)];
        long step = Step(pieces), width = sheet.Width / step;
        var model = new CpModel();
        NoOverlap2dConstraint rule = model.AddNoOverlap2D();
        Box[] boxes = [.. pieces.Select(p => new Box(model, rule, p, step, width, sheet.Height / step, optional: false, sheets))];
        // Sheets are alike: the largest piece lies on the first, the next on the first two, and so on.
        for (int i = 0; i < Math.Min(sheets - 1, boxes.Length); i++) model.Add(boxes[i].Sheet! <= i);
        var given = hint.Take(sheets).Select(s => s.Laid.ToList()).ToList();
        foreach (Box box in boxes)
            for (int s = 0; s < given.Count; s++)
                if (Take(given[s], box.Piece) is { } at)
                {
                    box.Hint(at, s);
                    break;
                }
        if (Solved(model, seconds) is not { } solver) return null;
        return [.. boxes.Select(b => b.Where(solver, width)).GroupBy(w => w.Sheet).OrderBy(g => g.Key).Select(g => new PeerLaidSheet(0, [.. g.Select(w => w.Laid)]))];
    }

    private static CpSolver? Solved(CpModel model, double seconds)
    {
        var solver = new CpSolver { StringParameters = string.Create(CultureInfo.InvariantCulture, $"num_workers:2 max_time_in_seconds:{seconds:0.###}") };
        return solver.Solve(model) is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? solver : null;
    }

    private static long Step(IEnumerable<PeerPiece> pieces) =>
        (long)pieces.Aggregate(BigInteger.Zero, (s, p) => BigInteger.GreatestCommonDivisor(s, BigInteger.GreatestCommonDivisor(p.Width, p.Height)));

    private static Laid? Take(List<Laid> from, PeerPiece piece)
    {
        int at = from.FindIndex(l => l.Piece == piece);
        if (at < 0) return null;
        Laid laid = from[at];
        from.RemoveAt(at);
        return laid;
    }

    /// <summary>A piece in the model: where it lies, whether it is there and whether it is turned.</summary>
    private sealed class Box
    {
        private readonly CpModel _model;
        private readonly IntVar _x, _y;
        private readonly BoolVar? _turned;
        private readonly long _step, _sheetWidth;

        public Box(CpModel model, NoOverlap2dConstraint rule, PeerPiece piece, long step, long sheetWidth, long sheetHeight, bool optional, int sheets = 1)
        {
            (_model, Piece, _step, _sheetWidth) = (model, piece, step, sheetWidth);
            long width = piece.Width / step, height = piece.Height / step;
            bool upright = width <= sheetWidth && height <= sheetHeight;
            bool turnable = piece.MayTurn && height <= sheetWidth && width <= sheetHeight;
            There = model.NewBoolVar("");
            if (!optional) model.Add(There == 1);
            long narrow = turnable ? Math.Min(width, height) : width, low = turnable ? Math.Min(width, height) : height;
            _x = model.NewIntVar(0, (sheets * sheetWidth) - narrow, "");
            _y = model.NewIntVar(0, sheetHeight - low, "");
            LinearExpr wide = LinearExpr.Constant(width), high = LinearExpr.Constant(height);
            if (turnable)
            {
                _turned = model.NewBoolVar("");
                if (!upright) model.Add(_turned == 1);
                wide = LinearExpr.Affine(_turned, height - width, width);
                high = LinearExpr.Affine(_turned, width - height, height);
            }
            IntVar endX = model.NewIntVar(narrow, sheets * sheetWidth, ""), endY = model.NewIntVar(low, sheetHeight, "");
            if (sheets > 1)
            {
                // It lies on one sheet, not across two.
                Sheet = model.NewIntVar(0, sheets - 1, "");
                model.Add(_x >= Sheet * sheetWidth);
                model.Add(endX <= (Sheet * sheetWidth) + sheetWidth);
            }
            rule.AddRectangle(
                model.NewOptionalIntervalVar(_x, wide, endX, There, ""),
                model.NewOptionalIntervalVar(_y, high, endY, There, ""));
        }

        public PeerPiece Piece { get; }

        public BoolVar There { get; }

        /// <summary>Which sheet it lies on; null where there is only one.</summary>
        public IntVar? Sheet { get; }

        public void Hint(Laid? laid, int sheet)
        {
            _model.AddHint(There, laid is not null);
            if (laid is not { } at) return;
            _model.AddHint(_x, (at.X / _step) + (sheet * _sheetWidth));
            _model.AddHint(_y, at.Y / _step);
            if (_turned is not null) _model.AddHint(_turned, at.Turned);
            if (Sheet is not null) _model.AddHint(Sheet, sheet);
        }

        public (int Sheet, Laid Laid) Where(CpSolver solver, long sheetWidth)
        {
            int sheet = Sheet is null ? 0 : checked((int)solver.Value(Sheet));
            return (sheet, new(Piece, (solver.Value(_x) - (sheet * sheetWidth)) * _step, solver.Value(_y) * _step, _turned is not null && solver.BooleanValue(_turned)));
        }
    }
}

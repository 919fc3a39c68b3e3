using Setout.Cutting.Sheets.Model;

namespace Setout.Cutting.Sheets.Search;

/// <summary>A sheet that a search has met, with what lies on it.</summary>
/// <param name="Sheet">A copy of it.</param>
/// <param name="Parts">Types on it and how many of each, by type.</param>
internal sealed record SeenSheet(WorkSheet Sheet, (int Type, int Count)[] Parts);

/// <summary>
/// Well filled sheets that a search has met, each set of parts once for a kind of stock. When there are too many, those that hold least of
/// their stock go first.
/// </summary>
internal sealed class SeenSheets
{
    private readonly SheetModel _model;
    private readonly int _most;
    private readonly Dictionary<ulong, SeenSheet> _seen = [];
    private readonly ulong[] _keys;
    private readonly int[] _counts;

    public SeenSheets(SheetModel model, int most)
    {
        _model = model;
        _most = most;
        _counts = new int[model.Types.Length];
        // A random odd number a type: the sum over a sheet's parts is its key. Two sheets share a key by chance about never; then one is lost.
        var random = new SeededRandom(20_011);
        _keys = [.. Enumerable.Range(0, model.Types.Length + model.Stock.Length).Select(_ => random.Bits() | 1)];
    }

    /// <summary>The sheets, in the order in which they were first met.</summary>
    public IReadOnlyCollection<SeenSheet> All => _seen.Values;

    /// <summary>Remembers a sheet unless one with the same parts on the same stock is known.</summary>
    public void Offer(WorkSheet sheet)
    {
        if (sheet.PartCount == 0) return;
        Array.Clear(_counts);
        sheet.Count(_counts);
        ulong key = _keys[_model.Types.Length + sheet.Stock];
        unchecked
        {
            for (int t = 0; t < _counts.Length; t++)
                if (_counts[t] > 0) key += (ulong)_counts[t] * _keys[t];
        }
        if (_seen.ContainsKey(key)) return;
        if (_seen.Count >= _most) DropWorst();
        _seen.Add(key, new(sheet.Clone(), [.. _counts.Index().Where(c => c.Item > 0)]));
    }

    private void DropWorst()
    {
        ulong[] worst = [.. _seen.OrderBy(s => s.Value.Sheet.UsedArea / _model.Stock[s.Value.Sheet.Stock].Area).Take(_most / 4).Select(s => s.Key)];
        foreach (ulong key in worst) _seen.Remove(key);
    }
}

namespace Setout.Cutting.Boards.Search;

/// <summary>Patterns taken so far, parts still waiting, and bins of boards already begun that are still empty.</summary>
internal sealed class PatternWork
{
    private readonly PatternModel _model;

    public PatternWork(PatternModel model)
    {
        _model = model;
        Demand = [.. model.Demand];
        Left = [.. model.Boards.Stock.Select(s => s.Limit)];
        Open = new int[model.Slots.Length];
        Waiting = Demand.Sum(d => (long)d);
    }

    private PatternWork(PatternWork other)
    {
        _model = other._model;
        Demand = [.. other.Demand];
        Left = [.. other.Left];
        Open = [.. other.Open];
        Waiting = other.Waiting;
        Price = other.Price;
        Boards = other.Boards;
        Taken = [.. other.Taken];
    }

    /// <summary>Parts of each type still waiting.</summary>
    public int[] Demand { get; }

    /// <summary>Boards of each stock still to be had.</summary>
    public int[] Left { get; }

    /// <summary>Empty bins of each slot on boards already begun.</summary>
    public int[] Open { get; }

    public long Waiting { get; private set; }

    /// <summary>Of the boards begun, by the model's prices.</summary>
    public decimal Price { get; private set; }

    public int Boards { get; private set; }

    public List<Pattern> Taken { get; } = [];

    public PatternWork Copy() => new(this);

    /// <summary>True when a bin of this slot is there or can be had.</summary>
    public bool CanTake(int slot) => Open[slot] > 0 || Left[_model.Slots[slot].Stock] > 0;

    /// <summary>Takes a pattern once; it must lie within the parts waiting, and a bin must be there.</summary>
    public void Take(Pattern pattern)
    {
        int stock = _model.Slots[pattern.Slot].Stock;
        if (Open[pattern.Slot] == 0)
        {
            Left[stock]--;
            Price += _model.Prices[stock];
            Boards++;
            foreach (int slot in _model.SlotsOf[stock]) Open[slot] += _model.Slots[slot].Bins.Length;
        }
        Open[pattern.Slot]--;
        Taken.Add(pattern);
        foreach ((int type, int count) in pattern.Parts)
        {
            Demand[type] -= count;
            Waiting -= count;
        }
    }

    /// <summary>Takes what still waits of a pattern; false when there is no bin for it.</summary>
    public bool TakeWithin(Pattern pattern)
    {
        (int, int)[] parts = [.. pattern.Parts.Select(p => (p.Type, Math.Min(p.Count, Demand[p.Type]))).Where(p => p.Item2 > 0)];
        if (parts.Length == 0) return true;
        if (!CanTake(pattern.Slot)) return false;
        Take(new(pattern.Slot, parts));
        return true;
    }

    /// <summary>As boards.</summary>
    public List<Filling> Fillings()
    {
        var found = new List<Filling>();
        for (int stock = 0; stock < _model.SlotsOf.Length; stock++)
        {
            Queue<Pattern>[] waiting = [.. _model.SlotsOf[stock].Select(k => new Queue<Pattern>(Taken.Where(p => p.Slot == k)))];
            while (waiting.Any(w => w.Count > 0))
            {
                BinFill[] bins = [.. _model.Boards.Stock[stock].Bins.Select(_ => BinFill.Nothing)];
                for (int i = 0; i < waiting.Length; i++)
                    foreach (int bin in _model.Slots[_model.SlotsOf[stock][i]].Bins)
                        if (waiting[i].TryDequeue(out Pattern? pattern))
                            bins[bin] = new(pattern.Parts, pattern.Parts.Sum(p => p.Count * _model.Boards.Types[p.Type].Length));
                found.Add(Filling.Of(stock, bins));
            }
        }
        return found;
    }
}

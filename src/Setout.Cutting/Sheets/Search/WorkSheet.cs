// Over 200 lines: the mutable tree and its two changes, put in and take out, are one idea.
using Setout.Cutting.Sheets.Model;
using Setout.Cutting.Sheets.Patterns;

namespace Setout.Cutting.Sheets.Search;

/// <summary>
/// A sheet during the search: an n-ary tree of edge-to-edge cuts in a flat table, so that it is saved and brought back by copying. A
/// division has at most one free slice, because slices may follow each other in any order; so wood that is freed at two
/// places of one strip becomes one. Kinds of divisions alternate down the tree.
/// </summary>
internal sealed class WorkSheet
{
    private const int None = -1;
    private readonly SheetModel _model;
    private Entry[] _nodes;
    private int _used; // places of the table in use or given back
    private int _spare = None; // first of the places given back
    private FreeRectangle[] _free;
    private int _freeCount;
    private WorkSheet? _saved;

    private struct Entry
    {
        public long Along, Across;
        public int Parent, First, Next, Type;
        public NodeKind Kind;
        public bool Turned;
        public int Stages;
    }

    public WorkSheet(SheetModel model, int stock)
    {
        _model = model;
        Stock = stock;
        _nodes = new Entry[16];
        _free = new FreeRectangle[8];
        int root = New(model.Stock[stock].Along, model.Stock[stock].Across);
        _nodes[root].Parent = None;
        AddFree(root);
    }

    /// <summary>A sheet cut as a pattern says; its sizes must be in the steps of the model.</summary>
    public WorkSheet(SheetModel model, int stock, PatternNode pattern)
        : this(model, stock)
    {
        Lay(RootNode, pattern);
        FindFree();
    }

    private WorkSheet(WorkSheet from)
    {
        _model = from._model;
        _nodes = [];
        _free = [];
        CopyFrom(from);
    }

    public int Stock { get; private set; }

    public double UsedArea { get; private set; }

    public int PartCount { get; private set; }

    /// <summary>The mark of the layout at which it was saved last; -1 for never.</summary>
    public long SavedAt { get; private set; } = -1;

    /// <summary>Free rectangles that the smallest part could enter.</summary>
    public ReadOnlySpan<FreeRectangle> Free => _free.AsSpan(0, _freeCount);

    /// <summary>Places in the table, a measure of the work of a copy.</summary>
    public int Size => _used;

    /// <summary>The root of its table.</summary>
    public static int RootNode => 0;

    /// <summary>The tree for those who write it down.</summary>
    public Node Root => Built(RootNode);

    public WorkSheet Clone() => new(this);

    /// <summary>Remembers the sheet as it is, for <see cref="Undo"/>.</summary>
    public void Save(long mark)
    {
        (_saved ??= new(this)).CopyFrom(this);
        SavedAt = mark;
    }

    /// <summary>Goes back to what was saved.</summary>
    public void Undo()
    {
        WorkSheet saved = _saved!;
        (_nodes, saved._nodes) = (saved._nodes, _nodes);
        (_free, saved._free) = (saved._free, _free);
        (_used, _spare, _freeCount) = (saved._used, saved._spare, saved._freeCount);
        (UsedArea, PartCount) = (saved.UsedArea, saved.PartCount);
    }

    /// <summary>
    /// What a free rectangle promises: more than its area, so that one large rectangle beats two small ones, and nothing when
    /// no part can enter it.
    /// </summary>
    public static double Promise(SheetModel model, long along, long across)
    {
        if (along < model.LeastAlong || across < model.LeastAcross) return 0;
        double area = (double)along * across;
        return area * Math.Sqrt(area);
    }

    /// <summary>Lays a part in the corner of a free rectangle; what remains of it is free.</summary>
    public void Put(in Spot spot, int type)
    {
        PartType part = _model.Types[type];
        (long along, long across) = spot.Turned ? (part.Across, part.Along) : (part.Along, part.Across);
        FreeRectangle free = _free[spot.Free];
        _free[spot.Free] = _free[--_freeCount];
        long restAlong = free.Along - along, restAcross = free.Across - across;
        if (spot.Alone && spot.First == NodeKind.Along) restAcross = 0;
        else if (spot.Alone) restAlong = 0;
        if (restAlong == 0 && restAcross == 0) Lay(free.Node, type, spot.Turned);
        else if (restAcross == 0) Lay(Divide(free.Node, NodeKind.Along, along), type, spot.Turned);
        else if (restAlong == 0) Lay(Divide(free.Node, NodeKind.Across, across), type, spot.Turned);
        else if (spot.First == NodeKind.Across) Lay(Divide(Divide(free.Node, NodeKind.Across, across), NodeKind.Along, along), type, spot.Turned);
        else Lay(Divide(Divide(free.Node, NodeKind.Along, along), NodeKind.Across, across), type, spot.Turned);
        UsedArea += part.Area;
        PartCount++;
    }

    /// <summary>Takes a part, or a division with all that is in it, off the sheet; its parts are added to <paramref name="pool"/>.</summary>
    public int Take(int node, int[] pool)
    {
        int taken = Collect(node, pool);
        while (true)
        {
            ref Entry entry = ref _nodes[node];
            entry.Kind = NodeKind.Free;
            entry.First = None;
            if (entry.Parent == None) break;
            int parent = entry.Parent, other = None;
            for (int s = _nodes[parent].First; s != None; s = _nodes[s].Next)
                if (s != node && _nodes[s].Kind == NodeKind.Free) other = s;
            if (other != None)
            {
                if (_nodes[parent].Kind == NodeKind.Along) entry.Along += _nodes[other].Along;
                else entry.Across += _nodes[other].Across;
                Unlink(other);
                GiveBack(other);
            }
            if (_nodes[parent].First != node || entry.Next != None) break;
            // Nothing else is left in the division, so it is free as a whole.
            GiveBack(node);
            node = parent;
        }
        FindFree();
        return taken;
    }

    /// <summary>Takes one part of a type off the sheet; false when there is none.</summary>
    public bool TakeOne(int type, int[] pool)
    {
        for (int n = 0; n < _used; n++)
        {
            if (_nodes[n].Kind != NodeKind.Part || _nodes[n].Type != type) continue;
            Take(n, pool);
            return true;
        }
        return false;
    }

    /// <summary>A part, or, if wanted, a division too, by chance. The sheet must have parts.</summary>
    public int Pick(SeededRandom random, bool divisions)
    {
        while (true)
        {
            int at = random.Below(_used);
            if (_nodes[at].Kind == NodeKind.Part || (divisions && _nodes[at].Kind is NodeKind.Along or NodeKind.Across)) return at;
        }
    }

    /// <summary>How many parts of each type lie on it, times <paramref name="times"/>, added to <paramref name="counts"/>.</summary>
    public void Count(int[] counts, int times = 1)
    {
        for (int n = 0; n < _used; n++)
            if (_nodes[n].Kind == NodeKind.Part) counts[_nodes[n].Type] += times;
    }

    private void CopyFrom(WorkSheet from)
    {
        if (_nodes.Length < from._used) _nodes = new Entry[from._nodes.Length];
        if (_free.Length < from._freeCount) _free = new FreeRectangle[from._free.Length];
        Array.Copy(from._nodes, _nodes, from._used);
        Array.Copy(from._free, _free, from._freeCount);
        (Stock, _used, _spare, _freeCount) = (from.Stock, from._used, from._spare, from._freeCount);
        (UsedArea, PartCount) = (from.UsedArea, from.PartCount);
    }

    private Node Built(int node)
    {
        ref readonly Entry entry = ref _nodes[node];
        List<Node>? slices = null;
        if (entry.Kind is NodeKind.Along or NodeKind.Across)
        {
            slices = [];
            for (int s = entry.First; s != None; s = _nodes[s].Next) slices.Add(Built(s));
        }
        return new() { Kind = entry.Kind, Type = entry.Type, Turned = entry.Turned, Slices = slices };
    }

    private void Lay(int node, int type, bool turned)
    {
        ref Entry entry = ref _nodes[node];
        entry.Kind = NodeKind.Part;
        entry.Type = type;
        entry.Turned = turned;
    }

    // Cuts a slice of this size off a free node and gives it; the rest is free. A free slice of a division of the same kind is divided
    // within that division.
    private int Divide(int node, NodeKind kind, long size) => Divide(node, kind, size, out _);

    private int Divide(int node, NodeKind kind, long size, out int left)
    {
        int slice = New(0, 0);
        int parent = _nodes[node].Parent;
        if (parent == None || _nodes[parent].Kind != kind)
        {
            int rest = New(_nodes[node].Along, _nodes[node].Across);
            _nodes[node].Kind = kind;
            _nodes[node].First = None;
            parent = node;
            Link(rest, parent);
            node = rest;
        }
        ref Entry free = ref _nodes[node];
        if (kind == NodeKind.Along)
        {
            (_nodes[slice].Along, _nodes[slice].Across) = (size, free.Across);
            free.Along -= size;
        }
        else
        {
            (_nodes[slice].Along, _nodes[slice].Across) = (free.Along, size);
            free.Across -= size;
        }
        Link(slice, parent);
        AddFree(node);
        left = node;
        return slice;
    }

    private long Extent(int node, NodeKind kind) => kind == NodeKind.Along ? _nodes[node].Along : _nodes[node].Across;

    private void Lay(int node, PatternNode pattern)
    {
        if (pattern == PatternNode.Nothing) return;
        // What is left beside the whole pattern is cut off first, so that it stays in one.
        NodeKind kind = pattern.JoinsAlong ? NodeKind.Along : NodeKind.Across, other = pattern.JoinsAlong ? NodeKind.Across : NodeKind.Along;
        if (Extent(node, other) > pattern.Size(other == NodeKind.Along)) node = Divide(node, other, pattern.Size(other == NodeKind.Along));
        if (pattern.Part is { } part)
        {
            if (Extent(node, kind) > pattern.Size(kind == NodeKind.Along)) node = Divide(node, kind, pattern.Size(kind == NodeKind.Along));
            Lay(node, part.Type, part.Turned);
            UsedArea += _model.Types[part.Type].Area;
            PartCount++;
            return;
        }
        foreach (PatternNode slice in pattern.Slices())
        {
            if (Extent(node, kind) == slice.Size(kind == NodeKind.Along)) Lay(node, slice);
            else Lay(Divide(node, kind, slice.Size(kind == NodeKind.Along), out node), slice);
        }
    }

    private int Collect(int node, int[] pool)
    {
        if (_nodes[node].Kind == NodeKind.Part)
        {
            pool[_nodes[node].Type]++;
            UsedArea -= _model.Types[_nodes[node].Type].Area;
            PartCount--;
            return 1;
        }
        int taken = 0;
        if (_nodes[node].Kind is NodeKind.Along or NodeKind.Across)
            for (int s = _nodes[node].First; s != None;)
            {
                int next = _nodes[s].Next;
                taken += Collect(s, pool);
                GiveBack(s);
                s = next;
            }
        return taken;
    }

    private int New(long along, long across)
    {
        int at = _spare;
        if (at != None) _spare = _nodes[at].Next;
        else
        {
            if (_used == _nodes.Length) Array.Resize(ref _nodes, 2 * _used);
            at = _used++;
        }
        _nodes[at] = new() { Along = along, Across = across, Parent = None, First = None, Next = None, Kind = NodeKind.Free };
        return at;
    }

    private void GiveBack(int node)
    {
        _nodes[node].Kind = NodeKind.Unused;
        _nodes[node].Next = _spare;
        _spare = node;
    }

    private void Link(int node, int parent)
    {
        _nodes[node].Parent = parent;
        _nodes[node].Next = _nodes[parent].First;
        _nodes[node].Stages = _nodes[parent].Stages + 1;
        _nodes[parent].First = node;
    }

    private void Unlink(int node)
    {
        int parent = _nodes[node].Parent;
        if (_nodes[parent].First == node)
        {
            _nodes[parent].First = _nodes[node].Next;
            return;
        }
        int before = _nodes[parent].First;
        while (_nodes[before].Next != node) before = _nodes[before].Next;
        _nodes[before].Next = _nodes[node].Next;
    }

    private void FindFree()
    {
        _freeCount = 0;
        for (int n = 0; n < _used; n++)
            if (_nodes[n].Kind == NodeKind.Free) AddFree(n);
    }

    private void AddFree(int node)
    {
        ref readonly Entry entry = ref _nodes[node];
        double promise = Promise(_model, entry.Along, entry.Across);
        if (promise <= 0) return;
        if (_freeCount == _free.Length) Array.Resize(ref _free, Math.Max(8, 2 * _freeCount));
        _free[_freeCount++] = new(entry.Along, entry.Across, promise, node, entry.Stages, entry.Parent == None ? NodeKind.Free : _nodes[entry.Parent].Kind);
    }
}

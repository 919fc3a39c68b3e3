// Over 200 lines: the mutable tree and its two changes, put in and take out, are one idea.
namespace Setout.Cutting.Sheets.Search;

/// <summary>What a node of a search tree is.</summary>
internal enum NodeKind
{
    /// <summary>Nothing lies here yet.</summary>
    Free,

    /// <summary>A part.</summary>
    Part,

    /// <summary>Slices that follow each other along the grain.</summary>
    Along,

    /// <summary>Slices that follow each other across the grain.</summary>
    Across,
}

/// <summary>A node of a search tree, sizes in steps of the model's grid with one kerf added.</summary>
internal sealed class Node(long along, long across)
{
    public long SizeAlong { get; set; } = along;

    public long SizeAcross { get; set; } = across;

    public NodeKind Kind { get; set; }

    public int Type { get; set; }

    public bool Turned { get; set; }

    public List<Node>? Slices { get; set; }

    public Node? Parent { get; set; }

    /// <summary>What a free node is worth keeping free, see <see cref="WorkSheet.Promise"/>.</summary>
    public double Promise { get; set; }

    public Node Clone(Node? parent)
    {
        var copy = new Node(SizeAlong, SizeAcross) { Kind = Kind, Type = Type, Turned = Turned, Parent = parent, Promise = Promise };
        if (Slices is null) return copy;
        copy.Slices = new List<Node>(Slices.Count + 2);
        foreach (Node slice in Slices) copy.Slices.Add(slice.Clone(copy));
        return copy;
    }
}

/// <summary>Where a part may go.</summary>
/// <param name="Sheet">Index of the sheet.</param>
/// <param name="Free">The free node.</param>
/// <param name="Turned">Whether the part lies turned.</param>
/// <param name="First">Whether the first cut in the free node separates along or across the grain.</param>
internal readonly record struct Spot(int Sheet, Node Free, bool Turned, NodeKind First);

/// <summary>
/// A sheet during the search: an n-ary tree of edge-to-edge cuts. A division has at most one free slice, because slices may
/// follow each other in any order; so wood that is freed at two places of one strip becomes one.
/// </summary>
internal sealed class WorkSheet
{
    private readonly SheetModel _model;

    public WorkSheet(SheetModel model, int stock)
    {
        _model = model;
        Stock = stock;
        Root = new Node(model.Stock[stock].Along, model.Stock[stock].Across);
        AddFree(Root);
    }

    private WorkSheet(WorkSheet from)
    {
        _model = from._model;
        Stock = from.Stock;
        Root = from.Root.Clone(null);
        UsedArea = from.UsedArea;
        PartCount = from.PartCount;
        FindFree();
    }

    public int Stock { get; }

    public Node Root { get; }

    /// <summary>Free nodes that the smallest part could enter.</summary>
    public List<Node> Free { get; } = [];

    public double UsedArea { get; private set; }

    public int PartCount { get; private set; }

    /// <summary>The mark of the layout at which <see cref="Saved"/> was taken; -1 for never.</summary>
    public long SavedAt { get; set; } = -1;

    /// <summary>This sheet as it was at the mark.</summary>
    public WorkSheet? Saved { get; set; }

    public WorkSheet Clone() => new(this);

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

    /// <summary>Lays a part in the corner of a free node; what remains of it is free.</summary>
    public void Put(in Spot spot, int type)
    {
        PartType part = _model.Types[type];
        (long along, long across) = spot.Turned ? (part.Across, part.Along) : (part.Along, part.Across);
        Node free = spot.Free;
        Free.Remove(free);
        var laid = new Node(along, across) { Kind = NodeKind.Part, Type = type, Turned = spot.Turned };
        long restAlong = free.SizeAlong - along, restAcross = free.SizeAcross - across;
        if (restAlong == 0 && restAcross == 0) Replace(free, laid);
        else if (restAcross == 0) Divide(free, NodeKind.Along, laid, new Node(restAlong, across));
        else if (restAlong == 0) Divide(free, NodeKind.Across, laid, new Node(along, restAcross));
        else if (spot.First == NodeKind.Across)
        {
            var strip = new Node(free.SizeAlong, across);
            Divide(free, NodeKind.Across, strip, new Node(free.SizeAlong, restAcross));
            Divide(strip, NodeKind.Along, laid, new Node(restAlong, across));
        }
        else
        {
            var column = new Node(along, free.SizeAcross);
            Divide(free, NodeKind.Along, column, new Node(restAlong, free.SizeAcross));
            Divide(column, NodeKind.Across, laid, new Node(along, restAcross));
        }
        UsedArea += part.Area;
        PartCount++;
    }

    /// <summary>Takes a part, or a division with all that is in it, off the sheet; its parts are added to <paramref name="pool"/>.</summary>
    public int Take(Node node, int[] pool)
    {
        int taken = Collect(node, pool);
        while (true)
        {
            node.Kind = NodeKind.Free;
            node.Slices = null;
            if (node.Parent is not { } parent) break;
            List<Node> slices = parent.Slices!;
            Node? other = slices.Find(p => p.Kind == NodeKind.Free && p != node);
            if (other is not null)
            {
                if (parent.Kind == NodeKind.Along) node.SizeAlong += other.SizeAlong;
                else node.SizeAcross += other.SizeAcross;
                slices.Remove(other);
            }
            slices.Remove(node);
            slices.Add(node);
            if (slices.Count > 1) break;
            node = parent; // nothing else is left in the division, so it is free as a whole
        }
        FindFree();
        return taken;
    }

    /// <summary>Every part and division, the root last of its branch; the order is that of the tree.</summary>
    public void List(List<Node> into, bool divisions)
    {
        static void Visit(Node node, List<Node> into, bool divisions)
        {
            if (node.Kind == NodeKind.Part) into.Add(node);
            if (node.Slices is null) return;
            foreach (Node slice in node.Slices) Visit(slice, into, divisions);
            if (divisions) into.Add(node);
        }
        Visit(Root, into, divisions);
    }

    private int Collect(Node node, int[] pool)
    {
        if (node.Kind == NodeKind.Part)
        {
            pool[node.Type]++;
            UsedArea -= _model.Types[node.Type].Area;
            PartCount--;
            return 1;
        }
        int taken = 0;
        if (node.Slices is not null)
            foreach (Node slice in node.Slices) taken += Collect(slice, pool);
        return taken;
    }

    private static void Replace(Node free, Node laid)
    {
        free.Kind = laid.Kind;
        free.Type = laid.Type;
        free.Turned = laid.Turned;
    }

    // A free slice of a division of the same kind is divided within that division, so kinds alternate down the tree.
    private void Divide(Node free, NodeKind kind, Node first, Node rest)
    {
        if (free.Parent is { } parent && parent.Kind == kind)
        {
            int at = parent.Slices!.IndexOf(free);
            first.Parent = parent;
            rest.Parent = parent;
            parent.Slices[at] = first;
            parent.Slices.Add(rest);
        }
        else
        {
            free.Kind = kind;
            free.Slices = new List<Node>(4) { first, rest };
            first.Parent = free;
            rest.Parent = free;
        }
        AddFree(rest);
    }

    private void FindFree()
    {
        Free.Clear();
        Visit(Root);

        void Visit(Node node)
        {
            if (node.Kind == NodeKind.Free) AddFree(node);
            if (node.Slices is null) return;
            foreach (Node slice in node.Slices) Visit(slice);
        }
    }

    private void AddFree(Node node)
    {
        node.Promise = Promise(_model, node.SizeAlong, node.SizeAcross);
        if (node.Promise > 0) Free.Add(node);
    }
}

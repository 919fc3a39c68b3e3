using PdfSharp.Pdf;

namespace Setout.Drawing.Documents.Pdf;

/// <summary>The tree that a screen reader follows, made from the elements of a layout and the marks put round what is on the pages.</summary>
internal sealed class ReadingOrder
{
    private readonly PdfDocument _pdf;
    private readonly PdfDictionary _root;
    private readonly List<PdfDictionary> _nodes = [];
    private readonly List<string> _roles = [];
    private readonly PdfArray _pages;
    private readonly PdfDictionary _parents;
    private PdfPage? _page;
    private PdfArray _marks;
    private int _pageCount;

    public ReadingOrder(PdfDocument pdf, IReadOnlyList<LayoutElement> elements)
    {
        _pdf = pdf;
        _root = PdfObjects.Dictionary(pdf, "/StructTreeRoot");
        _parents = PdfObjects.Dictionary(pdf, "");
        (_pages, _marks) = (new PdfArray(pdf), new PdfArray(pdf));
        _root.Elements.SetReference("/ParentTree", _parents);
        _parents.Elements["/Nums"] = _pages;
        foreach (LayoutElement element in elements) AddNode(element);
        var marked = new PdfDictionary(pdf);
        marked.Elements.SetBoolean("/Marked", true);
        pdf.Internals.Catalog.Elements["/MarkInfo"] = marked;
        pdf.Internals.Catalog.Elements.SetReference("/StructTreeRoot", _root);
    }

    /// <summary>Begins a page.</summary>
    public void Page(PdfPage page)
    {
        _page = page;
        _marks = new PdfArray(_pdf);
        _pages.Elements.Add(new PdfInteger(_pageCount));
        _pages.Elements.Add(_marks);
        page.Elements.SetInteger("/StructParents", _pageCount++);
        page.Elements.SetName("/Tabs", "/S");
        _root.Elements.SetInteger("/ParentTreeNextKey", _pageCount);
    }

    /// <summary>A new mark on the page for an element.</summary>
    public (string Role, int Mark) Mark(int element)
    {
        int mark = _marks.Elements.Count;
        var content = new PdfDictionary(_pdf);
        content.Elements.SetName("/Type", "/MCR");
        content.Elements.SetReference("/Pg", _page!);
        content.Elements.SetInteger("/MCID", mark);
        Kids(_nodes[element]).Elements.Add(content);
        _marks.Elements.Add(_nodes[element].Reference!);
        return (_roles[element], mark);
    }

    private void AddNode(LayoutElement element)
    {
        PdfDictionary parent = element.Parent == LayoutElement.Decoration ? _root : _nodes[element.Parent];
        string role = RoleOf(element.Kind);
        PdfDictionary node = Child(parent, element.Kind == ElementKind.Step ? "LI" : role);
        if (element.Words.Length > 0) node.Elements.SetString("/Alt", element.Words);
        if (element.Kind == ElementKind.HeadCell)
        {
            var scope = new PdfDictionary(_pdf);
            scope.Elements.SetName("/O", "/Table");
            scope.Elements.SetName("/Scope", "/Column");
            node.Elements["/A"] = scope;
        }
        _nodes.Add(element.Kind == ElementKind.Step ? Child(node, role) : node);
        _roles.Add(role);
    }

    private PdfDictionary Child(PdfDictionary parent, string role)
    {
        PdfDictionary node = PdfObjects.Dictionary(_pdf, "/StructElem");
        node.Elements.SetName("/S", "/" + role);
        node.Elements.SetReference("/P", parent);
        Kids(parent).Elements.Add(node.Reference!);
        return node;
    }

    private PdfArray Kids(PdfDictionary node)
    {
        if (node.Elements["/K"] is PdfArray kids) return kids;
        var made = new PdfArray(_pdf);
        node.Elements["/K"] = made;
        return made;
    }

    private static string RoleOf(ElementKind kind) => kind switch
    {
        ElementKind.Document => "Document",
        ElementKind.Section => "Sect",
        ElementKind.Title => "H1",
        ElementKind.SectionTitle => "H2",
        ElementKind.Heading => "H3",
        ElementKind.Table => "Table",
        ElementKind.Row => "TR",
        ElementKind.HeadCell => "TH",
        ElementKind.Cell => "TD",
        ElementKind.Steps => "L",
        ElementKind.Step => "LBody",
        ElementKind.Figure => "Figure",
        _ => "P",
    };
}

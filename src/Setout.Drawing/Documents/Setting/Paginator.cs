using System.Collections.Immutable;

namespace Setout.Drawing.Documents.Setting;

/// <summary>A page being filled.</summary>
internal sealed class FillingPage(bool liesDown)
{
    public bool LiesDown { get; } = liesDown;

    public List<LayoutPiece> Pieces { get; } = [];

    public List<string> Bookmarks { get; } = [];

    public string Section { get; set; } = "";

    public double Used { get; set; }

    public bool IsEmpty => Used == 0;
}

/// <summary>Puts strips on pages: chains that keep together move together, heads are repeated, and nothing passes the foot of the column.</summary>
internal sealed class Paginator(double height, double lyingHeight)
{
    private const double Tiny = 1e-6;
    private readonly List<FillingPage> _pages = [];
    private bool _ended = true;

    public static List<FillingPage> Fill(IReadOnlyList<Strip> strips, double height, double lyingHeight)
    {
        var paginator = new Paginator(height, lyingHeight);
        paginator.Place(strips);
        return paginator._pages;
    }

    private FillingPage Page => _pages[^1];

    private double Room => Page.LiesDown ? lyingHeight : height;

    private void Place(IReadOnlyList<Strip> strips)
    {
        int next = 0;
        while (next < strips.Count)
        {
            int end = next;
            // A break ends a chain: what must begin a page cannot also stay with what is before it.
            while (end < strips.Count - 1 && strips[end].KeepsWithNext && !strips[end + 1].BreaksBefore && !strips[end].BreaksAfter) end++;
            PlaceChain([.. strips.Skip(next).Take(end - next + 1)]);
            next = end + 1;
        }
        if (_pages.Count == 0) Open(false);
    }

    private void PlaceChain(ImmutableArray<Strip> chain)
    {
        if (_ended || (chain[0].BreaksBefore && !Page.IsEmpty) || Page.LiesDown != chain[0].LiesDown) Open(chain[0].LiesDown);
        if (!Fits(chain) && !Page.IsEmpty && FitsFresh(chain)) Open(chain[0].LiesDown);
        foreach (Strip strip in chain) PlaceStrip(strip);
    }

    private void PlaceStrip(Strip strip)
    {
        if (!Fits([strip]) && !Page.IsEmpty && FitsFresh([strip])) Open(strip.LiesDown);
        if (!Fits([strip]) && strip.Split is { } split)
        {
            // Higher than a page. Begin here only if a good part of the page is left.
            if (Room - Page.Used < Room / 2 && !Page.IsEmpty) Open(strip.LiesDown);
            double head = strip.Head?.Height ?? 0;
            double left = Room - Page.Used - (Page.IsEmpty ? head : strip.Gap);
            foreach (Strip part in split(left, Room - head)) PlaceStrip(part with { Section = strip.Section });
            return;
        }
        if (Page.IsEmpty && strip.Head is { } again) Put(again, 0);
        Put(strip, Page.IsEmpty ? 0 : strip.Gap);
        if (Page.Section.Length == 0) Page.Section = strip.Section;
        if (strip.Bookmark.Length > 0) Page.Bookmarks.Add(strip.Bookmark);
        if (strip.BreaksAfter) _ended = true;
    }

    private void Put(Strip strip, double gap)
    {
        double y = Page.Used + gap;
        foreach (LayoutPiece piece in strip.Pieces) Page.Pieces.Add(piece.Moved(0, y));
        Page.Used = y + strip.Height;
    }

    private bool Fits(ImmutableArray<Strip> chain) =>
        Page.Used + Height(chain, Page.IsEmpty) <= Room + Tiny;

    private bool FitsFresh(ImmutableArray<Strip> chain) =>
        Height(chain, true) <= (chain[0].LiesDown ? lyingHeight : height) + Tiny;

    private static double Height(ImmutableArray<Strip> chain, bool isFresh)
    {
        double sum = isFresh ? chain[0].Head?.Height ?? 0 : chain[0].Gap;
        for (int i = 0; i < chain.Length; i++) sum += chain[i].Height + (i > 0 ? chain[i].Gap : 0);
        return sum;
    }

    private void Open(bool liesDown)
    {
        _pages.Add(new(liesDown));
        _ended = false;
    }
}

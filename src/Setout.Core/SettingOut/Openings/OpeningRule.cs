using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Doors;
using Setout.Core.SettingOut.Drawers;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Fills an opening: divides it further, or puts drawers, shelves or doors in it, to any depth.</summary>
internal static class OpeningRule
{
    public static void Fill(Book book, Space behind, OpeningContent? content)
    {
        string word = content switch
        {
            Division => "divided",
            DrawerBank => "drawers",
            Shelves => "shelves",
            DoorFilling => "doors",
            _ => "open",
        };
        if (FaceFrameMembers.Closes(book, behind)) return;
        Space space = AtFace(book, behind, content);
        book.Open(new(space.Owner, space.Name, word, new(space.X, space.Y, space.Z, book.Value(space.Width), book.Value(space.Depth), book.Value(space.Height))));
        Put(book, behind, space, content);
    }

    /// <summary>What closes an opening goes by its face: before a face frame that is the frame's. Drawers behind doors go by what those leave.</summary>
    private static Space AtFace(Book book, Space behind, OpeningContent? content) => content switch
    {
        DrawerBank bank => PackingRule.ForDrawers(book, behind, bank),
        DoorFilling when behind.FaceFrame is not null => PackingRule.AtFace(book, behind),
        _ => behind,
    };

    private static void Put(Book book, Space behind, Space space, OpeningContent? content)
    {
        switch (content)
        {
            case Division division: Divide(book, space, division); break;
            case DrawerBank bank:
                BankRule.Write(book, space, bank);
                PackingRule.Write(book, behind, space, bank);
                break;
            case Shelves shelves: ShelfRule.Write(book, space, shelves); break;
            case DoorFilling doors when DoorRule.Write(book, behind, space, doors) is { } inside: Put(book, inside, AtFace(book, inside, doors.Behind), doors.Behind); break;
        }
    }

    private static void Divide(Book book, Space space, Division division)
    {
        var openings = division.Items.OfType<Opening>().ToImmutableArray();
        var members = new List<DividingMember>();
        foreach (Divider divider in division.Items.OfType<Divider>())
        {
            if (DividingMember.Of(book, space, divider) is not { } member) return;
            members.Add(member);
        }
        string what = division.IsAcross ? "width" : "height", memberWord = division.IsAcross ? "partition" : members.Count > 0 && members.All(m => m.Panel is null) ? "rail" : "deck";
        QuantityKey whole = division.IsAcross ? space.Width : space.Height;
        ImmutableArray<Term> between = [.. members.Select(m => Term.From($"{m.Word(division.IsAcross)} {m.Divider.Key}", 1, m.Size) with { Part = m.Panel is null || m.Divider.IsDoubled ? "" : m.Divider.Key })];
        ImmutableArray<Sharer> sharers = [.. openings.Select(o => new Sharer(o.Key, "set-" + what, $"opening {o.Key}, {what} as set out", o.Size, [Term.From($"opening {o.Key}", 1, QuantityKey.Of(o.Key, what))]))];
        if (Sharing.Share(book, $"{space.Name}, openings and {memberWord}s in the {what}", whole, between, sharers, restIsCut: false) is not { } sizes) return;

        Edge[] shared = [.. members.Select(m => SharedWith(book, space, m, division.IsAcross))];
        RailPair?[] rails = [.. members.Select(m => m.Stick is { } stick ? RailRule.Pair(book, space, m.Divider, stick) : null)];
        ExactLength along = division.IsAcross ? space.X : space.Z + book.Value(space.Height);
        for (int i = 0; i < openings.Length; i++)
        {
            Opening opening = openings[i];
            string name = $"opening {opening.Key}";
            QuantityKey set = sizes[i].AsCut;
            ExactLength size = book.Value(set);
            // The one that takes up the rest is bounded by the others; those stand fast once what bounds them does.
            if (sizes[i].ToCut != sizes[i].Exact)
                book.Fixings.Add(new(sizes[i].ToCut, [.. new[] { i - 1, i }.Where(m => m >= 0 && m < members.Count).SelectMany(m => members[m].Parts)]));
            QuantityKey width, height;
            if (division.IsAcross)
            {
                width = book.DefineSame(opening.Key, "width", $"{name}, clear width", "as set out", set, Combining.Narrowest);
                height = book.DefineSame(opening.Key, "height", $"{name}, clear height", "of the whole", space.Height, Combining.Narrowest);
            }
            else
            {
                width = book.DefineSame(opening.Key, "width", $"{name}, clear width", "of the whole", space.Width, Combining.Narrowest);
                height = book.DefineSame(opening.Key, "height", $"{name}, clear height", "as set out", set, Combining.Narrowest);
            }
            QuantityKey depth = book.DefineSame(opening.Key, "depth", $"{name}, clear depth", "of the whole", space.Depth, Combining.Narrowest);
            Edge before = i == 0 ? (division.IsAcross ? space.Edges.Left : space.Edges.Top) : members[i - 1].Facing(shared[i - 1] with { IsCovered = false }, isAfter: true);
            Edge after = i == openings.Length - 1 ? (division.IsAcross ? space.Edges.Right : space.Edges.Bottom) : members[i].Facing(shared[i], isAfter: false);
            // How far along what bounds both ends of the division this opening begins: from the left, or from the bottom.
            ImmutableArray<Term> start = division.IsAcross ? Run(0, i, i) : Run(i + 1, openings.Length, i);
            Edge Further(Edge edge) => edge with { Start = [.. edge.Start, .. start], Frame = edge.Frame is { } f ? f with { Start = [.. f.Start, .. start] } : null };
            Edges edges = division.IsAcross
                ? new(before, after, Further(space.Edges.Top), Further(space.Edges.Bottom))
                : new(Further(space.Edges.Left), Further(space.Edges.Right), before, after);
            ExactLength x = division.IsAcross ? along : space.X, z = division.IsAcross ? space.Z : along - size;
            book.Show(new(division.IsAcross ? width : height, division.IsAcross, division.IsAcross ? x : z, division.IsAcross ? x + size : z + size, 0, space.X) { In = division.IsAcross ? Views.Front | Views.Above : Views.Front });

            if (i < members.Count)
            {
                ImmutableArray<Term> from = division.IsAcross ? Run(0, i + 1, i) : Run(i + 1, openings.Length, i + 1);
                if (members[i].Panel is { } panel) DividingPanelRule.Write(book, space, members[i], panel, division.IsAcross, division.IsAcross ? x + size : z, from,
                    division.IsAcross && !space.Dividers.IsSlidIn && (HoldsDadoes(opening.Content) || HoldsDadoes(openings[i + 1].Content)));
                else RailRule.Write(book, space, members[i].Divider, members[i].Stick!, rails[i]!, z, from);
            }
            // Between bare posts a partition gives slides something to screw to, on both sides or on one.
            bool hasPanels = space.TakesSlides || (before.Part.Length > 0 && after.Part.Length > 0);
            BackToBackRule.Fill(book, space with
            {
                Owner = opening.Key,
                Prefix = opening.Key,
                Name = name,
                Width = width,
                Height = height,
                Depth = depth,
                X = x,
                Z = z,
                Edges = edges,
                Place = opening.Place,
                Face = division.IsAcross ? space.Face with { Width = set } : space.Face with { Height = set },
                Doors = space.Doors is { } doors && division.IsAcross ? new(i == 0 ? doors.Left : null, i == openings.Length - 1 ? doors.Right : null) : space.Doors,
                TakesSlides = division.IsAcross ? hasPanels : space.TakesSlides,
                Carrier = division.IsAcross && !space.TakesSlides ? (before.Part.Length > 0 ? before.Part : after.Part) : space.Carrier,
                Railing = division.IsAcross ? space.Railing is { } railing ? railing with { IsBetweenPosts = false } : null : space.Railing,
                Above = division.IsAcross || i == 0 ? space.Above : rails[i - 1],
                Below = division.IsAcross || i == openings.Length - 1 ? space.Below : rails[i],
            }, opening);
            ExactLength step = size + (i < members.Count ? book.Value(members[i].Step) * members[i].Parts.Length : Zero);
            along = division.IsAcross ? along + step : along - step;
        }

        // Openings from one up to another, and the members that stand with them: the first so many from the left, those from one on from the bottom.
        ImmutableArray<Term> Run(int from, int to, int member) =>
        [
            .. Enumerable.Range(from, to - from).Select(o => Term.From($"opening {openings[o].Key}", 1, sizes[o].AsCut)),
            .. (division.IsAcross ? Enumerable.Range(0, member) : Enumerable.Range(member, members.Count - member)).Select(m => between[m]),
        ];
    }

    private static Edge SharedWith(Book book, Space space, DividingMember member, bool isAcross)
    {
        QuantityKey t = member.Size;
        if (member.Panel is null) return new(t, EdgeKind.Shared) { IsCovered = member.Divider.Rail!.IsCovered };
        return new(t, EdgeKind.Shared, Part: member.Divider.Key)
        {
            Start = space.Dividers.AtOneEnd,
            Frame = space is { FaceFrame: { } frame, Doors: null } ? FaceFrameMembers.Before(book, space, frame, member.Divider, t, isAcross) : null,
        };
    }

    /// <summary>Whether shelves in an opening go into dadoes of what stands beside it, so that it is there before the case is closed.</summary>
    private static bool HoldsDadoes(OpeningContent? content) => content.Within().Any(c => c is Shelves { Fit: ShelfFit.Dado });
}

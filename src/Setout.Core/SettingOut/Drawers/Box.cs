using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>What lies behind a front, where its box goes.</summary>
/// <param name="Height">Its height within the opening.</param>
/// <param name="Z">Its lower edge, from the floor.</param>
/// <param name="IsTop">True for the uppermost of its bank.</param>
/// <param name="IsOnRails">True where it runs on rails below it, and on what lies between them.</param>
internal sealed record DrawerSlot(QuantityKey Height, ExactLength Z, bool IsTop, bool IsOnRails = false);

/// <summary>A drawer box on its way: what its rules need of one another.</summary>
internal sealed record Box(Book Book, Space Space, DrawerKind Kind, Drawer Drawer, Panel Sides, Panel Bottom, DrawerSlot Slot)
{
    public string Key => Drawer.Key;

    public string Name => $"drawer {Drawer.Key}";

    public QuantityKey SideThickness { get; } = Book.ThicknessOf($"{Drawer.Key}.side", Sides.Name, 2);

    public QuantityKey BottomThickness { get; } = Book.ThicknessOf($"{Drawer.Key}.bottom", Bottom.Name);

    /// <summary>True where its front is the front of the drawer.</summary>
    public bool IsFronted { get; init; }

    /// <summary>True where the back is a part of its own, lower than the front: the bottom slides in under it.</summary>
    public bool HasOwnBack => IsFronted || Kind.BottomFit == BottomFit.SlidIn;

    public QuantityKey EndThickness => Book.ThicknessOf($"{Key}.end", Sides.Name, HasOwnBack ? 1 : 2);

    public QuantityKey BackThickness => HasOwnBack ? Book.ThicknessOf($"{Key}.back", Sides.Name) : EndThickness;

    /// <summary>The thicknesses of both sides as terms.</summary>
    public ImmutableArray<Term> BothSides(int sign) => Book.Thicknesses("sides", sign, $"{Key}.side", Sides.Name, 2);

    /// <summary>The thicknesses of front and back as terms.</summary>
    public ImmutableArray<Term> BothEnds(int sign) => HasOwnBack
        ? [.. Book.Thicknesses("front", sign, $"{Key}.end", Sides.Name, 1), .. Book.Thicknesses("back", sign, $"{Key}.back", Sides.Name, 1)]
        : Book.Thicknesses("ends", sign, $"{Key}.end", Sides.Name, 2);

    /// <summary>The front of the box, as sums call it.</summary>
    public string EndWord => HasOwnBack ? "front" : "end";

    /// <summary>Where its front face is: flush with the face of the carcase, or behind a front that is inset.</summary>
    public ExactLength Y => Kind.Fronts == FrontWay.Inset ? Space.Y + Book.Value(Book.ThicknessOf(Kind.Front.Text)) : Space.Y;
}

/// <summary>The sizes of a box that its rules share.</summary>
internal sealed record BoxSizes(PartSize SideLength, PartSize SideHeight, PartSize EndLength, PartSize EndHeight);

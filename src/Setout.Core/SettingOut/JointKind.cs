namespace Setout.Core.SettingOut;

/// <summary>The joints of the trade that rules write.</summary>
public enum JointKind
{
    /// <summary>Face or edge against a face or an edge.</summary>
    Butt,

    /// <summary>Face on face, as layers of a top.</summary>
    Face,

    /// <summary>Let into a rabbet along an edge or an end.</summary>
    Rabbet,

    /// <summary>Let into a dado across the other; at a corner with a tongue.</summary>
    Dado,

    /// <summary>A tongue of the end in a dado of the side.</summary>
    LockRabbet,

    /// <summary>In a groove along the other.</summary>
    Groove,

    /// <summary>In a groove that is open at one end.</summary>
    SlidIn,

    /// <summary>Notched round the other.</summary>
    Notch,

    /// <summary>Half of each cut away where they cross.</summary>
    HalfLap,

    /// <summary>A stub tenon in a groove.</summary>
    Tenon,

    /// <summary>A tenon in a mortise.</summary>
    MortiseAndTenon,

    /// <summary>On dowels.</summary>
    Dowels,

    /// <summary>Straight interlocking fingers.</summary>
    BoxJoint,

    /// <summary>Tails hidden from the front by a lap.</summary>
    HalfBlindDovetail,

    /// <summary>Tails and pins seen from both sides.</summary>
    ThroughDovetail,

    /// <summary>Each cut to half of the corner.</summary>
    Mitre,

    /// <summary>A strip on the side of a top.</summary>
    Edging,

    /// <summary>A strip on the edge of a sheet.</summary>
    Lip,

    /// <summary>Lying on pins.</summary>
    Pins,
}

/// <summary>What joints are called.</summary>
public static class JointWords
{
    /// <summary>The word of the trade for a joint, as plans and pages have it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is none of them.</exception>
    public static string Word(this JointKind kind) => kind switch
    {
        JointKind.Butt => "butt",
        JointKind.Face => "face",
        JointKind.Rabbet => "rabbet",
        JointKind.Dado => "dado",
        JointKind.LockRabbet => "lock rabbet",
        JointKind.Groove => "groove",
        JointKind.SlidIn => "slid in",
        JointKind.Notch => "notch",
        JointKind.HalfLap => "half lap",
        JointKind.Tenon => "tenon",
        JointKind.MortiseAndTenon => "mortise and tenon",
        JointKind.Dowels => "dowels",
        JointKind.BoxJoint => "box joint",
        JointKind.HalfBlindDovetail => "half-blind dovetail",
        JointKind.ThroughDovetail => "through dovetail",
        JointKind.Mitre => "mitre",
        JointKind.Edging => "edging",
        JointKind.Lip => "lip",
        JointKind.Pins => "pins",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This is no joint."),
    };
}

namespace Setout.Testing.Runs;

/// <summary>What a plan of runs must keep to. Each is one rule of the simulator and one word of a violation.</summary>
public enum SawRule
{
    /// <summary>The id of a blank is its place in the list; stock comes first.</summary>
    BlanksAreNumbered,

    /// <summary>Each laid sheet and board stands in the list once, as large, as raw and as flawed as it is, and no other.</summary>
    StockIsWhatIsLaid,

    /// <summary>Runs are numbered from 1.</summary>
    RunsAreNumbered,

    /// <summary>Every run makes a cut.</summary>
    EveryRunCuts,

    /// <summary>All cuts of a run have its figure; only truing, clearing and rough cuts, and none against a fence, may each have a mark of its own.</summary>
    OneSettingARun,

    /// <summary>Two neighbouring runs differ in what is set: the way, the figure, or whether it is a figure, a mark of each cut's own or a rough one.</summary>
    NeighboursDiffer,

    /// <summary>No more settings are said to be needed than there are.</summary>
    LeastIsNotAbove,

    /// <summary>What is cut lies on the bench: it was made before, and nobody has cut it since.</summary>
    BlankIsThere,

    /// <summary>Stock and blanks for later runs are cut, nothing else.</summary>
    BlankIsToBeCut,

    /// <summary>Each blank but stock is made by one cut.</summary>
    MadeOnce,

    /// <summary>The figure is measured from one of the two sides that follow each other along the axis.</summary>
    FromIsOnTheAxis,

    /// <summary>The figure lies above zero and within the blank.</summary>
    FigureIsInside,

    /// <summary>What is left on either side of the blade is named, and what the blade takes whole is not.</summary>
    PiecesAreNamed,

    /// <summary>Each piece is as large as the cut makes it, and of the wood it is cut from.</summary>
    SizesAreTrue,

    /// <summary>The raw margin on each side of a piece is what is left of it.</summary>
    TrimsAreTrue,

    /// <summary>The flaws of a piece are those that lie in it.</summary>
    FlawsAreTrue,

    /// <summary>The shop has the saw.</summary>
    SawIsThere,

    /// <summary>The kerf is that of the saw; lanes pay what is paid between lanes, and nothing else is planed.</summary>
    KerfIsOfTheSaw,

    /// <summary>The way suits the cut: rough cuts and breaks by the guide, lanes ripped, flaws cut out of boards, boards crosscut away from the fence.</summary>
    WaySuitsTheCut,

    /// <summary>The figure is measured from a true side, except where a cut makes a side true, clears a flaw or is rough; at the fence always.</summary>
    ReferenceIsTrue,

    /// <summary>The run that made the reference side is named.</summary>
    FromRunIsNamed,

    /// <summary>On a sled and at a stop a true side square to the figure lies against the fence.</summary>
    AgainstIsTrue,

    /// <summary>The run that made that side is named; elsewhere there is none.</summary>
    AgainstRunIsNamed,

    /// <summary>A truing cut takes just the margin of a raw side, and a flaw that begins in it.</summary>
    TrueTakesTheMargin,

    /// <summary>What truing cuts off is waste; what clearing cuts off may be kept or wait, but is no part and nothing to be cut.</summary>
    OffcutIsWaste,

    /// <summary>The edge on the fence is longer than the figure.</summary>
    EdgeIsLongerThanFigure,

    /// <summary>The fence stands no farther from the blade than it can.</summary>
    FenceReaches,

    /// <summary>The edge can be fed past the blade in the room there is.</summary>
    RoomAtTheFence,

    /// <summary>No strip is narrower than a carrier brings past.</summary>
    StripIsWideEnough,

    /// <summary>A carrier is asked for just where a push stick is not enough.</summary>
    CarrierIsNamed,

    /// <summary>The work lies on the sled.</summary>
    SledTakesIt,

    /// <summary>The stop of the sled stands no farther off than it can.</summary>
    SledStopReaches,

    /// <summary>The straight edge is as long as the cut.</summary>
    GuideReaches,

    /// <summary>The crosscut saw cuts through the width.</summary>
    StopSawTakesIt,

    /// <summary>A second person is asked for just where a blank is heavier than one lifts.</summary>
    TwoPeopleAreNamed,

    /// <summary>No such blank goes to the table saw while the guided saw can make the cut.</summary>
    HeavyStaysOffTheTable,

    /// <summary>The parts that come out are those of the layout, but for what waits and what is refused.</summary>
    PartsComeOut,

    /// <summary>Each has its size, to the tick, lying as it is said to lie.</summary>
    PartsHaveTheirSize,

    /// <summary>All its sides are true, no margin is left and no flaw lies in it.</summary>
    PartsAreTrue,

    /// <summary>No part that waits for a reading is cut.</summary>
    HeldAreNotCut,

    /// <summary>Each waits in a blank that is large enough for what the layout has there.</summary>
    HeldWait,

    /// <summary>What is kept is what the layout keeps.</summary>
    KeptAreLaid,

    /// <summary>Stock is parts, left-overs, what waits and dust, to the square tick.</summary>
    WoodIsNotLost,

    /// <summary>Every blank made for a later run is cut by one.</summary>
    NothingIsHalfCut,

    /// <summary>The members of a figure group lay side by side in the sheet, in their order, no more than a kerf apart.</summary>
    FigureRunsThrough,

    /// <summary>A waste blank holds the spares it promises.</summary>
    SparesAreThere,

    /// <summary>A setting is tried on a piece of waste of an earlier run that the saw can cut at that setting.</summary>
    TrialIsWaste,

    /// <summary>What is refused lies uncut, names parts that come out of it, and no saw of the shop could make that cut.</summary>
    RefusalIsNeeded,
}

/// <summary>One broken rule of a plan of runs.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Run">The run, from 1; 0 where it is about the whole plan.</param>
/// <param name="Words">What is wrong, with the figures.</param>
public sealed record SawViolation(SawRule Rule, int Run, string Words);

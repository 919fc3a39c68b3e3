using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Workbench.Noting;

namespace Setout.Tests.Browser;

/// <summary>What is said of parts that are chosen.</summary>
public sealed class NoteTargetsTests
{
    [Theory]
    [InlineData("", "it is cut; taken as planned")]
    [InlineData("L3.front.height=5", "it is cut; not read, and not what is planned now")]
    public void State_OfAPartThatIsCut_SaysWhetherItIsAsPlanned(string to, string said)
    {
        PieceSource source = PieceSource.Read(File.ReadAllText(Samples.File("luthiers-bench")), null, null).Source!;
        Noted<MarkEntry> mark = NotedMark.Of(source.SetOut(), new(Progress.Cut, ["L3.front"]) { To = to.Length > 0 ? [to] : [] }, "e1", "2026-05-04T09:40:00Z");
        Assert.Null(mark.Fault);
        Core.SettingOut.SetPiece set = (source with { Log = new([mark.Entry!]) }).SetOut();
        Assert.StartsWith(said, NoteTargets.State(set, NoteTargets.PartsOf(set, "L3.front")), StringComparison.Ordinal);
    }
}

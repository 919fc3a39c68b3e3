// Over 200 lines: each thing that the log of another piece may say of the wood, on the same two pieces.
using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Rack;

/// <summary>What the logs of other pieces of a shop do to the rack of this one. Sizes are such that a part comes out of the wood in question or not at all.</summary>
public sealed class ShopPieceTests
{
    private const string Bought = "{panel: mdf, label: 3/4, size: 1000 x 500, price: 20}";
    private const string Line = "{panel: mdf, label: 3/4, size: 400 x 300, have: 2}";

    private static Log Log(params string[] entries)
    {
        TextRead<Log> read = LogText.Read("setout-log: 1\nentries:\n" + string.Concat(entries.Select(e => $"  - {e}\n")));
        Assert.True(read.IsSound, string.Join("; ", read.Findings));
        return read.Value!;
    }

    private static string Entry(string id, string took, string left = "", string at = "2026-11-26T10:00:00Z") => $"{{id: {id}, at: {at}, cut: [], took: [{took}]{(left.Length > 0 ? $", left: [{left}]" : "")}}}";

    private static PieceSource Here(string stock, int count = 1, params string[] entries)
    {
        string lines = string.Concat(stock.Split('\n').Select(l => $"  - {l}\n"));
        (PieceSource? source, var findings) = PieceSource.Read(
            $"setout: 1\nname: Chest\nunit: mm\nmaterials:\n  one: {{panel: mdf, label: 3/4}}\nparts:\n  - {{part: p, of: one, count: {count}, length: 390, width: 290}}\n",
            entries.Length == 0 ? null : "setout-log: 1\nentries:\n" + string.Concat(entries.Select(e => $"  - {e}\n")), $"setout-shop: 1\nunit: mm\nkerf: {{sheets: 3}}\ntrim: {{sheets: 5}}\nstock:\n{lines}");
        return source ?? throw new InvalidOperationException(string.Join("; ", findings));
    }

    // Calls the mdf of the other piece 'two', and another wood 'one'.
    private static ShopPiece Tray(params string[] entries) => There("tray.yaml", "Tray", entries);

    private static ShopPiece There(string file, string name, params string[] entries) =>
        new(file, PieceText.Read($"setout: 1\nname: {name}\nunit: in\nmaterials:\n  two: {{panel: mdf, label: 3/4}}\n  one: {{panel: hardwood plywood, label: 3/4}}\n  rail: {{stick: ash, section: 2 x 1}}\nparts:\n  - {{part: p, of: one, length: 9, width: 9}}\n").Value!, Log(entries));

    private static int Left(PieceSource source) => source.ShopInHand.Stock[0].Size.InHand!.Value;

    private static string Blanks(PieceSource source) => string.Join(' ', source.ShopInHand.Stock.Where(s => s.IsBlank).Select(s => s.Size.Name));

    private static string[] Codes(PieceSource source, string begin) => [.. Sample.Make(source).Findings.Where(f => f.Code.StartsWith(begin, StringComparison.Ordinal)).Select(f => $"{f.Severity} {f.Code}")];

    [Theory]
    [InlineData("of: two, stock: rack, size: 400 mm x 300 mm", 1)]
    // Whatever unit it is told in.
    [InlineData("of: two, stock: rack, size: 15 95/127 in x 300 mm", 1)]
    // That is plywood there.
    [InlineData("of: one, stock: rack, size: 400 mm x 300 mm", 2)]
    [InlineData("of: two, stock: rack, size: 400 mm x 301 mm", 2)]
    [InlineData("of: two, stock: rack, name: offcut, size: 400 mm x 300 mm", 2)]
    [InlineData("of: two, stock: bought, size: 400 mm x 300 mm", 2)]
    // What stands in the other piece file is none of the rack.
    [InlineData("of: two, stock: piece, size: 400 mm x 300 mm", 2)]
    [InlineData("of: nothing, stock: rack, size: 400 mm x 300 mm", 2)]
    public void ShopInHand_WhatAnotherTook_IsOffTheCountByTheWoodsOfThatPiece(string took, int left)
    {
        PieceSource source = Here($"{Line}\n{Bought}").Beside("chest.yaml", [Tray(Entry("a", $"{{{took}}}"))]);
        Assert.Equal(left, Left(source));
        Assert.Equal(2, Left(source.Beside("chest.yaml", [Tray(Entry("a", $"{{{took}}}"), "{id: b, at: 2026-11-26T11:00:00Z, void: a}")])));
    }

    [Theory]
    [InlineData(", counted: 2026-11-27", 2)]
    [InlineData(", counted: 2026-11-26", 1)]
    public void ShopInHand_WhatAnotherTookBeforeTheCount_IsInTheCount(string counted, int left) =>
        Assert.Equal(left, Left(Here($"{Line[..^1]}{counted}}}\n{Bought}").Beside("chest.yaml", [Tray(Entry("a", "{of: two, stock: rack, size: 400 mm x 300 mm}"))])));

    [Theory]
    // It has one kept for it: that is the one it took.
    [InlineData("Tray", 2)]
    // It may have taken no other than this one.
    [InlineData("Chest", 1)]
    public void ShopInHand_AlikeLines_AreTakenFromByThoseTheyAreKeptFor(string kept, int left)
    {
        PieceSource source = Here($"{Line}\n{Line[..^1]}, for: {kept}}}\n{Bought}").Beside("chest.yaml", [Tray(Entry("a", "{of: two, stock: rack, size: 400 mm x 300 mm}"))]);
        Assert.Equal(left, Left(source));
        Assert.Equal(kept == "Chest" ? 2 : 0, source.ShopInHand.Stock[1].Size.InHand);
    }

    [Theory]
    [InlineData("two", "keep", "x")]
    [InlineData("two", "work", "")]
    [InlineData("two", "waiting", "")]
    // Plywood: in hand for whoever has plywood, and no line that this piece can use.
    [InlineData("one", "keep", "x")]
    [InlineData("nothing", "keep", "")]
    public void ShopInHand_WhatAnotherLeft_IsInHandWhereItIsKept(string of, string use, string blanks)
    {
        PieceSource source = Here(Bought).Beside("chest.yaml", [Tray(Entry("a", "{of: two, stock: bought, size: 1000 mm x 500 mm}", $"{{of: {of}, name: x, size: 400 mm x 300 mm, use: {use}}}"))]);
        Assert.Equal(blanks, Blanks(source));
        Plan plan = Sample.Make(source);
        Assert.Equal(of == "two" && use == "keep" ? ["1 MDF 3/4 in, x (400 x 300 mm), kept from Tray"] : ["1 MDF 3/4 in, 1000 x 500 mm"], plan.Buying.Select(l => $"{l.Count} {l.Item}"));
        // A run that cuts it calls the wood as this piece does.
        if (of != "two" || use != "keep") return;
        MarkEntry entry = RunMarking.Of(source, plan.Set, SawnPlan.Of(plan), 1, "b", "2026-11-26T12:00:00Z").Entry!;
        Assert.Equal([new TakenWood("one", WoodSource.Blank, "x", null)], entry.Took);
        PieceSource after = source with { Log = new([entry]) };
        Assert.DoesNotContain("x", Blanks(after).Split(' '));
        Assert.Empty(Codes(after, "log."));
        // It is gone for the one that left it, too.
        Assert.DoesNotContain(WoodLedger.Of([after.InShop, .. after.Others]).For("tray.yaml"), b => b.Name == "x");
    }

    [Fact]
    public void ShopInHand_BlankThatAnotherTook_IsGoneHere()
    {
        string left = Entry("a", "{of: one, stock: bought, size: 1000 mm x 500 mm}", "{of: one, name: x, size: 400 mm x 300 mm}, {of: one, name: y, size: 400 mm x 300 mm, use: work}");
        Assert.Equal("x y", Blanks(Here(Bought, 1, left)));
        Assert.Equal("y", Blanks(Here(Bought, 1, left).Beside("chest.yaml", [Tray(Entry("a", "{of: two, blank: x}"))])));
        // Its piece file cannot be read: the name is enough.
        Assert.Equal("y", Blanks(Here(Bought, 1, left).Beside("chest.yaml", [ShopPiece.Of("tray.yaml", Log(Entry("a", "{of: two, blank: x}")))])));
    }

    [Theory]
    [InlineData("{of: two, stock: rack, name: x, size: 400 mm x 300 mm}")]
    [InlineData("{of: two, blank: x}")]
    public void ShopInHand_BlankWithALineOfItsOwn_GoesFromBothHoweverItIsTaken(string took)
    {
        string left = Entry("a", "{of: one, stock: bought, size: 1000 mm x 500 mm}", "{of: one, name: x, size: 400 mm x 300 mm}");
        PieceSource source = Here($"{{panel: mdf, label: 3/4, size: 400 x 300, have: 1, name: x}}\n{Bought}", 1, left);
        Assert.Equal((1, ""), (Left(source), Blanks(source)));
        source = source.Beside("chest.yaml", [Tray(Entry("a", took))]);
        Assert.Equal((0, ""), (Left(source), Blanks(source)));
        // The same from its own log.
        source = Here($"{{panel: mdf, label: 3/4, size: 400 x 300, have: 1, name: x}}\n{Bought}", 1, left, Entry("b", took.Replace("two", "one", StringComparison.Ordinal)));
        Assert.Equal((0, ""), (Left(source), Blanks(source)));
    }

    [Fact]
    public void Ledger_CopyOfALog_CountsOnce()
    {
        string[] entries = [Entry("a", "{of: two, stock: rack, size: 400 mm x 300 mm}")];
        Assert.Equal(1, Left(Here($"{Line}\n{Bought}").Beside("chest.yaml", [Tray(entries), There("tray-2.yaml", "Tray", entries)])));
        // Two logs that happen to use one id for two things.
        Assert.Equal(0, Left(Here($"{Line}\n{Bought}").Beside("chest.yaml", [Tray(entries), There("tray-2.yaml", "Tray", Entry("a", "{of: two, stock: rack, size: 400 mm x 300 mm}", "", "2026-11-26T10:00:01Z"))])));
    }

    [Fact]
    public void Ledger_RunOfTwoPieces_WhoseWoodIsToldInTwoLogs_CountsOnceInEach()
    {
        ShopPiece tray = Tray("{id: a, at: 2026-11-26T10:00:00Z, cut: [], run: 1, plan: 1a2b3c4d, with: [box.yaml], took: [{of: two, stock: piece, size: 1000 mm x 500 mm}]}");
        ShopPiece box = There("box.yaml", "Box", "{id: a, at: 2026-11-26T10:00:00Z, cut: [], run: 1, plan: 1a2b3c4d, with: [tray.yaml], took: [], left: [{of: two, name: x, size: 400 mm x 300 mm}, {of: two, name: y, size: 400 mm x 300 mm, use: work}]}");
        PieceSource source = Here(Bought).Beside("chest.yaml", [tray, box]);
        Assert.Equal("x", Blanks(source));
        Assert.Empty(source.Ledger.Twice);
        Assert.Equal(["x", "y"], source.Ledger.For("tray.yaml").Select(b => b.Name));
        LogEntry entry = box.Log.Entries[0];
        Assert.Equal(LogText.Write(entry), LogText.Write(LogText.Read(LogText.Head + LogText.Write(entry)).Value!.Entries[0]));
    }

    public static TheoryData<string, bool> Changes() => new()
    {
        { "{id: z, at: 2026-11-26T12:00:00Z, read: one.thickness, values: [18 mm], with: calliper}", false },
        { "{id: z, at: 2026-11-26T12:00:00Z, cut: [p]}", false },
        { "{id: z, at: 2026-11-26T12:00:00Z, allow: material.not-read, because: it is so}", false },
        { Entry("z", "{of: two, stock: bought, size: 400 mm x 300 mm}"), false },
        { Entry("z", "{of: two, stock: rack, size: 500 mm x 300 mm}"), false },
        { Entry("z", "{of: two, stock: rack, size: 400 mm x 300 mm}"), true },
        { Entry("z", "{of: two, stock: bought, size: 500 mm x 300 mm}", "{of: two, name: q, size: 400 mm x 299 mm}"), true },
        { Entry("z", "{of: two, stock: bought, size: 500 mm x 300 mm}", "{of: two, name: q, size: 400 mm x 299 mm, use: work}"), true },
        { Entry("z", "{of: two, blank: k}"), true },
        { Entry("z", "{of: two, blank: mine}"), true },
        { "{id: z, at: 2026-11-26T12:00:00Z, void: a}", true },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void Beside_AnotherEntryOfANeighbour_ChangesTheHashWhereWoodChanged(string entry, bool changes)
    {
        PieceSource own = Here($"{Line}\n{Bought}", 1, Entry("a", "{of: one, stock: bought, size: 1000 mm x 500 mm}", "{of: one, name: mine, size: 400 mm x 300 mm}"));
        string[] entries = [Entry("a", "{of: two, stock: rack, size: 400 mm x 300 mm}", "{of: two, name: k, size: 100 mm x 100 mm}")];
        PieceSource before = own.Beside("chest.yaml", [Tray(entries)]), after = own.Beside("chest.yaml", [Tray([.. entries, entry])]);
        Assert.Equal(changes, before.Hash != after.Hash);
        Assert.Equal((own.TextHash, own.TextHash), (before.TextHash, after.TextHash));
        Assert.NotEqual(own.Hash, before.Hash);
        // Taken back, it is as it was.
        if (entry.Contains("void", StringComparison.Ordinal)) return;
        Assert.Equal(before.Hash, own.Beside("chest.yaml", [Tray([.. entries, entry, "{id: y, at: 2026-11-26T13:00:00Z, void: z}"])]).Hash);
        Assert.Equal(before.Hash, after.Beside("chest.yaml", [Tray(entries)]).Hash);
    }

    [Fact]
    public void Beside_NeighboursWithoutWoodOrInAnotherOrder_IsTheSame()
    {
        PieceSource own = Here($"{Line}\n{Bought}");
        ShopPiece tray = Tray(Entry("a", "{of: two, stock: rack, size: 400 mm x 300 mm}")), box = There("box.yaml", "Box", Entry("a", "{of: two, stock: bought, size: 400 mm x 300 mm}", "{of: two, name: k, size: 100 mm x 100 mm}"));
        Assert.Equal(own.Hash, own.Beside("chest.yaml", []).Hash);
        Assert.Equal(own.Hash, own.Beside("chest.yaml", [Tray("{id: z, at: 2026-11-26T12:00:00Z, read: one.thickness, values: [18 mm]}")]).Hash);
        PieceSource one = own.Beside("chest.yaml", [tray, box]), other = own.Beside("chest.yaml", [box, tray]);
        Assert.Equal(one.Hash, other.Hash);
        Assert.Equal(["box.yaml", "tray.yaml"], one.Others.Select(o => o.Name));
        Assert.Equal(one.Others.Select(o => o.Name), other.Others.Select(o => o.Name));
        Assert.NotEqual(one.Hash, own.Beside("chest.yaml", [tray, box], [ShopPiece.Unread("x.log.yaml", "line 1: bad", "What x took is not known.")]).Hash);
    }

    [Theory]
    // Two wanted, two there, one taken: one has to be bought, and the line would have served.
    [InlineData(2, 1, "one of the rack: 400 x 300 mm: 1 of 2 taken for Tray. Wood has to be bought here that this could have saved.")]
    [InlineData(2, 2, "one of the rack: 400 x 300 mm: 2 of 2 taken for Tray. Wood has to be bought here that this could have saved.")]
    // The one that is left suffices.
    [InlineData(1, 1, "")]
    [InlineData(2, 0, "")]
    public void Make_LineThatAnotherTookFrom_IsToldWhereItIsMissed(int count, int taken, string words)
    {
        string[] entries = [.. Enumerable.Range(0, taken).Select(i => Entry($"e{i}", "{of: two, stock: rack, size: 400 mm x 300 mm}"))];
        Plan plan = Sample.Make(Here($"{Line}\n{Bought}", count).Beside("chest.yaml", [Tray(entries)]));
        Finding[] told = [.. plan.Findings.Where(f => f.Code == "rack.taken")];
        Assert.Equal(words.Length == 0 ? [] : [words], told.Select(f => f.Words));
        Assert.All(told, f => Assert.Equal(Severity.Note, f.Severity));
    }

    [Fact]
    public void Make_NothingToBuyInItsPlace_SaysThatWoodIsShort()
    {
        Plan plan = Sample.Make(Here($"{Line}", 2).Beside("chest.yaml", [Tray(Entry("a", "{of: two, stock: rack, size: 400 mm x 300 mm}")), There("box.yaml", "Box", Entry("b", "{of: two, stock: rack, size: 400 mm x 300 mm}"))]));
        // Nothing is left at all: what the trade keeps of mdf is offered instead.
        Assert.Contains("2 of 2 taken for Tray and Box", Assert.Single(plan.Findings, f => f.Code == "rack.taken").Words, StringComparison.Ordinal);
        plan = Sample.Make(Here($"{Line}\n{{panel: mdf, label: 3/4, size: 100 x 100, price: 1}}", 2).Beside("chest.yaml", [Tray(Entry("a", "{of: two, stock: rack, size: 400 mm x 300 mm}"))]));
        Assert.Contains(plan.Findings, f => f.Code == "stock.too-little");
        Assert.EndsWith("Wood is short here that this could have been.", Assert.Single(plan.Findings, f => f.Code == "rack.taken").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_LedgerThatDoesNotAddUp_CallsMarksByTheirTime_AndTheIdIsForCommandsAlone()
    {
        string left = Entry("a", "{of: one, stock: bought, size: 1000 mm x 500 mm}", "{of: one, name: x, size: 100 mm x 100 mm}");
        PieceSource source = Here(Bought, 1, left, Entry("b", "{of: one, blank: x}")).Beside("chest.yaml", [Tray(Entry("c", "{of: two, blank: x}"))]);
        Finding typed = Assert.Single(Sample.Make(source).Findings, f => f.Code == "log.blank-taken-twice"), seen = Assert.Single(Sample.Make(source.For(Hand.Pages)).Findings, f => f.Code == "log.blank-taken-twice");
        Assert.Matches("^The blank x was taken by the mark of [0-9]+ [A-Z][a-z]+ 2026, [0-9]+:[0-9]{2} and the mark of [0-9]+ [A-Z][a-z]+ 2026, [0-9]+:[0-9]{2} of ", typed.Words);
        Assert.Equal("Void those that are not so: b and c.", typed.Remedy);
        Assert.Equal((typed.Words, "Void those that are not so."), (seen.Words, seen.Remedy));
    }

    [Fact]
    public void Make_LedgerOfTheShopThatDoesNotAddUp_IsTold()
    {
        string left = Entry("a", "{of: one, stock: bought, size: 1000 mm x 500 mm}", "{of: one, name: x, size: 100 mm x 100 mm}");
        Assert.Empty(Codes(Here(Bought, 1, Entry("b", "{of: one, blank: k}")).Beside("chest.yaml", [Tray(Entry("a", "{of: two, stock: bought, size: 9 in x 9 in}", "{of: two, name: k, size: 100 mm x 100 mm}"))]), "log."));
        Assert.Equal(["Warn log.blank-unknown"], Codes(Here(Bought, 1, Entry("b", "{of: one, blank: k}")).Beside("chest.yaml", [Tray()]), "log."));
        Assert.Equal(["Warn log.blank-taken-twice"], Codes(Here(Bought, 1, left, Entry("b", "{of: one, blank: x}")).Beside("chest.yaml", [Tray(Entry("c", "{of: two, blank: x}"))]), "log."));
        Assert.Equal(["Warn log.blank-named-twice"], Codes(Here(Bought, 1, left).Beside("chest.yaml", [Tray(left.Replace("of: one", "of: two", StringComparison.Ordinal))]), "log."));
        string took = Entry("b", "{of: one, stock: rack, size: 400 mm x 300 mm}");
        Assert.Empty(Codes(Here($"{Line}\n{Bought}", 1, took).Beside("chest.yaml", [Tray(Entry("c", "{of: two, stock: rack, size: 400 mm x 300 mm}"))]), "log."));
        Assert.Equal(["Warn log.rack-overdrawn"], Codes(Here($"{Line}\n{Bought}", 1, took).Beside("chest.yaml", [Tray(Entry("c", "{of: two, stock: rack, size: 400 mm x 300 mm}, {of: two, stock: rack, size: 400 mm x 300 mm}"))]), "log."));
        // Counted since: none of it is in the count.
        Assert.Empty(Codes(Here($"{Line[..^1]}, counted: 2026-11-27}}\n{Bought}", 1, took).Beside("chest.yaml", [Tray(Entry("c", "{of: two, stock: rack, size: 400 mm x 300 mm}, {of: two, stock: rack, size: 400 mm x 300 mm}"))]), "log."));
        // What is wrong between two others is told in their plans.
        Assert.Empty(Codes(Here(Bought).Beside("chest.yaml", [Tray(Entry("c", "{of: two, blank: q}"))]), "log."));
    }

    [Fact]
    public void Make_NeighbourThatCannotBeRead_IsTheWarningOfIt()
    {
        Plan plan = Sample.Make(Here(Bought).Beside("chest.yaml", [], [ShopPiece.Unread("tray.log.yaml", "line 3: bad.", "What tray took is not known.")]));
        Assert.False(plan.IsStopped);
        Assert.Equal("Warn 'tray.log.yaml' beside this piece cannot be read: line 3: bad. What tray took is not known.", Assert.Single(plan.Findings, f => f.Code == "rack.piece-unread") is var f ? $"{f.Severity} {f.Words}" : "");
    }
}

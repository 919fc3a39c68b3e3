using System.Collections.Immutable;
using System.Text;
using Setout.Commands;
using Setout.Files;
using Setout.Shop.Facts;
using Setout.Shop.Texts;
using Setout.Store;
using Setout.Store.Tests.Contract;

namespace Setout.Tests.Files;

/// <summary>What the log on disk promises beyond the contract, and carrying facts between it and a database.</summary>
public sealed class LogFileTests : IDisposable
{
    private const string Old = "setout-log: 1\nentries:\n  - {id: x, at: 2026-05-04T09:00:00Z, cut: [C]}    # at last\n";

    private readonly TestFolder _folder = new();

    private string LogPath => _folder.Of("chest.log.yaml");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData(" \n\n")]
    [InlineData("setout-log: 1\n")]
    [InlineData("setout-log: 1\nentries:\n")]
    [InlineData(Old)]
    [InlineData("setout-log: 1\r\nentries:\r\n      - {id: x, at: 2026-05-04T09:00:00Z, cut: [C]}\r\n")]
    [InlineData("setout-log: 1\nentries:\n- id: x\n  at: 2026-05-04T09:00:00Z\n  cut: [C] # no end of line")]
    public void Append_Several_LeavesEachByteThatStandsThere(string old)
    {
        foreach (byte[] mark in (byte[][])[[], [0xEF, 0xBB, 0xBF]])
        {
            byte[] before = [.. mark, .. Encoding.UTF8.GetBytes(old)];
            File.WriteAllBytes(LogPath, before);
            Assert.Equal(FactSamples.EachKind.Length, new LogFile(LogPath).Append(FactSamples.EachKind));
            if (!string.IsNullOrWhiteSpace(old) || old.Length == 0) Assert.Equal(before, File.ReadAllBytes(LogPath)[..before.Length]);
            IEnumerable<string> appended = FactSamples.Words(new LogFile(LogPath).Read()).TakeLast(FactSamples.EachKind.Length);
            Assert.Equal(FactSamples.EachKind.Select(FactSamples.Words), appended);
        }
    }

    [Fact]
    public void Append_ToBlanksLongerThanTheEntry_LeavesNothingBehind()
    {
        File.WriteAllText(LogPath, new string('\n', 5000));
        new LogFile(LogPath).Append(FactSamples.ReadAt("x", 1));
        Assert.Equal(LogText.Head + LogText.Write(FactSamples.ReadAt("x", 1)), File.ReadAllText(LogPath));
        Assert.Equal(["chest.log.yaml"], _folder.Files());
    }

    [Theory]
    [InlineData("setout-log: 1\nentries: []\n")]
    [InlineData("setout-log: 1\nentries: [{id: x, at: 2026-05-04T09:00:00Z, cut: [C]}]\n")]
    [InlineData("entries:\n  - {id: x, at: 2026-05-04T09:00:00Z, cut: [C]}\nsetout-log: 1\n")]
    [InlineData("setout-log: 1\nentries:\n  - {id: x, at: 2026-05-04T09:00:00Z, cut: [C\n")]
    [InlineData("not a log")]
    public void Append_ToALogThatTakesNone_SaysSoAndWritesNothing(string old)
    {
        File.WriteAllText(LogPath, old);
        FactStoreException refused = Assert.Throws<FactStoreException>(() => new LogFile(LogPath).Append(FactSamples.ReadAt("y", 1), FactSamples.ReadAt("z", 2)));
        Assert.Equal("log.not-appendable", refused.Fault.Code);
        Assert.Contains($"'{LogPath}' cannot be appended to", refused.Fault.Words, StringComparison.Ordinal);
        UsageException told = Assert.Throws<UsageException>(() => LogFile.Append(LogPath, FactSamples.ReadAt("y", 1)));
        Assert.Equal((refused.Fault.Words, refused.Fault.Remedy), (told.Message, told.Remedy));
        Assert.Equal(old, File.ReadAllText(LogPath));
    }

    [Fact]
    public void Append_ByTheCommands_TellsAConflictAsAUsageError()
    {
        LogFile.Append(LogPath, FactSamples.ReadAt("x", 1, 24));
        byte[] before = File.ReadAllBytes(LogPath);
        LogFile.Append(LogPath, FactSamples.ReadAt("x", 1, 24));
        Assert.Contains("'x'", Assert.Throws<UsageException>(() => LogFile.Append(LogPath, FactSamples.ReadAt("x", 1, 25))).Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(LogPath));
    }

    [Fact]
    public void Append_WhatCannotBeWritten_MakesNoLog()
    {
        Assert.Throws<UsageException>(() => LogFile.Append(LogPath, new VoidEntry("b", "today", "a")));
        Assert.Throws<FactStoreException>(() => new LogFile(LogPath).Append(FactSamples.ReadAt("x", 1), new VoidEntry("b", "today", "a")));
        Assert.Empty(_folder.Files());
    }

    [Theory]
    [InlineData("setout-log: 1\nentries:\n  - {id: x, at: 2026-05-04T09:00:00Z, cut: [C]}\n  - id: y\n    at: \"2026-", "line ")]
    [InlineData("setout-log: 2\n", "version 2")]
    public void Read_ATornOrNewerLog_SaysWhere(string text, string words)
    {
        File.WriteAllText(LogPath, text);
        FactStoreException refused = Assert.Throws<FactStoreException>(() => new LogFile(LogPath).Read());
        Assert.Contains($"'{LogPath}' cannot be read: ", refused.Fault.Words, StringComparison.Ordinal);
        Assert.Contains(words, refused.Fault.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Append_CutOffAnywhereInALastWrite_IsToldOrLeavesWholeEntries()
    {
        new LogFile(LogPath).Append(FactSamples.ReadAt("x", 1));
        byte[] before = File.ReadAllBytes(LogPath);
        ImmutableArray<LogEntry> more = [FactSamples.ReadAt("y", 2), new VoidEntry("z", "2026-05-04T09:40:00Z", "x")];
        new LogFile(LogPath).Append(more);
        byte[] whole = File.ReadAllBytes(LogPath);
        string[] words = [.. FactSamples.Words(new LogFile(LogPath).Read())];
        int told = 0;
        for (int length = before.Length; length < whole.Length; length++)
        {
            File.WriteAllBytes(LogPath, whole[..length]);
            try
            {
                IEnumerable<LogEntry> entries = new LogFile(LogPath).Read().Entries;
                // A figure or an id may lose its end; no entry that was acknowledged before does.
                Assert.Equal(words[0], FactSamples.Words(entries.First()));
            }
            catch (FactStoreException)
            {
                told++;
            }
        }
        Assert.InRange(told, (whole.Length - before.Length) / 2, whole.Length);
    }

    [Fact]
    public void Facts_CarriedToADatabaseAndBack_AreTheSameLog()
    {
        using var database = ShopDatabase.Open(_folder.Of("facts.db"));
        var first = new LogFile(LogPath);
        first.Append(FactSamples.EachKind);
        IFactStore kept = database.FactsOf("chest");
        Assert.Equal(FactSamples.EachKind.Length, kept.Append(FactUnion.Of(kept.Read(), first.Read()).Entries));
        var back = new LogFile(_folder.Of("back.log.yaml"));
        back.Append(FactUnion.Of(back.Read(), kept.Read()).Entries);
        Assert.Equal(File.ReadAllBytes(LogPath), File.ReadAllBytes(_folder.Of("back.log.yaml")));
        Assert.Equal(FactSamples.Words(first.Read()), FactSamples.Words(back.Read()));
        // And once more, both ways: nothing.
        Assert.Empty(FactUnion.Of(kept.Read(), back.Read()).Entries);
        Assert.Equal(0, first.Append(kept.Read().Entries));
        Assert.Equal(0, kept.Append(back.Read().Entries));
    }
}

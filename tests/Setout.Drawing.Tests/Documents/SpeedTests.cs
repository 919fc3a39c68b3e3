using System.Collections.Immutable;
using System.Diagnostics;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Documents;

/// <summary>Counts are asserted, times are only reported.</summary>
public sealed class SpeedTests(ITestOutputHelper output)
{
    [Fact]
    public void Save_FortyPagesOfTables_IsReported()
    {
        BenchDocument chest = PlanChest.Document(Paper.Letter);
        TableBlock parts = chest.Sections[2].Blocks.OfType<TableBlock>().Single();
        var long_ = parts with { Rows = [.. Enumerable.Repeat(parts.Rows, 36).SelectMany(r => r)] };
        BenchDocument document = chest with { Sections = [new("Parts", [long_])] };

        for (int i = 0; i < 4; i++)
        {
            TimeSpan processor = Environment.CpuUsage.TotalTime;
            long before = Stopwatch.GetTimestamp();
            DocumentLayout layout = PageComposer.Compose(document);
            TimeSpan composed = Stopwatch.GetElapsedTime(before);
            using var stream = new MemoryStream();
            PdfWriter.Write(layout, document.Title, "en", document.Stamp, stream);
            output.WriteLine($"{layout.Pages.Length} pages: set in {composed.TotalMilliseconds:0} ms, all in {Stopwatch.GetElapsedTime(before).TotalMilliseconds:0} ms, {stream.Length / 1024} kB; processor {(Environment.CpuUsage.TotalTime - processor).TotalMilliseconds:0} ms in the whole process");
            Assert.InRange(layout.Pages.Length, 40, 60);
        }
    }
}

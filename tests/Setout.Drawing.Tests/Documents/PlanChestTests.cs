using Setout.Drawing.Documents;
using UglyToad.PdfPig;

namespace Setout.Drawing.Tests.Documents;

public sealed class PlanChestTests
{
    [Theory]
    [InlineData(Paper.Letter)]
    [InlineData(Paper.A4)]
    public void Save_WholeDocument_ReadsBackWithoutRemarks(Paper paper)
    {
        using var stream = new MemoryStream();
        Assert.Empty(PdfWriter.Save(PlanChest.Document(paper), stream));
        // Kept beside the tests so that a person can look at it.
        File.WriteAllBytes(Path.Combine(AppContext.BaseDirectory, $"plan-chest-{paper}.pdf"), stream.ToArray());
        using PdfDocument pdf = PdfDocument.Open(stream.ToArray());
        Assert.True(pdf.NumberOfPages >= 6);
        Assert.Contains("35 15/16", pdf.GetPage(1).Text);
    }
}

using Setout.Files;
using Setout.Shop.Facts;
using Setout.Store.Tests.Contract;

namespace Setout.Tests.Files;

/// <summary>The contract of stores of facts, kept by the log on disk.</summary>
public sealed class LogFileContractTests : FactStoreContract
{
    /// <inheritdoc/>
    protected override IFactStore Open(string place) => new LogFile(Path.Combine(Folder, place + ".log.yaml"));
}

using Setout.Shop.Facts;
using Setout.Store.Tests.Contract;

namespace Setout.Store.Tests;

/// <summary>The contract, kept by the database: each way of opening has a database object of its own.</summary>
public sealed class DatabaseContractTests : FactStoreContract
{
    private readonly List<ShopDatabase> _open = [];

    /// <inheritdoc/>
    protected override IFactStore Open(string place)
    {
        var database = ShopDatabase.Open(Path.Combine(Folder, "facts.db"));
        lock (_open) _open.Add(database);
        return database.FactsOf(place);
    }

    /// <inheritdoc/>
    protected override void Close()
    {
        foreach (ShopDatabase database in _open) database.Dispose();
    }
}

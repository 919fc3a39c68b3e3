using System.Globalization;
using Setout.Shop.Facts;

namespace Setout.Store;

/// <summary>The program that uses a data folder.</summary>
/// <param name="Address">Where it answers; null while it is still starting.</param>
/// <param name="Process">Its number; null while it is still starting.</param>
public sealed record FolderUser(string? Address, int? Process)
{
    /// <summary>In words, with what to do.</summary>
    /// <param name="folder">The data folder.</param>
    public FactStoreException Refusal(string folder) => FactStoreException.Of("store.in-use",
        $"The data in '{folder}' is in use{(Process is { } number ? $" by process {number}" : "")}.",
        Address is { } address ? $"Open it there: {address}" : "That program is just starting, or does not say where it answers: try again in a moment.");
}

/// <summary>
/// Says that one program uses a data folder. A file is held open for as long as that lasts; the system lets go of it when the program ends, however
/// it ends. What the file beside it says of the program counts only while the first is held.
/// </summary>
public sealed class FolderLock : IDisposable
{
    private const string Held = "setout.lock", Told = "setout.address";

    private readonly FileStream _held;
    private readonly string _told;

    private FolderLock(FileStream held, string told) => (_held, _told) = (held, told);

    /// <summary>Takes the folder.</summary>
    /// <param name="folder">There, and to be written to.</param>
    /// <returns>The lock; or null and the program that has it.</returns>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    /// <exception cref="UnauthorizedAccessException">As before.</exception>
    public static (FolderLock? Lock, FolderUser? User) Take(string folder)
    {
        string path = Path.Combine(folder, Held), told = Path.Combine(folder, Told);
        try
        {
            var held = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            try
            {
                // What stands there is of a program that has ended.
                File.Delete(told);
                return (new(held, told), null);
            }
            catch
            {
                held.Dispose();
                throw;
            }
        }
        catch (IOException refused) when (IsHeld(refused))
        {
            return (null, User(told));
        }
    }

    /// <summary>Says where the program answers, for those that come later.</summary>
    /// <param name="address">Such as <c>http://localhost:5280</c>.</param>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public void Announce(string address)
    {
        string coming = _told + ".coming";
        File.WriteAllText(coming, $"{address}\n{Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}\n");
        File.Move(coming, _told, overwrite: true);
    }

    /// <summary>Lets go of the folder.</summary>
    public void Dispose()
    {
        try
        {
            File.Delete(_told);
        }
        catch (Exception stays) when (stays is IOException or UnauthorizedAccessException)
        {
            // Nobody believes it once the lock is free.
        }
        // The file itself stays: whoever took it away could take that of the next one.
        _held.Dispose();
    }

    private static FolderUser User(string told)
    {
        try
        {
            string[] lines = File.ReadAllLines(told);
            return lines is [var address, var number, ..] && int.TryParse(number, CultureInfo.InvariantCulture, out int process) ? new(address, process) : new(null, null);
        }
        catch (Exception silent) when (silent is IOException or UnauthorizedAccessException)
        {
            return new(null, null);
        }
    }

    // ERROR_SHARING_VIOLATION on Windows; EWOULDBLOCK (EAGAIN) elsewhere, which is 11 on Linux and 35 on macOS.
    private static bool IsHeld(IOException refused) => refused.HResult is unchecked((int)0x80070020) or 11 or 35;
}

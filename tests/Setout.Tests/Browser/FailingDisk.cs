using System.Diagnostics;
using Setout.Soak;

namespace Setout.Tests.Browser;

/// <summary>A disk under a running program that stops taking anything, and takes it again.</summary>
internal abstract class FailingDisk
{
    /// <summary>A small disk of its own in memory, filled to the last byte: the system answers writes with its true "no space left on device".</summary>
    public static FailingDisk Full => new FilledDisk();

    /// <summary>
    /// Stands for a disk that turned read-only under open files. A system cannot be made to do that to a disk in use without a fault of the disk, and folders and files that may not be written to do not
    /// bind files that are open. So the program is forbidden to write to any file (a limit of the length 0): writes fail on open files with an error that is not "full", and SQLite has one answer
    /// for all of those, whether they are EFBIG as here or EROFS as there: https://www.sqlite.org/rescode.html#ioerr_write.
    /// </summary>
    public static FailingDisk ReadOnly => new ForbiddenDisk();

    /// <summary>What a program is started by, on a data folder.</summary>
    public abstract string[] By(string data);

    public abstract void Stop(RealProgram program, string data);

    public abstract void GoOn(RealProgram program, string data);

    // The program sees its own disk at the place of the folder; what is in the folder is copied to it first.
    private sealed class FilledDisk : FailingDisk
    {
        private const string Mount = "exec 3<\"$0\"; mount -t tmpfs -o size=3m setout-test \"$0\" || exit 77; cp -a /proc/self/fd/3/. \"$0\" || exit 77; exec 3<&-; exec \"$@\"";

        public override string[] By(string data) => [.. Environment.IsPrivilegedProcess ? ["unshare", "--mount"] : new[] { "unshare", "--mount", "--map-root-user" }, "sh", "-c", Mount, data];

        public override void Stop(RealProgram program, string data)
        {
            using var filler = new FileStream(Filler(program, data), FileMode.Create, FileAccess.Write, FileShare.None, 0);
            try
            {
                for (int size = 1 << 16; size > 0; size /= 2)
                {
                    byte[] bytes = new byte[size];
                    try
                    {
                        for (int i = 0; i < 1000; i++) filler.Write(bytes);
                    }
                    catch (IOException)
                    {
                        // Smaller ones may still fit.
                    }
                }
            }
            catch (IOException)
            {
                // Full.
            }
        }

        public override void GoOn(RealProgram program, string data) => File.Delete(Filler(program, data));

        private static string Filler(RealProgram program, string data) => $"/proc/{program.Id}/root{data}/filler";
    }

    // The signal that Linux sends beyond the limit is passed over, as a disk sends none; and the runtime may not map its code twice, for which it would want a long file.
    private sealed class ForbiddenDisk : FailingDisk
    {
        public override string[] By(string data) => ["bash", "-c", "trap '' XFSZ; export DOTNET_EnableWriteXorExecute=0; exec \"$0\" \"$@\""];

        public override void Stop(RealProgram program, string data) => Limit(program, "0");

        public override void GoOn(RealProgram program, string data) => Limit(program, "unlimited");

        private static void Limit(RealProgram program, string length)
        {
            using Process by = Process.Start("prlimit", ["--pid", $"{program.Id}", $"--fsize={length}:unlimited"]);
            by.WaitForExit();
            Assert.Equal(0, by.ExitCode);
        }
    }
}

using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text;

namespace BenchRig;

/// <summary>A pair of terminals that behave like the two ends of a serial line; the board's end is held here.</summary>
/// <remarks>Linux only. The other end has a path, to which a link is put so that its name stays the same when the line is
/// unplugged and plugged in again.</remarks>
public sealed partial class PseudoTerminal : IDisposable
{
    private const int ReadWrite = 2;
    private const int NotControlling = 0x100;
    private const int LongestName = 128;

    private readonly int board;
    private readonly int keptOpen;
    private readonly string link;

    /// <summary>Opens a pair and puts a link to its other end.</summary>
    /// <param name="link">The link; one that is there is replaced.</param>
    public PseudoTerminal(string link)
    {
        this.link = link;
        board = Checked(OpenTerminal(ReadWrite | NotControlling), "posix_openpt");
        Checked(Grant(board), "grantpt");
        Checked(Unlock(board), "unlockpt");
        var name = new byte[LongestName];
        Checked(-NameOf(board, name, (nuint)name.Length), "ptsname_r");
        var path = Encoding.ASCII.GetString(name.AsSpan(0, Array.IndexOf(name, (byte)0)));
        MakeRaw(path);

        // While nobody has the other end open, reading this one fails; so it is kept open here too.
        keptOpen = Checked(Open(path, ReadWrite | NotControlling), "open");
        File.Delete(link);
        File.CreateSymbolicLink(link, path);
    }

    /// <summary>Sends text to the other end.</summary>
    public void Write(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var sent = 0;
        while (sent < bytes.Length)
        {
            sent += Checked(
                (int)WriteBytes(board, bytes.AsSpan(sent).ToArray(), (nuint)(bytes.Length - sent)),
                "write"
            );
        }
    }

    /// <summary>Waits for text from the other end.</summary>
    public string Read()
    {
        var buffer = new byte[256];
        var count = Checked((int)ReadBytes(board, buffer, (nuint)buffer.Length), "read");
        return Encoding.UTF8.GetString(buffer, 0, count);
    }

    /// <summary>Unplugs: the other end sees its line hang up.</summary>
    public void Dispose()
    {
        File.Delete(link);
        _ = Close(keptOpen);
        _ = Close(board);
    }

    // A terminal echoes and edits lines until it is told not to.
    private static void MakeRaw(string path)
    {
        using var stty = Process.Start(new ProcessStartInfo("stty", ["-F", path, "raw", "-echo"]))!;
        stty.WaitForExit();
    }

    private static int Checked(int result, string what) =>
        result >= 0
            ? result
            : throw new IOException($"{what}: {Marshal.GetPInvokeErrorMessage(Marshal.GetLastPInvokeError())}");

    [LibraryImport("libc", EntryPoint = "posix_openpt", SetLastError = true)]
    private static partial int OpenTerminal(int flags);

    [LibraryImport("libc", EntryPoint = "grantpt", SetLastError = true)]
    private static partial int Grant(int descriptor);

    [LibraryImport("libc", EntryPoint = "unlockpt", SetLastError = true)]
    private static partial int Unlock(int descriptor);

    [LibraryImport("libc", EntryPoint = "ptsname_r", SetLastError = true)]
    private static partial int NameOf(int descriptor, byte[] name, nuint length);

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "read", SetLastError = true)]
    private static partial nint ReadBytes(int descriptor, [Out] byte[] buffer, nuint count);

    [LibraryImport("libc", EntryPoint = "write", SetLastError = true)]
    private static partial nint WriteBytes(int descriptor, byte[] buffer, nuint count);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    private static partial int Close(int descriptor);
}

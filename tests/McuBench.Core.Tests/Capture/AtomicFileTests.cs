using McuBench.Core.Capture;

namespace McuBench.Core.Tests.Capture;

public sealed class AtomicFileTests
{
    [Fact]
    public void Write_NewFile_HoldsTheBytesAndNothingIsBesideIt()
    {
        using var folder = new TemporaryFolder();

        AtomicFile.Write(folder.PathOf("a.txt"), stream => stream.Write("new"u8));

        Assert.Equal("new", File.ReadAllText(folder.PathOf("a.txt")));
        Assert.Equal(["a.txt"], folder.Names);
    }

    [Fact]
    public void Write_FileThatIsThere_IsReplacedWhole()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.txt", "a much longer text than the new one");

        AtomicFile.Write(path, stream => stream.Write("new"u8));

        Assert.Equal("new", File.ReadAllText(path));
        Assert.Equal(["a.txt"], folder.Names);
    }

    [Fact]
    public void Write_WhileWriting_OldFileStandsUntouched()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.txt", "old");

        AtomicFile.Write(
            path,
            stream =>
            {
                stream.Write("new"u8);
                stream.Flush();
                Assert.Equal("old", File.ReadAllText(path));
            }
        );
    }

    [Fact]
    public void Write_WriterThrows_LeavesTheOldFileAndNothingBesideIt()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.txt", "old");

        var thrown = Assert.Throws<IOException>(() =>
            AtomicFile.Write(
                path,
                stream =>
                {
                    stream.Write(new byte[100_000]);
                    throw new IOException("The disk is full.");
                }
            )
        );

        Assert.Equal("The disk is full.", thrown.Message);
        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal(["a.txt"], folder.Names);
    }

    [Fact]
    public void Write_WriterClosesTheStream_FailsAndLeavesTheOldFile()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.txt", "old");

        // The bytes can no longer be flushed to the disk, so they must not take the old file's place.
        Assert.Throws<ObjectDisposedException>(() =>
            AtomicFile.Write(
                path,
                stream =>
                {
                    stream.Write("new"u8);
                    stream.Dispose();
                }
            )
        );

        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal(["a.txt"], folder.Names);
    }

    [Fact]
    public void Write_NoSuchFolder_IsSaid()
    {
        using var folder = new TemporaryFolder();
        var path = folder.PathOf(Path.Combine("nowhere", "a.txt"));

        var thrown = Assert.Throws<DirectoryNotFoundException>(() => AtomicFile.Write(path, _ => { }));

        Assert.Equal($"{path}: there is no folder {folder.PathOf("nowhere")}.", thrown.Message);
    }

    [Fact]
    public void Write_FolderOfThatName_IsSaid()
    {
        using var folder = new TemporaryFolder();

        var thrown = Assert.Throws<IOException>(() => AtomicFile.Write(folder.Root, _ => { }));

        Assert.Equal($"{folder.Root} is a folder; a file was expected.", thrown.Message);
        Assert.Empty(folder.Names);
    }

    [Fact]
    public void Write_ReadOnlyFile_IsRefusedAndKept()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.txt", "old");
        File.SetAttributes(path, FileAttributes.ReadOnly);

        var thrown = Assert.Throws<UnauthorizedAccessException>(() =>
            AtomicFile.Write(path, stream => stream.Write("new"u8))
        );

        Assert.Equal($"{path} is read-only.", thrown.Message);
        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal(["a.txt"], folder.Names);
        File.SetAttributes(path, FileAttributes.Normal);
    }

    [Fact]
    public void Write_ReadOnlyFolder_IsRefused()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Folders have no such permission on Windows.");
        Assert.SkipWhen(Environment.IsPrivilegedProcess, "The superuser may write anywhere.");
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.txt", "old");
        SetMode(folder.Root, UnixFileMode.UserRead | UnixFileMode.UserExecute);

        try
        {
            var thrown = Assert.Throws<UnauthorizedAccessException>(() =>
                AtomicFile.Write(path, stream => stream.Write("new"u8))
            );

            Assert.Equal($"{path}: the folder {folder.Root} may not be written.", thrown.Message);
            Assert.Equal("old", File.ReadAllText(path));
        }
        finally
        {
            SetMode(folder.Root, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    [Fact]
    public void Write_PermissionsOfTheOldFile_AreKept()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no Unix permissions.");
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.txt", "old");
        SetMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);

        AtomicFile.Write(path, stream => stream.Write("new"u8));

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, ModeOf(path));
    }

    [Fact]
    public void Write_Link_IsFollowedAndStays()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Making links needs a privilege on Windows.");
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.txt", "old");
        File.CreateSymbolicLink(folder.PathOf("link"), path);

        AtomicFile.Write(folder.PathOf("link"), stream => stream.Write("new"u8));

        Assert.Equal("new", File.ReadAllText(path));
        Assert.Equal(path, new FileInfo(folder.PathOf("link")).LinkTarget);
        Assert.Equal(["a.txt", "link"], folder.Names);
    }

    [Fact]
    public void Write_ManyWritersAtOnce_LeaveOneWholeText()
    {
        using var folder = new TemporaryFolder();
        var path = folder.PathOf("a.txt");

        Parallel.For(
            0,
            40,
            i =>
                AtomicFile.Write(
                    path,
                    stream =>
                    {
                        for (var k = 0; k < 100; k++)
                        {
                            stream.WriteByte((byte)('A' + (i % 26)));
                        }
                    }
                )
        );

        var text = File.ReadAllText(path);
        Assert.Equal(new string(text[0], 100), text);
        Assert.Equal(["a.txt"], folder.Names);
    }

    private static void SetMode(string path, UnixFileMode mode)
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, mode);
        }
    }

    private static UnixFileMode ModeOf(string path) =>
        OperatingSystem.IsWindows() ? UnixFileMode.None : File.GetUnixFileMode(path);
}

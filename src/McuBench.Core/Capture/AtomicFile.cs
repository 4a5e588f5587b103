namespace McuBench.Core.Capture;

/// <summary>Writes a file whole or not at all.</summary>
/// <remarks>
/// The bytes go to a new file in the same folder, are flushed to the disk, and the new file then takes the old one's
/// name in one step. Whatever fails before that step leaves the old file as it was and nothing beside it. After a power
/// failure the name leads to the old bytes or to the new ones, never to a mixture; which of the two is for the file
/// system, since the platform has no call that flushes a folder.
/// </remarks>
public static class AtomicFile
{
    /// <summary>Writes a file, in place of one that may be there.</summary>
    /// <param name="path">The file. Where it is a link, what it leads to is replaced. The permissions of a file that is
    /// there are kept where the platform has Unix permissions.</param>
    /// <param name="write">Writes the bytes. Whatever it throws comes out unchanged, and the old file stays.</param>
    /// <exception cref="IOException">There is no such folder, a folder has the name, or the disk fails.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or the file may not be written.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(write);
        var target = TargetOf(path);
        var folder = Path.GetDirectoryName(target)!;
        var fresh = Path.Combine(folder, $".{Path.GetFileName(target)}.{Path.GetRandomFileName()}");
        FileStream stream;
        try
        {
            stream = new FileStream(fresh, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        }
        catch (UnauthorizedAccessException denied)
        {
            throw new UnauthorizedAccessException($"{path}: the folder {folder} may not be written.", denied);
        }

        try
        {
            using (stream)
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }

            KeepPermissions(target, fresh);
            File.Move(fresh, target, overwrite: true);
        }
        catch
        {
            DeleteQuietly(fresh);
            throw;
        }
    }

    private static string TargetOf(string path)
    {
        if (Directory.Exists(path))
        {
            throw new IOException($"{path} is a folder; a file was expected.");
        }

        var full = Path.GetFullPath(path);
        var target = new FileInfo(full).LinkTarget is null
            ? full
            : File.ResolveLinkTarget(full, returnFinalTarget: true)!.FullName;
        var folder = Path.GetDirectoryName(target);
        if (!Directory.Exists(folder))
        {
            throw new DirectoryNotFoundException($"{path}: there is no folder {folder}.");
        }

        if (File.Exists(target) && File.GetAttributes(target).HasFlag(FileAttributes.ReadOnly))
        {
            throw new UnauthorizedAccessException($"{path} is read-only.");
        }

        return target;
    }

    private static void KeepPermissions(string target, string fresh)
    {
        if (!OperatingSystem.IsWindows() && File.Exists(target))
        {
            File.SetUnixFileMode(fresh, File.GetUnixFileMode(target));
        }
    }

    // What is being thrown matters more than what is left over.
    private static void DeleteQuietly(string fresh)
    {
        try
        {
            File.Delete(fresh);
        }
        catch (Exception left) when (left is IOException or UnauthorizedAccessException)
        {
            System.Diagnostics.Debug.WriteLine($"{fresh} is left over: {left.Message}");
        }
    }
}

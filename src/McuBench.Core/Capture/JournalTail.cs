using McuBench.Core.Studies;

namespace McuBench.Core.Capture;

/// <summary>The end of a journal's file, where lines are added: each is there whole and on the disk, or not at all.</summary>
internal sealed class JournalTail : IDisposable
{
    private readonly Stream file;
    private readonly Action flushToDisk;
    private readonly string path;
    private long end;
    private string check;
    private Exception? broken;

    /// <summary>Takes over the file; what stands behind the last whole line is cut.</summary>
    public JournalTail(FileStream file, JournalScan scan, string path)
        : this(file, () => file.Flush(flushToDisk: true), scan.End, scan.LastCheck, path)
    {
        if (scan.Cut is not null)
        {
            CutBack();
        }
    }

    internal JournalTail(Stream file, Action flushToDisk, long end, string check, string path)
    {
        this.file = file;
        this.flushToDisk = flushToDisk;
        this.end = end;
        this.check = check;
        this.path = path;
    }

    public void Append(byte[] entry)
    {
        ObjectDisposedException.ThrowIf(!file.CanWrite, typeof(Journal));
        if (broken is not null)
        {
            throw new IOException(
                $"{path}: the disk failed and nothing more is written. Open the journal again.",
                broken
            );
        }

        var line = JournalLine.Of(entry, check, out var next);
        if (end + line.Length > StudyLimits.FileBytes)
        {
            throw new IOException(
                FormattableString.Invariant(
                    $"{path} is full: it would pass {StudyLimits.FileBytes} bytes. Begin another journal."
                )
            );
        }

        try
        {
            file.Position = end;
            file.Write(line);
            flushToDisk();
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException)
        {
            TakeBack(failed);
            throw new IOException($"{path}: {failed.Message} What was to be added is not in the journal.", failed);
        }

        end += line.Length;
        check = next;
    }

    public void Dispose() => file.Dispose();

    /// <summary>Opens a journal's file so that others may read it, and the writer may write while they do.</summary>
    public static FileStream OpenFile(string path, FileAccess access)
    {
        if (Directory.Exists(path))
        {
            throw new IOException($"{path} is a folder; a file was expected.");
        }

        try
        {
            return new FileStream(path, FileMode.Open, access, FileShare.ReadWrite, bufferSize: 0);
        }
        catch (Exception missing) when (missing is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new FileNotFoundException($"There is no file {path}.", path, missing);
        }
        catch (UnauthorizedAccessException denied)
        {
            throw new UnauthorizedAccessException(
                $"{path} may not be {(access == FileAccess.Read ? "read" : "written")}: permission is denied.",
                denied
            );
        }
    }

    public static ReadOnlyMemory<byte> BytesOf(FileStream file, string path)
    {
        var length = file.Length;
        if (length > StudyLimits.FileBytes)
        {
            throw new IOException(
                FormattableString.Invariant($"{path} is larger than a journal may be, {StudyLimits.FileBytes} bytes.")
            );
        }

        var bytes = new byte[length];
        return bytes.AsMemory(0, file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false));
    }

    private void CutBack()
    {
        file.SetLength(end);
        flushToDisk();
    }

    // A line that can't be taken back would be read as acknowledged; then nothing may follow it.
    private void TakeBack(Exception failed)
    {
        try
        {
            CutBack();
        }
        catch (Exception again) when (again is IOException or UnauthorizedAccessException)
        {
            broken = failed;
        }
    }
}

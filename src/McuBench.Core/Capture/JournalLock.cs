namespace McuBench.Core.Capture;

/// <summary>Holds a journal for one writer.</summary>
/// <remarks>The lock is the system's, on an empty file beside the journal, so that the journal itself stays readable; it
/// ends with the process that holds it, however that ends. The file is left where it is.</remarks>
internal static class JournalLock
{
    public static FileStream Take(string path)
    {
        var lockPath = path + ".lock";
        try
        {
            return new FileStream(lockPath, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (DirectoryNotFoundException missing)
        {
            throw new DirectoryNotFoundException(
                $"{path}: there is no folder {Path.GetDirectoryName(Path.GetFullPath(path))}.",
                missing
            );
        }
        catch (UnauthorizedAccessException denied)
        {
            throw new UnauthorizedAccessException(
                $"{path}: the folder may not be written, and a journal needs to.",
                denied
            );
        }
        catch (IOException taken)
        {
            throw new IOException(
                $"{path} is being written by another program. Two can't write one journal: end the other, or use another file.",
                taken
            );
        }
    }
}

using System.Text;
using McuBench.Core.Studies;

namespace McuBench.Core.Capture;

/// <summary>Reads and writes studies as files: the JSON document and the tables beside it.</summary>
/// <remarks>
/// A table is opened only in the folder of the study's file or below it, and only where no part of the way there is a
/// link, so that a study from elsewhere can't have other files read. Faults call files by their names, without the
/// folders before them.
/// </remarks>
public static class StudyFile
{
    /// <summary>Reads a study in which nothing is wrong, and its tables.</summary>
    /// <param name="path">The JSON file.</param>
    /// <exception cref="StudyFormatException">Something is wrong in the file or its tables; all faults are listed.</exception>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="IOException">It is a folder, or can't be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public static Study Read(string path) => ReadWithFaults(path).OrThrow();

    /// <summary>Reads whatever is right of a study and its tables, and says all that is wrong.</summary>
    /// <param name="path">The JSON file.</param>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="IOException">It is a folder, or can't be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public static StudyReadResult ReadWithFaults(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        using var stream = Open(path, path);
        return StudyJson.ReadWithFaults(stream, Path.GetFileName(path), table => OpenTable(folder, table));
    }

    /// <summary>Writes a study, each file whole or not at all: see <see cref="AtomicFile"/>.</summary>
    /// <param name="path">The JSON file; one that is there is replaced.</param>
    /// <param name="study">The study.</param>
    /// <param name="tables">Which lists go to tables beside it; all stand in the JSON file where it is absent. Tables
    /// are written first, so that the JSON file never names one that isn't there.</param>
    /// <exception cref="ArgumentException">Two of the files have one name.</exception>
    /// <exception cref="IOException">There is no such folder, a folder has the name, the disk fails, or a file would pass
    /// <see cref="StudyLimits.FileBytes"/>.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or a file may not be written.</exception>
    public static void Write(string path, Study study, StudyTables? tables = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(study);
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        RefuseSameName(path, tables);
        if (tables?.Trials is { } trials)
        {
            WriteTable(Path.Combine(folder, trials), text => TrialCsv.Write(text, study.Trials));
        }

        if (tables?.Readings is { } readings)
        {
            WriteTable(Path.Combine(folder, readings), text => ReadingCsv.Write(text, study.Readings));
        }

        WriteReadable(path, stream => StudyJson.Write(stream, study, tables));
    }

    // A file that reading would refuse must not take the place of one that can be read.
    private static void WriteReadable(string path, Action<Stream> write) =>
        AtomicFile.Write(
            path,
            stream =>
            {
                write(stream);
                if (stream.Position > StudyLimits.FileBytes)
                {
                    throw new IOException(
                        FormattableString.Invariant(
                            $"{path} would have {stream.Position} bytes, and at most {StudyLimits.FileBytes} can be read: keep trials and readings in tables, or split the study."
                        )
                    );
                }
            }
        );

    private static void RefuseSameName(string path, StudyTables? tables)
    {
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { Path.GetFileName(path) };
        foreach (var name in new[] { tables?.Trials, tables?.Readings })
        {
            if (name is not null && !names.Add(name))
            {
                throw new ArgumentException(
                    $"Study and tables must be files of different names; \"{name}\" stands twice.",
                    nameof(tables)
                );
            }
        }
    }

    private static void WriteTable(string path, Action<TextWriter> write) =>
        WriteReadable(
            path,
            stream =>
            {
                using var text = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true);
                write(text);
            }
        );

    private static FileStream OpenTable(string folder, string table)
    {
        var way = folder;
        foreach (var part in table.Split('/'))
        {
            way = Path.Combine(way, part);
            if (new FileInfo(way).LinkTarget is not null)
            {
                throw new IOException($"{table} leads over a link; links are not followed.");
            }
        }

        return Open(way, table);
    }

    private static FileStream Open(string path, string shown)
    {
        if (Directory.Exists(path))
        {
            throw new IOException($"{shown} is a folder; a file was expected.");
        }

        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        }
        catch (Exception missing) when (missing is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new FileNotFoundException($"There is no file {shown}.", shown, missing);
        }
        catch (UnauthorizedAccessException denied)
        {
            throw new UnauthorizedAccessException($"{shown} may not be read: permission is denied.", denied);
        }
    }
}

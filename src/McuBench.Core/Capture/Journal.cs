using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Capture;

/// <summary>A record that is only added to: each trial and reading is on the disk before it is acknowledged.</summary>
/// <remarks>
/// <para>
/// The file is JSON Lines in UTF-8: the first line holds the study without trials and readings (boards, setups,
/// workloads, instruments), each further one a trial, a reading or a note. Every line carries a checksum that is chained
/// to the line before. A method that adds returns once the line has been flushed to the disk; when it throws, the line is
/// not in the journal.
/// </para>
/// <para>
/// After a crash at whatever byte the journal opens again with everything acknowledged; what was broken off is cut, and
/// <see cref="Cut"/> says what it was. A line changed since it was written is refused, never passed over.
/// </para>
/// <para>One writer at a time: a lock file beside the journal is held while it is open, and is free again when its holder
/// is gone, however it went. Reading needs no lock. A journal has at most <see cref="StudyLimits.FileBytes"/> bytes.
/// Safe to use from many threads.</para>
/// </remarks>
public sealed class Journal : IDisposable
{
    /// <summary>The most characters in a note.</summary>
    public const int LongestNote = 2000;

    private readonly Lock gate = new();
    private readonly FileStream lease;
    private readonly JournalTail tail;
    private readonly Study frame;
    private readonly string path;

    private Journal(string path, FileStream lease, JournalTail tail, JournalContents contents)
    {
        this.path = path;
        this.lease = lease;
        this.tail = tail;
        frame = JournalFrame.Of(contents.Study);
        TrialCount = contents.Study.Trials.Count;
        Cut = contents.Cut;
    }

    /// <summary>What a crash had left of a line at the end, and opening has cut; absent where all was whole.</summary>
    public JournalCut? Cut { get; }

    /// <summary>How many trials are acknowledged.</summary>
    public int TrialCount { get; private set; }

    /// <summary>Begins a journal.</summary>
    /// <param name="path">The file; none of the name may be there.</param>
    /// <param name="frame">The study that is going to be filled; its own trials and readings are taken over.</param>
    /// <exception cref="IOException">A file of the name is there, there is no such folder, another writer holds it, or the
    /// disk fails.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public static Journal Create(string path, Study frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return Locked(
            path,
            () =>
            {
                if (Path.Exists(path))
                {
                    throw new IOException($"{path} is there already. Open it to go on with it, or give another name.");
                }

                AtomicFile.Write(path, stream => stream.Write(JournalFrame.LinesOf(frame)));
            }
        );
    }

    /// <summary>Goes on with a journal. What a crash has broken off at its end is cut.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="JournalFormatException">It is no journal, or a line of it has been changed.</exception>
    /// <exception cref="StudyFormatException">A line is whole, and what it says is no trial or reading of the frame.</exception>
    /// <exception cref="IOException">Another writer holds it, or the disk fails.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static Journal Open(string path) => Locked(path, static () => { });

    /// <summary>Reads a journal, which another program may be writing; nothing is changed.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="JournalFormatException">It is no journal, or a line of it has been changed.</exception>
    /// <exception cref="StudyFormatException">A line is whole, and what it says is no trial or reading of the frame.</exception>
    /// <exception cref="IOException">It is a folder, or can't be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public static JournalContents Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        using var file = JournalTail.OpenFile(path, FileAccess.Read);
        var name = Path.GetFileName(path);
        return JournalContents.Of(JournalScan.Of(JournalTail.BytesOf(file, path), name), name);
    }

    /// <summary>Adds a trial. When this returns, it is on the disk.</summary>
    /// <param name="trial">The trial, of the frame's setups, workloads and timers.</param>
    /// <exception cref="ArgumentException">It refers to something that the frame doesn't list.</exception>
    /// <exception cref="IOException">The disk is full or fails, or the journal is; the trial is not acknowledged, and what
    /// was acknowledged before stands. It may be tried again.</exception>
    public void Add(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        JournalFrame.Admit(frame, [trial], []);
        lock (gate)
        {
            tail.Append(JournalEntry.Of(trial));
            TrialCount++;
        }
    }

    /// <summary>Adds a supply reading. When this returns, it is on the disk.</summary>
    /// <param name="reading">The reading, of the frame's setups, workloads and meters.</param>
    /// <exception cref="ArgumentException">It refers to something that the frame doesn't list.</exception>
    /// <exception cref="IOException">The disk is full or fails, or the journal is; the reading is not acknowledged.</exception>
    public void Add(SupplyReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        JournalFrame.Admit(frame, [], [reading]);
        lock (gate)
        {
            tail.Append(JournalEntry.Of(reading));
        }
    }

    /// <summary>Adds a note: what happened on the bench. It is no part of the study.</summary>
    /// <param name="note">One line of at most <see cref="LongestNote"/> characters.</param>
    /// <exception cref="ArgumentException">It is blank, too long, or more than a line.</exception>
    /// <exception cref="IOException">The disk is full or fails, or the journal is.</exception>
    public void AddNote(string note)
    {
        ArgumentNullException.ThrowIfNull(note);
        var entry = JournalEntry.OfNote(Require.OptionalDescription(note, "Note", nameof(note))!);
        lock (gate)
        {
            tail.Append(entry);
        }
    }

    /// <summary>The study as far as it has come: read from the disk again.</summary>
    /// <exception cref="IOException">The file can't be read any more.</exception>
    public Study ToStudy()
    {
        lock (gate)
        {
            return Read(path).Study;
        }
    }

    /// <summary>Closes the file and lets go of its lock.</summary>
    public void Dispose()
    {
        tail.Dispose();
        lease.Dispose();
    }

    private static Journal Locked(string path, Action prepare)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var taken = JournalLock.Take(path);
        try
        {
            prepare();
            return Opened(path, taken);
        }
        catch
        {
            taken.Dispose();
            throw;
        }
    }

    private static Journal Opened(string path, FileStream lease)
    {
        var file = JournalTail.OpenFile(path, FileAccess.ReadWrite);
        try
        {
            var name = Path.GetFileName(path);
            var scan = JournalScan.Of(JournalTail.BytesOf(file, path), name);
            var contents = JournalContents.Of(scan, name);
            return new Journal(path, lease, new JournalTail(file, scan, path), contents);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }
}

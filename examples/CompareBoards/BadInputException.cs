namespace CompareBoards;

/// <summary>Something that the user gave can't be taken as it is; the message says what and how to mend it.</summary>
public sealed class BadInputException : Exception
{
    /// <summary>Makes an exception.</summary>
    public BadInputException(string message, Exception? inner = null)
        : base(message, inner) { }
}

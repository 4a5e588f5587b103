namespace McuBench.Core.Tests;

/// <summary>Asserts a refusal whole: its type, the parameter it names, and its words.</summary>
internal static class Refusal
{
    public static void Is<TException>(Action act, string parameter, string message)
        where TException : ArgumentException
    {
        var refused = Assert.Throws<TException>(act);
        Assert.Equal(parameter, refused.ParamName);
        Assert.StartsWith(message, refused.Message, StringComparison.Ordinal);
    }
}

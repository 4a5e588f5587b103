namespace McuBench.Stats.Tests.Distributions;

/// <summary>Holds what a refusal says.</summary>
internal static class Refusal
{
    /// <summary>Fails unless the call refuses this parameter with this message.</summary>
    internal static void Of(Func<object> act, string parameter, string message)
    {
        var fault = Assert.Throws<ArgumentOutOfRangeException>(act);
        Assert.Equal(parameter, fault.ParamName);
        Assert.StartsWith(message, fault.Message, StringComparison.Ordinal);
    }
}

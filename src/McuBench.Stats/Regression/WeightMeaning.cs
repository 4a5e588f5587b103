namespace McuBench.Stats.Regression;

/// <summary>What the standard uncertainties given to a weighted fit are worth.</summary>
public enum WeightMeaning
{
    /// <summary>They are known as given: the errors of the line follow from them alone, whatever the scatter, and
    /// intervals use the normal distribution.</summary>
    Absolute,

    /// <summary>Only their ratios are known: the scatter about the line sets the common factor, with n − 2 degrees of
    /// freedom. This is what R's <c>lm</c> does with weights.</summary>
    Relative,
}

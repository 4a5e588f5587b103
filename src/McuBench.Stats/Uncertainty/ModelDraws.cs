using System.Globalization;
using McuBench.Stats.Resampling;

namespace McuBench.Stats.Uncertainty;

/// <summary>
/// Values of a model for drawn inputs, in blocks: block b is drawn from the stream of number b, so that it is the same
/// whichever thread makes it.
/// </summary>
internal sealed class ModelDraws(InputDraws inputs, MeasurementModel model, ulong seed)
{
    /// <summary>Fills in the values of a block.</summary>
    internal void Fill(int block, Span<double> results)
    {
        var random = RandomStream.Of(seed, (ulong)block);
        double[] values = new double[inputs.Count];
        for (int k = 0; k < results.Length; k++)
        {
            inputs.Next(random, values);
            results[k] = model(values);
        }
    }

    /// <summary>Refuses a block in which the model gave what is no number, and says for which inputs.</summary>
    internal void RefuseNotFinite(int block, ReadOnlySpan<double> results)
    {
        int fault = 0;
        while (fault < results.Length && double.IsFinite(results[fault]))
        {
            fault++;
        }

        if (fault == results.Length)
        {
            return;
        }

        var random = RandomStream.Of(seed, (ulong)block);
        double[] values = new double[inputs.Count];
        for (int k = 0; k <= fault; k++)
        {
            inputs.Next(random, values);
        }

        string given = string.Join(", ", values.Select(value => value.ToString("R", CultureInfo.InvariantCulture)));
        throw new ArgumentException(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Model must give a finite number for all that its inputs may be; gave {results[fault]} for ({given})."
            ),
            nameof(model)
        );
    }
}

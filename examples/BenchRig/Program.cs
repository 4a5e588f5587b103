using System.Text;
using BenchRig;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, press) =>
{
    // The first press asks, the second ends the program at once.
    press.Cancel = !stop.IsCancellationRequested;
    stop.Cancel();
};
return await Application.RunAsync(args, stop.Token).ConfigureAwait(false);

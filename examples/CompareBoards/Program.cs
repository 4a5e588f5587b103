using System.Text;
using CompareBoards;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, press) =>
{
    // The first press asks, the second ends the program at once.
    press.Cancel = !stop.IsCancellationRequested;
    stop.Cancel();
};
return Application.Run(args, Console.Out, Console.Error, Progress.Shown(), stop.Token);

using BenchmarkDotNet.Running;
using McuBench.Benchmarks.Ratios;

if (args is ["ratios", .. var rest])
{
    return await RatioCommand.Run(rest);
}

BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;

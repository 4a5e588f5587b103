using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;
using McuBench.Core.Boards;
using McuBench.Stats;

namespace McuBench.Core.Tests.Architecture;

/// <summary>Holds the direction in which things depend on one another, and keeps the pure rooms pure.</summary>
public sealed partial class RoomTests
{
    private static readonly Assembly Stats = typeof(Interval).Assembly;
    private static readonly Assembly Core = typeof(Board).Assembly;

    [Fact]
    public void Stats_References_NeitherCoreNorUnits()
    {
        var references = Stats.GetReferencedAssemblies().Select(name => name.Name!).ToArray();

        Assert.NotEmpty(references);
        Assert.All(references, name => Assert.True(IsPlatform(name) || name == "MathNet.Numerics", name));
    }

    [Fact]
    public void Core_References_StatsAndUnits()
    {
        var references = Core.GetReferencedAssemblies().Select(name => name.Name!).ToArray();

        Assert.Contains("McuBench.Stats", references);
        Assert.Contains("UnitsNet", references);
        Assert.DoesNotContain("MathNet.Numerics", references);
    }

    [Theory]
    [InlineData(typeof(Interval))]
    [InlineData(typeof(Board))]
    public void PublicSurface_Types_AreOursOrThePlatformsOrUnitsInCore(Type ofAssembly)
    {
        var assembly = ofAssembly.Assembly;
        var foreign = assembly
            .GetExportedTypes()
            .SelectMany(type => SurfaceOf(type).Select(used => (type, used)))
            .Where(pair => !IsAllowed(pair.used, assembly))
            .Select(pair => $"{pair.type.FullName} shows {pair.used.FullName}")
            .Distinct()
            .ToArray();

        Assert.Empty(foreign);
    }

    [Theory]
    [InlineData(typeof(Interval))]
    [InlineData(typeof(Board))]
    public void PublicTypes_Namespace_IsTheRoomOfTheirAssembly(Type ofAssembly)
    {
        var root = ofAssembly.Assembly.GetName().Name!;

        Assert.All(
            ofAssembly.Assembly.GetExportedTypes(),
            type =>
                Assert.True(type.Namespace == root || type.Namespace!.StartsWith(root + ".", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Stats_Assembly_TouchesNoFileConsoleClockOrEnvironment()
    {
        using var reader = new PEReader(File.OpenRead(Stats.Location));
        var metadata = reader.GetMetadataReader();
        var used = metadata
            .TypeReferences.Select(handle => metadata.GetTypeReference(handle))
            .Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}")
            .ToHashSet(StringComparer.Ordinal);

        Assert.Contains("System.Object", used);
        Assert.Empty(used.Intersect(ImpureTypes, StringComparer.Ordinal));
    }

    [Fact]
    public void CoreSources_OutsideCapture_TouchNoFileConsoleClockOrEnvironment()
    {
        var root = Path.Combine(RepositoryRoot(), "src", "McuBench.Core");
        var sources = Directory
            .EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(root, path).Replace('\\', '/'))
            .Where(path => !path.StartsWith("obj/", StringComparison.Ordinal))
            .Where(path => !path.StartsWith("bin/", StringComparison.Ordinal))
            .Where(path => !path.StartsWith("Capture/", StringComparison.Ordinal))
            .ToArray();

        Assert.NotEmpty(sources);
        Assert.All(
            sources,
            path =>
            {
                var code = Comment().Replace(File.ReadAllText(Path.Combine(root, path)), string.Empty);
                Assert.False(ImpureCall().IsMatch(code), $"{path}: {ImpureCall().Match(code).Value}");
            }
        );
    }

    private static readonly string[] ImpureTypes =
    [
        "System.Console",
        "System.Environment",
        "System.Random",
        "System.DateTime",
        "System.DateTimeOffset",
        "System.TimeProvider",
        "System.IO.File",
        "System.IO.FileStream",
        "System.IO.Directory",
        "System.Diagnostics.Stopwatch",
        "System.Diagnostics.Process",
    ];

    private static bool IsPlatform(string assembly) =>
        assembly is "netstandard" or "mscorlib" || assembly.StartsWith("System.", StringComparison.Ordinal);

    private static bool IsAllowed(Type type, Assembly owner)
    {
        var name = type.Assembly.GetName().Name!;
        return type.Assembly == owner
            || IsPlatform(name)
            || (owner == Core && (name == "UnitsNet" || type.Assembly == Stats));
    }

    private static IEnumerable<Type> SurfaceOf(Type type)
    {
        const BindingFlags all =
            BindingFlags.Public
            | BindingFlags.NonPublic
            | BindingFlags.Instance
            | BindingFlags.Static
            | BindingFlags.DeclaredOnly;
        var shown = new List<Type?> { type.BaseType };
        shown.AddRange(type.GetInterfaces());
        foreach (var method in type.GetMethods(all).Cast<MethodBase>().Concat(type.GetConstructors(all)))
        {
            if (method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly)
            {
                shown.AddRange(method.GetParameters().Select(parameter => parameter.ParameterType));
                shown.Add((method as MethodInfo)?.ReturnType);
            }
        }

        shown.AddRange(type.GetFields(all).Where(f => f.IsPublic || f.IsFamily).Select(f => f.FieldType));
        return shown.OfType<Type>().SelectMany(Parts);
    }

    private static IEnumerable<Type> Parts(Type type)
    {
        if (type.HasElementType)
        {
            return Parts(type.GetElementType()!);
        }

        return type.IsGenericParameter ? [] : type.GetGenericArguments().SelectMany(Parts).Append(type);
    }

    private static string RepositoryRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "McuBench.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests run outside the repository: no McuBench.slnx above them.");
    }

    [GeneratedRegex(@"//.*$", RegexOptions.Multiline)]
    private static partial Regex Comment();

    [GeneratedRegex(
        @"\b(File\.|Directory\.|FileStream\b|FileInfo\b|Console\.|Environment\.|DateTime(Offset)?\.(Now|UtcNow|Today)|Stopwatch\b|TimeProvider\b|new Random\b|Random\.Shared)"
    )]
    private static partial Regex ImpureCall();
}

using DemoStudy;

// A run starts in the project's own folder; see the project file.
var folder = Path.Combine("..", "CompareBoards", "demo");
_ = Directory.CreateDirectory(folder);
DemoFiles.WriteTo(folder);
Console.WriteLine($"Wrote {string.Join(", ", DemoFiles.Names)} to {Path.GetFullPath(folder)}");

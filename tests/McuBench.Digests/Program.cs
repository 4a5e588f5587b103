using McuBench.Digests;

// Digests of results, to be compared between threads, builds and processors' instruction sets.
// Its argument is a study file.
var digests = new DigestWriter(Console.Out);
StatisticsDigests.Write(digests);
StudyDigests.Write(digests, args[0]);

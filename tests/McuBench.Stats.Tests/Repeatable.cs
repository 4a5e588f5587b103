// The same cases at every run: what fails here fails everywhere, and what passed for one who changes nothing passes for
// the next. To look for new cases, change the seed.
[assembly: FsCheck.Xunit.Properties(Replay = "(20261125,11093)")]

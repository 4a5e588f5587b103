# Times the work of RankBenchmarks.cs in base R. Run: Rscript ranks.R
set.seed(1)
first <- rnorm(3000, 100, 4)
second <- rnorm(3000, 101, 4)
few <- rnorm(50, 100, 4)
others <- rnorm(50, 101, 4)
time <- function(name, work, times, rounds = 1) {
  work()
  ms <- median(replicate(times, system.time(for (i in seq_len(rounds)) work(), gcFirst = FALSE)[["elapsed"]])) * 1000 / rounds
  cat(sprintf("%-42s %9.3f ms\n", name, ms))
}
time("shift with interval, n = m = 3000", function() wilcox.test(first, second, conf.int = TRUE), 5)
time("centre with interval, n = 3000", function() wilcox.test(first, conf.int = TRUE), 5)
# R keeps its counts from call to call, but drops them after a sample of more than 50.
time("exact Mann-Whitney, n = m = 50, from cold", function() { pwilcox(0, 51, 1); wilcox.test(few, others, exact = TRUE) }, 9, 20)
time("exact signed rank, n = 50, from cold", function() { psignrank(1, 3); wilcox.test(few, mu = 100, exact = TRUE) }, 9, 200)
time("normal Mann-Whitney, n = m = 3000", function() wilcox.test(first, second), 9, 20)

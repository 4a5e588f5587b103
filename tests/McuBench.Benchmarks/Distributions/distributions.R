# Times the work of DistributionBenchmarks.cs in R, microseconds a call. Run: Rscript distributions.R
time <- function(name, work, calls) {
  work(calls)
  us <- median(replicate(5, system.time(work(calls), gcFirst = FALSE)[["elapsed"]])) / calls * 1e6
  cat(sprintf("%-28s %10.3f us\n", name, us))
}
# Many probabilities a call, so that the interpreter's own time is not counted.
time("t quantile", function(n) qt(rep(0.025, n), 9.7, lower.tail = FALSE), 1e5)
time("t tail", function(n) pt(rep(2.3, n), 9.7, lower.tail = FALSE), 1e5)
time("F quantile", function(n) qf(rep(0.05, n), 4, 17.5, lower.tail = FALSE), 1e4)
time("chi-square quantile", function(n) qchisq(rep(0.05, n), 11.3, lower.tail = FALSE), 1e4)
time("noncentral t quantile", function(n) qt(rep(0.95, n), 9, 4), 1e3)
time("studentized range cdf", function(n) ptukey(rep(3.9, n), 4, 20), 1e3)
time("studentized range quantile", function(n) qtukey(rep(0.95, n), 4, 20), 200)
# R keeps its tables of counts from call to call at sizes up to 50. Sizes that change, or are just above, count from cold.
time("Mann-Whitney 51, 50", function(n) for (i in seq_len(n)) pwilcox(1000, 51, 50), 20)
time("signed rank 50", function(n) for (i in seq_len(n)) psignrank(450, 49 + i %% 2), 1000)

# Times the work of RobustBenchmarks.cs in R with robustbase. Run: Rscript robust.R
library(robustbase)
set.seed(1)
million <- rnorm(1e6, 100, 4)
hundred_thousand <- rnorm(1e5, 100, 4)
first <- rnorm(3000, 100, 4)
second <- rnorm(3000, 101, 4)
time <- function(name, work, times = 5) {
  work()
  ms <- median(replicate(times, system.time(work(), gcFirst = FALSE)[["elapsed"]])) * 1000
  cat(sprintf("%-28s %9.2f ms\n", name, ms))
}
time("mean", function() mean(million))
time("median", function() median(million))
time("mad", function() mad(million))
time("7 quantiles", function() quantile(million, c(0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99)))
time("Sn, n = 1e5", function() Sn(hundred_thousand))
time("Qn, n = 1e5", function() Qn(hundred_thousand))
time("shift, n = m = 3000", function() median(outer(first, second, "-")))
time("shift with interval", function() wilcox.test(first, second, conf.int = TRUE), 3)

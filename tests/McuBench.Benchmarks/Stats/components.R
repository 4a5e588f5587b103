# Times the work of VarianceComponentBenchmarks.cs by nlme and lme4. Run: Rscript components.R
suppressPackageStartupMessages({ library(nlme); library(lme4) })
set.seed(1)
i <- 0:999
d <- data.frame(
  y = 50 + 2 * rnorm(10)[i %/% 100 + 1] + rnorm(100)[i %/% 10 + 1] + 0.5 * rnorm(1000),
  specimen = factor(i %/% 100), session = factor(i %/% 10)
)
time <- function(name, work, times = 9) {
  work()
  ms <- median(replicate(times, system.time(work(), gcFirst = FALSE)[["elapsed"]])) * 1000
  cat(sprintf("%-28s %9.2f ms\n", name, ms))
}
time("nlme, REML", function() lme(y ~ 1, random = ~ 1 | specimen / session, data = d))
time("lme4, REML", function() lmer(y ~ 1 + (1 | specimen) + (1 | session), data = d))

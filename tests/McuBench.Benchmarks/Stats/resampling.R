# Times what ResamplingBenchmarks does, by R package boot and by listing all splits. Run: Rscript resampling.R
suppressPackageStartupMessages(library(boot))
set.seed(1)
d <- data.frame(v = rnorm(60, 100, 4), g = rep(1:2, each = 30))
timed <- function(f, times) cat(sprintf("%.1f ms\n", 1e3 * median(replicate(times, system.time(f())[["elapsed"]]))))
bca <- function() {
  b <- boot(d$v, function(v, i) { w <- v[i]; median(w[1:30]) / median(w[31:60]) }, 9999, strata = d$g)
  boot.ci(b, type = "bca")
}
cat("BCa ratio of medians, n = m = 30, 9999: ")
timed(bca, 3)
p <- rnorm(20, 100, 4)
cat("exact permutation, n = m = 10, by combn: ")
timed(function() { s <- combn(p, 10, sum); mean(abs(s - sum(p) / 2) >= abs(sum(p[1:10]) - sum(p) / 2) - 1e-9) }, 3)

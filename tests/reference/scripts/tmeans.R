# Means and ratios with t intervals, and t tests both ways: R's t.test. Run: Rscript tmeans.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))

mean_of <- function(x) {
  t <- t.test(x, conf.level = 0.9)
  c(mean(x), t$stderr, t$conf.int)
}

pairs <- list(c("ties", "outliers"), c("triple", "pair"), c("skewed", "triple"), c("odd", "offset"))
named <- function(f) setNames(lapply(pairs, function(p) f(datasets[[p[1]]], datasets[[p[2]]])), sapply(pairs, paste, collapse = "/"))
test <- function(x, y, ...) {
  t <- t.test(x, y, conf.level = 0.9, ...)
  c(t$estimate[[1]] - t$estimate[[2]], t$statistic, t$parameter, t$p.value, t$conf.int)
}

write_json(list(
  mean_error_low_high_90 = lapply(datasets, mean_of),
  ratio_df_low_high_90 = named(function(x, y) {
    t <- t.test(log(x), log(y), conf.level = 0.9)
    c(exp(t$estimate[[1]] - t$estimate[[2]]), t$parameter, exp(t$conf.int))
  }),
  welch_difference_t_df_p_low_high_90 = named(function(x, y) test(x, y)),
  pooled_difference_t_df_p_low_high_90 = named(function(x, y) test(x, y, var.equal = TRUE)),
  welch_less_than_1_t_p_high_90 = named(function(x, y) {
    t <- t.test(x, y, mu = 1, alternative = "less", conf.level = 0.9)
    c(t$statistic, t$p.value, t$conf.int[2])
  }),
  welch_greater_than_1_t_p_low_90 = named(function(x, y) {
    t <- t.test(x, y, mu = 1, alternative = "greater", conf.level = 0.9)
    c(t$statistic, t$p.value, t$conf.int[1])
  })
), "tmeans-r.json")

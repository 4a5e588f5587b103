# Normality and outliers: base R and package nortest. Run: Rscript normality.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))
suppressMessages(library(nortest))
formula_set <- function(n) { i <- seq_len(n); ((i * i * 7919) %% 10007) / 100 }
sets <- c(datasets, list(eleven = formula_set(11), twelve = formula_set(12), hundred = formula_set(100), most = formula_set(5000)))
from <- function(least) sets[lengths(sets) >= least]
# Less the median, which no statistic here feels: an offset costs no digits.
centred <- function(x) x - sort(x)[length(x) %/% 2 + 1]

shapiro <- function(x) { t <- shapiro.test(centred(x)); c(t$statistic, t$p.value) }
anderson <- function(x) { t <- ad.test(centred(x)); c(t$statistic, t$p.value) }

critical <- function(n, a) { t <- qt(a, n - 2, lower.tail = FALSE); (n - 1) / sqrt(n) * sqrt(t^2 / (n - 2 + t^2)) }

# Both sides, the largest, the smallest: index from 0, G, critical value at 5 %, p.
grubbs <- function(x) {
  x <- centred(x); n <- length(x)
  unlist(lapply(list(list(abs(x - mean(x)), 2), list(x, 1), list(-x, 1)), function(side) {
    k <- which.max(side[[1]])
    t <- abs(x[k] - mean(x[-k])) / (sd(x[-k]) * sqrt(1 + 1 / (n - 1)))
    c(k - 1, abs(x[k] - mean(x)) / sd(x), critical(n, 0.05 / (side[[2]] * n)), min(1, side[[2]] * n * pt(-t, n - 2)))
  }))
}

esd <- function(x) {
  x <- centred(x); rows <- c(); found <- 0
  for (i in 1:3) {
    n <- length(x); k <- which.max(abs(x - mean(x)))
    r <- abs(x[k] - mean(x)) / sd(x); l <- critical(n, 0.1 / (2 * n))
    if (r > l) found <- i
    rows <- c(rows, r, l); x <- x[-k]
  }
  c(found, rows)
}

median_rule <- function(x) {
  d <- mad(x, constant = 1 / qnorm(0.75))
  c(median(x), d, which(abs(x - median(x)) / d > 3.5) - 1)
}

write_json(list(
  shapiro_w_p = lapply(from(3), shapiro),
  anderson_a_p = lapply(from(8), anderson),
  grubbs_two_greater_less_index_g_critical_p = lapply(from(3), grubbs),
  esd_3_found_r_lambda = lapply(from(8), esd),
  median_rule_median_deviation_indices = lapply(from(3), median_rule)
), "normality-r.json")

# Location, scale and shape of the data sets: R 4.2, robustbase, MASS. Run: Rscript robust.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))
library(robustbase)
library(MASS)

probabilities <- c(0, 0.1, 0.25, 1 / 3, 0.5, 0.9, 1)

skewness <- function(x) mean((x - mean(x))^3) / mean((x - mean(x))^2)^1.5
kurtosis <- function(x) mean((x - mean(x))^4) / mean((x - mean(x))^2)^2 - 3

# Algorithm A to its fixed point, from its definition in ISO 13528.
algorithm_a <- function(x, factor) {
  m <- median(x)
  s <- mad(x)
  for (i in 1:5000) {
    y <- pmin(pmax(x, m - 1.5 * s), m + 1.5 * s)
    m <- mean(y)
    s <- factor * sd(y)
  }
  c(m, s)
}

k <- 1.5
exact <- 1 / sqrt(2 * pnorm(k) - 1 - 2 * k * dnorm(k) + 2 * k^2 * pnorm(-k))

biweight <- function(x) {
  m <- median(x)
  u <- (x - m) / (6 * mad(x, constant = 1))
  w <- ifelse(abs(u) < 1, (1 - u^2)^2, 0)
  u9 <- (x - m) / (9 * mad(x, constant = 1))
  inside <- abs(u9) < 1
  above <- sqrt(length(x) * sum(((x - m)^2 * (1 - u9^2)^4)[inside]))
  below <- abs(sum(((1 - u9^2) * (1 - 5 * u9^2))[inside]))
  c(sum(w * x) / sum(w), (above / below)^2)
}

winsorized <- function(x, fraction) {
  g <- floor(fraction * length(x))
  s <- sort(x)
  w <- pmin(pmax(x, s[g + 1]), s[length(x) - g])
  c(mean(w), var(w))
}

describe <- function(x) {
  walsh <- outer(x, x, "+") / 2
  n <- length(x)
  both <- if (n > 2) list(huber = huber(x, k = 1.5, tol = 1e-13)$mu) else list()
  c(list(
    mean = mean(x), variance = var(x), median = median(x), mad = mad(x), iqr = IQR(x),
    geometric = exp(mean(log(x))), harmonic = 1 / mean(1 / x),
    trimmed_10 = mean(x, trim = 0.1), trimmed_25 = mean(x, trim = 0.25),
    winsorized_20 = winsorized(x, 0.2), skewness = skewness(x), kurtosis = kurtosis(x),
    hodges_lehmann = median(walsh[upper.tri(walsh, diag = TRUE)]),
    sn = Sn(x), qn = Qn(x), sn_raw = Sn(x, constant = 1, finite.corr = FALSE), qn_raw = Qn(x, constant = 1, finite.corr = FALSE),
    algorithm_a_exact = algorithm_a(x, exact), algorithm_a_standard = algorithm_a(x, 1.134),
    biweight = biweight(x), ranks = rank(x), ranks_min = rank(x, ties.method = "min"),
    ranks_max = rank(x, ties.method = "max"), ranks_first = rank(x, ties.method = "first"),
    quantiles = unlist(lapply(1:9, function(t) quantile(x, probabilities, type = t, names = FALSE)))
  ), both)
}

shift <- function(a, b) median(outer(datasets[[a]], datasets[[b]], "-"))

write_json(c(
  lapply(datasets, describe),
  list(shifts = list(
    "ties/outliers" = shift("ties", "outliers"), "triple/pair" = shift("triple", "pair"),
    "skewed/odd" = shift("skewed", "odd"), "odd/outliers" = shift("odd", "outliers")
  ))
), "robust-r.json")

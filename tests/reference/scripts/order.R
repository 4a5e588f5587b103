# Trend, order and effect sizes: base R. Run: Rscript order.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))
groups <- read_sets("groups.json")
sets <- c(datasets, groups)
series <- c(datasets, read_sets("trends.json"))

# S, tau, normal p (two-sided, less, greater) with and without the correction; exact two-sided where there are no ties.
mann_kendall <- function(x) {
  t <- seq_along(x)
  s <- sum(sapply(t, function(i) sum(sign(x[t > i] - x[i]))))
  tie <- table(x); n <- length(x)
  sd <- sqrt((n * (n - 1) * (2 * n + 5) - sum(tie * (tie - 1) * (2 * tie + 5))) / 18)
  side <- function(correct) {
    z <- (s - sign(s) * correct) / sd
    c(2 * pnorm(-abs(z)), pnorm((s + correct) / sd), pnorm((s - correct) / sd, lower.tail = FALSE))
  }
  if (n > 2) {
    c0 <- suppressWarnings(cor.test(t, x, method = "kendall", exact = FALSE, continuity = TRUE))
    stopifnot(all.equal(c0$p.value, side(1)[1]), all.equal(unname(c0$estimate), s / sqrt(n * (n - 1) / 2 * (n * (n - 1) / 2 - sum(tie * (tie - 1) / 2)))))
  }
  tau <- cor(t, x, method = "kendall")
  exact <- if (anyDuplicated(x)) NULL else cor.test(t, x, method = "kendall", exact = TRUE)$p.value
  c(s, tau, min(1, side(1)[1]), side(1)[-1], side(0), exact)
}

# Runs about the median: runs, above, below, z, and exact tails by the sums of binomials.
runs <- function(x, leave_out) {
  m <- median(x)
  if (leave_out) x <- x[x != m]
  above <- x >= m
  r <- length(rle(above)$lengths); a <- sum(above); b <- sum(!above); n <- a + b
  mu <- 2 * a * b / n + 1
  sd <- sqrt(2 * a * b * (2 * a * b - n) / (n^2 * (n - 1)))
  mass <- function(k) if (k %% 2 == 0) 2 * choose(a - 1, k / 2 - 1) * choose(b - 1, k / 2 - 1) else
    choose(a - 1, (k - 1) / 2) * choose(b - 1, (k - 3) / 2) + choose(a - 1, (k - 3) / 2) * choose(b - 1, (k - 1) / 2)
  p <- sapply(2:n, mass) / choose(n, a)
  low <- sum(p[2:n <= r]); high <- sum(p[2:n >= r])
  z <- if (sd > 0) (r - mu) / sd else 0
  c(r, a, b, mu, z, low, high, min(1, 2 * min(low, high)), if (sd > 0) 2 * pnorm(-abs(z)) else 1)
}

von_neumann <- function(x) {
  x <- x - x[1]; n <- length(x)
  ratio <- sum(diff(x)^2) / sum((x - mean(x))^2)
  z <- (ratio - 2) / sqrt(4 * (n - 2) / (n^2 - 1))
  c(ratio, z, 2 * pnorm(-abs(z)), pnorm(z), pnorm(z, lower.tail = FALSE))
}

lag_one <- function(x) {
  r <- acf(x - x[1], lag.max = 1, plot = FALSE)$acf[2]
  c(r, max(-1, min(1, r + (1 + 4 * r) / length(x))))
}
ljung_box <- function(x, lags, fitted = 0) {
  b <- Box.test(x - x[1], lags, "Ljung-Box", fitted)
  c(b$statistic, b$p.value)
}

# g and the limits of the difference in standard deviations, by R's noncentral t.
hedges <- function(x, y, confidence = 0.9) {
  m <- length(x); n <- length(y); df <- m + n - 2
  t <- unname(t.test(x - y[1], y - y[1], var.equal = TRUE)$statistic) # the mean of a large offset would lose digits
  j <- exp(lgamma(df / 2) - lgamma((df - 1) / 2)) / sqrt(df / 2)
  root <- sqrt(1 / m + 1 / n)
  at <- function(tail) uniroot(function(ncp) pt(t, df, ncp) - tail, t + c(-12, 12) * sqrt(1 + t^2 / df) , tol = 1e-13)$root
  c(j * t * root, at((1 + confidence) / 2) * root, at((1 - confidence) / 2) * root)
}
pairs <- list(c("ties", "outliers"), c("triple", "small2"), c("ties1", "ties2"), c("ties2", "ties3"), c("small1", "small2"),
  c("offset1", "offset2"), c("skewed1", "skewed2"), c("skewed3", "skewed4"))
named <- function(f, p = pairs) setNames(lapply(p, function(p) f(sets[[p[1]]], sets[[p[2]]])), sapply(p, paste, collapse = "/"))

# Two one-sided tests of a shift within 1.5; without ties exact, with ties normal.
tost <- function(x, y) {
  exact <- !anyDuplicated(c(x + 1.5, y)) && !anyDuplicated(c(x - 1.5, y))
  a <- suppressWarnings(wilcox.test(x, y, mu = -1.5, alternative = "greater", exact = FALSE))
  b <- suppressWarnings(wilcox.test(x, y, mu = 1.5, alternative = "less", exact = FALSE))
  c(a$statistic, a$p.value, b$statistic, b$p.value)
}
tost_pairs <- pairs[c(1, 3, 4, 6, 7, 8)]
tost_exact <- function(x, y) {
  c(wilcox.test(x, y, mu = -1.53, alternative = "greater", exact = TRUE)$p.value, wilcox.test(x, y, mu = 1.53, alternative = "less", exact = TRUE)$p.value)
}

longer <- series[sapply(series, length) > 3]
write_json(list(
  mann_kendall_s_tau_p_corrected_two_less_greater_plain_exact = lapply(series, mann_kendall),
  runs_left_out_runs_above_below_expected_z_less_greater_two_normal = lapply(series, runs, TRUE),
  runs_as_above = lapply(series, runs, FALSE),
  von_neumann_ratio_z_two_less_greater = lapply(series[names(series) != "pair"], von_neumann),
  lag_one_kept_adjusted = lapply(series, lag_one),
  ljung_box_1_q_p = lapply(series, ljung_box, 1),
  ljung_box_3_q_p = lapply(longer, ljung_box, 3),
  ljung_box_3_less_1_q_p = lapply(longer, ljung_box, 3, 1),
  hedges_g_low_high_90 = named(hedges),
  tost_ranks_1_5_lower_u_p_upper_u_p = named(tost, tost_pairs),
  tost_ranks_exact_lower_p_upper_p = named(tost_exact, list(c("skewed1", "skewed2"), c("skewed3", "skewed4"))),
  tost_rank_logs_1_7_lower_u_p_upper_u_p = named(function(x, y) {
    a <- wilcox.test(log(x), log(y), mu = -log(1.7), alternative = "greater", exact = FALSE)
    b <- wilcox.test(log(x), log(y), mu = log(1.7), alternative = "less", exact = FALSE)
    c(a$statistic, a$p.value, b$statistic, b$p.value)
  }, tost_pairs)
), "order-r.json")

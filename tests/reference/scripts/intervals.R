# Intervals of the data sets, by R's own tests or from their definitions. Run: Rscript intervals.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))

trimmed <- function(x, fraction, level) {
  n <- length(x)
  g <- floor(fraction * n)
  h <- n - 2 * g
  s <- sort(x)
  w <- pmin(pmax(x, s[g + 1]), s[n - g])
  m <- mean(s[(g + 1):(n - g)])
  se <- sqrt(sum((w - mean(w))^2) / (h * (h - 1)))
  c(m, se, m + c(-1, 1) * qt((1 + level) / 2, h - 1) * se)
}

spread <- function(x, level) {
  df <- length(x) - 1
  var(x) * df / qchisq(c((1 + level) / 2, (1 - level) / 2), df)
}

prediction <- function(x, level) as.vector(predict(lm(x ~ 1), data.frame(row.names = 1), interval = "prediction", level = level)[1, ])

# Ranks by search from the outside in, each tail at most its share.
ranks <- function(n, p, level) {
  tail <- (1 - level) / 2
  lower <- sum(pbinom(0:(n - 1), n, p) <= tail)
  upper <- n + 1 - sum(pbinom(0:(n - 1), n, 1 - p) <= tail)
  c(lower, upper)
}

exact <- function(x, p, level) {
  r <- ranks(length(x), p, level)
  if (r[1] < 1 || r[2] > length(x)) return(NA)
  c(sort(x)[r], pbinom(r[2] - 1, length(x), p) - pbinom(r[1] - 1, length(x), p))
}

# Hettmansperger and Sheather for the median, as their paper has it.
interpolated <- function(x, level) {
  n <- length(x)
  d <- ranks(n, 0.5, level)[1]
  if (d < 1) return(NA)
  s <- sort(x)
  gamma <- function(d) 1 - 2 * pbinom(d - 1, n, 0.5)
  share <- (gamma(d) - level) / (gamma(d) - gamma(d + 1))
  lambda <- (n - d) * share / (d + (n - 2 * d) * share)
  c((1 - lambda) * s[d] + lambda * s[d + 1], (1 - lambda) * s[n - d + 1] + lambda * s[n - d])
}

# Fieller's limits as the ratios that a t test just rejects.
fieller <- function(x, y, level, equal) {
  n <- length(x)
  m <- length(y)
  r <- mean(x) / mean(y)
  a <- var(x) / n
  b <- var(y) / m
  if (equal) {
    df <- n + m - 2
    pooled <- ((n - 1) * var(x) + (m - 1) * var(y)) / df
    a <- pooled / n
    b <- pooled / m
  } else {
    df <- (a + r^2 * b)^2 / (a^2 / (n - 1) + (r^2 * b)^2 / (m - 1))
  }
  t <- qt((1 + level) / 2, df)
  f <- function(q) (mean(x) - q * mean(y))^2 - t^2 * (a + q^2 * b)
  if (t^2 * b / mean(y)^2 >= 1) return(NA)
  root <- function(away) {
    step <- 1e-3
    while (f(r + away * step) < 0) step <- 2 * step
    uniroot(f, sort(c(r, r + away * step)), tol = 1e-15 * abs(r))$root
  }
  c(r, df, root(-1), root(1))
}

medians <- function(x, y, level) {
  part <- function(x) {
    n <- length(x)
    d <- max(1, round((n + 1) / 2 - sqrt(n)))
    s <- log(sort(x))
    ((s[n - d + 1] - s[d]) / (2 * qnorm(1 - pbinom(d - 1, n, 0.5))))^2
  }
  r <- log(median(x) / median(y))
  exp(r + c(0, -1, 1) * qnorm((1 + level) / 2) * sqrt(part(x) + part(y)))
}

# Two-sided normal tolerance factor by adaptive quadrature over where the mean falls.
two_sided <- function(n, content, confidence) {
  radius <- function(u) sapply(u, function(a) uniroot(function(r) pnorm(a + r) - pnorm(a - r) - content, c(0, a + 20), tol = 1e-14)$root)
  holds <- function(k) 2 * sqrt(n) * integrate(function(u) dnorm(u * sqrt(n)) * pchisq((n - 1) * radius(u)^2 / k^2, n - 1, lower.tail = FALSE), 0, 9 / sqrt(n), rel.tol = 1e-11, subdivisions = 500)$value
  uniroot(function(k) holds(k) - confidence, c(0.1, 500), tol = 1e-11)$root
}
one_sided <- function(n, content, confidence) uniroot(function(k) pt(k * sqrt(n), n - 1, qnorm(content) * sqrt(n)) - confidence, c(0, 500), tol = 1e-13)$root

pairs <- list(c("ties", "outliers"), c("triple", "pair"), c("skewed", "triple"), c("odd", "offset"))
named <- function(f) setNames(lapply(pairs, function(p) f(datasets[[p[1]]], datasets[[p[2]]])), sapply(pairs, paste, collapse = "/"))
factors <- expand.grid(n = c(2, 3, 6, 15, 43, 200), content = c(0.9, 0.99), confidence = c(0.95, 0.99))

write_json(list(
  trimmed_20_value_error_low_high_90 = lapply(datasets, trimmed, 0.2, 0.9),
  variance_low_high_90 = lapply(datasets, spread, 0.9),
  prediction_90 = lapply(datasets, prediction, 0.9),
  median_exact_90 = lapply(datasets, exact, 0.5, 0.9),
  quantile_75_exact_80 = lapply(datasets, exact, 0.75, 0.8),
  median_interpolated_90 = lapply(datasets, interpolated, 0.9),
  fieller_separate_ratio_df_low_high_90 = named(function(x, y) fieller(x, y, 0.9, FALSE)),
  fieller_equal_ratio_df_low_high_90 = named(function(x, y) fieller(x, y, 0.9, TRUE)),
  medians_ratio_low_high_90 = named(function(x, y) medians(x, y, 0.9)),
  wilson_90 = lapply(list("0/7" = c(0, 7), "3/10" = c(3, 10), "90/100" = c(90, 100), "5/5" = c(5, 5)),
    function(s) as.vector(prop.test(s[1], s[2], conf.level = 0.9, correct = FALSE)$conf.int)),
  clopper_pearson_90 = lapply(list("0/7" = c(0, 7), "3/10" = c(3, 10), "90/100" = c(90, 100), "5/5" = c(5, 5)),
    function(s) as.vector(binom.test(s[1], s[2], conf.level = 0.9)$conf.int)),
  factors = list(n = factors$n, content = factors$content, confidence = factors$confidence,
    two_sided = mapply(two_sided, factors$n, factors$content, factors$confidence),
    one_sided = mapply(one_sided, factors$n, factors$content, factors$confidence))
), "intervals-r.json")

# Power and sample size: base R's noncentral t, chi-square and nested integrate(). Run: Rscript planning.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))

rows <- function(table, f) lapply(split(table, seq_len(nrow(table))), function(r) f(unlist(r)))
t_power <- function(df, ncp, alpha, sides) {
  q <- qt(alpha / sides, df, lower.tail = FALSE)
  p <- pt(q, df, ncp, lower.tail = FALSE)
  if (sides == 2) p + pt(-q, df, ncp) else p
}
least <- function(f, wanted, n = 2) { while (f(n) < wanted) n <- n + 1; n }
grid <- function(...) { g <- expand.grid(...); unname(as.list(as.data.frame(t(g)))) }
over <- function(g, f) setNames(lapply(g, function(a) c(a, f(a))), sapply(g, paste, collapse = "_"))

# The sample spread over the true one: density, and a range beyond which nothing is left of it.
chi <- function(s, df) 2 * df * s * dchisq(df * s^2, df)
ends <- function(df) sqrt(qchisq(c(1e-17, 1), df, lower.tail = c(TRUE, FALSE)) / df)
reach <- function(df) sqrt(qchisq(1e-17, df, lower.tail = FALSE) / df)
quad <- function(f, low, high) integrate(f, low, high, rel.tol = 1e-10, abs.tol = 1e-14, subdivisions = 2000)$value

# Both sample spreads integrated over directly, reject() being the probability given the standard error and its df.
two_spreads <- function(n1, n2, s1, s2, given) {
  inner <- function(a) quad(function(b) {
    v1 <- (s1 * a)^2 / n1
    v2 <- (s2 * b)^2 / n2
    df <- (v1 + v2)^2 / (v1^2 / (n1 - 1) + v2^2 / (n2 - 1))
    chi(b, n2 - 1) * given(sqrt(v1 + v2), df)
  }, 1e-9, reach(n2 - 1))
  quad(function(a) chi(a, n1 - 1) * sapply(a, inner), 1e-9, reach(n1 - 1))
}
welch <- function(a) {
  se <- sqrt(a[4]^2 / a[1] + a[5]^2 / a[2])
  two_spreads(a[1], a[2], a[4], a[5], function(e, df) {
    q <- qt(0.025, df, lower.tail = FALSE) * e
    pnorm((a[3] - q) / se) + pnorm((-a[3] - q) / se)
  })
}
welch_tost <- function(a) {
  se <- sqrt(a[4]^2 / a[1] + a[5]^2 / a[2])
  two_spreads(a[1], a[2], a[4], a[5], function(e, df) {
    room <- a[3] - qt(0.05, df, lower.tail = FALSE) * e
    ifelse(room > 0, pnorm((room - a[6]) / se) - pnorm((-room - a[6]) / se), 0)
  })
}
tost <- function(n, margin, d, alpha = 0.05) {
  q <- qt(alpha, n - 1, lower.tail = FALSE)
  top <- min(margin * sqrt(n) / q, reach(n - 1))
  quad(function(s) chi(s, n - 1) * (pnorm((margin - d) * sqrt(n) - q * s) - pnorm((-margin - d) * sqrt(n) + q * s)), 0, top)
}
assured <- function(n, ratio, confidence) {
  q <- qt((1 - confidence) / 2, n - 1, lower.tail = FALSE)
  pchisq((n - 1) * n * (ratio / q)^2, n - 1)
}

write_json(list(
  one_sample_n_effect_alpha_sides_power = over(
    grid(n = c(2, 3, 10, 50), effect = c(0, 0.3, 1, 3), alpha = c(0.05, 0.01), sides = 1:2),
    function(a) t_power(a[1] - 1, a[2] * sqrt(a[1]), a[3], a[4])
  ),
  pooled_n_n_effect_alpha_sides_power = over(
    grid(n1 = c(2, 5, 30), n2 = c(3, 8), effect = c(0.5, 1.5), alpha = 0.05, sides = 1:2),
    function(a) t_power(a[1] + a[2] - 2, a[3] / sqrt(1 / a[1] + 1 / a[2]), a[4], a[5])
  ),
  one_sample_effect_power_count = over(
    grid(effect = c(0.2, 0.5, 1, 2.5), power = c(0.8, 0.9, 0.99)),
    function(a) least(function(n) t_power(n - 1, a[1] * sqrt(n), 0.05, 2), a[2])
  ),
  pooled_effect_power_count = over(
    grid(effect = c(0.2, 0.5, 1, 2.5), power = c(0.8, 0.9, 0.99)),
    function(a) least(function(n) t_power(2 * n - 2, a[1] * sqrt(n / 2), 0.05, 2), a[2])
  ),
  pooled_n_power_effect = over(
    grid(n = c(3, 10, 100), power = c(0.8, 0.95)),
    function(a) power.t.test(n = a[1], power = a[2], strict = TRUE, tol = 1e-12)$delta
  ),
  welch_n_n_difference_sd_sd_power = over(
    list(c(3, 3, 2, 1, 1), c(5, 12, 1.5, 2, 1), c(10, 10, 1, 1, 0.2), c(30, 8, 0.4, 1, 0.5), c(4, 20, 3, 1, 3)), welch
  ),
  tost_n_margin_difference_power = over(
    list(c(5, 1.5, 0), c(10, 1, 0), c(10, 1, 0.3), c(30, 0.5, -0.1), c(3, 1, 0), c(3, 20, 0), c(200, 0.3, 0.05)),
    function(a) tost(a[1], a[2], a[3])
  ),
  tost_margin_difference_power_count = over(
    list(c(0.5, 0, 0.8), c(0.5, 0.1, 0.9), c(2, 0, 0.95)),
    function(a) least(function(n) tost(n, a[1], a[2]), a[3])
  ),
  welch_tost_n_n_margin_sd_sd_difference_power = over(
    list(c(5, 7, 2, 1, 1.5, 0), c(12, 12, 1, 1, 0.3, 0.2), c(4, 20, 3, 1, 3, -0.5)), welch_tost
  ),
  mean_spread_halfwidth_confidence_count = over(
    grid(spread = c(0.002, 0.02, 0.1), half = c(0.001, 0.01, 0.05), confidence = c(0.9, 0.95)),
    function(a) least(function(n) -qt((1 - a[3]) / 2, n - 1, lower.tail = FALSE) / sqrt(n) * a[1], -a[2])
  ),
  mean_spread_halfwidth_confidence_assurance_count_attained = over(
    grid(spread = c(0.002, 0.02), half = c(0.001, 0.01), confidence = 0.95, assurance = c(0.5, 0.8, 0.99)),
    function(a) {
      n <- least(function(n) assured(n, a[2] / a[1], a[3]), a[4])
      c(n, assured(n, a[2] / a[1], a[3]))
    }
  )
), "planning-r.json")

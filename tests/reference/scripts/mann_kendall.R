# Mann-Kendall tests for tests/McuBench.Core.Tests/Conclusions/MannKendallTests.cs: Kendall's test against the order of
# the values is the same test. Data are invented.
trend <- function(x, exact) {
  s <- 0
  for (i in seq_along(x)) for (j in seq_along(x)) if (i < j) s <- s + sign(x[j] - x[i])
  p <- cor.test(x, seq_along(x), method = "kendall", exact = exact, continuity = !exact)$p.value
  cat("S =", s, " p =", format(p, digits = 15), "\n")
}
trend(c(2.41, 2.43, 2.40, 2.44, 2.46, 2.45, 2.47, 2.42), TRUE)
trend(c(5, 3, 8, 1, 9, 12, 7, 15, 11, 2, 14, 17, 6, 19, 10, 20, 13, 16, 4, 18), TRUE)
trend(c(2.4, 2.4, 2.5, 2.4, 2.5, 2.5, 2.6, 2.5, 2.6, 2.6), FALSE)

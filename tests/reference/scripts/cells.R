# Life of a cell, by R: the differential equation solved and its root found at the end of the usable charge, and the first-order
# uncertainty from central differences. By other means than cells_mpmath.py; agrees with it to 9 digits.
year <- 31557600
load <- c(1e-5, 1e-3, 0.02)
table <- c(0.78, 0.9, 0.94)
life <- function(x, path) {
  drawn <- function(i) switch(path,
    direct = i,
    linear = i + x[8],
    switching = x[8] + 3 * i / (approx(log(load), table, log(i), rule = 2)$y * x[9] * x[7]))
  mean <- (drawn(x[5] / 0.05) * 0.05 + drawn(x[6]) * 9.95) / 10
  k <- -log1p(-x[4]) / year
  # Q(t) = (C + I/k) exp(-kt) - I/k, and the time at which what can't be had is left.
  end <- uniroot(function(t) (x[1] + mean / k) * exp(-k * t) - mean / k - x[1] * (1 - x[2] * x[3]),
                 c(1e6, 1e9), tol = 1e-3)$root
  c(end, mean)
}
x0 <- c(8640, 0.85, 0.8, 0.02, 716e-6, 12e-6, 3.6, 0, 1)
half <- c(0.05, 0.04, 0.1, 0.5, NA, 0.05, 0, 0.3, 0.02)
for (path in c("direct", "linear", "switching")) {
  x <- x0
  x[8] <- c(direct = 0, linear = 1.5e-6, switching = 0.4e-6)[[path]]
  sigma <- ifelse(is.na(half), 2.2e-6, half * x / sqrt(3))
  slope <- sapply(seq_along(x), function(i) {
    h <- x[i] * 1e-4
    if (h == 0) return(0)
    up <- x; up[i] <- up[i] + h; down <- x; down[i] <- down[i] - h
    (life(up, path)[1] - life(down, path)[1]) / (2 * h)
  })
  cat(sprintf("%s %.10g %.10g %.10g\n", path, life(x, path)[1], sqrt(sum((slope * sigma)^2)), life(x, path)[2]))
}

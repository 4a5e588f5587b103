# Quantiles of the mean given only the cells of its readings, as steps.py finds them, summed in other coordinates: the
# spread as σ = exp(l) by Simpson's rule, the mean as a share of a logistic range. Run: Rscript steps.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))

chance <- function(kind, distance, spread) {
  if (kind == "Rounded") {
    a <- (distance - 0.5) / spread
    b <- (distance + 0.5) / spread
    return(ifelse(b < 0, pnorm(b) - pnorm(a), pnorm(a, lower.tail = FALSE) - pnorm(b, lower.tail = FALSE)))
  }
  g <- function(z) z * pnorm(z) + dnorm(z)
  d <- -abs(distance)
  pmax(0, spread * (g((d + 1) / spread) - 2 * g(d / spread) + g((d - 1) / spread)))
}

quantiles <- function(kind, x, points = 4000) {
  n <- length(x)
  width <- max(sd(x), 0.3) / sqrt(n)
  # A logistic range, with tails of 1/p added for the heavy tails of few readings.
  p <- (seq_len(points) - 0.5) / points
  place <- function(p) mean(x) + width * sign(p - 0.5) * (abs(qlogis(p)) + (if (n <= 5) abs(1 / p - 1 / (1 - p))^1.2 else 0))
  m <- place(p)
  edges <- c(-Inf, place(seq_len(points - 1) / points), Inf)
  slope <- (place(p + 1e-7) - place(p - 1e-7)) / 2e-7
  steps <- 1200
  l <- seq(log(1e-3), log(if (n <= 3) 1e6 else 1e3), length.out = steps + 1)
  simpson <- c(1, rep(c(4, 2), length.out = steps - 1), 1)
  density <- 0
  for (i in seq_along(l)) {
    s <- exp(l[i])
    like <- 1
    for (v in unique(x)) like <- like * chance(kind, v - m, s)^sum(x == v)
    density <- density + simpson[i] * like * s / sqrt(s^2 + 0.01)
  }
  mass <- density * slope
  below <- cumsum(mass) / sum(mass)
  approx(c(0, below[-points]), edges[-(points + 1)], c(0.025, pnorm(-1), pnorm(1), 0.975))$y
}

cases <- list(
  "rounded 0 0 1" = list("Rounded", c(0, 0, 1)),
  "rounded 0 0 0" = list("Rounded", c(0, 0, 0)),
  "rounded 0 1" = list("Rounded", c(0, 1)),
  "rounded 0 0 0 0 1" = list("Rounded", c(0, 0, 0, 0, 1)),
  "rounded 0 1 1 2 3" = list("Rounded", c(0, 1, 1, 2, 3)),
  "rounded, two and eight" = list("Rounded", rep(0:1, c(2, 8))),
  "rounded, one, eight and one" = list("Rounded", rep(0:2, c(1, 8, 1))),
  "rounded, thirty" = list("Rounded", rep(0:4, c(2, 9, 12, 6, 1))),
  "random start 0 0 1" = list("RandomStart", c(0, 0, 1)),
  "random start 0 0 0 0 0" = list("RandomStart", rep(0, 5)),
  "random start 0 1 1 2 2" = list("RandomStart", c(0, 1, 1, 2, 2)),
  "random start, three and seven" = list("RandomStart", rep(0:1, c(3, 7)))
)
write_json(list(quantiles = lapply(cases, function(case) quantiles(case[[1]], case[[2]]))), "steps-r.json")

# Lines with errors in both variables, bands, inverse prediction and lack of fit: R 4.2. Run: Rscript slopes.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))
x <- c(1.5, 2, 3.25, 4, 5.5, 6, 7.75, 9, 10, 12.5, 13)
y <- c(2.1, 2.9, 4.2, 4.4, 6.9, 7.1, 9.4, 10.2, 11.8, 13.4, 14.9)
ux <- c(0.05, 0.1, 0.05, 0.2, 0.1, 0.15, 0.2, 0.1, 0.2, 0.1, 0.3)
uy <- c(0.1, 0.2, 0.1, 0.3, 0.25, 0.2, 0.4, 0.15, 0.2, 0.5, 0.2)
r <- c(0.5, -0.3, 0, 0.2, 0.9, -0.9, 0.1, 0, 0.4, -0.6, 0.3)
tx <- c(1, 1, 2, 2, 2, 3, 4, 4, 5, 6)
ty <- c(2, 3, 3, 5, 4, 4, 6, 7, 7, 7)

# Orthogonal regression as the first principal axis, after y is brought to the scale of x.
axis_of <- function(x, y, ratio) {
  v <- eigen(cov(cbind(x, y / sqrt(ratio))))$vectors[, 1]
  slope <- v[2] / v[1] * sqrt(ratio)
  c(slope, mean(y) - slope * mean(x))
}
deming <- function(x, y, ratio) {
  n <- length(x)
  left <- sapply(1:n, function(i) axis_of(x[-i], y[-i], ratio))
  c(axis_of(x, y, ratio), sqrt((n - 1) / n * rowSums((left - rowMeans(left))^2)))
}

# York's line as the least chi-squared over slope and intercept; errors from the points moved onto the line.
york <- function(x, y, ux, uy, r) {
  weight <- function(b) 1 / (uy^2 + b^2 * ux^2 - 2 * b * r * ux * uy)
  chi2 <- function(b) {
    w <- weight(b)
    a <- sum(w * (y - b * x)) / sum(w)
    sum(w * (y - b * x - a)^2)
  }
  b <- optimize(chi2, c(0.5, 2), tol = 1e-12)$minimum
  # The minimum is flat: polish on the derivative.
  d <- function(b) (chi2(b + 1e-4) - chi2(b - 1e-4)) / 2e-4
  derivative <- function(b) (8 * (chi2(b + 1e-3) - chi2(b - 1e-3)) - (chi2(b + 2e-3) - chi2(b - 2e-3))) / 12e-3
  b <- uniroot(derivative, b + c(-1e-3, 1e-3), tol = 1e-14)$root
  w <- weight(b)
  a <- sum(w * (y - b * x)) / sum(w)
  residual <- y - a - b * x
  moved <- x + w * (b * ux^2 - r * ux * uy) * residual
  centre <- sum(w * moved) / sum(w)
  sb <- 1 / sqrt(sum(w * (moved - centre)^2))
  c(b, a, sb, sqrt(1 / sum(w) + centre^2 * sb^2), chi2(b))
}

fit <- lm(y ~ x)
s <- predict(fit, data.frame(x = c(0, 5)), se.fit = TRUE)
w <- sqrt(2 * qf(0.9, 2, length(x) - 2))

inverse <- function(y0, m, level) {
  b <- coef(fit)
  t <- qt((1 + level) / 2, length(x) - 2)
  sd <- summary(fit)$sigma
  f <- function(u) (y0 - b[[1]] - b[[2]] * u)^2 - t^2 * sd^2 * (1 / m + 1 / length(x) + (u - mean(x))^2 / sum((x - mean(x))^2))
  u <- (y0 - b[[1]]) / b[[2]]
  c(u, uniroot(f, c(u - 5, u), tol = 1e-14)$root, uniroot(f, c(u, u + 5), tol = 1e-14)$root)
}

lack <- anova(lm(ty ~ tx), lm(ty ~ factor(tx)))
write_json(list(
  deming = list("smooth/1" = deming(x, y, 1), "ties/0.25" = deming(tx, ty, 0.25)),
  correlations = r,
  york_plain = york(x, y, ux, uy, 0 * r), york_correlated = york(x, y, ux, uy, r),
  band_90 = list(at_0 = s$fit[[1]] + c(-1, 1) * w * s$se.fit[[1]], at_5 = s$fit[[2]] + c(-1, 1) * w * s$se.fit[[2]]),
  inverse_90 = list("8/1" = inverse(8, 1, 0.9), "20/3" = inverse(20, 3, 0.9)),
  lack_of_fit = c(lack$F[2], lack$Df[2], lack$Res.Df[2], lack$`Pr(>F)`[2], sqrt(lack$RSS[2] / lack$Res.Df[2]))
), "slopes-r.json")

# Straight lines, weighted both ways, with their intervals: R's lm. Run: Rscript lines.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))

x <- c(1.5, 2, 3.25, 4, 5.5, 6, 7.75, 9)
y <- c(2.1, 2.9, 4.2, 4.4, 6.9, 7.1, 9.4, 10.2)
u <- c(0.1, 0.2, 0.1, 0.3, 0.25, 0.2, 0.4, 0.15)

describe <- function(fit) {
  s <- summary(fit)
  at <- data.frame(x = c(0, 5))
  list(
    coefficients = unname(coef(fit)), errors = unname(s$coefficients[, 2]), covariance = vcov(fit)[1, 2],
    sd = s$sigma, r_squared = s$r.squared,
    interval_intercept = unname(confint(fit, level = 0.9)[1, ]), interval_slope = unname(confint(fit, level = 0.9)[2, ]),
    mean_at_5 = unname(predict(fit, at, interval = "confidence", level = 0.95)[2, ])
  )
}

plain <- lm(y ~ x)
weighted <- lm(y ~ x, weights = 1 / u^2)
# Known uncertainties: the same line, its errors divided by the residual sd, normal quantiles.
s <- summary(weighted)
known <- s$coefficients[, 2] / s$sigma
z <- qnorm(0.95)
write_json(list(
  data = list(x = x, y = y, u = u),
  plain = c(describe(plain), list(
    prediction_at_5 = unname(predict(plain, data.frame(x = 5), interval = "prediction", level = 0.95)[1, ]))),
  relative = c(describe(weighted), list(
    prediction_at_5_u_0.2 = unname(predict(weighted, data.frame(x = 5), interval = "prediction", level = 0.95, weights = 1 / 0.04)[1, ]))),
  absolute = list(
    coefficients = unname(coef(weighted)), errors = unname(known), covariance = s$cov.unscaled[1, 2],
    chi_squared = s$sigma^2 * s$df[2],
    interval_intercept = coef(weighted)[[1]] + c(-1, 1) * z * known[[1]],
    interval_slope = coef(weighted)[[2]] + c(-1, 1) * z * known[[2]])
), "lines-r.json")

# Nested layouts of random factors: sequential sums of squares and projections in base R, REML by lme4. Run: Rscript nested.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))
suppressMessages(library(lme4))
data <- read_sets("nested.json")
sets <- c("balanced", "unbalanced", "ties", "offset", "small")
frame <- function(set) {
  y <- data[[set]]
  # Less the first value: the mean gets it back, and an offset costs no digits.
  data.frame(y = y - y[1], o = factor(data[[paste0(set, "outer")]]), i = interaction(
    data[[paste0(set, "outer")]], data[[paste0(set, "inner")]], drop = TRUE))
}

analyse <- function(f, factors, set) {
  n <- nrow(f)
  z <- lapply(factors, function(name) model.matrix(~ 0 + f[[name]]))
  # Onto the constant, each factor in turn, and all values.
  onto <- c(list(matrix(1 / n, n, n)), lapply(z, function(m) m %*% solve(crossprod(m), t(m))), list(diag(n)))
  steps <- lapply(seq_along(onto)[-1], function(k) onto[[k]] - onto[[k - 1]])
  covariances <- c(lapply(z, tcrossprod), list(diag(n)))
  df <- round(sapply(steps, function(s) sum(diag(s))))
  ss <- sapply(steps, function(s) drop(crossprod(f$y, s %*% f$y)))
  ms <- ss / df
  e <- t(sapply(seq_along(steps), function(k) sapply(covariances, function(v) sum(steps[[k]] * v)) / df[k]))
  multiples <- solve(e)
  multiples[abs(multiples) < 1e-12] <- 0
  components <- drop(multiples %*% ms)
  mean_shares <- sapply(covariances, sum) / n^2
  m <- drop(mean_shares %*% multiples)
  m[abs(m) < 1e-12] <- 0
  variance <- sum(m * ms)
  mean_df <- variance^2 / sum((m * ms)^2 / df)
  tests <- unlist(lapply(seq_along(factors), function(k) {
    c0 <- e[k, ]; c0[k] <- 0
    d <- drop(c0 %*% multiples)
    d[abs(d) < 1e-12] <- 0
    den <- sum(d * ms)
    if (den <= 0) return(c(NA, NA, NA))
    ddf <- den^2 / sum((d * ms)^2 / df)
    c(ms[k] / den, ddf, pf(ms[k] / den, df[k], ddf, lower.tail = FALSE))
  }))
  list(
    ss_df = c(ss, df),
    components = components,
    tests_f_df_p = tests,
    mean_se_df = c(mean(f$y) + data[[set]][1], if (variance > 0) c(sqrt(variance), mean_df) else c(NA, NA)),
    intervals_90 = unlist(lapply(seq_along(df), function(k) mls(multiples[k, ], ms, df, 0.05)))
  )
}

# Graybill and Wang's interval as Ting and others extend it, from the formulas with all F quantiles written out.
mls <- function(m, ms, df, a) {
  p <- which(m > 0); q <- which(m < 0); t <- abs(m) * ms; est <- sum(m * ms)
  G <- 1 - 1 / qf(a, df, Inf, lower.tail = FALSE); H <- 1 / qf(a, df, Inf) - 1
  star <- function(u, v, count) ((1 - 1 / qf(a, df[u] + df[v], Inf, lower.tail = FALSE))^2 * (df[u] + df[v])^2 / (df[u] * df[v]) -
    G[u]^2 * df[u] / df[v] - G[v]^2 * df[v] / df[u]) / (count - 1)
  lower <- sum(G[p]^2 * t[p]^2) + sum(H[q]^2 * t[q]^2)
  upper <- sum(H[p]^2 * t[p]^2) + sum(G[q]^2 * t[q]^2)
  for (u in p) for (v in q) {
    f <- qf(a, df[u], df[v], lower.tail = FALSE)
    lower <- lower + ((f - 1)^2 - G[u]^2 * f^2 - H[v]^2) / f * t[u] * t[v]
    f <- qf(a, df[u], df[v])
    upper <- upper + ((1 - f)^2 - H[u]^2 * f^2 - G[v]^2) / f * t[u] * t[v]
  }
  for (u in p) for (v in p) if (u < v) lower <- lower + star(u, v, length(p)) * t[u] * t[v]
  for (u in q) for (v in q) if (u < v) upper <- upper + star(u, v, length(q)) * t[u] * t[v]
  c(est - sqrt(max(0, lower)), est + sqrt(max(0, upper)))
}

reml <- function(f, formula, names) {
  control <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-12), calc.derivs = FALSE, check.conv.singular = "ignore")
  fit <- suppressMessages(lmer(formula, f, REML = TRUE, control = control))
  v <- as.data.frame(VarCorr(fit)); rownames(v) <- v$grp
  c(v[c(names, "Residual"), "vcov"], sqrt(vcov(fit)[1, 1]), REMLcrit(fit))
}

each <- function(f) setNames(lapply(sets, f), sets)
write_json(list(
  two_factors = each(function(s) analyse(frame(s), c("o", "i"), s)),
  one_factor = each(function(s) analyse(frame(s), "i", s)),
  reml_two_factors = each(function(s) reml(frame(s), y ~ 1 + (1 | o) + (1 | i), c("o", "i"))),
  reml_one_factor = each(function(s) reml(frame(s), y ~ 1 + (1 | i), "i"))
), "nested-r.json")

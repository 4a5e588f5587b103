# Rank tests and the intervals that belong to them: base R and coin. Run: Rscript ranks.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))
suppressPackageStartupMessages(library(coin))
groups <- read_sets("groups.json")
sets <- c(datasets, groups)
pairs <- list(c("ties", "outliers"), c("triple", "pair"), c("skewed", "triple"), c("odd", "offset"), c("ties1", "ties2"),
  c("ties2", "ties3"), c("small1", "small2"), c("small2", "small3"), c("offset1", "offset2"), c("skewed1", "skewed2"),
  c("skewed3", "skewed4"))
large <- c("ties/outliers", "odd/offset", "ties1/ties2", "ties2/ties3", "skewed1/skewed2", "skewed3/skewed4")
named <- function(f, p = pairs) setNames(lapply(p, function(p) f(sets[[p[1]]], sets[[p[2]]])), sapply(p, paste, collapse = "/"))
centres <- c(pair = 412.5, triple = 2.5, ties = 9, offset = 10000000.3, skewed = 0.5, outliers = 20, odd = 56)
each <- function(f) setNames(lapply(names(centres), function(s) f(datasets[[s]], centres[[s]])), names(centres))
sides <- c("less", "greater")
quiet <- suppressWarnings

# U; exact p (less, greater, twice the smaller); normal p with and without continuity correction (two-sided, less, greater).
mann_whitney <- function(x, y) {
  u <- unname(quiet(wilcox.test(x, y))$statistic)
  all <- data.frame(v = c(x, y), g = factor(rep(1:2, c(length(x), length(y)))))
  # Scores that are whole numbers: twice the midranks, which coin's shift algorithm takes without rounding.
  twice <- function(v) 2 * rank(v)
  exact <- sapply(sides, function(s) as.numeric(pvalue(independence_test(v ~ g, all, ytrafo = function(d) trafo(d, numeric_trafo = twice),
    distribution = exact("shift"), alternative = s))))
  normal <- function(correct) sapply(c("two.sided", sides), function(s) wilcox.test(x, y, exact = FALSE, correct = correct, alternative = s)$p.value)
  c(u, exact, min(1, 2 * min(exact)), normal(TRUE), normal(FALSE))
}

# The same of signed ranks about a centre; zeros left out, then ranked first.
signed_rank <- function(x, mu, pratt) {
  d <- x - mu
  if (!pratt) d <- d[d != 0]
  r <- rank(abs(d))
  keep <- d != 0
  s <- data.frame(y = c(rbind((d > 0) * 2 * r, (d < 0) * 2 * r)[, keep]), side = factor(rep(1:2, sum(keep))), block = factor(rep(seq_len(sum(keep)), each = 2)))
  v <- sum(r[d > 0])
  method <- if (pratt) "Pratt" else "Wilcoxon"
  t <- function(side, ...) as.numeric(pvalue(wilcoxsign_test(x ~ m, data.frame(x = x, m = rep(mu, length(x))), zero.method = method, alternative = side, ...)))
  exact <- sapply(sides, t, distribution = "exact")
  c(v, exact, min(1, 2 * min(exact)), t("two.sided"), t("less"), t("greater"))
}

signed_rank_continuity <- function(x, mu) {
  sapply(c("two.sided", sides), function(s) wilcox.test(x, mu = mu, exact = FALSE, correct = TRUE, alternative = s)$p.value)
}

brunner_munzel <- function(x, y, null = 0.5) {
  m <- length(x); n <- length(y); all <- rank(c(x, y))
  a <- all[1:m] - rank(x); b <- all[m + 1:n] - rank(y)
  p <- mean(a) / n
  va <- var(a) / n^2 / m; vb <- var(b) / m^2 / n
  se <- sqrt(va + vb); df <- (va + vb)^2 / (va^2 / (m - 1) + vb^2 / (n - 1))
  t <- (p - null) / se
  list(p = p, se = se, df = df, t = t)
}
brunner_munzel_test <- function(x, y) {
  b <- brunner_munzel(x, y)
  reach <- qt(0.95, b$df) * b$se
  c(b$p, b$t, b$df, 2 * pt(-abs(b$t), b$df), max(0, b$p - reach), min(1, b$p + reach))
}
brunner_munzel_less <- function(x, y) { b <- brunner_munzel(x, y, 0.6); c(b$t, pt(b$t, b$df), min(1, b$p + qt(0.9, b$df) * b$se)) }
superiority <- function(x, y) {
  b <- brunner_munzel(x, y)
  c(b$p, b$se, plogis(qlogis(b$p) + c(-1, 1) * qt(0.95, b$df) * b$se / (b$p * (1 - b$p))))
}
overlap <- list(c("ties1", "ties2"), c("ties2", "ties3"), c("small1", "small2"), c("offset1", "offset2"), c("skewed1", "skewed2"), c("skewed3", "skewed4"))

# Limits at 90 %: exact ranks of the sorted list of pairs, and R's own, where there are no ties; inverted normal test by R.
walsh <- function(x) { o <- outer(x, x, "+") / 2; sort(o[lower.tri(o, diag = TRUE)]) }
from_ranks <- function(pairs, k) c(median(pairs), pairs[k], pairs[length(pairs) + 1 - k])
location_exact <- function(x) from_ranks(walsh(x), max(1, qsignrank(0.05, length(x))))
shift_exact <- function(x, y) from_ranks(sort(outer(x, y, "-")), max(1, qwilcox(0.05, length(x), length(y))))
location_normal <- function(x) wilcox.test(x, exact = FALSE, correct = TRUE, conf.int = TRUE, conf.level = 0.9, tol.root = 1e-13)$conf.int
shift_normal <- function(x, y) wilcox.test(x, y, exact = FALSE, correct = TRUE, conf.int = TRUE, conf.level = 0.9, tol.root = 1e-13)$conf.int
stopifnot(all.equal(location_exact(datasets$skewed)[2:3], as.numeric(wilcox.test(datasets$skewed, conf.int = TRUE, conf.level = 0.9, exact = TRUE)$conf.int)))
with_interval <- Filter(function(p) paste(p, collapse = "/") %in% large, pairs)

kruskal <- function(set) {
  x <- unname(groups[grep(paste0("^", set, "[0-9]$"), names(groups))])
  k <- kruskal.test(x)
  c(k$statistic, k$parameter, k$p.value)
}

write_json(list(
  mann_whitney_u_exact_less_greater_two_normal_corrected_two_less_greater_plain = named(mann_whitney),
  mann_whitney_shifted_1 = named(function(x, y) mann_whitney(x - 1, y)),
  signed_rank_left_out_v_exact_less_greater_two_normal_two_less_greater = each(function(x, mu) signed_rank(x, mu, FALSE)),
  signed_rank_ranked_first = each(function(x, mu) signed_rank(x, mu, TRUE)),
  signed_rank_continuity_two_less_greater = each(signed_rank_continuity),
  brunner_munzel_p_t_df_p_low_high_90 = named(brunner_munzel_test, overlap),
  brunner_munzel_less_than_60_t_p_high_90 = named(brunner_munzel_less, overlap),
  superiority_p_se_low_high_90 = named(superiority, overlap),
  kruskal_wallis_h_df_p = setNames(lapply(c("ties", "small", "offset", "skewed"), kruskal), c("ties", "small", "offset", "skewed")),
  location_exact_90 = lapply(datasets[c("ties", "offset", "skewed", "outliers", "odd")], location_exact),
  shift_exact_90 = named(shift_exact, with_interval),
  location_normal_90 = lapply(datasets[c("ties", "offset", "skewed", "outliers", "odd")], function(x) as.numeric(location_normal(x))),
  shift_normal_90 = named(function(x, y) as.numeric(shift_normal(x, y)), with_interval)
), "ranks-r.json")

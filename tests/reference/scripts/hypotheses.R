# One-sample, paired and Yuen's t, equivalence, variances, spread and adjusted p-values: base R. Run: Rscript hypotheses.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))
groups <- read_sets("groups.json")
sets <- c("ties", "small", "offset", "skewed")
group_set <- function(set) unname(groups[grep(paste0("^", set, "[0-9]$"), names(groups))])
each_set <- function(f) setNames(lapply(sets, function(s) f(group_set(s))), sets)

pairs <- list(c("ties", "outliers"), c("triple", "pair"), c("skewed", "triple"), c("odd", "offset"))
named <- function(f) setNames(lapply(pairs, function(p) f(datasets[[p[1]]], datasets[[p[2]]])), sapply(pairs, paste, collapse = "/"))
trim_names <- c("ties/outliers", "skewed/triple", "odd/offset")

one_sample <- function(x) {
  t <- t.test(x, mu = 1, conf.level = 0.9)
  c(t$estimate, t$statistic, t$parameter, t$p.value, t$conf.int)
}

# The first readings of each, as many as the shorter sample has.
paired <- function(x, y) {
  n <- min(length(x), length(y))
  t <- t.test(x[1:n], y[1:n], paired = TRUE, conf.level = 0.9)
  c(t$estimate, t$statistic, t$parameter, t$p.value, t$conf.int)
}

yuen <- function(x, y, trim = 0.2) {
  part <- function(x) {
    n <- length(x); g <- floor(trim * n); h <- n - 2 * g; s <- sort(x)
    w <- pmin(pmax(x, s[g + 1]), s[n - g])
    list(mean = mean(x, trim = trim), d = (n - 1) * var(w) / (h * (h - 1)), h = h)
  }
  a <- part(x); b <- part(y)
  df <- (a$d + b$d)^2 / (a$d^2 / (a$h - 1) + b$d^2 / (b$h - 1))
  t <- (a$mean - b$mean) / sqrt(a$d + b$d)
  c(t, df, 2 * pt(-abs(t), df))
}

tost <- function(x, y, low, high, ...) {
  above <- t.test(x, y, mu = low, alternative = "greater", ...)
  below <- t.test(x, y, mu = high, alternative = "less", ...)
  c(above$statistic, above$p.value, below$statistic, below$p.value)
}

f_ratio <- function(x, y, ...) {
  v <- var.test(x, y, conf.level = 0.9, ...)
  c(v$estimate, v$statistic, v$p.value, v$conf.int)
}

levene <- function(x, centre) {
  z <- unlist(lapply(x, function(v) { u <- v - v[1]; abs(u - centre(u)) }))
  g <- factor(rep(seq_along(x), lengths(x)))
  a <- anova(lm(z ~ g))
  c(a$"F value"[1], a$Df, a$"Pr(>F)"[1])
}

p_values <- list(plain = c(0.01, 0.04, 0.03, 0.005), ties = c(0.02, 0.5, 0.02, 0.02, 0.9, 0.5, 1, 0), one = c(0.03, 0.2))
adjusted <- function(method) lapply(p_values, p.adjust, method = method)

write_json(list(
  one_sample_against_1_mean_t_df_p_low_high_90 = lapply(datasets, one_sample),
  paired_mean_t_df_p_low_high_90 = named(paired),
  yuen_20_t_df_p = named(yuen)[trim_names],
  yuen_10_t_df_p = named(function(x, y) yuen(x, y, 0.1))[trim_names],
  tost_welch_3_lower_t_p_upper_t_p = named(function(x, y) tost(x, y, -3, 3)),
  tost_pooled_3_lower_t_p_upper_t_p = named(function(x, y) tost(x, y, -3, 3, var.equal = TRUE)),
  tost_logs_half_to_2_lower_t_p_upper_t_p = named(function(x, y) tost(log(x), log(y), log(0.5), log(2))),
  variance_ratio_f_p_low_high_90 = named(f_ratio),
  variance_ratio_against_2_less = named(function(x, y) f_ratio(x, y, ratio = 2, alternative = "less")[c(1, 2, 3, 5)]),
  variance_ratio_against_2_greater = named(function(x, y) f_ratio(x, y, ratio = 2, alternative = "greater")[1:4]),
  levene_f_df_df_p = each_set(function(x) levene(x, mean)),
  brown_forsythe_f_df_df_p = each_set(function(x) levene(x, median)),
  adjusted_bonferroni = adjusted("bonferroni"),
  adjusted_holm = adjusted("holm"),
  adjusted_hochberg = adjusted("hochberg"),
  adjusted_bh = adjusted("BH")
), "hypotheses-r.json")

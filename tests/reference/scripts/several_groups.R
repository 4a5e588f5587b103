# Analyses of variance and comparisons of all pairs of groups: base R. Run: Rscript several_groups.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))
groups <- read_sets("groups.json")
sets <- c("ties", "small", "offset", "skewed")
# Less the first value of each set: no statistic here changes, and the mean of a large offset keeps its digits.
group_set <- function(set) {
  g <- unname(groups[grep(paste0("^", set, "[0-9]$"), names(groups))])
  lapply(g, function(v) v - g[[1]][1])
}
each_set <- function(f) setNames(lapply(sets, function(s) f(group_set(s))), sets)
label <- function(x) factor(rep(seq_along(x), lengths(x)))

anova_row <- function(x) {
  a <- anova(lm(unlist(x) ~ label(x)))
  c(a$"Sum Sq", a$"F value"[1], a$Df, a$"Pr(>F)"[1])
}

welch <- function(x) {
  t <- oneway.test(unlist(x) ~ label(x))
  c(t$statistic, t$parameter, t$p.value)
}

pairs_of <- function(k) combn(k, 2, simplify = FALSE)

# First less second; R takes the later level less the earlier one. qtukey has eight digits.
tukey <- function(x) {
  t <- TukeyHSD(aov(unlist(x) ~ label(x)), conf.level = 0.9)[[1]]
  unlist(lapply(pairs_of(length(x)), function(p) {
    row <- t[paste0(p[2], "-", p[1]), ]
    c(-row["diff"], row["p adj"], -row["upr"], -row["lwr"])
  }))
}

games_howell <- function(x) {
  k <- length(x); v <- sapply(x, var) / lengths(x); n <- lengths(x)
  unlist(lapply(pairs_of(k), function(p) {
    i <- p[1]; j <- p[2]
    d <- mean(x[[i]]) - mean(x[[j]])
    df <- (v[i] + v[j])^2 / (v[i]^2 / (n[i] - 1) + v[j]^2 / (n[j] - 1))
    s <- sqrt((v[i] + v[j]) / 2)
    reach <- qtukey(0.9, k, df) * s
    c(d, df, abs(d) / s, ptukey(abs(d) / s, k, df, lower.tail = FALSE), d - reach, d + reach)
  }))
}

dunn <- function(x) {
  k <- length(x); n <- lengths(x); N <- sum(n)
  r <- split(rank(unlist(x)), label(x)); t <- table(unlist(x))
  v <- (N * (N + 1) - sum(t^3 - t) / (N - 1)) / 12
  d <- sapply(pairs_of(k), function(p) mean(r[[p[1]]]) - mean(r[[p[2]]]))
  s <- sapply(pairs_of(k), function(p) sqrt(v * (1 / n[p[1]] + 1 / n[p[2]])))
  p <- 2 * pnorm(-abs(d / s))
  reach <- qnorm(1 - 0.1 / (k * (k - 1))) * s
  c(rbind(d, d / s, p.adjust(p, "holm"), p.adjust(p, "BH"), d - reach, d + reach))
}

write_json(list(
  anova_ss_ss_f_df_df_p = each_set(anova_row),
  welch_f_df_df_p = each_set(welch),
  tukey_d_p_low_high_90 = each_set(tukey),
  games_howell_d_df_q_p_low_high_90 = each_set(games_howell),
  dunn_d_z_holm_bh_low_high_90 = each_set(dunn)
), "several-groups-r.json")

# Bootstrap intervals by R package boot, 100,000 resamples each. Run: Rscript resampling.R
source(file.path(dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1])), "data.R"))
suppressPackageStartupMessages(library(boot))
# The lower percentile end of the ratio of medians lies at a jump of a discrete distribution: this seed ends at 0.0607, as
# SciPy does, others at 0.0444.
set.seed(1)
B <- 99999

x <- datasets$skewed
y <- datasets$outliers
ends <- function(b, types, var.t0 = NULL) {
  # The jackknife in place of boot's regression on resamples, which makes another acceleration.
  ci <- suppressWarnings(boot.ci(b, type = types, var.t0 = var.t0, L = empinf(b, type = "jack")))
  c(sd(b$t[, 1]), unlist(lapply(intersect(c("percent", "basic", "bca", "student"), names(ci)), function(k) tail(as.vector(ci[[k]]), 2))))
}
mean_var <- function(v) var(v) / length(v)

one <- boot(x, function(d, i) c(mean(d[i]), mean_var(d[i])), B)
both <- data.frame(v = c(x, y), g = rep(1:2, c(length(x), length(y))))
ratio <- function(f) boot(both, function(d, i) { d <- d[i, ]; f(d$v[d$g == 1]) / f(d$v[d$g == 2]) }, B, strata = both$g)

lsat <- c(576, 635, 558, 578, 666, 580, 555, 661, 651, 605, 653, 575, 545, 572, 594)
gpa <- c(3.39, 3.3, 2.81, 3.03, 3.44, 3.07, 3.0, 3.43, 3.36, 3.13, 3.12, 2.74, 2.76, 2.88, 2.96)
pairs <- boot(cbind(lsat, gpa), function(d, i) cor(d[i, 1], d[i, 2]), B)

write_json(list(
  mean_sd_percentile_basic_bca_studentized = ends(one, c("perc", "basic", "bca", "stud")),
  ratio_of_means_sd_percentile_basic_bca = ends(ratio(mean), c("perc", "basic", "bca")),
  ratio_of_medians_sd_percentile_basic_bca = ends(ratio(median), c("perc", "basic", "bca")),
  correlation_sd_percentile_basic_bca = ends(pairs, c("perc", "basic", "bca"))
), "resampling-r.json")

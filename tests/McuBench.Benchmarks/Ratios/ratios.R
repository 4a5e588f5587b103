# The R side of the table of ratios, on the data that the C# side wrote.
#
# Started by `dotnet run -c Release --project tests/McuBench.Benchmarks -- ratios`, which writes the name of a task to its
# standard input and reads back `engine<TAB>seconds<TAB>values`, or an empty line where there is no such task here. Needs
# robustbase, boot, coin and nlme (Debian: r-cran-robustbase and so on).
suppressMessages({ library(robustbase); library(boot); library(coin); library(nlme) })

folder <- commandArgs(TRUE)[1]
data <- function(name) {
  path <- file.path(folder, paste0(name, ".f64"))
  readBin(path, "double", file.size(path) / 8, endian = "little")
}
million <- data("million"); x <- data("x"); y <- data("y"); t <- data("t"); line <- data("line")
hundred_thousand <- million[1:100000]
p7 <- c(0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99)
dfs <- (1:10000) / 2
two <- factor(rep(1:2, each = 10))
nested <- data.frame(y = data("nested"), specimen = factor(rep(1:10, each = 100)), session = factor(rep(1:100, each = 10)))

# The median slope of all pairs, with the ranks of Sen's interval.
sen <- function(t, y) {
  n <- length(t)
  below <- lower.tri(matrix(0, n, n))
  slopes <- sort((outer(y, y, "-") / outer(t, t, "-"))[below])
  pairs <- length(slopes)
  reach <- qnorm(0.975) * sqrt(n * (n - 1) * (2 * n + 5) / 18)
  c(median(slopes), slopes[round((pairs - reach) / 2)], slopes[round((pairs + reach) / 2) + 1])
}

bca <- function() {
  ratio <- function(d, i) { s <- d[i]; median(s[1:30]) / median(s[31:60]) }
  set.seed(1)
  boot.ci(boot(c(x[1:30], y[1:30]), ratio, R = 9999, strata = rep(1:2, each = 30)), type = "bca")$bca[4:5]
}

# Yuen's test, which R's own packages lack.
yuen <- function(a, b, fraction = 0.2) {
  parts <- function(v) {
    n <- length(v); cut <- floor(fraction * n); left <- n - 2 * cut; s <- sort(v)
    w <- c(rep(s[cut + 1], cut), s[(cut + 1):(n - cut)], rep(s[n - cut], cut))
    c(mean(s[(cut + 1):(n - cut)]), (n - 1) * var(w) / (left * (left - 1)), left - 1)
  }
  p <- parts(a); q <- parts(b); v <- p[2] + q[2]
  2 * pt(-abs(p[1] - q[1]) / sqrt(v), v^2 / (p[2]^2 / p[3] + q[2]^2 / q[3]))
}

components <- function() {
  fit <- lme(y ~ 1, nested, ~ 1 | specimen / session)
  suppressWarnings(as.numeric(VarCorr(fit)[, 1]))[c(2, 4, 5)]
}

# R keeps its tables of counts up to size 50 from call to call; asking for 51 frees them, so that the next call is from cold.
tasks <- list(
  "mean" = list("R", function() mean(million)),
  "median" = list("R", function() median(million)),
  "mad" = list("R", function() mad(million, constant = 1 / qnorm(0.75))),
  "quantiles" = list("R", function() quantile(million, p7, names = FALSE)),
  "qn" = list("robustbase", function() Qn(hundred_thousand)),
  "sn" = list("robustbase", function() Sn(hundred_thousand)),
  "shift" = list("R", function() { w <- wilcox.test(x, y, conf.int = TRUE, exact = FALSE, correct = FALSE); c(w$estimate, w$conf.int) }),
  "theil-sen" = list("R, all pairs", function() sen(t, line)),
  "bca" = list("boot", bca),
  "mann-whitney" = list("R", function() wilcox.test(x[1:50], y[1:50], exact = TRUE)$p.value, function() pwilcox(1, 51, 2)),
  "signed-rank" = list("R", function() wilcox.test(x[1:50], y[1:50], paired = TRUE, exact = TRUE)$p.value, function() psignrank(1, 51)),
  "permutation" = list("coin", function() as.numeric(pvalue(oneway_test(c(x[1:10], y[1:10]) ~ two, distribution = "exact")))),
  "welch" = list("R", function() t.test(x[1:30], y[1:30])$p.value),
  "yuen" = list("R, by hand", function() yuen(x[1:30], y[1:30])),
  "t-quantile" = list("R", function() sum(qt(0.975, dfs))),
  "range-cdf" = list("R", function() ptukey(3.5, 5, 20)),
  "range-quantile" = list("R", function() qtukey(0.95, 5, 20)),
  "nested" = list("nlme", components)
)

now <- function() as.numeric(Sys.time())

# The shortest of several timings, each of calls enough to fill a few milliseconds.
shortest <- function(work, forget) {
  if (!is.null(forget)) forget()
  start <- now(); result <- work(); once <- now() - start
  calls <- if (!is.null(forget)) 1 else max(1, floor(0.005 / max(once, 1e-6)))
  least <- if (calls == 1) once else Inf
  spent <- once
  while (spent < 0.3) {
    if (!is.null(forget)) forget()
    start <- now()
    for (k in seq_len(calls)) result <- work()
    taken <- now() - start
    spent <- spent + taken
    least <- min(least, taken / calls)
  }
  list(least, result)
}

input <- file("stdin", "r")
while (length(name <- readLines(input, 1)) > 0) {
  task <- tasks[[name]]
  if (is.null(task)) {
    cat("\n")
  } else {
    timed <- shortest(task[[2]], if (length(task) > 2) task[[3]])
    cat(task[[1]], sprintf("%.9g", timed[[1]]), paste(sprintf("%.17g", timed[[2]]), collapse = " "), sep = "\t")
    cat("\n")
  }
  flush(stdout())
}

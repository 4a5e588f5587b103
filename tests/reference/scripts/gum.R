# Coverage factors at degrees of freedom that are no whole number, and derivatives in closed form, for the budget tests.
# Run: Rscript gum.R > ../gum-r.json
options(digits = 15)
nu_h1 <- 16.7518557376
f <- expression(exp(-x * y) * sin(x) / sqrt(y))
at <- list(x = 0.7, y = 1.3)
d <- function(e, ...) { for (v in c(...)) e <- D(e, v); eval(e, at) }
out <- sprintf('{
  "coverage": { "k99_at_16.75": "%.13g", "k95_normal": "%.13g" },
  "derivatives": { "x": "%.13g", "y": "%.13g", "xx": "%.13g", "xy": "%.13g", "yy": "%.13g", "xxx": "%.13g", "xyy": "%.13g", "yxx": "%.13g", "yyy": "%.13g" }
}', qt(0.995, nu_h1), qnorm(0.975), d(f[[1]], "x"), d(f[[1]], "y"), d(f[[1]], "x", "x"), d(f[[1]], "x", "y"),
  d(f[[1]], "y", "y"), d(f[[1]], "x", "x", "x"), d(f[[1]], "x", "y", "y"), d(f[[1]], "y", "x", "x"), d(f[[1]], "y", "y", "y"))
cat(out, "\n", sep = "")

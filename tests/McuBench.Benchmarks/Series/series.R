# Times R on the traces that series.py makes: Rscript series.R DIR [FILE]
# Prints task, engine, median seconds and a result, by tabs. Needs data.table (Debian: r-cran-data.table).
suppressMessages(library(data.table))
arg <- commandArgs(TRUE)
bench <- function(task, engine, work, repeats = 5) {
  result <- work()
  seconds <- sapply(seq_len(repeats), function(k) { gc(); system.time(result <<- work())[["elapsed"]] })
  cat(task, engine, sprintf("%.4g", median(seconds)), sprintf("%.17g", result), sep = "\t"); cat("\n")
}
file <- file.path(arg[1], "current.i16")
n <- file.size(file) / 2
i <- readBin(file, "integer", n, size = 2, endian = "little") * 2^-22
bench("charge double", "R sum", function() (sum(i) - (i[1] + i[n]) / 2) * 1e-5)
bench("charge double", "R trapezoid by hand", function() sum(i[-1] + i[-n]) / 2 * 1e-5)
rm(i)
if (length(arg) > 1) {
  for (threads in 1:2) {
    setDTthreads(threads)
    bench("text", sprintf("data.table fread, %d threads", threads), function() {
      d <- fread(arg[2]); m <- nrow(d)
      sum(diff(d[[1]]) * (d[[2]][-1] + d[[2]][-m])) / 2
    })
    bench("text", sprintf("data.table fread alone, %d threads", threads), function() sum(fread(arg[2])[[2]]))
  }
}

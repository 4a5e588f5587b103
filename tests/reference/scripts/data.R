# Reads datasets.json and groups.json, and writes results as JSON, with base R alone.
here <- dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1]))
reference <- normalizePath(file.path(here, ".."))

read_sets <- function(name) {
  text <- paste(readLines(file.path(reference, name)), collapse = " ")
  found <- regmatches(text, gregexpr('"[a-z0-9]+": *\\[[^]]*\\]', text))[[1]]
  values <- lapply(found, function(f) as.numeric(strsplit(gsub('^"[a-z0-9]+": *\\[|\\]$', "", f), ",")[[1]]))
  setNames(values, sub('^"([a-z0-9]+)".*', "\\1", found))
}

datasets <- read_sets("datasets.json")

to_json <- function(x, indent = 0) {
  pad <- strrep(" ", indent + 2)
  if (is.list(x)) {
    parts <- vapply(seq_along(x), function(i) paste0(pad, '"', names(x)[i], '": ', to_json(x[[i]], indent + 2)), "")
    return(paste0("{\n", paste(parts, collapse = ",\n"), "\n", strrep(" ", indent), "}"))
  }
  digits <- ifelse(is.na(x), "null", sprintf("%.17g", x))
  if (length(x) == 1) digits else paste0("[", paste(digits, collapse = ", "), "]")
}

write_json <- function(x, name) writeLines(to_json(x), file.path(reference, name))

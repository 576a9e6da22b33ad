# Single-sine degree-days with a horizontal cutoff, vectorised. For each line read it takes a turn and writes
# the nanoseconds a day and the sum.
count <- as.integer(commandArgs(trailingOnly = TRUE)[1])
lower <- 10
upper <- 22

i <- 0:(count - 1)
low <- 12 + 8 * sin(i) - 4 * cos(i * 0.7)
high <- low + 6 + 5 * sin(i * 1.3)^2

excess <- function(threshold, mean, half) {
  below <- mean - threshold
  share <- pmin(pmax(below / half, -1), 1)
  below * (pi / 2 + asin(share)) + half * sqrt(1 - share * share)
}

degree_days <- function(low, high) {
  half <- (high - low) / 2
  mean <- low + half
  (excess(lower, mean, half) - excess(upper, mean, half)) / pi
}

turns <- file("stdin", "r")
while (length(readLines(turns, n = 1)) > 0) {
  begun <- Sys.time()
  column <- degree_days(low, high)
  took <- as.numeric(Sys.time() - begun, units = "secs")
  cat(sprintf("%.6f %.12f\n", took * 1e9 / count, sum(column)))
  flush(stdout())
}

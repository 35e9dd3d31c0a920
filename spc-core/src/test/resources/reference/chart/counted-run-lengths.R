# Average run lengths of charts of counts in control, by the exact distribution of the counts.
# Tests: one point beyond a limit; and that together with eight in succession on one side of the centre line
# (a count on the centre line is on neither side). Linear equations of the absorbing Markov chain.
# Base R only; writes counted-run-lengths.csv beside itself.  Run: Rscript counted-run-lengths.R
arl <- function(k, p, centre, lower, upper) {
  out <- sum(p[k < lower | k > upper]) + (1 - sum(p))
  inside <- k >= lower & k <= upper
  a <- sum(p[inside & k > centre]); b <- sum(p[inside & k < centre]); on <- sum(p[inside & k == centre])
  # states: 1 nothing; 2 to 8 a run of 1 to 7 above; 9 to 15 of 1 to 7 below
  Q <- matrix(0, 15, 15)
  for (s in 1:15) {
    up <- if (s >= 2 && s <= 8) s + 1 else 2
    down <- if (s >= 9) s + 1 else 9
    if (!(s == 8)) Q[s, up] <- Q[s, up] + a
    if (!(s == 15)) Q[s, down] <- Q[s, down] + b
    Q[s, 1] <- Q[s, 1] + on
  }
  c(1 / out, solve(diag(15) - Q, rep(1, 15))[1])
}
rows <- list()
poisson <- function(m) { k <- 0:2000; s <- sqrt(m); c(arl(k, dpois(k, m), m, max(0, m - 3 * s), m + 3 * s)) }
binom <- function(n, r) { k <- 0:n; s <- sqrt(n * r * (1 - r)); arl(k, dbinom(k, n, r), n * r, max(0, n * r - 3 * s), min(n, n * r + 3 * s)) }
out <- data.frame(kind = character(), size = numeric(), rate = numeric(), limits = numeric(), limitsAndRun = numeric())
for (m in c(0.5, 2, 4, 7.56, 16, 19.85, 100)) { v <- poisson(m); out[nrow(out) + 1, ] <- list("c", 1, m, v[1], v[2]) }
for (q in list(c(50, 0.2313), c(50, 0.02), c(100, 0.05), c(200, 0.1), c(20, 0.5), c(1000, 0.004))) { v <- binom(q[1], q[2]); out[nrow(out) + 1, ] <- list("np", q[1], q[2], v[1], v[2]) }
f <- "counted-run-lengths.csv"
writeLines(c("# source: exact run lengths of c and np charts from the Poisson and binomial distributions, limits three standard deviations",
  paste0("# program and version: ", R.version.string), "# edition: -", "# made by: counted-run-lengths.R", "# units: points",
  "# tolerance: relative 1e-9, of a linear system in double"), f)
suppressWarnings(write.table(format(out, digits = 15, trim = TRUE), f, sep = ",", row.names = FALSE, quote = FALSE, append = TRUE))

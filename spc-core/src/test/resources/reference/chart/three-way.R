# Charts of means between and within subgroups, of deviations from nominal and of standardised deviations, and pooled s, of the
# shaft diameters of three machines (machine.csv: 18 subgroups of 10, six of each machine).
# Base R only; writes three-way.csv beside itself.  Run: Rscript three-way.R
m <- read.csv("machine.csv", comment.char = "#")
x <- matrix(m$diameter, nrow = 10); machine <- matrix(m$machine, nrow = 10)[1, ]
Fw <- function(w, n) sapply(w, function(w) integrate(function(t) n * dnorm(t) * (pnorm(t + w) - pnorm(t))^(n - 1), -8, 8, rel.tol = 1e-12, subdivisions = 500)$value)
d2 <- function(n) integrate(function(w) 1 - Fw(w, n), 0, 16, rel.tol = 1e-11, subdivisions = 500)$value
d3 <- function(n) sqrt(2 * integrate(function(w) w * (1 - Fw(w, n)), 0, 16, rel.tol = 1e-11, subdivisions = 500)$value - d2(n)^2)
c4 <- function(df) sqrt(2 / df) * exp(lgamma((df + 1) / 2) - lgamma(df / 2))
xbar <- colMeans(x); r <- apply(x, 2, function(v) diff(range(v)))
out <- c()
put <- function(name, value) out <<- c(out, paste(name, trimws(formatC(value, digits = 15, format = "g")), sep = ","))
# three-way chart
mr <- abs(diff(xbar)); sp <- mean(mr) / (2 / sqrt(pi)); sw <- mean(r) / d2(10)
put("between-within centre", mean(x)); put("between-within upper", mean(x) + 3 * sp); put("between-within lower", mean(x) - 3 * sp)
put("between-within moving range", mean(mr)); put("between-within moving range upper", (1 + 3 * sqrt(2 - 4 / pi) / (2 / sqrt(pi))) * mean(mr))
put("between-within range", mean(r)); put("between-within range upper", (1 + 3 * d3(10) / d2(10)) * mean(r))
put("between-within sigma between", sqrt(max(0, sp^2 - sw^2 / 10)))
# deviations from nominal 0.1250: all machines on one chart
put("deviation centre", mean(x) - 0.125); put("deviation upper", mean(x) - 0.125 + 3 * sw / sqrt(10)); put("deviation first", xbar[1] - 0.125)
# standardised: nominals of their own, spreads of their own
nominal <- c(0.125, 0.124, 0.126)[machine]; sj <- tapply(r, machine, mean) / d2(10)
z <- (xbar - nominal) / sj[machine]
for (i in c(1, 7, 18)) put(paste("standardised-deviation point", i), z[i])
put("standardised-deviation upper", 3 / sqrt(10)); for (i in c(1, 7, 18)) put(paste("standardised-deviation range", i), r[i] / sj[machine[i]])
put("standardised-deviation range centre", d2(10)); put("standardised-deviation range upper", d2(10) + 3 * d3(10))
# estimators of the spread
s <- apply(x, 2, sd); p <- sqrt(mean(s^2))
put("mean-range", sw); put("mean-standard-deviation", mean(s) / c4(9)); put("pooled-standard-deviation", p / c4(162))
put("overall-standard-deviation", sd(as.vector(x)))
put("median-range", median(r) / uniroot(function(w) Fw(w, 10) - 0.5, c(1, 6), tol = 1e-13)$root)
# the means of the subgroups as individuals
put("mean-moving-range", sp); put("median-moving-range", median(mr) / (sqrt(2) * qnorm(0.75)))
writeLines(c("# source: NIST/SEMATECH e-Handbook 3.5.2 data; formulas as docs/methods.md names them", paste0("# program and version: ", R.version.string),
  "# edition: -", "# made by: three-way.R", "# units: inch; standardised: standard deviations", "# tolerance: relative 1e-9, of adaptive integration of d2 and d3", "what,value", out), "three-way.csv")

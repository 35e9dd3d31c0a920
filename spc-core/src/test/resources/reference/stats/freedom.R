# Effective degrees of freedom of estimators of a standard deviation, p-values of the Anderson-Darling statistic of normal samples
# (D'Agostino and Stephens 1986, table 4.9), and AICc. Adaptive integration throughout.
# Base R only; writes freedom.csv beside itself.  Run: Rscript freedom.R
Fw <- function(w, n) sapply(w, function(w) integrate(function(t) n * dnorm(t) * (pnorm(t + w) - pnorm(t))^(n - 1), -8, 8, rel.tol = 1e-12, subdivisions = 500)$value)
fw <- function(w, n) integrate(function(t) n * (n - 1) * dnorm(t) * dnorm(t + w) * (pnorm(t + w) - pnorm(t))^(n - 2), -9, 9, rel.tol = 1e-12, subdivisions = 500)$value
d2 <- function(n) integrate(function(w) 1 - Fw(w, n), 0, 16, rel.tol = 1e-11, subdivisions = 500)$value
d3 <- function(n) sqrt(2 * integrate(function(w) w * (1 - Fw(w, n)), 0, 16, rel.tol = 1e-11, subdivisions = 500)$value - d2(n)^2)
c4 <- function(df) sqrt(2 / df) * exp(lgamma((df + 1) / 2) - lgamma(df / 2))
nu <- function(v2) uniroot(function(d) log((1 - c4(d)^2) / c4(d)^2 / v2), c(0.05, 900), tol = 1e-12)$root
med <- function(n) uniroot(function(w) Fw(w, n) - 0.5, c(0.1, 8), tol = 1e-13)$root
out <- c(); put <- function(name, a, b, value) out <<- c(out, paste(name, a, b, trimws(formatC(value, digits = 12, format = "g")), sep = ","))
cv <- function(n) (d3(n) / d2(n))^2; cs <- function(n) (1 - c4(n - 1)^2) / c4(n - 1)^2
put("mean-range", 5, 25, nu(cv(5) / 25)); put("mean-range", 2, 4, nu(cv(2) / 4))
put("mean-range unequal", "2;3;3", 3, nu((cv(2) + 2 * cv(3)) / 9))
put("mean-standard-deviation", 5, 25, nu(cs(5) / 25)); put("mean-standard-deviation unequal", "2;3;3", 3, nu((cs(2) + 2 * cs(3)) / 9))
for (q in list(c(5, 25), c(2, 30), c(10, 20))) { m <- med(q[1]); put("median-range", q[1], q[2], nu(1 / (4 * q[2] * fw(m, q[1])^2 * m^2))) }
m <- med(2); both <- integrate(function(x) dnorm(x) * (pnorm(x - m) + pnorm(x + m, lower.tail = FALSE))^2, -Inf, Inf, rel.tol = 1e-12)$value
put("median-moving-range", 2, 24, nu((0.25 + 2 * (both - 0.25)) / (fw(m, 2)^2 * m^2 * 24)))
sdmed <- function(n) { k <- (n + 1) / 2; sqrt(integrate(function(t) t^2 * exp(lfactorial(n) - 2 * lfactorial(k - 1) + (k - 1) * (pnorm(t, log.p = TRUE) + pnorm(-t, log.p = TRUE))) * dnorm(t), -9, 9, rel.tol = 1e-12)$value) }
for (n in c(3, 5, 9, 15)) put("median deviation", n, 0, sdmed(n))
for (n in c(2, 3, 6, 9)) { put("median of range", n, 0, med(n)); put("density of range", n, 0, fw(med(n), n)) }
for (n in c(2, 3, 7, 25)) { put("d2", n, 0, d2(n)); put("d3", n, 0, d3(n)); put("c4", n, 0, c4(n - 1)) }
adp <- function(A, n) { a <- A * (1 + 0.75 / n + 2.25 / n^2)
  if (a < 0.2) 1 - exp(-13.436 + 101.14 * a - 223.73 * a^2) else if (a < 0.34) 1 - exp(-8.318 + 42.796 * a - 59.938 * a^2) else if (a < 0.6) exp(0.9177 - 4.279 * a - 1.38 * a^2) else exp(1.2937 - 5.709 * a + 0.0186 * a^2) }
for (A in c(0.12, 0.17, 0.25, 0.45, 0.7, 1.5)) put("ad p", A, 40, adp(A, 40))
writeLines(c("# source: formulas of docs/methods.md; order statistics of the normal distribution", paste0("# program and version: ", R.version.string),
  "# edition: -", "# made by: freedom.R", "# units: as named", "# tolerance: relative 1e-8, of adaptive integration", "what,a,b,value", out), "freedom.csv")

# Large-sample standard errors behind the intervals of capability: of the normal score of the share outside two limits, and of
# percentile indices by the delta method, gradients by central differences, information matrices in closed form.
# Base R only; writes intervals.csv beside itself.  Run: Rscript intervals.R
rows <- list()
add <- function(what, a, b, c, n, value, error) rows[[length(rows) + 1]] <<-
  paste(what, paste(trimws(formatC(c(a, b, c), digits = 10, format = "g")), collapse = ","), n, trimws(formatC(value, digits = 15, format = "g")),
        formatC(error, digits = 12, format = "g"), sep = ",")
# score: below, above (standard deviations from the mean to the limits), degrees of freedom in the third place
score <- function(a, b) qnorm(pnorm(-a) + pnorm(-b), lower.tail = FALSE)
for (q in list(c(4, 4, 49, 50), c(5, 3, 24, 25), c(2, 2.5, 99, 100), c(3, 6, 60.5, 125))) {
  a <- q[1]; b <- q[2]; df <- q[3]; n <- q[4]; h <- 1e-5
  g <- c((score(a + h, b) - score(a - h, b)), (score(a, b + h) - score(a, b - h))) / (2 * h)
  # mean m has variance 1/n, s has 1/(2 df); a = (m - L)/s, b = (U - m)/s
  V <- matrix(c(1 / n + a^2 / (2 * df), -1 / n + a * b / (2 * df), -1 / n + a * b / (2 * df), 1 / n + b^2 / (2 * df)), 2)
  add("score", a, b, df, n, score(a, b), sqrt(drop(t(g) %*% V %*% g)))
}
ppu <- function(q, U) (U - q(0.5)) / (q(0.99865) - q(0.5))
delta <- function(name, f, p, V, U, n) {
  h <- 1e-6 * pmax(abs(p), 0.1); g <- sapply(seq_along(p), function(i) { u <- d <- p; u[i] <- p[i] + h[i]; d[i] <- p[i] - h[i]; (f(u) - f(d)) / (2 * h[i]) })
  add(name, p[1], if (length(p) > 1) p[2] else 0, U, n, f(p), sqrt(drop(t(g) %*% V %*% g)))
}
U <- 4; n <- 80
p <- c(0.1, 0.4); delta("lognormal", function(p) ppu(function(a) qlnorm(a, p[1], p[2]), U), p, diag(c(p[2]^2 / n, p[2]^2 / (2 * n))), U, n)
p <- 1.1; delta("rayleigh", function(p) ppu(function(a) p * sqrt(-2 * log1p(-a)), U), p, matrix(p^2 / (4 * n)), U, n)
e <- -digamma(1); p <- c(1.8, 1.5)
I <- matrix(c((pi^2 / 6 + (1 - e)^2) / p[1]^2, -(1 - e) / p[2], -(1 - e) / p[2], p[1]^2 / p[2]^2), 2) * n
delta("weibull", function(p) ppu(function(a) qweibull(a, p[1], p[2]), U), p, solve(I), U, n)
p <- c(3, 0.5); I <- matrix(c(trigamma(p[1]), 1 / p[2], 1 / p[2], p[1] / p[2]^2), 2) * n
delta("gamma", function(p) ppu(function(a) qgamma(a, p[1], scale = p[2]), U), p, solve(I), U, n)
writeLines(c("# source: large-sample theory (delta method); Weibull and gamma information matrices in closed form",
  paste0("# program and version: ", R.version.string), "# edition: -", "# made by: intervals.R", "# units: standard deviations; indices",
  "# tolerance: relative 1e-6, of differences in both programs", "what,first,second,third,n,value,error", unlist(rows)), "intervals.csv")

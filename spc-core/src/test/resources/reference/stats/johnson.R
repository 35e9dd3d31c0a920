# Percentiles of Johnson's curves by their definition: z = gamma + eta f(y), y = (x - xi)/lambda, with f = ln(y/(1 - y)) (bounded, 0),
# ln y (lognormal, 1), asinh y (unbounded, 2). Base R only; writes johnson.csv beside itself.  Run: Rscript johnson.R
rows <- c()
for (q in list(c(0, 0.6, 1.4, -2, 7), c(0, -1.2, 0.8, 10, 3), c(1, 0.6, 1.4, -2, 1), c(2, 0.6, 1.4, -2, 7), c(2, -1.5, 1.8, 0, 1)))
  for (p in c(0.00135, 0.1, 0.5, 0.9, 0.99865)) {
    w <- (qnorm(p) - q[2]) / q[3]
    y <- if (q[1] == 0) plogis(w) else if (q[1] == 1) exp(w) else sinh(w)
    rows <- c(rows, paste(c(q, p, formatC(q[4] + q[5] * y, digits = 15, format = "g", flag = "-", width = 1)), collapse = ","))
  }
writeLines(c("# source: Johnson 1949, Biometrika 36, by definition", paste0("# program and version: ", R.version.string), "# edition: 1949",
  "# made by: johnson.R", "# units: none", "# tolerance: relative 1e-12", "curve,gamma,eta,xi,lambda,p,x", rows), "johnson.csv")

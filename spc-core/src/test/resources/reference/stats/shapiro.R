# Shapiro-Wilk W and p of small samples.  Base R only; writes shapiro.csv beside itself.  Run: Rscript shapiro.R
samples <- list(c(1, 2, 4), c(1, 1.1, 9), c(2.1, 3.3, 3.9, 8.8), c(5, 5.2, 5.9, 6, 9.4), c(1, 2, 3, 4, 5, 6, 30),
  c(0.1, 0.4, 0.9, 1.1, 1.5, 1.7, 2.2, 2.6, 3, 5.5, 6.1), c(4, 4.4, 5.1, 5.2, 5.9, 6, 6.3, 6.7, 7.4, 8, 8.2, 12),
  c(3, 3, 3, 4, 4, 5, 5, 6, 7, 7, 8, 9, 12, 15, 21))
out <- file("shapiro.csv", "w")
writeLines(c("# source: Royston 1995, algorithm AS R94, as in shapiro.test of base R", "# edition: -",
  paste("# program and version:", R.version.string), "# made by: shapiro.R", "# units: none",
  "# tolerance: W 1e-7 and p 1e-6, the digits of the published polynomials", "values,w,p"), out)
for (x in samples) { t <- shapiro.test(x)
  writeLines(sprintf("%s,%.12f,%.12f", paste(x, collapse = " "), t$statistic, t$p.value), out) }
close(out)

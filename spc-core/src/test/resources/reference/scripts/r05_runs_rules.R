source("lib.R")
# Markov chain for Shewhart chart with supplementary runs rules.
# Zones (in sigma): 1: < -3, 2: -3..-2, 3: -2..-1, 4: -1..0, 5: 0..1, 6: 1..2, 7: 2..3, 8: > 3
# A rule is list(k, m, zones): signal when at least k of the last m points lie in the given zones.
RULES <- list(C1 = list(list(1, 1, 1), list(1, 1, 8)), C2 = list(list(2, 3, 1:2), list(2, 3, 7:8)), C3 = list(list(4, 5, 1:3), list(4, 5, 6:8)), C4 = list(list(8, 8, 1:4), list(8, 8, 5:8)), N9 = list(list(9, 9, 1:4), list(9, 9, 5:8)))
zoneprob <- function(shift) diff(c(0, pnorm(c(-3, -2, -1, 0, 1, 2, 3) - shift), 1))
chain <- function(rules) {
  nb <- sapply(rules, function(r) r[[2]] - 1)
  start <- lapply(nb, function(b) rep(0L, b)); key <- function(s) paste(vapply(s, paste, "", collapse = ""), collapse = "|")
  idx <- new.env(); states <- list(start); assign(key(start), 1L, idx); tr <- list(); i <- 1
  while (i <= length(states)) {
    st <- states[[i]]; to <- integer(8)
    for (z in 1:8) {
      sig <- FALSE; ns <- st
      for (j in seq_along(rules)) { r <- rules[[j]]; w <- c(st[[j]], as.integer(z %in% r[[3]])); if (sum(w) >= r[[1]]) { sig <- TRUE; break }
        w <- if (length(w) > 1) w[-1] else integer(0)
        # drop indicator bits that can no longer take part in a signal, to keep the state space minimal
        if (r[[1]] == r[[2]] && length(w)) { q <- which(w == 0); if (length(q)) w[seq_len(max(q))] <- 0L }
        ns[[j]] <- w }
      if (sig) { to[z] <- 0L } else { k <- key(ns); if (is.null(idx[[k]])) { states[[length(states) + 1]] <- ns; assign(k, length(states), idx) }; to[z] <- idx[[k]] }
    }
    tr[[i]] <- to; i <- i + 1
  }
  do.call(rbind, tr)
}
arl <- function(tr, shift) { p <- zoneprob(shift); n <- nrow(tr); Q <- matrix(0, n, n); for (z in 1:8) { ok <- tr[, z] > 0; ii <- cbind(which(ok), tr[ok, z]); Q[ii] <- Q[ii] + 0; for (a in seq_len(nrow(ii))) Q[ii[a, 1], ii[a, 2]] <- Q[ii[a, 1], ii[a, 2]] + p[z] }
  N1 <- solve(diag(n) - Q, rep(1, n)); m2 <- solve(diag(n) - Q, 2 * N1 - 1); c(arl = N1[1], sd = sqrt(m2[1] - N1[1]^2)) }
gl <- function(n, a, b) { i <- 1:(n - 1); bb <- i / sqrt(4 * i^2 - 1); J <- matrix(0, n, n); J[cbind(i, i + 1)] <- bb; J[cbind(i + 1, i)] <- bb; e <- eigen(J, symmetric = TRUE); list(x = (b - a) / 2 * e$values + (a + b) / 2, w = (b - a) * e$vectors[1, ]^2) }
cusum1 <- function(k, h, shift, n = 80) { q <- gl(n, 0, h); A <- rbind(c(1 - pnorm(k - shift), -q$w * dnorm(q$x + k - shift)), cbind(-pnorm(k - q$x - shift), diag(n) - outer(q$x, seq_len(n), function(z, j) q$w[j] * dnorm(q$x[j] + k - z - shift)))); solve(A, rep(1, n + 1))[1] }
cusum2 <- function(k, h, shift) { a <- function(s) tryCatch({ v <- cusum1(k, h, s); if (v > 0 && v < 1e12) 1 / v else 0 }, error = function(e) 0); 1 / (a(shift) + a(-shift)) } # a side that practically never signals contributes nothing
ewma <- function(lam, L, shift, n = 80) { h <- L * sqrt(lam / (2 - lam)); q <- gl(n, -h, h); K <- outer(q$x, seq_len(n), function(u, j) q$w[j] * dnorm((q$x[j] - (1 - lam) * u) / lam - shift) / lam); Lx <- solve(diag(n) - K, rep(1, n)); 1 + sum(q$w * Lx * dnorm(q$x / lam - shift) / lam) }
# Nelson tests on standardized values; each returns the indices of the points completing a pattern
run_ends <- function(f, z, m) { n <- length(z); if (n < m) integer(0) else (m:n)[vapply(m:n, function(i) f(z[(i - m + 1):i]), NA)] }
nelson <- function(z) list(
  test1 = which(abs(z) > 3),
  test2 = run_ends(function(w) all(w > 0) || all(w < 0), z, 9),
  test3 = run_ends(function(w) all(diff(w) > 0) || all(diff(w) < 0), z, 6),
  test4 = run_ends(function(w) { d <- sign(diff(w)); all(d != 0) && all(d[-1] == -d[-length(d)]) }, z, 14),
  test5 = run_ends(function(w) (sum(w > 2) >= 2 && w[3] > 2) || (sum(w < -2) >= 2 && w[3] < -2), z, 3),
  test6 = run_ends(function(w) (sum(w > 1) >= 4 && w[5] > 1) || (sum(w < -1) >= 4 && w[5] < -1), z, 5),
  test7 = run_ends(function(w) all(abs(w) < 1), z, 15),
  test8 = run_ends(function(w) all(abs(w) > 1), z, 8))
we <- function(z) list(rule1 = which(abs(z) > 3), rule2 = nelson(z)$test5, rule3 = nelson(z)$test6, rule4 = run_ends(function(w) all(w > 0) || all(w < 0), z, 8))
vv <- function(l) lapply(l, vec)
CW <- "Champ and Woodall, Exact results for Shewhart control charts with supplementary runs rules, Technometrics 29(4), 393-399"
NEL <- "Nelson, The Shewhart control chart - tests for special causes, Journal of Quality Technology 16(4), 237-239"
WEH <- "Western Electric, Statistical Quality Control Handbook"
shifts <- seq(0, 3, .2)
cases <- list(); add <- function(...) cases[[length(cases) + 1]] <<- case(...)
PR <- list(C1 = c(370.40,308.43,200.08,119.67,71.55,43.89,27.82,18.25,12.38,8.69,6.30,4.72,3.65,2.90,2.38,2.00),
 C12 = c(225.44,177.56,104.46,57.92,33.12,20.01,12.81,8.69,6.21,4.66,3.65,2.96,2.48,2.13,1.87,1.68),
 C13 = c(166.05,120.70,63.88,33.99,19.78,12.66,8.84,6.62,5.24,4.33,3.68,3.18,2.78,2.43,2.14,1.89),
 C123 = c(132.89,97.86,52.93,28.70,16.93,10.95,7.68,5.76,4.54,3.73,3.14,2.70,2.35,2.07,1.85,1.67),
 C1234 = c(91.75,66.80,36.61,20.90,13.25,9.22,6.89,5.41,4.41,3.68,3.13,2.70,2.35,2.07,1.85,1.67))
for (nm in names(PR)) { parts <- strsplit(sub("C", "", nm), "")[[1]]; tr <- chain(do.call(c, RULES[paste0("C", parts)])); v <- sapply(shifts, function(s) arl(tr, s)); dev <- abs(v[1, ] - PR[[nm]]); cat(nm, nrow(tr), "states; max deviation from print", max(dev), "at", shifts[which.max(dev)], "\n")
  add(paste0("ARL-", nm), CW, "Table 1", "1987", paste0("printed values ", MEM, "; ", COMPF, " by an exact Markov chain"), list(rules = paste0("C", parts), definition = "C1: one point beyond 3 sigma; C2: 2 of 3 beyond 2 sigma same side; C3: 4 of 5 beyond 1 sigma same side; C4: 8 in a row on one side", shift_in_sigma_of_plotted_statistic = shifts), list(arl = v[1, ], run_length_sd = v[2, ], arl_printed = PR[[nm]]), list(computed = 1e-6, printed = "0.01 (a few printed values are truncated, not rounded)"), "Two-sided, zero-state (chart starts empty, all indicator memories clear).") }
tr <- chain(c(RULES$C1, RULES$N9)); v <- sapply(shifts, function(s) arl(tr, s)[1]); add("ARL-C1-N9", "Shewhart chart with the nine-in-a-row rule in place of eight (Nelson test 1 and 2)", "computed", "computed", COMPF, list(rules = c("C1", "9 in a row on one side"), shift = shifts), list(arl = v), 1e-6)
for (q in list(c(.5, 5), c(.25, 8.01), c(.5, 4.77))) { v <- sapply(c(0, .25, .5, .75, 1, 1.5, 2, 3), function(s) cusum2(q[1], q[2], s)); cat("cusum", q, round(v, 2), "\n"); add(sprintf("ARL-CUSUM-k%g-h%g", q[1], q[2]), "Average run length of the two-sided cusum (Lucas 1976, Hawkins 1993, Montgomery table 'ARL performance of the tabular cusum')", "k and h in sigma", "1976-2013", paste0(COMPF, " (integral equation, Gauss-Legendre 80 nodes)"), list(k = q[1], h = q[2], shift = c(0, .25, .5, .75, 1, 1.5, 2, 3)), list(arl_zero_state = v), 1e-4, if (q[2] == 5) "Montgomery prints 465, 139, 38.0, 17.0, 10.4, 5.75, 4.01, 2.57 (from memory)" else if (q[2] == 8.01) "Hawkins: k 0.25 with h 8.01 gives ARL0 about 370" else "Hawkins: k 0.5 with h 4.77 gives ARL0 about 370") }
for (q in list(c(.1, 2.814), c(.25, 2.998))) { v <- sapply(c(0, .25, .5, .75, 1, 1.5, 2, 3), function(s) ewma(q[1], q[2], s)); cat("ewma", q, round(v, 2), "\n"); add(sprintf("ARL-EWMA-l%g-L%g", q[1], q[2]), "Lucas and Saccucci, Exponentially weighted moving average control schemes, Technometrics 32(1)", "Table 3, asymptotic limits", "1990", paste0(COMPF, " (integral equation)"), list(lambda = q[1], L = q[2], shift = c(0, .25, .5, .75, 1, 1.5, 2, 3)), list(arl_zero_state = v), 1e-4, "Printed ARL0 is 500 for these designs; at shift 1: 10.3 (lambda 0.1), 11.0 (0.25) (from memory)") }
seqs <- list(
 "one-beyond" = c(.2, -.4, 3.01, .1, -3.2, 3.0), "nine-side" = c(-.5, .3, .2, .1, .4, .9, .5, .6, .2, .3, .4, -.1), "eight-only" = c(-.5, .3, .2, .1, .4, .9, .5, .6, .2, -.3),
 "six-rising" = c(0, -1.2, -.9, -.5, -.1, .3, .8, .2), "five-rising" = c(0, -1.2, -.9, -.5, -.1, .3, .2), "alternating14" = c(.1, -.1, .4, -.3, .2, -.2, .5, -.6, .3, -.1, .2, -.4, .6, -.2, -.3),
 "two-of-three" = c(.1, 2.2, .5, 2.4, -.3, -2.1, -2.3, .2), "two-of-three-opposite" = c(.1, 2.2, -2.4, .3, 2.1, .2, .3, 2.5), "four-of-five" = c(.2, 1.2, 1.4, .3, 1.1, 1.3, -.2, -1.1, -1.2, -1.6, -1.05),
 "stratification15" = c(2, .5, -.4, .3, -.2, .1, .9, -.9, .2, .4, -.6, .7, -.3, .2, -.1, .3, 1.5), "mixture8" = c(.5, 1.2, -1.4, 1.1, 2.0, -1.6, -1.3, 1.2, -2.2, .4))
for (nm in names(seqs)) add(paste0("RULES-", nm), paste(NEL, "and", WEH), "definitions of the eight tests; four zone rules", "1984 / 1956", "definitions from memory; sequence constructed here, expected indices from a literal base R implementation of the definitions", list(z = seqs[[nm]]), list(nelson = vv(nelson(seqs[[nm]])), western_electric = vv(we(seqs[[nm]]))), "exact", "Indices are 1-based and name every point that completes the pattern. A point on a limit or on the centre line is not beyond it.")
add("RULES-FALSE-ALARM", NEL, "probability that a given window of in-control normal points satisfies each test", "1984", COMPF, list(distribution = "independent N(0,1)"), list(test1 = 2 * pnorm(-3), test2 = 2 * .5^9, test3 = 2 / factorial(6), test5 = 2 * (3 * pnorm(-2)^2 * (1 - pnorm(-2)) + pnorm(-2)^3), test6 = 2 * (5 * pnorm(-1)^4 * (1 - pnorm(-1)) + pnorm(-1)^5), test7 = (1 - 2 * pnorm(-1))^15, test8 = (2 * pnorm(-1))^8, we_rule4 = 2 * .5^8), 1e-10, "Window probabilities (test 5 and 6 here without the demand that the last point lie in the zone).")
save_cases("out_05_runs_rules_arl.json", "Runs rules: definitions and run lengths", cases, list(western_electric_1956 = "1: one point beyond 3 sigma. 2: two of three successive points beyond 2 sigma on the same side. 3: four of five successive points beyond 1 sigma on the same side. 4: eight successive points on one side of the centre line. The same book also describes stratification (15 in a row within 1 sigma), mixture (8 in a row with none within 1 sigma), and systematic patterns.", nelson_1984 = "1: beyond 3 sigma. 2: nine in a row on one side. 3: six in a row steadily rising or falling. 4: fourteen in a row alternating up and down. 5: two of three beyond 2 sigma same side. 6: four of five beyond 1 sigma same side. 7: fifteen in a row within 1 sigma on either side. 8: eight in a row beyond 1 sigma on both sides, none within.", differences = "Eight in a row (Western Electric) against nine (Nelson; ISO 7870-2 and older ISO 8258 follow Nelson's set) against seven (many handbooks). Six points rising means five successive increases; other books count six or seven increases. Champ and Woodall write the zones as (2,3) and (1,3), equal to 'beyond' whenever rule C1 is also in force."))

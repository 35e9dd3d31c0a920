source("lib.R")
HB <- "NIST/SEMATECH e-Handbook of Statistical Methods"; HBY <- "2003-2012"
DPF <- function(f) paste0("data verified against a stored copy: the NIST/SEMATECH e-Handbook data set ", f)
cases <- list(); add <- function(...) cases[[length(cases) + 1]] <<- case(...)

## individuals and moving range
x <- c(49.6,47.6,49.9,51.3,47.8,51.2,52.6,52.4,53.6,52.1); mr <- round(abs(diff(x)), 10)
ucl <- mean(x) + 3 * mean(mr) / 1.128; lcl <- mean(x) - 3 * mean(mr) / 1.128
chk(c(mean(x), mean(mr), ucl, lcl), c(50.81, 1.8778, 55.8041, 45.8159), 6e-5, "IMR")
k2 <- constants(2)
add("CHART-IMR-NIST-6.3.2.2", HB, "6.3.2.2 Individuals control charts, batch flow-rate example", HBY, paste0(MEM, " (data and printed limits); recomputed here with base R"),
    list(x = x, d2_used_in_print = 1.128), list(mean = mean(x), mean_moving_range = mean(mr), UCL = ucl, LCL = lcl, moving_ranges = mr,
      UCL_exact_d2 = mean(x) + 3 * mean(mr) / k2$d2, LCL_exact_d2 = mean(x) - 3 * mean(mr) / k2$d2, UCL_MR_exact = k2$D4 * mean(mr), points_outside = vec(integer(0))),
    list(printed = 5e-5, exact = 1e-9), "Printed limits 55.8041 and 45.8159 use d2 = 1.128; an implementation with d2 = 1.128379 gives 55.80241 and 45.81759, so allow 0.002 or pass d2.")

## EWMA
y <- c(52,47,53,49.3,50.1,47,51,50.1,51.2,50.5,49.6,47.6,49.9,51.3,47.8,51.2,52.6,52.4,53.6,52.1); lam <- 0.3; z <- 50; zz <- 50
for (v in y) { z <- lam * v + (1 - lam) * z; zz <- c(zz, z) }
pz <- c(50.00,50.60,49.52,50.56,50.18,50.16,49.21,49.75,49.85,50.26,50.33,50.11,49.36,49.52,50.05,49.38,49.92,50.73,51.23,51.94,51.99)
cat("EWMA max dev from print", max(abs(zz - pz)), "\n")
s <- 2.0539; i <- 1:20
add("CHART-EWMA-NIST-6.3.2.4", HB, "6.3.2.4 EWMA control charts, worked example", HBY, paste0(MEM, " (data and printed values); recomputed here with base R"),
    list(x = y, lambda = lam, start = 50, target = 50, s = s, L = 3),
    list(ewma = zz, ewma_printed = pz, UCL_steady_printed = 52.5884, LCL_steady_printed = 47.4115,
         UCL_steady = 50 + 3 * s * sqrt(lam / (2 - lam)), LCL_steady = 50 - 3 * s * sqrt(lam / (2 - lam)),
         UCL_exact_time_varying = 50 + 3 * s * sqrt(lam / (2 - lam) * (1 - (1 - lam)^(2 * i))), points_outside = vec(integer(0))),
    list(ewma_printed = 0.0051, limits_printed = 1e-4, exact = 1e-9), "The first printed EWMA value is the start value 50.00, so there are 21 values for 20 observations. The printed limits use sqrt(0.3/1.7) = 0.4201 rounded; the lower limit is printed truncated.")

## CUSUM
g <- c(324.925,324.675,324.725,324.350,325.350,325.225,324.125,324.525,325.225,324.600,324.625,325.150,328.325,327.250,327.825,328.500,326.675,327.775,326.875,328.350)
k <- 0.3175; h <- 4.1959; hi <- lo <- 0; H <- L <- C <- NULL; cu <- 0
for (v in g) { hi <- max(0, hi + v - 325 - k); lo <- max(0, lo + 325 - k - v); cu <- cu + v - 325; H <- c(H, hi); L <- c(L, lo); C <- c(C, cu) }
pH <- c(0,0,0,0,.03,0,0,0,0,0,0,0,3.01,4.94,7.45,10.63,11.99,14.44,16.00,19.04); pL <- c(0,.01,0,.33,0,0,.56,.72,.17,.25,.31,0,0,0,0,0,0,0,0,0)
cat("CUSUM max dev", max(abs(H - pH)), max(abs(L - pL)), "\n")
add("CHART-CUSUM-NIST-6.3.2.3", HB, "6.3.2.3 Cusum control charts, tabular form, worked example with process mean 325", HBY, paste0(MEM, " (data and printed columns); recomputed here with base R"),
    list(x = g, target = 325, k = k, h = h), list(S_hi = H, S_lo = L, cusum = C, S_hi_printed = pH, S_lo_printed = pL, signal_high_at = which(H > h), signal_low_at = vec(which(L > h))),
    list(printed = 0.006, exact = 1e-9), "k and h here are in units of the data (k = 0.3175, h = 4.1959). The page prints group means to two decimals in the table but computes with three; the first value of the plain cusum column is a known misprint (-0.007 for -0.075). First signal at group 14.")

## CUSUM design constants
d0 <- -2 * log(0.0027 / 2); d1 <- 2 * log((1 - 0.01) / (0.0027 / 2))
chk(d0 * .3175, 4.1959, 6e-5, "h")
add("CHART-CUSUM-DESIGN-NIST", HB, "6.3.2.3 design: d = (2/delta^2) ln((1-beta)/alpha), k = delta*sigma_xbar/2, h = d*k", HBY, paste0("printed k = 0.3175, h = 4.1959 ", MEM, "; ", COMPF),
    list(alpha_one_side = 0.00135, delta = 1, sigma_xbar = 0.635), list(k = 0.3175, d_beta_neglected = d0, h_beta_neglected = d0 * 0.3175, d_beta_0.01 = d1, h_beta_0.01 = d1 * 0.3175), list(printed = 6e-5, computed = 1e-9),
    "The printed h = 4.1959 is reproduced only with beta neglected and alpha = 0.0027 split over the two sides; with beta = 0.01 h is 4.1895.")

## c chart
w <- read.csv("data/nist_pmc331_wafer_defects.csv"); cb <- mean(w$defects)
add("CHART-C-NIST-6.3.3.1", HB, "6.3.3.1 Counts control charts, wafer defects", HBY, paste0(DPF("MONITOR-6_3_3_1.DAT"), "; centre line and limits recomputed here"),
    list(data_file = "data/nist_pmc331_wafer_defects.csv", column = "defects"), list(center = cb, UCL = cb + 3 * sqrt(cb), LCL = max(0, cb - 3 * sqrt(cb)), points_outside = vec(w$wafer[w$defects > cb + 3 * sqrt(cb) | w$defects < cb - 3 * sqrt(cb)]), points_on_limit = vec(w$wafer[w$defects == cb + 3 * sqrt(cb)])),
    1e-9, "c-bar = 16 exactly, limits 28 and 4 exactly; wafer 3 has exactly 28 defects (on the limit, not beyond it), wafer 24 has 31. Useful to fix whether 'outside' means strictly beyond.")
pp <- ppois(c(3, 28), 16); add("CHART-C-PROB-LIMITS", "Exact Poisson tail areas for the 3-sigma c chart", "c-bar = 16", "computed", COMPF, list(lambda = 16, LCL = 4, UCL = 28), list(P_below_LCL = pp[1], P_above_UCL = 1 - pp[2]), 1e-12)

## X-bar / R / S on gear data
G <- read.csv("data/nist_gear_diameter.csv"); b <- split(G$diameter, G$batch); n <- 10; kk <- constants(n)
m <- sapply(b, mean); r <- sapply(b, function(v) diff(range(v))); ss <- sapply(b, sd)
lim <- function(m, r, s, kk) list(grand_mean = mean(m), R_bar = mean(r), S_bar = mean(s), xbar_UCL_R = mean(m) + kk$A2 * mean(r), xbar_LCL_R = mean(m) - kk$A2 * mean(r),
   xbar_UCL_S = mean(m) + kk$A3 * mean(s), xbar_LCL_S = mean(m) - kk$A3 * mean(s), R_UCL = kk$D4 * mean(r), R_LCL = kk$D3 * mean(r), S_UCL = kk$B4 * mean(s), S_LCL = kk$B3 * mean(s),
   sigma_from_R = mean(r) / kk$d2, sigma_from_S = mean(s) / kk$c4)
l <- lim(m, r, ss, kk); l$pooled_sd <- sqrt(mean(ss^2)); l$subgroup_means <- m; l$subgroup_ranges <- r; l$subgroup_sds <- ss
l$mean_points_outside_R <- vec(which(m > l$xbar_UCL_R | m < l$xbar_LCL_R)); l$range_points_outside <- vec(which(r > l$R_UCL | r < l$R_LCL)); l$sd_points_outside <- vec(which(ss > l$S_UCL | ss < l$S_LCL))
add("CHART-XRS-GEAR", "NIST gear diameter data (Dataplot reference data)", "10 batches of 10 diameters", "1990", paste0(DPF("GEAR.DAT"), "; ", COMP), list(data_file = "data/nist_gear_diameter.csv", column = "diameter", subgroup = "batch", n = 10), l, 1e-9, "Subgroup size 10 has non-zero D3 and B3.")
a <- anova(lm(diameter ~ factor(batch), G)); bt <- bartlett.test(diameter ~ factor(batch), G)
add("STAT-GEAR-ANOVA-BARTLETT", HB, "1.3.5.7 Bartlett's test and 1.3.5.4/1.3.5.10 (gear data)", HBY, paste0(DPF("GEAR.DAT"), "; ", COMP, "; the handbook prints a Bartlett statistic of 20.78580 (from memory)"), list(data_file = "data/nist_gear_diameter.csv"),
    list(F = a$`F value`[1], p = a$`Pr(>F)`[1], ss_between = a$`Sum Sq`[1], ss_within = a$`Sum Sq`[2], bartlett_K2 = unname(bt$statistic), bartlett_df = unname(bt$parameter), bartlett_p = bt$p.value), 1e-8)
cat("Bartlett", bt$statistic, "\n")
med <- sapply(b, median); lv <- anova(lm(abs(diameter - med[batch]) ~ factor(batch), G))
cat("Levene median", lv$`F value`[1], "\n")
add("STAT-GEAR-LEVENE", HB, "1.3.5.10 Levene test, median-centred (gear data)", HBY, paste0(DPF("GEAR.DAT"), "; ", COMP, "; printed W = 1.705910 (from memory)"), list(data_file = "data/nist_gear_diameter.csv"), list(W = lv$`F value`[1], df1 = 9, df2 = 90), list(printed = 1e-5, exact = 1e-9))

## attribute charts on Ishikawa data
p <- read.csv("data/ishikawa_p79_defective_motors.csv"); pb <- sum(p$defective) / sum(p$n); se <- sqrt(pb * (1 - pb) / p$n); up <- pb + 3 * se; lo <- pmax(0, pb - 3 * se); ph <- p$defective / p$n
add("CHART-P-ISHIKAWA-79", "Ishikawa, Guide to Quality Control", "p chart with varying sample size, pp. 77-79 (defective motors)", "1982", paste0(DPF("PCC.DAT"), "; ", COMP), list(data_file = "data/ishikawa_p79_defective_motors.csv"),
    list(p_bar = pb, p = ph, UCL = up, LCL = lo, points_outside = vec(which(ph > up | ph < lo)), standardized = (ph - pb) / se), 1e-9)
q <- read.csv("data/ishikawa_p80_defective_mirrors.csv"); np <- mean(q$defective); pq <- np / 150; s3 <- 3 * sqrt(np * (1 - pq))
add("CHART-NP-ISHIKAWA-80", "Ishikawa, Guide to Quality Control", "pn chart, pp. 80-81 (defective mirrors)", "1982", paste0(DPF("PNCC.DAT"), "; ", COMP), list(data_file = "data/ishikawa_p80_defective_mirrors.csv", n = 150),
    list(center = np, p_bar = pq, UCL = np + s3, LCL = max(0, np - s3), points_outside = vec(q$subgroup[q$defective > np + s3])), 1e-9, "The header comment of the stored data file says all n = 100 in one copy; the n column is 150 throughout and is used here.")
u <- read.csv("data/ishikawa_p81_wire_cracks.csv"); ub <- sum(u$cracks) / sum(u$length); us <- 3 * sqrt(ub / u$length); ui <- u$cracks / u$length
add("CHART-U-ISHIKAWA-81", "Ishikawa, Guide to Quality Control", "u chart with varying area of opportunity, pp. 81-83 (cracks in wire)", "1982", paste0(DPF("UCC.DAT"), "; ", COMP), list(data_file = "data/ishikawa_p81_wire_cracks.csv"),
    list(u_bar = ub, u = ui, UCL = ub + us, LCL = pmax(0, ub - us), points_outside = vec(which(ui > ub + us | ui < ub - us))), 1e-9)

## normality and EDA
Z <- read.csv("data/nist_zarr13_calibration.csv")$y; A <- ad_normal(Z); n <- length(Z); dz <- Z - mean(Z)
sw <- shapiro.test(Z); ppcc <- cor(qnorm(c(1 - 0.5^(1/n), (2:(n-1) - 0.3175) / (n + 0.365), 0.5^(1/n))), sort(Z))
add("STAT-ZARR13", HB, "1.4.2.8 Heat flow meter case study; 1.3.5.14 Anderson-Darling test", HBY, paste0(DPF("ZARR13.DAT"), "; ", COMP, "; printed mean 9.261460, s 0.02278881 from memory"), list(data_file = "data/nist_zarr13_calibration.csv"),
    list(n = n, mean = mean(Z), sd = sd(Z), lag1_autocorrelation = sum(dz[-1] * dz[-n]) / sum(dz^2), anderson_darling_A2 = A$A2, A2_adjusted = A$A2_adjusted, A2_p_value = A$p_value_stephens, shapiro_W = unname(sw$statistic), shapiro_p = sw$p.value, ppcc_filliben = ppcc, median = median(Z)),
    list(mean_sd_printed = 1e-6, computed = 1e-8, p_value = 1e-3), "A2_adjusted = A2 (1 + 0.75/n + 2.25/n^2); p-value by the D'Agostino-Stephens (1986) piecewise formula. Beware: the handbook's 'adjusted' statistic differs between pages.")
R <- read.csv("data/nist_pmc52_radiation.csv")$y
bc <- function(l, x) { n <- length(x); t <- if (abs(l) < 1e-12) log(x) else (x^l - 1) / l; -n / 2 * log(mean((t - mean(t))^2)) + (l - 1) * sum(log(x)) }
o <- optimize(bc, c(-2, 2), x = R, maximum = TRUE, tol = 1e-10); ci <- o$objective - qchisq(.95, 1) / 2
lo <- uniroot(function(l) bc(l, R) - ci, c(-2, o$maximum), tol = 1e-12)$root; hi <- uniroot(function(l) bc(l, R) - ci, c(o$maximum, 2), tol = 1e-12)$root
grid <- seq(-2, 2, .1); T <- (R^o$maximum - 1) / o$maximum
add("STAT-BOXCOX-NIST-6.5.2", HB, "6.5.2 Box-Cox transformation, microwave oven radiation (Johnson and Wichern ex. 4.14)", HBY, paste0(DPF("MONITOR-6_5_2.DAT"), "; ", COMP, "; the handbook states the optimum near 0.28 (from memory)"), list(data_file = "data/nist_pmc52_radiation.csv"),
    list(lambda_hat = o$maximum, log_likelihood_at_hat = o$objective, lambda_CI95_lower = lo, lambda_CI95_upper = hi, loglik_at_0 = bc(0, R), loglik_at_0.3 = bc(.3, R), loglik_at_0.5 = bc(.5, R), loglik_at_1 = bc(1, R), mean_transformed = mean(T), sd_transformed = sd(T)),
    list(lambda_hat = 1e-5, loglik = 1e-7, ci = 1e-6), "Profile log-likelihood without additive constants: -(n/2) ln(sum((t-mean)^2)/n) + (lambda-1) sum(ln x).")
cat("BoxCox", o$maximum, o$objective, "\n")

## tolerance interval
N <- 43; p <- .90; g <- .99; howe <- sqrt((N - 1) * (1 + 1 / N) * qnorm((1 + p) / 2)^2 / qchisq(1 - g, N - 1))
k1 <- function(n, p, g) qt(g, n - 1, qnorm(p) * sqrt(n)) / sqrt(n)
nat <- { zp <- qnorm(p); zg <- qnorm(g); a <- 1 - zg^2 / (2 * (N - 1)); b <- zp^2 - zg^2 / N; (zp + sqrt(zp^2 - a * b)) / a }
k2x <- function(n, p, g) uniroot(function(k) integrate(function(z) 2 * dnorm(z, 0, 1 / sqrt(n)) * pchisq((n - 1) * qchisq(p, 1, n_cp(z)) / k^2, n - 1, lower.tail = FALSE), 0, 8 / sqrt(n), rel.tol = 1e-10)$value - g, c(.3, 60), tol = 1e-10)$root
n_cp <- function(z) z^2
m <- 97.07; sdv <- .0268
chk(c(howe, nat, m - howe * sdv, m + howe * sdv, m + nat * sdv, m - nat * sdv), c(2.2173159, 1.8751896, 97.010576, 97.12942, 97.120255, 97.019745), 6e-6, "tolint")
add("STAT-TOLINT-NIST-7.2.6.3", HB, "7.2.6.3 Tolerance intervals for a normal distribution, N = 43, mean 97.07, s 0.0268, coverage 0.90, confidence 0.99", HBY, "verified against a stored copy: a published document (calculation sheet for this section: k2 2.2173159, k1 1.8751896 and the limits); recomputed here with base R", list(n = N, mean = m, sd = sdv, coverage = p, confidence = g),
    list(k2_howe = howe, two_sided_lower = m - howe * sdv, two_sided_upper = m + howe * sdv, k1_natrella = nat, one_sided_upper = m + nat * sdv, one_sided_lower = m - nat * sdv, k1_noncentral_t = k1(N, p, g), k2_exact = k2x(N, p, g)), list(stored_page = 6e-7, limits = 6e-6, exact = 1e-6), "Howe's k2 is an approximation; the exact two-sided factor is from integration over the sample mean. The last line of the handbook page multiplies by 2.68 instead of 0.0268 and prints 102.096; the right value is 97.120.")
cat("tol", howe, nat, k1(N, p, g), k2x(N, p, g), "\n")
for (q in list(c(10, .90, .95), c(10, .95, .95), c(10, .99, .95), c(25, .95, .95), c(50, .99, .99), c(100, .95, .90)))
  add(sprintf("STAT-TOLFACTOR-n%d-p%g-g%g", q[1], q[2], q[3]), "ISO 16269-6:2014 type factors for statistical tolerance intervals, unknown mean and standard deviation", "one-sided (noncentral t) and exact two-sided", "2014", COMPF, list(n = q[1], coverage = q[2], confidence = q[3]), list(k_one_sided = k1(q[1], q[2], q[3]), k_two_sided = k2x(q[1], q[2], q[3])), 1e-6,
   if (q[1] == 10 && q[2] == .95) "Widely printed: one-sided 2.911, two-sided 3.379 (Howe/Wald-Wolfowitz) or 3.393 (exact, Odeh and Owen; ISO 16269-6)" else NULL)
print(c(k1(10,.95,.95), k2x(10,.95,.95), k2x(10,.99,.95)))

## formula-only cases from summary statistics
kk5 <- constants(5)
add("CHART-XBAR-FORMULAS", "X-bar and R, X-bar and S from summary statistics", "e-Handbook 6.3.2.1 formulas", HBY, COMPF, list(n = 5, grand_mean = 10, R_bar = 2, S_bar = 0.8), list(xbar_UCL_R = 10 + kk5$A2 * 2, xbar_LCL_R = 10 - kk5$A2 * 2, R_UCL = kk5$D4 * 2, R_LCL = 0, xbar_UCL_S = 10 + kk5$A3 * .8, xbar_LCL_S = 10 - kk5$A3 * .8, S_UCL = kk5$B4 * .8, S_LCL = 0), 1e-7)
save_cases("out_02_charts_nist.json", "Control charts and related statistics (NIST e-Handbook, Ishikawa)", cases)

## ---------------- topic 4: classic X-bar/R data
cases <- list()
P <- matrix(c(74.030,74.002,74.019,73.992,74.008, 73.995,73.992,74.001,74.011,74.004, 73.988,74.024,74.021,74.005,74.002, 74.002,73.996,73.993,74.015,74.009, 73.992,74.007,74.015,73.989,74.014,
 74.009,73.994,73.997,73.985,73.993, 73.995,74.006,73.994,74.000,74.005, 73.985,74.003,73.993,74.015,73.988, 74.008,73.995,74.009,74.005,74.004, 73.998,74.000,73.990,74.007,73.995,
 73.994,73.998,73.994,73.995,73.990, 74.004,74.000,74.007,74.000,73.996, 73.983,74.002,73.998,73.997,74.012, 74.006,73.967,73.994,74.000,73.984, 74.012,74.014,73.998,73.999,74.007,
 74.000,73.984,74.005,73.998,73.996, 73.994,74.012,73.986,74.005,74.007, 74.006,74.010,74.018,74.003,74.000, 73.984,74.002,74.003,74.005,73.997, 74.000,74.010,74.013,74.020,74.003,
 73.982,74.001,74.015,74.005,73.996, 74.004,73.999,73.990,74.006,74.009, 74.010,73.989,73.990,74.009,74.014, 74.015,74.008,73.993,74.000,74.010, 73.982,73.984,73.995,74.017,74.013), ncol = 5, byrow = TRUE)
m <- rowMeans(P); r <- apply(P, 1, function(v) diff(range(v))); s <- apply(P, 1, sd)
cat("piston", mean(m), mean(r), mean(s), "\n"); chk(c(mean(m), mean(r), mean(s)), c(74.001176, .02324, .0094), c(1e-6, 1e-9, 5e-5), "piston")
l <- lim(m, r, s, kk5); l$printed_grand_mean <- 74.001; l$printed_R_bar <- 0.023; l$printed_sum_of_ranges <- 0.581; l$printed_xbar_UCL <- 74.014; l$printed_xbar_LCL <- 73.988; l$printed_R_UCL <- 0.049; l$printed_S_bar <- 0.0094; l$subgroup_means <- m; l$subgroup_ranges <- r; l$subgroup_sds <- s
l$points_outside <- vec(integer(0))
add("CLASSIC-PISTON-PHASE1", "Montgomery, Introduction to Statistical Quality Control, 3rd-7th ed.", "chapter on control charts for variables, piston ring inside diameters, 25 samples of 5", "1996-2013", paste0("data verified against a stored copy: a course exercise (table 6.3, samples 1 to 16 with printed mean and s) and another (samples 18, 19, 21, 22); remaining rows and printed limits ", MEM, "; recomputed here with base R"),
    list(x = P, n = 5), l, list(printed = 0.001, computed = 1e-9), "Two variants of this set circulate: this one (sum of ranges 0.581, R-bar 0.02324, S-bar 0.0094) and one giving R-bar 0.02276 and sigma 0.0098. Test with the values given here, not by name. Printed limits are from rounded R-bar = 0.023.")
nv <- c(5,3,5,5,5,4,4,5,4,5,5,5,3,5,3,5,4,5,5,3,5,5,5,5,5); V <- lapply(1:25, function(i) P[i, seq_len(nv[i])]); mv <- sapply(V, mean); sv <- sapply(V, sd)
gm <- sum(nv * mv) / sum(nv); sb <- sqrt(sum((nv - 1) * sv^2) / (sum(nv) - 25)); chk(c(sum(nv), gm, sb), c(113, 74.001, .0103), c(0, 6e-4, 6e-5), "variable n")
f3 <- t(sapply(nv, function(n) { c4 <- c4f(n); A3 <- 3 / (c4 * sqrt(n)); c(gm + A3 * sb, gm - A3 * sb, (1 + 3 * sqrt(1 - c4^2) / c4) * sb, max(0, 1 - 3 * sqrt(1 - c4^2) / c4) * sb) }))
add("CLASSIC-PISTON-VARIABLE-N", "Montgomery, as above", "x-bar and s charts with variable sample size, table 6.4 (n from 3 to 5)", "1996-2013", paste0("data verified against a stored copy: a course exercise (samples 1 to 22); printed total n 113, grand mean 74.001, s-bar 0.0103 ", MEM, "; recomputed here with base R"), list(x = lapply(V, vec), n = nv), list(total_n = sum(nv), weighted_grand_mean = gm, pooled_s = sb, means = mv, sds = sv, xbar_UCL = f3[, 1], xbar_LCL = f3[, 2], s_UCL = f3[, 3], s_LCL = f3[, 4], mean_points_outside = vec(which(mv > f3[, 1] | mv < f3[, 2])), s_points_outside = vec(which(sv > f3[, 3]))), list(printed = "half a unit of the last printed digit", computed = 1e-9), "The pooled s enters the limits in place of the plain mean of the s values.")
Q <- matrix(c(74.012,74.015,74.030,73.986,74.000, 73.995,74.010,73.990,74.015,74.001, 73.987,73.999,73.985,74.000,73.990, 74.008,74.010,74.003,73.991,74.006, 74.003,74.000,74.001,73.986,73.997,
 73.994,74.003,74.015,74.020,74.004, 74.008,74.002,74.018,73.995,74.005, 74.001,74.004,73.990,73.996,73.998, 74.015,74.000,74.016,74.025,74.000, 74.030,74.005,74.000,74.016,74.012,
 74.001,73.990,73.995,74.010,74.024, 74.015,74.020,74.024,74.005,74.019, 74.035,74.010,74.012,74.015,74.026, 74.017,74.013,74.036,74.025,74.026, 74.010,74.005,74.029,74.000,74.020), ncol = 5, byrow = TRUE)
mq <- rowMeans(Q); rq <- apply(Q, 1, function(v) diff(range(v))); cat("phase2 means", round(mq, 4), "out", 25 + which(mq > l$xbar_UCL_R), "\n")
add("CLASSIC-PISTON-PHASE2", "Montgomery, as above", "15 further samples judged against the limits of the first 25", "1996-2013", paste0("data ", MEM, "; ", COMPF), list(x = Q, limits_from = "CLASSIC-PISTON-PHASE1"),
    list(subgroup_means = mq, subgroup_ranges = rq, mean_points_outside_sample_number = vec(25 + which(mq > l$xbar_UCL_R | mq < l$xbar_LCL_R)), range_points_outside = vec(25 + which(rq > l$R_UCL))), 1e-9, "The book reports the upward shift becoming visible from sample 34 and points beyond the upper limit at samples 37, 38 and 39.")
sg <- mean(r) / kk5$d2
add("CLASSIC-PISTON-CAPABILITY", "Montgomery, as above", "process capability ratio of the piston ring process, specification 74.000 +/- 0.05 mm", "1996-2013", paste0("printed sigma 0.0099 (from R-bar 0.023) and ratio 1.68 ", MEM, "; ", COMPF), list(USL = 74.05, LSL = 73.95, R_bar = mean(r), n = 5, grand_mean = mean(m)), list(sigma_hat = sg, Cp = .1 / (6 * sg), Cpk = min(74.05 - mean(m), mean(m) - 73.95) / (3 * sg), fraction_out = pnorm(73.95, mean(m), sg) + pnorm(74.05, mean(m), sg, lower.tail = FALSE)), 1e-9)
M <- read.csv("data/nist_machine_shaft_diameter.csv"); a <- anova(lm(diameter ~ factor(machine) + factor(day) + factor(time) + factor(sample), M))
add("CLASSIC-MACHINE-ANOVA", HB, "3.5.2 Machine screw case study, shaft diameters, 3 machines x 3 days x AM/PM x 10 samples", HBY, paste0(DPF("MACHINE.DAT"), "; ", COMP), list(data_file = "data/nist_machine_shaft_diameter.csv"),
    list(mean = mean(M$diameter), sd = sd(M$diameter), machine_means = tapply(M$diameter, M$machine, mean), machine_sds = tapply(M$diameter, M$machine, sd), ss = setNames(a$`Sum Sq`, c("machine", "day", "time", "sample", "residual")), F = setNames(a$`F value`[1:4], c("machine", "day", "time", "sample"))), 1e-8)
a1 <- anova(lm(diameter ~ factor(machine), M))
add("CLASSIC-MACHINE-ONEWAY", HB, "3.5.2, one-way by machine", HBY, paste0(DPF("MACHINE.DAT"), "; ", COMP), list(data_file = "data/nist_machine_shaft_diameter.csv"), list(df = a1$Df, ss = a1$`Sum Sq`, F = a1$`F value`[1], p = a1$`Pr(>F)`[1], residual_sd = sqrt(a1$`Mean Sq`[2])), 1e-8)
sub <- split(M$diameter, list(M$machine, M$day, M$time), lex.order = TRUE); mm <- sapply(sub, mean); rr <- sapply(sub, function(v) diff(range(v))); s2 <- sapply(sub, sd); k10 <- constants(10); l2 <- lim(mm, rr, s2, k10)
l2$points_outside_means <- vec(unname(which(mm > l2$xbar_UCL_R | mm < l2$xbar_LCL_R)))
add("CLASSIC-MACHINE-XR", HB, "3.5.2 data grouped into 18 subgroups of 10 (machine, day, time in lexical order)", HBY, paste0(DPF("MACHINE.DAT"), "; ", COMP), list(data_file = "data/nist_machine_shaft_diameter.csv", n = 10), l2, 1e-9)
pcb <- c(21,24,16,12,15,5,28,20,31,25,20,24,16,19,10,17,13,22,18,39,30,24,16,19,17,15); cb <- mean(pcb)
chk(c(cb, cb + 3*sqrt(cb), cb - 3*sqrt(cb)), c(19.85, 33.22, 6.48), 1.2e-2, "pcb")
add("CLASSIC-PCB-C", "Montgomery, as above", "c chart, printed circuit board nonconformities, 26 samples", "1985-2013", paste0("data and printed c-bar 19.85, limits 33.22 and 6.48 ", MEM, "; recomputed here with base R"), list(counts = pcb), list(total = sum(pcb), center = cb, UCL = cb + 3 * sqrt(cb), LCL = cb - 3 * sqrt(cb), points_outside = which(pcb > cb + 3 * sqrt(cb) | pcb < cb - 3 * sqrt(cb))), list(printed = .012, computed = 1e-9), "Printed limits come from the rounded 19.85. Samples 6 and 20 are outside.")
save_cases("out_04_classic_data.json", "Classic subgroup data sets", cases)

source("lib.R")
cases <- list(); add <- function(...) cases[[length(cases) + 1]] <<- case(...)
fit <- function(x, y, at, conf = .95) {
  m <- lm(y ~ x); s <- summary(m); p <- predict(m, data.frame(x = at), interval = "prediction", level = conf); q <- predict(m, data.frame(x = at), interval = "confidence", level = conf); ci <- confint(m, level = conf)
  list(n = length(x), intercept = unname(coef(m)[1]), slope = unname(coef(m)[2]), se_intercept = s$coefficients[1, 2], se_slope = s$coefficients[2, 2], t_slope = s$coefficients[2, 3], p_slope = s$coefficients[2, 4], residual_sd = s$sigma, df = m$df.residual, r_squared = s$r.squared, slope_ci = unname(ci[2, ]), at = vec(at), predicted = vec(unname(p[, 1])), prediction_lower = vec(unname(p[, 2])), prediction_upper = vec(unname(p[, 3])), mean_lower = vec(unname(q[, 2])), mean_upper = vec(unname(q[, 3])))
}
DPF <- function(f) paste0("data verified against a stored copy: the NIST/SEMATECH e-Handbook data set ", f)
NBS <- "Natrella, Experimental Statistics, NBS Handbook 91"
d <- read.csv("data/strd_Norris.csv"); f <- fit(d$x, d$y, c(500, 1100))
cert <- list(B0 = -.262323073774029, sd_B0 = .232818234301152, B1 = 1.00211681802045, sd_B1 = .429796848199937e-3, residual_sd = .884796396144373, r_squared = .999993745883712, F = 5436385.54079785)
chk(c(f$intercept, f$slope, f$se_intercept, f$se_slope, f$residual_sd), unlist(cert)[c(1, 3, 2, 4, 5)], 1e-12, "Norris")
add("DRIFT-NORRIS", "NIST Statistical Reference Datasets (StRD)", "Linear regression, Norris, lower difficulty", "1998-2003", "verified against the stored NIST .dat file carried in the test data of SciPy (scipy/stats/tests/data/nist_linregress/Norris.dat); prediction intervals computed here with base R", list(data_file = "data/strd_Norris.csv"), c(f, list(certified = cert)), list(certified = "relative 1e-12", predictions = "relative 1e-10"))
d <- read.csv("data/nbs91_young_modulus.csv"); f <- fit(d$x, d$y, c(550, 1600)); print(unlist(f[1:10]))
add("DRIFT-NBS91-5-11", NBS, "pp. 5-11 to 5-21, Young's modulus of sapphire rods against temperature (FI relationship)", "1963", paste0(DPF("NATR511.DAT"), "; ", COMP), list(data_file = "data/nbs91_young_modulus.csv"), f, "relative 1e-10")
d <- read.csv("data/nbs91_tread_wear.csv"); f <- fit(d$x, d$y, c(250, 500)); f$correlation <- cor(d$x, d$y)
add("DRIFT-NBS91-5-33", NBS, "pp. 5-33 to 5-40, estimated tread life by two methods (SI relationship)", "1963", paste0(DPF("NATR533.DAT"), "; ", COMP, "; correlation printed about 0.948 (from memory)"), list(data_file = "data/nbs91_tread_wear.csv"), f, "relative 1e-10"); print(cor(d$x, d$y))
d <- read.csv("data/nist_loadcell.csv"); f <- fit(d$load, d$response, 22); rs <- resid(lm(response ~ load, d))
add("DRIFT-LOADCELL-LINE", "NIST/SEMATECH e-Handbook", "load cell data, straight line with residual pattern", "2003-2012", paste0(DPF("LOADCELL.DAT"), "; ", COMP), list(data_file = "data/nist_loadcell.csv", x = "load", y = "response"), c(f, list(durbin_watson = sum(diff(rs)^2) / sum(rs^2), runs_of_sign = length(rle(sign(rs))$lengths))), "relative 1e-9", "A clear curvature remains: a warning test should fire although r_squared is above 0.99999.")
w <- c(10.002, 10.003, 10.005, 10.004, 10.007, 10.009, 10.008, 10.011, 10.012, 10.015); f <- fit(1:10, w, c(11, 15, 20)); U <- 10.03; xs <- uniroot(function(t) { m <- lm(w ~ I(1:10)); p <- predict(m); s <- summary(m)$sigma; co <- coef(m); se <- s * sqrt(1 + 1/10 + (t - 5.5)^2 / sum((1:10 - 5.5)^2)); co[1] + co[2] * t + qt(.975, 8) * se - U }, c(10, 60), tol = 1e-10)$root
add("DRIFT-TOOLWEAR", "Constructed tool wear series", "first point at which the upper prediction limit reaches the upper size limit", "-", COMPF, list(x = 1:10, y = w, USL = U, confidence = .95), c(f, list(line_reaches_USL_at = (U - f$intercept) / f$slope, prediction_limit_reaches_USL_at = xs)), "relative 1e-8")
b <- read.csv("data/nbs91_burn_time.csv")$y; n <- length(b)
add("STAT-NBS91-2-6", NBS, "pp. 2-6 to 2-8, burning time of rocket powder: mean, s and intervals", "1963", paste0(DPF("NATR26.DAT"), "; ", COMP), list(data_file = "data/nbs91_burn_time.csv"), list(n = n, mean = mean(b), sd = sd(b), mean_ci95 = mean(b) + c(-1, 1) * qt(.975, n - 1) * sd(b) / sqrt(n), sd_ci95 = sd(b) * sqrt((n - 1) / qchisq(c(.975, .025), n - 1)), range = diff(range(b)), sigma_from_range = diff(range(b)) / d2f(10)), 1e-9, "The handbook prints s = 10.37 and shortest unbiased confidence factors for sigma, which differ from the equal-tail limits given here.")
print(c(mean(b), sd(b)))
save_cases("out_14_drift_regression.json", "Drift, regression and prediction", cases)

# Lines by lm and predict, parallel lines by anova, bounds of the place where a moved line meets a limit by pt with noncentrality.
# Base R only. Run in this folder: reads ../scripts/data, writes points.csv and lines.csv.
points <- list(); out <- NULL
say <- function(case, what, at, value) out <<- c(out, sprintf("%s,%s,%s,%.15g", case, what, at, value))
line <- function(case, x, y, at, source) {
  points[[length(points) + 1]] <<- sprintf("%s,%s,%s", case, format(x, trim = TRUE), sapply(y, function(v) format(v, digits = 12)))
  m <- lm(y ~ x); s <- summary(m)
  say(case, "slope", "", coef(m)[2]); say(case, "deviation", "", s$sigma); say(case, "error", "", s$coefficients[2, 2])
  say(case, "significance", "", s$coefficients[2, 4]); ci <- confint(m)[2, ]; say(case, "lower", "", ci[1]); say(case, "upper", "", ci[2])
  for (a in at) {
    q <- predict(m, data.frame(x = a), interval = "confidence"); p <- predict(m, data.frame(x = a), interval = "prediction")
    say(case, "fit", a, q[1]); say(case, "mean lower", a, q[2]); say(case, "mean upper", a, q[3]); say(case, "single lower", a, p[2]); say(case, "single upper", a, p[3])
  }
  m
}
crossing <- function(case, m, x, limit, k) {
  s <- summary(m)$sigma; b <- coef(m); df <- m$df.residual; side <- sign(b[2])
  h <- function(t) 1 / length(x) + (t - mean(x))^2 / sum((x - mean(x))^2)
  g <- function(t, p) pt(side * (limit - b[1] - b[2] * t) / (s * sqrt(h(t))), df, ncp = k / sqrt(h(t))) - p
  at <- (limit - side * k * s - b[1]) / b[2]; w <- 12 * s / abs(b[2])
  say(case, paste0("crossing ", k), limit, at)
  say(case, paste0("crossing lower ", k), limit, uniroot(g, c(at - w, at), p = .975, tol = 1e-12)$root)
  say(case, paste0("crossing upper ", k), limit, uniroot(g, c(at, at + w), p = .025, tol = 1e-12)$root)
}
d <- read.csv("../scripts/data/strd_Norris.csv"); line("norris", d$x, d$y, c(500, 1100))
d <- read.csv("../scripts/data/nbs91_young_modulus.csv"); line("sapphire", d$x, d$y, c(550, 1600))
d <- read.csv("../scripts/data/nbs91_tread_wear.csv"); line("tread", d$x, d$y, c(250, 500))
d <- read.csv("../scripts/data/nist_loadcell.csv"); m <- line("loadcell", d$load, d$response, 22); say("loadcell", "runs", "", length(rle(sign(resid(m)))$lengths))
w <- c(10.002, 10.003, 10.005, 10.004, 10.007, 10.009, 10.008, 10.011, 10.012, 10.015)
m <- line("wear", 1:10, w, c(11, 15, 20)); for (k in c(0, 2, 3)) crossing("wear", m, 1:10, 10.03, k)
say("wear", "single reaches", 10.03, uniroot(function(t) predict(m, data.frame(x = t), interval = "prediction")[3] - 10.03, c(10, 30), tol = 1e-12)$root)
m <- line("fall", 1:10, 20.02 - (w - 10), 12); for (k in c(0, 3)) crossing("fall", m, 1:10, 19.99, k)
# three stretches: (1) as above, (2) the same set back and noisier, (3) short
x <- c(1:10, 11:20, 21:24); y <- c(w, rev(w)[10:1] - .011 + c(0, .001, -.001, .0005, 0, -.0005, .001, 0, -.001, .0005), 10.001, 10.0035, 10.003, 10.0055); g <- factor(rep(1:3, c(10, 10, 4)))
points[[length(points) + 1]] <- sprintf("stretch%s,%d,%s", g, x, format(y, trim = TRUE, digits = 12))
a <- lm(y ~ g + x); b <- lm(y ~ g * x); t <- anova(a, b); s <- summary(a)
say("parallel", "slope", "", coef(a)["x"]); say("parallel", "deviation", "", s$sigma); say("parallel", "own deviation", "", summary(b)$sigma); say("parallel", "equality", "", t[2, "Pr(>F)"]); say("parallel", "error", "", s$coefficients["x", 2])
p <- predict(a, data.frame(x = 30, g = factor(3, levels = 1:3)), interval = "confidence"); say("parallel", "mean lower", 30, p[2]); say("parallel", "mean upper", 30, p[3])
head <- function(units) c("# source: base R lm, predict, anova, pt; data: NIST StRD Norris, NBS Handbook 91 pages 5-11 and 5-33, NIST/SEMATECH e-Handbook LOADCELL, and the constructed series of drift.R",
  "# edition: -", paste("# program and version:", R.version.string), "# made by: drift.R", paste("# units:", units), "# tolerance: relative 1e-9, the conditioning of predict on these data; crossings 1e-7, the root finder of R")
writeLines(c(head("those of the data"), "case,x,y", unlist(points)), "points.csv"); writeLines(c(head("those of the data"), "case,what,at,value", out), "lines.csv")

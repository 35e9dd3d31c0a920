source("lib.R")
ns <- c(2,3,5,6,8,9,11,12,14,15,17,18,20,21,23,24)
# three/four digit factors as printed in the usual tables (ASTM MNL 7 / Montgomery App. VI), typed from memory
pr <- read.table(text="
n d2 d3 c4 A2 A3 B3 B4 D3 D4
2 1.128 0.853 0.7979 1.880 2.659 0 3.267 0 3.267
3 1.693 0.888 0.8862 1.023 1.954 0 2.568 0 2.575
5 2.326 0.864 0.9400 0.577 1.427 0 2.089 0 2.114
6 2.534 0.848 0.9515 0.483 1.287 0.030 1.970 0 2.004
8 2.847 0.820 0.9650 0.373 1.099 0.185 1.815 0.136 1.864
9 2.970 0.808 0.9693 0.337 1.032 0.239 1.761 0.184 1.816
11 3.173 0.787 0.9754 0.285 0.927 0.321 1.679 0.256 1.744
12 3.258 0.778 0.9776 0.266 0.886 0.354 1.646 0.283 1.717
14 3.407 0.763 0.9810 0.235 0.817 0.406 1.594 0.328 1.672
15 3.472 0.756 0.9823 0.223 0.789 0.428 1.572 0.347 1.653
17 3.588 0.744 0.9845 0.203 0.739 0.466 1.534 0.378 1.622
18 3.640 0.739 0.9854 0.194 0.718 0.482 1.518 0.391 1.609
20 3.735 0.729 0.9869 0.180 0.680 0.510 1.490 0.415 1.585
21 3.778 0.724 0.9876 0.173 0.663 0.523 1.477 0.425 1.575
23 3.858 0.716 0.9887 0.162 0.633 0.545 1.455 0.443 1.557
24 3.895 0.712 0.9892 0.157 0.619 0.555 1.445 0.452 1.548
", header=TRUE)
harter <- c("2"=1.1283791671,"3"=1.6925687506,"4"=2.0587507460,"5"=2.3259289473,"6"=2.5344127212,"7"=2.7043567512,"8"=2.8472006121,"9"=2.9700263244,"10"=3.0775054617)
cases <- list()
for (n in ns) {
  k <- lapply(constants(n), round, 9)
  p <- as.list(pr[pr$n==n,-1])
  for (nm in names(p)) chk(k[[nm]], p[[nm]], if (nm=="c4") 6e-5 else 6e-4, paste("n",n,nm))
  if (!is.na(harter[as.character(n)])) chk(k$d2, harter[[as.character(n)]], 2e-9, paste("Harter d2", n))
  cases[[length(cases)+1]] <- case(sprintf("CONST-%02d", n), "Control chart factors for samples of n from a normal population",
    "factors d2, d3, c4 and derived; printed: ASTM STP 15D / MNL 7 table 'Factors for computing control chart lines', Montgomery App. VI", "1976-2013",
    paste0("computed here with base R (numerical integration); printed 3-4 digit column verified against a stored copy: a published document (textbook table A.22, n = 2 to 20), larger n ", MEM),
    list(n=n), list(computed=k, printed=p),
    list(computed=1e-8, printed="half a unit of the last printed digit, plus one unit where printed tables differ (see general note)"))
}

dstar <- function(m, g) sqrt(d2f(m)^2 + d3f(m)^2 / g)
for (m in c(2,3,5,10)) cases[[length(cases)+1]] <- case(sprintf("CONST-d2star-%02d", m), "Factor d2* for the mean of g ranges of m observations (David 1951; Duncan, Quality Control and Industrial Statistics, App. D3)",
   "K1 = 1/d2*(m trials, many subgroups: d2), K2 and K3 = 1/d2*(m, g=1) as used in the trade measurement systems manual", "1951/1974",
   paste0(COMPF, "; printed K values ", MEM), list(m=m), list(d2star_g1=round(dstar(m,1),8), K_g1=round(1/dstar(m,1),8), K_infinite_g=round(1/d2f(m),8)), 1e-7,
   "printed K values: m=2: K1 0.8862, K2/K3 0.7071; m=3: K1 0.5908, K2/K3 0.5231; m=5: K3 0.4030; m=10: K3 0.3146 (4 digits)")
cases[[length(cases)+1]] <- case("CONST-median-MR", "Median of |X1-X2| for independent N(0,1)", "divisor d4 used with the median moving range", "various", paste0(COMPF,"; printed 0.954 ",MEM), list(span=2), list(d4=round(sqrt(2)*qnorm(0.75),10)), 1e-9)

save_cases("out_01_chart_constants.json", "Control chart constants", cases,
 list(definitions="d2 = E(range)/sigma, d3 = sd(range)/sigma, c4 = E(s)/sigma = sqrt(2/(n-1)) Gamma(n/2)/Gamma((n-1)/2); A2=3/(d2 sqrt n); A3=3/(c4 sqrt n); B3,B4 = 1 -/+ 3 sqrt(1-c4^2)/c4; D3,D4 = 1 -/+ 3 d3/d2; lower factors cut at 0; E2 = 3/d2 (individuals, n = span of moving range)",
      printed_differences="D4 for n=5 is printed 2.114 or 2.115 (exact 2.1144991, older tables were derived from rounded d2 and d3); D4 for n=3 is printed 2.574 or 2.575 (exact 2.5745913); d3 for n=19 is printed 0.733 or 0.734 (exact 0.7334815). Stored tables with plain misprints: one appendix gives d3 = 0.8798 for n=5 (0.8641), 0.7272 for n=21 (0.7242), 0.1759 for n=23 (0.7159) and D4 = 1.662 for n=17 (1.622); a web table gives D4 = 1.774 for n=11 (1.744). Compare with a tolerance of one unit of the third decimal, not half a unit."))

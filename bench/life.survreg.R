# Reads lives from two columns of a file and fits a Weibull law with survreg; used by life.bench.ts.
suppressMessages(library(survival))
a <- commandArgs(TRUE)
n <- as.integer(a[2]); times <- as.integer(a[3])
con <- file(a[1], 'rb')
t <- readBin(con, 'double', n); failed <- readBin(con, 'double', n)
close(con)
best <- Inf
for (i in seq_len(times)) {
  s <- system.time(f <- survreg(Surv(t, failed) ~ 1, dist = 'weibull'))[['elapsed']]
  best <- min(best, s)
}
v <- sqrt(diag(f$var))
cat(sprintf('{"version":"R %s, survival %s","seconds":%.6f,"mu":%.15g,"lnSigma":%.15g,"seMu":%.15g,"seLnSigma":%.15g}',
  getRversion(), packageVersion('survival'), best, coef(f)[[1]], log(f$scale), v[1], v[2]))

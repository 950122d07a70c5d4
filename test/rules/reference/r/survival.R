# Expectations for test/rules/statistics, made by R and its survival package, which share no code with this project.
# Run from this folder:  Rscript survival.R > survival.json      (R 4.2.2, survival 3.5-3, both as in Debian 12)
# Data: V1 NIST/SEMATECH e-Handbook 8.2.2.1; V2, V3 Meeker and Escobar, Statistical Methods for Reliability Data (1998),
# shock absorbers and bearing cages; V4 gehan (6-MP arm), Freireich et al. 1963; V5 survival::ovarian; V6 survival::lung;
# V7 and L1, L2 made up.
suppressMessages(library(survival))
options(digits = 15)
set.seed(20260401)

json <- function(x) {
  if (is.null(x)) return("null")
  if (is.list(x)) {
    if (!is.null(names(x))) {
      return(paste0("{", paste0('"', names(x), '":', vapply(x, json, ""), collapse = ","), "}"))
    }
    return(paste0("[", paste(vapply(x, json, ""), collapse = ","), "]"))
  }
  one <- function(v) if (is.na(v)) "null" else if (is.character(v)) paste0('"', v, '"') else format(v, digits = 15)
  if (length(x) == 1) return(one(x))
  paste0("[", paste(vapply(x, one, ""), collapse = ","), "]")
}
rows <- function(...) { d <- data.frame(...); lapply(seq_len(nrow(d)), function(i) as.list(d[i, ])) }

describe <- function(id, age, died) {
  fit <- survreg(Surv(age, died) ~ 1, dist = "weibull", control = list(rel.tolerance = 1e-14, maxiter = 200))
  mu <- unname(coef(fit)); sigma <- fit$scale; v <- vcov(fit)
  curve <- survfit(Surv(age, died) ~ 1)
  dead <- curve$n.event > 0
  q <- function(p) { r <- predict(fit, type = "quantile", p = p, se.fit = TRUE); c(r$fit[1], r$se.fit[1]) }
  quart <- quantile(curve, probs = c(.25, .5, .75), conf.int = FALSE)
  list(id = id, age = age, died = as.integer(died),
       scale = exp(mu), shape = 1 / sigma, logLikelihood = fit$loglik[2],
       logScaleError = sqrt(v[1, 1]), logShapeError = sqrt(v[2, 2]), covarianceMuLogSigma = v[1, 2],
       mean = exp(mu) * gamma(1 + sigma), sd = exp(mu) * sqrt(gamma(1 + 2 * sigma) - gamma(1 + sigma)^2),
       t01 = q(.01)[1], t10 = q(.10)[1], t10Error = q(.10)[2], t50 = q(.5)[1],
       quartiles = unname(as.list(quart)),
       curve = rows(age = curve$time[dead], atRisk = curve$n.risk[dead], died = curve$n.event[dead],
                    survival = curve$surv[dead],
                    # R keeps the error of ln S; Greenwood's error of S is S times it.
                    standardError = ifelse(curve$surv[dead] == 0, NA, (curve$surv * curve$std.err)[dead])))
}

expand <- function(f, c) list(age = c(f, rep(as.numeric(names(c)), c)), died = c(rep(1, length(f)), rep(0, sum(c))))
v1 <- expand(c(54,187,216,240,244,335,361,373,375,386), c("500" = 10))
v2age <- c(6700,6950,7820,8790,9120,9660,9820,11310,11690,11850,11880,12140,12200,12870,13150,13330,13470,14040,14300,
  17520,17540,17890,18450,18960,18980,19410,20100,20100,20150,20320,20900,22700,23490,26510,27410,27490,27890,28100)
v2mode <- c(1,0,0,0,2,0,0,0,0,0,0,0,1,0,2,0,0,0,1,1,0,0,0,0,0,0,2,0,0,0,2,1,0,1,0,1,0,0)
v3 <- expand(c(230,334,423,990,1009,1510), c("50"=288,"150"=148,"250"=124,"350"=111,"450"=106,"550"=99,"650"=110,
  "750"=114,"850"=119,"950"=127,"1050"=123,"1150"=93,"1250"=47,"1350"=41,"1450"=27,"1550"=11,"1650"=6,"1850"=1,"2050"=2))
v4 <- list(age = c(6,6,6,7,10,13,16,22,23, 6,9,10,11,17,19,20,25,32,32,34,35), died = c(rep(1, 9), rep(0, 12)))
v7 <- list(age = c(410,690,1200,900,900), died = c(1,1,1,0,0))

# Left truncation: survreg has none, so the likelihood is written out and climbed by optim, twice.
truncated <- function(id, entry, age, died) {
  nll <- function(p, prior = 0) {
    b <- exp(p[2]); s <- exp(p[1])
    -(sum(died * (log(b) - log(s) + (b - 1) * log(age / s))) - sum((age / s)^b - (entry / s)^b))
  }
  o <- optim(c(log(mean(age)), 0.5), nll, method = "Nelder-Mead", control = list(reltol = 1e-15, maxit = 5000))
  o <- optim(o$par, nll, method = "BFGS", hessian = TRUE, control = list(reltol = 1e-15))
  v <- solve(o$hessian)
  curve <- survfit(Surv(entry, age, died) ~ 1)
  dead <- curve$n.event > 0
  list(id = id, entry = entry, age = age, died = as.integer(died), scale = exp(o$par[1]), shape = exp(o$par[2]),
       logLikelihood = -o$value, logScaleError = sqrt(v[1, 1]), logShapeError = sqrt(v[2, 2]),
       curve = rows(age = curve$time[dead], atRisk = curve$n.risk[dead], died = curve$n.event[dead],
                    survival = curve$surv[dead],
                    standardError = ifelse(curve$surv[dead] == 0, NA, (curve$surv * curve$std.err)[dead])))
}
l1 <- truncated("L1", entry = c(0,0,0,0,3,3,2,4,0,1.5,5,0), age = c(5.1,6.3,4.2,7.7,8.4,6.9,5.8,9.1,3.3,6.1,7.2,2.8),
                died = c(1,1,1,0,1,1,0,0,1,1,1,0))
n <- 200; life <- 7 * rexp(n)^(1 / 2.6); from <- runif(n, 0, 6); ok <- life > from
stop <- pmin(life, from + runif(n, 1, 5))
l2 <- truncated("L2", entry = round(from[ok], 4), age = round(stop[ok], 4), died = (life <= stop)[ok] * 1)

# Penalised shape and fixed shape, by one-dimensional search on the profile.
penalised <- function(d, m, s) {
  f <- function(lb) { b <- exp(lb); r <- sum(d$died); sc <- (sum(d$age^b) / r)^(1 / b)
    sum(d$died * (log(b) - log(sc) + (b - 1) * log(d$age / sc))) - sum((d$age / sc)^b) - (lb - log(m))^2 / (2 * s^2) }
  lb <- optimize(f, c(-3, 3), maximum = TRUE, tol = 1e-12)$maximum; b <- exp(lb)
  list(median = m, logSpread = s, shape = b, scale = (sum(d$age^b) / sum(d$died))^(1 / b))
}

# Posterior with lognormal priors on shape and scale, by brute force over a fine grid of 801 by 801.
posterior <- function(id, d, shapePrior, scalePrior, age, span) {
  lb <- seq(log(shapePrior[1]) - 5 * shapePrior[2], log(shapePrior[1]) + 5 * shapePrior[2], length.out = 801)
  ls <- seq(log(scalePrior[1]) - 5 * scalePrior[2], log(scalePrior[1]) + 5 * scalePrior[2], length.out = 801)
  g <- expand.grid(lb = lb, ls = ls); b <- exp(g$lb)
  lp <- -(g$lb - log(shapePrior[1]))^2 / (2 * shapePrior[2]^2) - (g$ls - log(scalePrior[1]))^2 / (2 * scalePrior[2]^2)
  for (i in seq_along(d$age)) {
    z <- b * (log(d$age[i]) - g$ls)
    e <- if (is.null(d$entry) || d$entry[i] == 0) 0 else exp(b * (log(d$entry[i]) - g$ls))
    lp <- lp + d$died[i] * (g$lb - log(d$age[i]) + z) - (exp(z) - e)
  }
  w <- exp(lp - max(lp)); w <- w / sum(w); sc <- exp(g$ls)
  alive <- function(t) sum(w * exp((age / sc)^b - (t / sc)^b))
  q <- function(p) uniroot(function(t) alive(t) - (1 - p), c(age, 60), tol = 1e-10)$root
  list(id = id, age = d$age, died = d$died, entry = if (is.null(d$entry)) rep(0, length(d$age)) else d$entry,
       shapePrior = shapePrior, scalePrior = scalePrior, at = age, span = span, within = 1 - alive(age + span),
       t10 = q(.1), t50 = q(.5), t90 = q(.9), meanLogShape = sum(w * g$lb), meanLogScale = sum(w * g$ls))
}
decks <- list(age = c(5.1,5.8,6.0,6.2,6.4,6.9,7.3,8.0, 5.0,3.0,1.0), died = c(rep(1, 8), 0, 0, 0))

cat(json(list(
  madeBy = paste(R.version.string, "survival", packageVersion("survival")),
  fits = list(describe("V1", v1$age, v1$died), describe("V2", v2age, as.numeric(v2mode > 0)),
    describe("V3", v3$age, v3$died), describe("V4", v4$age, v4$died),
    describe("V5", ovarian$futime, ovarian$fustat), describe("V6", lung$time, as.numeric(lung$status == 2)),
    describe("V7", v7$age, v7$died), describe("decks", decks$age[1:8], decks$died[1:8])),
  truncated = list(l1, l2),
  penalised = list(penalised(v7, 2, .5), penalised(v7, 1.5, .3)),
  posteriors = list(
    posterior("nothing known", list(age = c(1, .5), died = c(0, 0)), c(3, .4), c(10, .5), 0, 5),
    posterior("no deaths", list(age = c(5, 3, 4), died = c(0, 0, 0)), c(3, .4), c(10, .5), 5, 2),
    posterior("decks", decks, c(3, .4), c(10, .5), 5, 1),
    posterior("one death", list(age = c(6, 4), died = c(1, 0)), c(3, .4), c(12, .6), 4, 3),
    posterior("late watched", list(age = c(9, 11, 8), died = c(1, 1, 0), entry = c(6, 7, 6)), c(3, .4), c(10, .5), 8, 2)),
  distributions = list(
    normal = rows(x = c(-6, -1.5, 0, 0.3, 2, 5), below = pnorm(c(-6, -1.5, 0, 0.3, 2, 5))),
    normalQuantiles = rows(p = c(1e-6, .025, .1, .5, .9, .975), x = qnorm(c(1e-6, .025, .1, .5, .9, .975))),
    student = rows(x = c(-3, .5, 2, 7), freedom = c(1, 2.5, 4, 30), below = pt(c(-3, .5, 2, 7), c(1, 2.5, 4, 30))),
    studentQuantiles = rows(p = c(.975, .975, .9, .95, .75, .995), freedom = c(1, 4, 2, 3.5, 7, 200),
      x = qt(c(.975, .975, .9, .95, .75, .995), c(1, 4, 2, 3.5, 7, 200))),
    gamma = rows(x = c(.1, 3, 3, 100), shape = c(.5, 2, 5, 50), rate = c(2, 1, 52, .4),
      below = pgamma(c(.1, 3, 3, 100), c(.5, 2, 5, 50), c(2, 1, 52, .4))),
    gammaQuantiles = rows(p = c(.05, .95, .5, .1, .9), shape = c(5, 5, .3, 100, 328.99), rate = c(52, 52, 1, 2, .5),
      x = qgamma(c(.05, .95, .5, .1, .9), c(5, 5, .3, 100, 328.99), c(52, 52, 1, 2, .5))),
    chiSquareQuantiles = rows(p = c(.9, .9, .05, .975), freedom = c(2, 8, 1, 33),
      x = qchisq(c(.9, .9, .05, .975), c(2, 8, 1, 33)))))), "\n", sep = "")

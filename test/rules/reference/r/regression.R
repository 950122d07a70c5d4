# Expectations for straight lines, made by R (lm, cor.test's exact Kendall distribution, uniroot and brute force), which
# shares no code with this project. Run from this folder:  Rscript regression.R > regression.json       (R 4.2.2)
# Data: R1 and R2 NIST StRD, Norris and Pontius; R3 tread in 32nds against miles, R5 too few readings: made up.
options(digits = 15)
set.seed(20260402)
json <- function(x) {
  if (is.list(x)) {
    if (!is.null(names(x))) return(paste0("{", paste0('"', names(x), '":', vapply(x, json, ""), collapse = ","), "}"))
    return(paste0("[", paste(vapply(x, json, ""), collapse = ","), "]"))
  }
  one <- function(v) if (is.na(v)) "null" else if (is.character(v)) paste0('"', v, '"') else format(v, digits = 15)
  if (length(x) == 1) return(one(x))
  paste0("[", paste(vapply(x, one, ""), collapse = ","), "]")
}
norris <- list(x = c(.2,337.4,118.2,884.6,10.1,226.5,666.3,996.3,448.6,777,558.2,.4,.6,775.5,666.9,338,447.5,11.6,556,
  228.1,995.8,887.6,120.2,.3,.3,556.8,339.1,887.2,999,779,11.1,118.3,229.2,669.1,448.9,.5),
  y = c(.1,338.8,118.1,888,9.2,228.1,668.5,998.5,449.1,778.9,559.2,.3,.1,778.1,668.8,339.3,448.9,10.8,557.7,228.3,998,
  888.8,119.6,.3,.6,557.6,339.3,888,998.5,778.9,10.2,117.6,228.9,668.4,449.2,.2))
pontius <- list(x = rep(seq(150000, 3000000, by = 150000), 2),
  y = c(.11019,.21956,.32949,.43899,.54803,.65694,.76562,.87487,.98292,1.09146,1.20001,1.30822,1.41599,1.52399,1.63194,
  1.73947,1.84646,1.95392,2.06128,2.16844,.11052,.22018,.32939,.43886,.54798,.65739,.76596,.87474,.983,1.0915,1.20004,
  1.30818,1.41613,1.52408,1.63159,1.73965,1.84696,1.95445,2.06177,2.16829))
tread <- list(x = c(0,2600,5200,7700,10300,12800), y = c(9,8.4,7.7,7.3,6.6,6))
misread <- list(x = tread$x, y = replace(tread$y, 4, 9.1))
n <- 25; noisy <- list(x = round(sort(runif(n, 0, 30)), 3)); noisy$y <- round(8 - .12 * noisy$x + rnorm(n, 0, .4), 3)

describe <- function(id, d, at, levels) {
  f <- lm(y ~ x, data.frame(d)); s <- summary(f)
  range <- function(type, x) unname(predict(f, data.frame(x = x), interval = type, level = .95)[1, 2:3])
  # Inverse prediction by its definition: where the edge of the band meets the value.
  inverse <- lapply(levels, function(v) {
    at <- unname((v - coef(f)[1]) / coef(f)[2])
    ends <- function(of, conf) sort(sapply(c("lwr", "upr"), function(k) {
      h <- function(x) predict(f, data.frame(x = x), interval = of, level = conf)[, k] - v
      # The root nearest to the crossing: the bands bend, and may meet the value again far away.
      w <- max(abs(at - base::range(d$x)), diff(base::range(d$x)))
      place <- at + seq(-6, 6, length.out = 6002) * w; sign <- sign(h(place))
      flips <- which(diff(sign) != 0); if (length(flips) == 0) return(NA)
      i <- flips[which.min(abs(place[flips] - at))]
      uniroot(h, place[i + 0:1], tol = 1e-10)$root }), na.last = TRUE)
    list(value = v, at = at, line95 = unname(ends("confidence", .95)), line80 = unname(ends("confidence", .8)),
         reading95 = unname(ends("prediction", .95)))
  })
  list(id = id, x = d$x, y = d$y, intercept = unname(coef(f)[1]), slope = unname(coef(f)[2]),
       interceptError = s$coefficients[1, 2], slopeError = s$coefficients[2, 2], scatter = s$sigma,
       rSquared = s$r.squared, freedom = s$df[2], at = at, line95 = range("confidence", at),
       reading95 = range("prediction", at), inverse = inverse)
}
pk <- function(q, n) .Call(stats:::C_pKendall, q, n)       # P(number of concordant pairs <= q)
sen <- function(id, d, confs) {
  n <- length(d$x); s <- c()
  for (i in 2:n) for (j in 1:(i - 1)) s <- c(s, (d$y[i] - d$y[j]) / (d$x[i] - d$x[j]))
  s <- sort(s); N <- length(s); b <- median(s)
  list(id = id, x = d$x, y = d$y, slope = b, intercept = median(d$y - b * d$x), ranges = lapply(confs, function(conf) {
    m <- sum(pk(0:N, n) <= (1 - conf) / 2 + 1e-12)            # how many of the outermost slopes may be left out
    list(confidence = conf, range = if (m == 0) c(NA, NA) else c(s[m], s[N + 1 - m])) }))
}
# The conjugate line by brute force: slope, level and scatter on a grid, prior density times likelihood.
withPrior <- function(id, d, mean, spread, dev, worth) {
  xb <- mean(d$x); n <- length(d$x)
  ls <- seq(log(dev) - 3.2, log(dev) + 4.5, length.out = 500)
  held <- if (is.na(mean)) 0 else (dev / spread)^2
  sxx <- sum((d$x - xb)^2); m0 <- if (is.na(mean)) 0 else mean
  bh <- (sum((d$x - xb) * (d$y - mean(d$y))) + held * m0) / (sxx + held)
  w <- numeric(0); post <- lapply(ls, function(l) {
    s <- exp(l)
    b <- bh + seq(-8, 8, length.out = 161) * s / sqrt(sxx + held)
    a <- mean(d$y) + seq(-8, 8, length.out = 161) * s / sqrt(n)
    g <- expand.grid(a = a, b = b)
    lp <- rep(0, nrow(g))
    for (i in seq_len(n)) lp <- lp + dnorm(d$y[i], g$a + g$b * (d$x[i] - xb), s, log = TRUE)
    if (!is.na(mean)) lp <- lp + dnorm(g$b, mean, s * spread / dev, log = TRUE)
    # scaled inverse chi-square on the variance with this worth, as a density of ln s, and the cell's own size
    lp <- lp - worth * l - worth * dev^2 / (2 * s^2) + 2 * l
    list(g = g, lp = lp, s = s)
  })
  top <- max(sapply(post, function(p) max(p$lp)))
  tot <- 0; sl <- 0; sl2 <- 0; below <- 0; at <- d$x[n] + (d$x[n] - d$x[1]) * .5 + 1
  q <- mean(d$y) + bh * (at - xb) - .5 * dev
  for (p in post) { w <- exp(p$lp - top); tot <- tot + sum(w); sl <- sl + sum(w * p$g$b); sl2 <- sl2 + sum(w * p$g$b^2)
    below <- below + sum(w * ((p$g$a + p$g$b * (at - xb)) < q)) 
  }
  readBelow <- 0
  for (p in post) { w <- exp(p$lp - top); readBelow <- readBelow + sum(w * pnorm(q, p$g$a + p$g$b * (at - xb), p$s)) }
  list(id = id, x = d$x, y = d$y, priorMean = mean, priorSpread = spread, deviation = dev, worth = worth,
       slope = sl / tot, slopeDeviation = sqrt(sl2 / tot - (sl / tot)^2), at = at, value = q,
       lineBelow = below / tot, readingBelow = readBelow / tot)
}
pf <- lm(y ~ x + I(x^2), data.frame(pontius)); ps <- summary(pf)
bent <- list(x = c(0,1,2,3,4,5,6), y = c(9, 8.9, 8.6, 8.3, 7.7, 7.0, 6.1))
bf <- summary(lm(y ~ x + I(x^2), data.frame(bent)))
cat(json(list(madeBy = R.version.string,
  lines = list(describe("R1", norris, 500, c(700)), describe("R3", tread, 20000, c(2, 3)), describe("R4", misread, 20000, c(2)),
    describe("noisy", noisy, 40, c(3))),
  theilSen = list(sen("R1", list(x = norris$x[c(1:23, 26:28)], y = norris$y[c(1:23, 26:28)]), c(.8, .95)),
    sen("R3", tread, c(.8, .95, .99)), sen("R4", misread, c(.8, .95)),
    sen("noisy", noisy, c(.5, .8, .95)), sen("four", list(x = c(0, 1, 2, 4), y = c(8, 7.6, 7.7, 6.9)), c(.8, .95)),
    sen("three", list(x = c(0, 1, 2), y = c(8, 7.6, 7.5)), c(.5, .8))),
  priors = list(withPrior("two readings", list(x = c(0, 3), y = c(7, 6.6)), -.15, .08, .3, 6),
    withPrior("four readings", list(x = c(0, 2, 4, 7), y = c(7, 6.8, 6.1, 5.9)), -.15, .08, .3, 6),
    withPrior("no slope held", list(x = c(0, 2, 4, 7), y = c(7, 6.8, 6.1, 5.9)), NA, NA, .3, 6)),
  parabolas = list(list(id = "R2", x = pontius$x, y = pontius$y, coefficients = unname(ps$coefficients[, 1]),
      errors = unname(ps$coefficients[, 2]), scatter = ps$sigma, rSquared = ps$r.squared, straight = ps$coefficients[3, 4]),
    list(id = "bent", x = bent$x, y = bent$y, coefficients = unname(bf$coefficients[, 1]),
      errors = unname(bf$coefficients[, 2]), scatter = bf$sigma, rSquared = bf$r.squared, straight = bf$coefficients[3, 4])))),
  "\n", sep = "")

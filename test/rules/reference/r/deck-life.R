# Expected values for the life of decks, made in R without any of this project's code.
#   Rscript test/rules/reference/r/deck-life.R > test/rules/reference/r/deck-life.json
# Mixture: for each listed shape the prior on theta = scale^-shape is Gamma(2, rate b0), b0 = 1/(sqrt(2) - 1), so that half
# of lives pass 1. The posterior is worked out by numerical integration over theta of prior x likelihood, shape by shape,
# never by the closed form that is under test.
d <- c(-2.5, -2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3)
shapes <- 3 * exp(0.5 * d)
prior <- exp(-d^2 / 2)
b0 <- 1 / (sqrt(2) - 1)

over_theta <- function(k, x, died, f) {
  exposure <- sum(x^k)
  r <- sum(died)
  sumlog <- sum(log(x[died]))
  # Scaled by its peak, or the integral underflows.
  lg <- function(th) dgamma(th, 2, b0, log = TRUE) + r * log(k) + r * log(th) + (k - 1) * sumlog - th * exposure
  peak <- (1 + r) / (b0 + exposure)
  top <- lg(peak)
  g <- function(th) exp(lg(th) - top) * f(th)
  c(log = top, value = integrate(g, 0, peak, rel.tol = 1e-11)$value + integrate(g, peak, peak * 60, rel.tol = 1e-11)$value)
}

# Probability of being alive at age t, given alive at age a, with lives x (died or not) of others seen.
alive <- function(t, a, x, died) {
  both <- function(age) {
    parts <- sapply(shapes, function(k) over_theta(k, x, died, function(th) exp(-th * age^k)))
    w <- log(prior) + parts["log", ]
    sum(exp(w - max(w0)) * parts["value", ])
  }
  w0 <<- log(prior) + sapply(shapes, function(k) over_theta(k, x, died, function(th) 1 + 0 * th)["log"])
  both(t) / both(a)
}
by <- function(p, a, x, died) uniroot(function(t) alive(t, a, x, died) - (1 - p), c(a, 40), tol = 1e-9)$root

cases <- list(
  list(id = "no-decks", x = numeric(0), died = logical(0), a = 0),
  list(id = "no-decks-old", x = numeric(0), died = logical(0), a = 1.2),
  list(id = "survivors-only", x = c(1.3, 1.1, 0.9, 1.6), died = rep(FALSE, 4), a = 0.8),
  list(id = "three-and-two", x = c(0.6, 0.9, 1.1, 1.0, 0.7), died = c(TRUE, TRUE, TRUE, FALSE, FALSE), a = 0.5),
  # The eight decks that wore out, over an expected 6.5 years; asked of a deck 5 years old.
  list(id = "eight-decks", x = c(5.1, 5.8, 6.0, 6.2, 6.4, 6.9, 7.3, 8.0) / 6.5, died = rep(TRUE, 8), a = 5 / 6.5)
)
out <- lapply(cases, function(k) list(id = k$id, ages = as.list(k$x), died = as.list(k$died), lasted = k$a,
  aliveAt = lapply(c(0.25, 0.75, 1.5), function(more) list(age = k$a + more, share = alive(k$a + more, k$a, k$x, k$died))),
  reached = lapply(c(0.1, 0.5, 0.9), function(p) list(share = p, age = by(p, k$a, k$x, k$died)))))

# Weibull with a lognormal prior on the shape (median 3, spread 0.5), flat on the log scale: its penalised maximum, and the
# plain maximum likelihood by survreg. Eight worn-out decks; and the same with three that still lie at 4, 5 and 5 years.
library(survival)
fit <- function(t, died, penal) {
  obj <- function(p) {
    b <- exp(p[1]); e <- exp(p[2])
    -(sum(log(b) - p[2] + (b - 1) * (log(t[died]) - p[2])) - sum((t / e)^b)) + penal * (p[1] - log(3))^2 / (2 * 0.5^2)
  }
  o <- optim(c(log(3), log(mean(t))), obj, method = "BFGS", control = list(reltol = 1e-15, maxit = 2000))
  exp(o$par)
}
lives <- c(5.1, 5.8, 6.0, 6.2, 6.4, 6.9, 7.3, 8.0)
m <- survreg(Surv(lives, rep(1, 8)) ~ 1, dist = "weibull")
p8 <- fit(lives, rep(TRUE, 8), 1)
p11 <- fit(c(lives, 4, 5, 5), c(rep(TRUE, 8), rep(FALSE, 3)), 1)
weibull <- list(plain = list(shape = 1 / m$scale, scale = unname(exp(coef(m)))), eight = list(shape = p8[1], scale = p8[2]),
  withSurvivors = list(shape = p11[1], scale = p11[2]))

num <- function(v) formatC(v, digits = 10, format = "g")
json <- function(v) {
  if (is.list(v)) {
    if (is.null(names(v))) paste0("[", paste(sapply(v, json), collapse = ", "), "]")
    else paste0("{", paste(sprintf('"%s": %s', names(v), sapply(v, json)), collapse = ", "), "}")
  } else if (is.character(v)) sprintf('"%s"', v)
  else if (is.logical(v)) tolower(as.character(v))
  else num(v)
}
cat(json(list(mixture = out, weibull = weibull)), "\n")

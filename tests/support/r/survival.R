# Reference values from R for the tests of survival, shares and the robust line.
# Run from the top of the project:
#   Rscript tests/support/r/survival.R > fixtures/reference/r-survival.json
#   npx prettier --write fixtures/reference/r-survival.json
# Needs Debian's r-base-core, r-cran-survival and r-cran-mass. The tests read the file and need no R.
library(survival)
library(MASS)

json <- function(x) {
  if (is.null(x)) return("null")
  if (is.list(x)) {
    parts <- vapply(x, json, "")
    if (is.null(names(x))) return(paste0("[", paste(parts, collapse = ", "), "]"))
    return(paste0("{", paste0('"', names(x), '": ', parts, collapse = ", "), "}"))
  }
  one <- function(v) {
    if (is.na(v)) "null" else if (is.character(v)) paste0('"', v, '"') else formatC(v, digits = 15, format = "g")
  }
  if (length(x) == 1 && !inherits(x, "AsIs")) return(one(x))
  paste0("[", paste(vapply(unclass(x), one, ""), collapse = ", "), "]")
}

curve <- function(id, what, time, status) {
  fits <- lapply(c(plain = "plain", loglog = "log-log"), function(type)
    summary(survfit(Surv(time, status) ~ 1, conf.type = type), censored = TRUE))
  s <- fits$plain
  list(id = id, what = what, time = I(time), died = I(as.integer(status)),
    steps = list(time = I(s$time), atRisk = I(s$n.risk), died = I(s$n.event), survival = I(s$surv),
      standardError = I(s$std.err), plainLower = I(s$lower), plainUpper = I(s$upper),
      loglogLower = I(fits$loglog$lower), loglogUpper = I(fits$loglog$upper)))
}
maintained <- subset(aml, x == "Maintained")
other <- subset(aml, x != "Maintained")
treated <- subset(gehan, treat == "6-MP")
curves <- list(
  curve("aml-maintained", "survival::aml, Maintained", maintained$time, maintained$status),
  curve("aml-nonmaintained", "survival::aml, Nonmaintained", other$time, other$status),
  curve("ovarian", "survival::ovarian", ovarian$futime, ovarian$fustat),
  curve("gehan-6mp", "MASS::gehan, 6-MP", treated$time, treated$cens))

shares <- lapply(list(c(0, 10, .95), c(1, 12, .95), c(22, 29, .95), c(25, 30, .95), c(16, 29, .9),
    c(12, 12, .95), c(450, 1000, .99), c(3, 4, .8)), function(v) {
  exact <- binom.test(v[1], v[2], conf.level = v[3])$conf.int
  wilson <- suppressWarnings(prop.test(v[1], v[2], conf.level = v[3], correct = FALSE))$conf.int
  tail <- (1 - v[3]) / 2
  list(successes = v[1], trials = v[2], level = v[3], clopperPearson = I(exact[1:2]), wilson = I(wilson[1:2]),
    jeffreys = I(qbeta(c(tail, 1 - tail), v[1] + .5, v[2] - v[1] + .5)))
})

betas <- lapply(list(c(.1, .5, .5), c(.3, 2, 5), c(.9, 22.5, 7.5), c(.5, 1000, 900), c(.01, .7, 30),
    c(.999, 3, 1), c(.74, 300.5, 100.25)), function(v)
  list(x = v[1], a = v[2], b = v[3], cdf = pbeta(v[1], v[2], v[3]),
    quantile05 = qbeta(.05, v[2], v[3]), quantile975 = qbeta(.975, v[2], v[3])))
gammas <- list(x = I(c(.1, .5, 1, 1.5, 3, 10.25, 171.5, 5000)),
  logGamma = I(lgamma(c(.1, .5, 1, 1.5, 3, 10.25, 171.5, 5000))))

# Chances of the numbers that live through stages, one after another, by matrices of beta-binomials.
betabinomial <- function(k, n, a, b) exp(lchoose(n, k) + lbeta(k + a, n - k + b) - lbeta(a, b))
chain <- function(alive, stages) {
  p <- c(rep(0, alive), 1)
  for (s in stages) {
    step <- outer(0:alive, 0:alive, function(n, k) {
      if (length(s) == 1) dbinom(k, n, s)
      else ifelse(k > n, 0, betabinomial(pmin(k, n), n, s[1] + .5, s[2] - s[1] + .5))
    })
    p <- as.vector(p %*% step)
  }
  cdf <- cumsum(p)
  at <- function(q) min(which(cdf >= q - 1e-12)) - 1
  list(alive = alive, stages = lapply(stages, function(s)
      if (length(s) == 1) s else list(survived = s[1], of = s[2])),
    mean = sum(0:alive * p), sd = sqrt(sum((0:alive)^2 * p) - sum(0:alive * p)^2),
    lower = at(.025), median = at(.5), upper = at(.975), probabilities = I(p))
}
adults <- list(chain(12, list(c(22, 29))), chain(10, list(.5)), chain(30, list(c(40, 44), .9, c(22, 25))),
  chain(25, list(c(12, 12))), chain(200, list(c(80, 100), c(57, 60))), chain(6, list(c(0, 5), 1)))

line <- function(id, what, x, y, origin) {
  X <- if (origin) cbind(x) else cbind(1, x)
  fit <- rlm(X, y, psi = psi.huber, k = 1.345, scale.est = "MAD", maxit = 2000, acc = 1e-14)
  s <- summary(fit)
  list(id = id, what = what, x = I(x), y = I(y), throughOrigin = if (origin) 1 else 0,
    coefficients = I(unname(s$coefficients[, 1])), standardErrors = I(unname(s$coefficients[, 2])),
    scale = s$sigma)
}
lines <- list(
  line("phones", "MASS::phones", phones$year, phones$calls, FALSE),
  line("cars", "datasets::cars", cars$speed, cars$dist, FALSE),
  line("cars-origin", "datasets::cars", cars$speed, cars$dist, TRUE),
  line("airquality", "datasets::airquality, Temp on Ozone where known",
    airquality$Ozone[!is.na(airquality$Ozone)], airquality$Temp[!is.na(airquality$Ozone)], FALSE))

cat("{\n", paste0('"', c("r", "survival", "mass", "curves", "shares", "betas", "gammas", "adults", "lines"), '": ',
  c(json(R.version.string), json(as.character(packageVersion("survival"))),
    json(as.character(packageVersion("MASS"))),
    vapply(list(curves, shares, betas, gammas, adults, lines), json, "")), collapse = ",\n"), "\n}\n", sep = "")

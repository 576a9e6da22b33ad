# Reference values for straight lines, nonlinear fits, tails of Student's t and means over a day's curve, from R's own
# lm, nls, pt and integrate. Writes JSON:
#   Rscript tests/support/r/thresholds.R > fixtures/reference/r-thresholds.json && npx prettier --write fixtures/reference/r-thresholds.json
options(digits = 17, warn = 2)

number <- function(x) sprintf("%.17g", x)
list_of <- function(x) paste0("[", paste(number(x), collapse = ", "), "]")
named <- function(x) paste0("{", paste(sprintf("\"%s\": %s", names(x), number(unname(x))), collapse = ", "), "}")
object <- function(...) {
  parts <- list(...)
  paste0("{", paste(sprintf("\"%s\": %s", names(parts), unlist(parts)), collapse = ", "), "}")
}
sequence_of <- function(items) paste0("[", paste(items, collapse = ", "), "]")
text <- function(x) sprintf("\"%s\"", x)

# Trials. The first three are printed (fixtures/published/thresholds.json), the others invented.
sets <- list(
  "gastrophysa" = list(t = c(18, 21.5, 25, 28), d = c(28.2, 21.6, 16.1, 15), w = rep(1, 4)),
  "handout" = list(t = c(50, 60, 70, 80), d = c(40, 20, 13, 9), w = rep(1, 4)),
  "haplogonatopus" = list(t = c(15, 20, 25, 30), d = c(117.1, 43.3, 23.8, 20.2), w = rep(1, 4)),
  "weighted" = list(
    t = c(15, 15, 18, 21, 24, 27, 30, 33), d = c(61, 58.5, 38, 26.4, 21.5, 17.2, 15.1, 16.4),
    w = c(4, 9, 12, 20, 18, 15, 11, 6)
  )
)

lines <- lapply(names(sets), function(id) {
  s <- sets[[id]]
  y <- 1 / s$d
  fit <- lm(y ~ t, data = data.frame(t = s$t, y = y), weights = s$w)
  a <- unname(coef(fit)[1])
  b <- unname(coef(fit)[2])
  v <- vcov(fit)
  # The delta method on the whole covariance matrix; the published formula uses another way to the same number.
  g <- c(-1 / b, a / b^2)
  table <- summary(fit)
  dt <- s$d * s$t
  at <- range(s$t) + c(-3, 2)
  means <- predict(fit, data.frame(t = at), interval = "confidence", level = 0.9)
  object(
    id = text(id), temperature = list_of(s$t), days = list_of(s$d), weight = list_of(s$w),
    intercept = number(a), slope = number(b),
    interceptError = number(table$coefficients[1, 2]), slopeError = number(table$coefficients[2, 2]),
    r2 = number(table$r.squared), residualMeanSquare = number(table$sigma^2),
    lower = number(-a / b), lowerError = number(sqrt(drop(t(g) %*% v %*% g))),
    thermalConstant = number(1 / b), thermalConstantError = number(sqrt(v[2, 2]) / b^2),
    studentised = list_of(rstudent(fit)),
    majorAxisSlope = if (all(s$w == 1)) number(sign(cor(s$d, dt)) * sd(dt) / sd(s$d)) else "null",
    means = object(
      temperature = list_of(at), level = number(0.9),
      rate = list_of(means[, 1]), low = list_of(means[, 2]), high = list_of(means[, 3])
    )
  )
})

tails <- lapply(c(1, 2, 3, 4, 7, 12, 30), function(df) {
  t <- c(-2.5, 0, 0.3, 1, 2.2, 6, 25)
  object(degrees = number(df), t = list_of(t), tail = list_of(pt(t, df, lower.tail = FALSE)))
})

# Nonlinear fits with R's symbolic derivatives, stopped by a far tighter relative offset than by default.
invented <- data.frame(
  t = c(12, 14, 17, 20, 23, 26, 29, 31, 33, 35),
  d = c(324.2, 66.6, 28.6, 17, 11.6, 9.4, 7.7, 7.4, 7, 7.6)
)
printed <- data.frame(t = c(15, 20, 25, 30), d = c(117.1, 43.3, 23.8, 20.2))
hot <- data.frame(
  t = c(12, 14, 17, 20, 23, 26, 29, 31, 33, 35),
  d = c(37, 25.5, 16.6, 10.4, 6.7, 4.9, 3.8, 3.7, 3.7, 4.3)
)
briere1 <- deriv(~ a * t * (t - lower) * sqrt(upper - t), c("a", "lower", "upper"), function(t, a, lower, upper) NULL)
briere2 <- deriv(
  ~ a * t * (t - lower) * (upper - t)^(1 / m), c("a", "lower", "upper", "m"),
  function(t, a, lower, upper, m) NULL
)
lactin2 <- deriv(
  ~ exp(rho * t) - exp(rho * upper - (upper - t) / delta) + lambda, c("rho", "upper", "delta", "lambda"),
  function(t, rho, upper, delta, lambda) NULL
)
logan6 <- deriv(
  ~ psi * (exp(rho * t) - exp(rho * upper - (upper - t) / delta)), c("psi", "rho", "upper", "delta"),
  function(t, psi, rho, upper, delta) NULL
)
school <- deriv(
  ~ rate298 * ((t + 273.15) / 298) * exp(activation / 1.987 * (1 / 298 - 1 / (t + 273.15))) /
    (1 + exp(hotEnthalpy / 1.987 * (1 / hotHalf - 1 / (t + 273.15)))),
  c("rate298", "activation", "hotHalf", "hotEnthalpy"),
  function(t, rate298, activation, hotHalf, hotEnthalpy) NULL
)

tight <- nls.control(maxiter = 500, tol = 1e-8, minFactor = 1e-10)
nonlinear <- function(id, model, data, fit, weight = rep(1, nrow(data))) {
  table <- summary(fit)$coefficients
  n <- nrow(data)
  k <- nrow(table) + 1
  aic <- AIC(fit)
  object(
    id = text(id), model = text(model), temperature = list_of(data$t), days = list_of(data$d), weight = list_of(weight),
    parameters = named(setNames(table[, 1], rownames(table))),
    standardErrors = named(setNames(table[, 2], rownames(table))),
    rss = number(deviance(fit)), aic = number(aic),
    aicc = if (n > k + 1) number(aic + 2 * k * (k + 1) / (n - k - 1)) else "null"
  )
}
w <- c(3, 5, 8, 8, 8, 8, 8, 6, 4, 2)
fits <- list(
  nonlinear("briere-1 on printed means", "briere-1", printed, nls(
    1 / d ~ briere1(t, a, lower, upper), printed, list(a = 3e-5, lower = 11, upper = 36), control = tight
  )),
  nonlinear("briere-1 on invented trials", "briere-1", invented, nls(
    1 / d ~ briere1(t, a, lower, upper), invented, list(a = 8e-5, lower = 11, upper = 39), control = tight
  )),
  nonlinear("briere-1 on weighted invented trials", "briere-1", invented, nls(
    1 / d ~ briere1(t, a, lower, upper), invented, list(a = 8e-5, lower = 11, upper = 39), control = tight, weights = w
  ), w),
  nonlinear("briere-2 on invented trials", "briere-2", invented, nls(
    1 / d ~ briere2(t, a, lower, upper, m), invented, list(a = 9e-5, lower = 11, upper = 38.5, m = 2.2), control = tight
  )),
  nonlinear("lactin-2 on invented trials", "lactin-2", invented, nls(
    1 / d ~ lactin2(t, rho, upper, delta, lambda), invented,
    list(rho = 0.1, upper = 42.4, delta = 9.2, lambda = -0.1), control = tight
  )),
  nonlinear("sharpe-schoolfield-hot on invented trials", "sharpe-schoolfield-hot", hot, nls(
    1 / d ~ school(t, rate298, activation, hotHalf, hotEnthalpy), hot,
    list(rate298 = 0.2, activation = 25000, hotHalf = 305, hotEnthalpy = 56000), control = tight
  ))
)

# Mean rates over a day's curve. The parameters are those of fixtures/published/rate-models.json.
briere <- function(t) ifelse(t > 11.36 & t < 39.17, 7.86e-5 * t * (t - 11.36) * sqrt(pmax(0, 39.17 - t)), 0)
days <- list(c(9, 21), c(12, 28), c(20, 30), c(26, 38), c(24, 42))
effects <- lapply(days, function(day) {
  mean <- sum(day) / 2
  half <- diff(day) / 2
  over <- function(curve) {
    cuts <- c(-1, 1)
    for (kink in c(11.36, 39.17)) if (abs(kink - mean) < half) cuts <- c(cuts, curve$where((kink - mean) / half))
    cuts <- sort(cuts)
    sum(sapply(seq_len(length(cuts) - 1), function(i) {
      integrate(function(u) briere(mean + half * curve$at(u)), cuts[i], cuts[i + 1], rel.tol = 1e-12, subdivisions = 2000L)$value
    })) / 2
  }
  sine <- list(at = function(u) sin(pi / 2 * u), where = function(v) asin(v) * 2 / pi)
  line <- list(at = function(u) u, where = function(v) v)
  object(
    min = number(day[1]), max = number(day[2]),
    sine = number(over(sine) / briere(mean) - 1), triangle = number(over(line) / briere(mean) - 1)
  )
})

cat(object(
  title = text("Straight lines, nonlinear fits, Student tails and mean rates computed with R"),
  note = text("Computed, not published: R is the general-purpose reference. Trials are printed ones or invented, as the script says."),
  source = text("tests/support/r/thresholds.R"),
  version = text(R.version.string),
  lines = sequence_of(lines), tails = sequence_of(tails), fits = sequence_of(fits), effects = sequence_of(effects)
), "\n")

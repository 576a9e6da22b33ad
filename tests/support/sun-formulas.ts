// Day length by two published formulas, written apart from src so that they can check it.

/**
 * Daylight hours N of FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), second-hand: the centre of
 * the disc on the horizon, no refraction, a declination of one sine.
 */
export function fao56Daylight(dayOfYear: number, latitude: number): number {
  const declination = 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);
  const sunsetAngle = Math.acos(clamped(-Math.tan((latitude * Math.PI) / 180) * Math.tan(declination)));
  return (24 / Math.PI) * sunsetAngle;
}

/**
 * Day length of Forsythe et al. (1995), Ecol. Model. 80, 87-95, coefficients second-hand.
 * @param below How far below the horizon the centre is at sunrise, degrees: 0.8333 with refraction.
 */
export function forsytheDayLength(dayOfYear: number, latitude: number, below: number): number {
  const theta = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (dayOfYear - 186)));
  const declination = Math.asin(0.39795 * Math.cos(theta));
  const phi = (latitude * Math.PI) / 180;
  const cosine =
    (Math.sin((below * Math.PI) / 180) + Math.sin(phi) * Math.sin(declination)) /
    (Math.cos(phi) * Math.cos(declination));
  return 24 - (24 / Math.PI) * Math.acos(clamped(cosine));
}

function clamped(cosine: number): number {
  return Math.min(1, Math.max(-1, cosine));
}

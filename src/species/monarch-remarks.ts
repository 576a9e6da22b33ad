/** What a user of either set of constants of the monarch should know. */
export const MONARCH_REMARKS = {
  fromMemory:
    "The thresholds 11.5 and 33 °C and the egg-to-adult sum 352 are from memory; the original table was not seen.",
  abovePulses:
    "Above 33 °C development is held at its 33 °C rate: daily pulses of 36 °C sped development up (York & Oberhauser 2002, J. Kansas Ent. Soc. 75:290-298, abstract read), which speaks against a vertical cutoff.",
  heldHeat:
    "Constant 34 °C left 16 of 29 animals alive and most of those deformed (Ragonese et al. 2024, open data), whatever the dates say.",
  hostAndSeason: "Animals on other host plants, and in autumn, may need less or more.",
} as const;

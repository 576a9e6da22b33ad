import { given } from "../../given.ts";
import { counted } from "../../plain-words.ts";
import type { RoomRelation } from "../../temperature/room-relation.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import { addDays } from "../../time/civil-day.ts";
import { fixedText } from "../layout/number-text.ts";
import { columns, fullDayLabel, wrapped } from "../layout/text-layout.ts";

/**
 * How a room differs from a weather station, as plain text, at most 80 columns, with what is estimated from it.
 * @param relation What `relateRoom` found. @param estimated What `roomTemperatures` makes of the station's days.
 */
export function roomText(relation: RoomRelation, estimated: DailyTemperatures): string {
  given(relation, ["relation"], "what relateRoom returns", "damping", "level");
  given(
    estimated,
    ["estimated"],
    "daily temperatures, as dailyTemperatures makes them",
    "start",
    "min",
    "max",
  );
  const { stationMean, level, damping, rangeRatio, residualDeviation, days, from, to, seen } = relation;
  const table = columns(
    [
      ["", "", "+/-"],
      [
        `  room, when the station's day has a mean of ${fixedText(stationMean, 1)} °C`,
        `${fixedText(level.value, 1)} °C`,
        level.standardError.toFixed(1),
      ],
      [
        "  for each degree that the station rises, the room rises",
        `${damping.value.toFixed(2)} °C`,
        damping.standardError.toFixed(2),
      ],
      [
        "  between a day's lowest and highest, times the station's",
        rangeRatio.value.toFixed(2),
        rangeRatio.standardError.toFixed(2),
      ],
    ],
    [1, 2],
  );
  return [
    "ROOM AND STATION",
    wrapped(`${days} whole days that both were measured, from ${fullDayLabel(from)} to ${fullDayLabel(to)}.`),
    "",
    table,
    "",
    wrapped(
      `${characterText(relation)} Single days are off by about ${residualDeviation.toFixed(1)} °C. +/- is one standard error.`,
    ),
    "",
    "ESTIMATED FOR THE ROOM",
    wrapped(estimatedText(estimated)),
    "",
    wrapped(
      `These are estimates, not measurements. They hold for this room, this season and this way of heating and airing, and for station means from ${fixedText(seen.low, 1)} to ${fixedText(seen.high, 1)} °C; a logger that stays with the animals is better.`,
    ),
  ].join("\n");
}

function characterText({ damping, rangeRatio, level, stationMean }: RoomRelation): string {
  const difference = level.value - stationMean;
  const degrees = Math.abs(difference).toFixed(1);
  const warmth =
    degrees === "0.0"
      ? "as warm as the station on such a day"
      : `${degrees} °C ${difference < 0 ? "colder" : "warmer"} than the station on such a day`;
  const weather =
    damping.value < 0.3
      ? "hardly follows the weather"
      : damping.value < 0.9
        ? "follows the weather, but less far"
        : damping.value <= 1.1
          ? "follows the weather degree by degree"
          : "goes further than the weather";
  const day =
    rangeRatio.value < 0.9
      ? "its nights and days are closer together"
      : rangeRatio.value <= 1.1
        ? "its nights and days are as far apart"
        : "its nights and days are further apart";
  return `The room is ${warmth}; it ${weather}, and ${day}.`;
}

function estimatedText({ start, min, max }: DailyTemperatures): string {
  const known = Array.from(min, (low, i) => ({ low, high: max[i] ?? Number.NaN, day: addDays(start, i) }));
  const whole = known.filter(({ low, high }) => !Number.isNaN(low + high));
  const [first] = whole;
  const last = whole.at(-1);
  if (first === undefined || last === undefined) return "No day could be estimated.";
  const mean = whole.reduce((sum, { low, high }) => sum + (low + high) / 2, 0) / whole.length;
  const coldest = whole.reduce((least, one) => (one.low < least.low ? one : least));
  const warmest = whole.reduce((most, one) => (one.high > most.high ? one : most));
  const missing = known.length - whole.length;
  const gaps =
    missing === 0
      ? ""
      : ` ${counted(missing, "day that the station lacks is", "days that the station lacks are")} left out.`;
  return `${counted(whole.length, "day")} from ${fullDayLabel(first.day)} to ${fullDayLabel(last.day)}, ${fixedText(mean, 1)} °C on average. Lowest ${fixedText(coldest.low, 1)} °C on ${fullDayLabel(coldest.day)}, highest ${fixedText(warmest.high, 1)} °C on ${fullDayLabel(warmest.day)}.${gaps}`;
}

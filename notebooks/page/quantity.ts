import { displayUnit } from "../../src/plot/display-unit.ts";
import {
  type Celsius,
  type DegreeDays,
  type TemperatureUnit,
  fahrenheitDegreesToCelsius,
  fahrenheitToCelsius,
} from "../../src/units.ts";
import { element } from "./element.ts";
import { type Field, field } from "./field.ts";

/** What a slider over temperatures or sums of them is told. */
interface QuantityOptions {
  readonly label: string;
  /** Scale that it shows. Its value is in °C or °C·day whatever it shows. */
  readonly unit: TemperatureUnit;
  readonly from: number;
  readonly to: number;
  readonly value: number;
  /** Sliders are made anew when the unit changes: what this one stood on is kept under its label. */
  readonly step?: number;
}

// Where sliders were left, in °C, by label.
const left = new Map<string, number>();

/** A slider over temperatures, whose value is in °C. Half a degree a step, in °F a whole one. */
export function temperature(options: QuantityOptions): Field<Celsius> {
  const { temperature, degree } = displayUnit(options.unit);
  const back = options.unit === "F" ? fahrenheitToCelsius : (value: number) => value;
  return slider({ step: options.unit === "F" ? 1 : 0.5, ...options }, degree, temperature, back);
}

/** A slider over degree-days, whose value is in °C·day. Ten a step, in °F twenty. */
export function amount(options: QuantityOptions): Field<DegreeDays> {
  const { sum, degreeDay } = displayUnit(options.unit);
  const back = options.unit === "F" ? fahrenheitDegreesToCelsius : (value: number) => value;
  return slider({ step: options.unit === "F" ? 20 : 10, ...options }, degreeDay, sum, back);
}

/** A number, or `null` while the box is empty or holds none. */
export function number({ label, value }: { label: string; value: number | null }): Field<number | null> {
  const text = value === null ? "" : String(value);
  const input = element("input", { type: "number", step: "any", value: text });
  return field(label, input, ({ valueAsNumber }) => (Number.isFinite(valueAsNumber) ? valueAsNumber : null));
}

function slider(
  { label, from, to, value, step }: QuantityOptions & { readonly step: number },
  name: string,
  show: (value: number) => number,
  back: (value: number) => number,
): Field<number> {
  const stepped = (value: number): number => Math.round(show(value) / step) * step;
  const input = element("input", {
    type: "range",
    min: String(stepped(from)),
    max: String(stepped(to)),
    step: String(step),
  });
  input.value = String(stepped(left.get(label) ?? value));
  const shown = element("span", { class: "day", "aria-hidden": "true" });
  const tell = (): void => {
    shown.textContent = `${input.value}\u00a0${name}`;
    input.setAttribute("aria-valuetext", shown.textContent);
  };
  input.addEventListener("input", () => {
    left.set(label, back(input.valueAsNumber));
    tell();
  });
  tell();
  // Half a degree in °C is exact, so the round trip through °F is the only rounding.
  const form = field(label, input, ({ valueAsNumber }) => Math.round(back(valueAsNumber) * 1e9) / 1e9);
  form.append(shown);
  return form;
}

/* The kinds of input: how each is shown, typed into and moved. */

import { makeBox, makeNext } from "./boxes.js";
import { make, setText } from "./dom.js";
import { MOST_LETTERS } from "./link.js";
import { makeWays } from "./ways.js";
import { fromPlace, pressed, roundNear, toPlace } from "./track.js";

const UP_AND_DOWN = ["ArrowUp", "ArrowDown", "PageUp", "PageDown"];
const MOST_IN_A_LIST = 4000; // letters

/**
 * @import {Asked, Host, Value} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

/**
 * One input on the page.
 *
 * @typedef {object} Controlled
 * @property {HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement | HTMLTableElement} field
 * @property {(Element | string)[]} parts what stands between label and hint
 * @property {(keepText: boolean) => void} show bring the control to the present value
 * @property {() => unknown} [read] take what stands in the field
 * @property {() => void} [follow] say what the sheet found, where that stands in the control
 */

/**
 * What a control is made with: its input, and what it tells of it.
 *
 * @typedef {object} Given
 * @property {string} name
 * @property {string} id starts the ids of what is beside the field
 * @property {Asked} asked
 * @property {Numbers} numbers
 * @property {Host} host
 * @property {() => void} typing the field holds what is not yet read
 * @property {(value: Value, typedIn?: Element) => void} set
 * @property {(message: string) => void} refuse
 */

/**
 * A number: a box with its unit, and a slider.
 *
 * @param {Given} given
 * @returns {Promise<Controlled>}
 */
export async function makeNumber(given) {
  const { name, id, asked, numbers, host, set } = given;
  const slider = await host.slider(name);
  const box = await makeBox(given);
  slider.name(asked.title);
  const ways = asked.dimension === "grist" ? makeWays(numbers, name, id, given) : null;
  const value = () => /** @type {number} */ (numbers.value(name));

  slider.onMove((place) => {
    const shown = numbers.toShown(asked.dimension, fromPlace(asked, place));
    set(roundNear(numbers, asked, shown));
  });
  /** @param {KeyboardEvent} event */
  const step = (event) => {
    const to = pressed(numbers, asked, value(), event.key);
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    box.take(to);
  };
  slider.el.addEventListener("keydown", step, { capture: true });
  // a number is one stop of the Tab key: in its box the keys up and down step as on the slider
  slider.skip();
  box.field.addEventListener("keydown", (event) => {
    if (UP_AND_DOWN.includes(event.key)) step(event);
  });

  return {
    field: box.field,
    parts: [box.el, ...(ways ? [ways.el] : []), slider.el],
    read: box.read,
    show(keepText) {
      const shown = numbers.toShown(asked.dimension, value());
      box.show(keepText);
      ways?.show();
      slider.set(toPlace(asked, value()));
      slider.say(`${numbers.program.show(shown, 6)} ${numbers.label(asked.dimension)}`.trim());
    },
  };
}

/**
 * Several numbers, a line each.
 *
 * @param {Given} given
 */
export function makeReadings(given) {
  const { asked, numbers } = given;
  const { program } = numbers;
  return makeLines(given, {
    read: (text) => program.read_lines(asked, text, numbers.shown),
    write: (values) =>
      /** @type {number[]} */ (values).map((value) => program.written(asked, value, numbers.shown)),
    unit: () => numbers.label(asked.dimension),
  });
}

/**
 * Several pairs of numbers, a line each.
 *
 * @param {Given} given
 */
export function makePairs(given) {
  const { asked, numbers } = given;
  const { program } = numbers;
  return makeLines(given, {
    read: (text) => program.read_pairs(asked, text, numbers.shown),
    write: (values) =>
      /** @type {number[][]} */ (values).map((pair) =>
        asked.parts
          .map((part, at) => program.written(part, pair[at] ?? NaN, numbers.shown))
          .join("   "),
      ),
    unit: () =>
      asked.parts
        .map(({ title, dimension }) => [title.toLowerCase(), numbers.label(dimension)])
        .map(([title, label]) => (label ? `${title} (${label})` : title))
        .join(", "),
  });
}

/**
 * @param {Given} given
 * @param {object} way
 * @param {(text: string) => [values: number[] | number[][] | null, wrong: string]} way.read
 * @param {(values: Value) => string[]} way.write
 * @param {() => string} way.unit
 * @returns {Promise<Controlled>}
 */
async function makeLines({ name, numbers, host, typing, set, refuse }, way) {
  const { el, field } = await host.lines(name);
  field.maxLength = MOST_IN_A_LIST;
  const unit = make("span", "ys-unit");

  const read = () => {
    const [values, wrong] = way.read(field.value);
    if (values === null) refuse(wrong);
    else set(values, field);
    return values !== null;
  };
  /** @param {Value} values */
  const written = (values) => way.write(values).join("\n");
  // only if it says something else: the reader's own spelling stays
  const write = () => {
    const [standing] = way.read(field.value);
    const now = written(numbers.value(name));
    if (standing === null || written(standing) !== now) field.value = now;
  };

  field.addEventListener("input", (event) => {
    // a new line ends the number before it
    if (/** @type {InputEvent} */ (event).inputType === "insertLineBreak") read();
    else typing();
  });
  field.addEventListener("change", () => {
    if (read()) write();
  });

  return {
    field,
    parts: [unit, el],
    read,
    show(keepText) {
      const label = way.unit();
      setText(unit, label ? `${label}, one a line` : "one a line");
      if (!keepText) write();
    },
  };
}

/**
 * One of several.
 *
 * @param {Given} given
 * @returns {Promise<Controlled>}
 */
export async function makePick({ name, asked, numbers, host, set }) {
  const { el, field } = await host.pick(name);
  const kept = Object.keys(asked.options);
  field.addEventListener("change", () => {
    set(/** @type {string} */ (kept[field.selectedIndex]), field);
  });
  const next = makeNext(asked, () => {
    const at = kept.indexOf(String(numbers.value(name)));
    set(/** @type {string} */ (kept[(at + 1) % kept.length]));
  });
  return {
    field,
    parts: [el, ...next],
    show() {
      field.selectedIndex = kept.indexOf(String(numbers.value(name)));
    },
  };
}

/**
 * Words of the reader's own.
 *
 * @param {Given} given
 * @returns {Promise<Controlled>}
 */
export async function makeWords({ name, numbers, host, set }) {
  const { el, field } = await host.box(name);
  field.maxLength = MOST_LETTERS;
  field.addEventListener("input", () => set(field.value, field));
  return {
    field,
    parts: [el],
    show(keepText) {
      if (!keepText) field.value = String(numbers.value(name));
    },
  };
}

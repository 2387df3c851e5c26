/* A box for one number with its unit, and the kinds of input that are no more than that. */

import { make, setText } from "./dom.js";
import { MOST_LETTERS } from "./link.js";

/**
 * @import {Asked} from "./types"
 * @import {Controlled, Given} from "./fields.js"
 */

/**
 * A box, its unit, and what is read from it.
 *
 * @param {Given} given
 */
export async function makeBox({ name, asked, numbers, host, typing, set, refuse }) {
  const { el: stock, field } = await host.box(name);
  const unit = make("span", "ys-unit");
  const el = make("div", "ys-typed");
  el.append(stock, unit);
  field.autocomplete = "off";
  field.maxLength = MOST_LETTERS;

  const written = () => {
    const value = /** @type {number | null} */ (numbers.value(name));
    return value === null ? "" : numbers.program.written(asked, value, numbers.shown);
  };
  /** @param {number | null} number */
  const take = (number) => {
    set(number);
    field.value = written(); // the same number may be spelt otherwise
  };
  const read = () => {
    const [number, wrong] = numbers.program.read_number(asked, field.value, numbers.shown);
    if (wrong) refuse(wrong);
    else take(number);
  };
  // half a number is none: it is read when the reader presses Enter or leaves the box
  field.addEventListener("input", typing);
  field.addEventListener("change", read);

  return {
    el,
    field,
    take,
    read,
    /** @param {boolean} keepText */
    show(keepText) {
      setText(unit, numbers.label(asked.dimension));
      if (!keepText) field.value = written();
    },
  };
}

/**
 * A number that may be left out: a box alone.
 *
 * @param {Given} given
 * @returns {Promise<Controlled>}
 */
export async function makeBlank(given) {
  const { el, ...box } = await makeBox(given);
  return { ...box, parts: [el] };
}

/**
 * The number of a draw: a box, and a button for the next.
 *
 * @param {Given} given
 * @returns {Promise<Controlled>}
 */
export async function makeDraw(given) {
  const { name, asked, numbers } = given;
  const { el, ...box } = await makeBox(given);
  const next = makeNext(asked, () => {
    const now = /** @type {number} */ (numbers.value(name));
    box.take(now < asked.high ? now + 1 : asked.low);
  });
  return { ...box, parts: [el, ...next] };
}

/**
 * Make the button that takes the next one, if there is to be one.
 *
 * @param {Asked} asked
 * @param {() => void} take
 */
export function makeNext({ another }, take) {
  if (!another) return [];
  const button = make("button", "ys-button", another);
  button.type = "button";
  button.addEventListener("click", take);
  return [button];
}

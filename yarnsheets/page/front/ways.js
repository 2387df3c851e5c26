/* The ways to give a grist: by itself, by a cut on a balance, by yards of a known weight.
 *
 * A cut always follows the grist, and the grist a cut that is typed: what is kept beside the grist is
 * the way, the balance's factor, and the weight, and they are kept from page to page.
 */

import { make, setText } from "./dom.js";
import { keep, kept } from "./kept.js";
import { MOST_LETTERS } from "./link.js";

/**
 * @import {Asked} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

const KEPT = "yarnsheets-grist"; // the name under which the browser keeps the way

/** What each way is called, and which of the numbers beside the grist it asks. */
const WAYS = /** @type {const} */ ({
  grist: { words: "its grist", asks: [] },
  cut: { words: "a cut on the balance", asks: ["cut", "factor"] },
  length: { words: "a length and its weight", asks: ["length", "mass"] },
});

/** @typedef {keyof typeof WAYS} Way */

/**
 * @param {unknown} way
 * @returns {way is Way}
 */
const isWay = (way) => typeof way === "string" && way in WAYS;

/**
 * Make the ways to give a grist.
 *
 * @param {Numbers} numbers
 * @param {string} name of the grist among the inputs
 * @param {string} id starts the ids of the fields
 * @param {object} hear
 * @param {() => void} hear.typing a field holds what is not yet read
 * @param {(grist: number) => void} hear.set
 * @param {(message: string) => void} hear.refuse
 */
export function makeWays(numbers, name, id, hear) {
  const { program, description } = numbers;
  const before = kept(KEPT);
  /** @type {Way} */
  let way = isWay(before.way) ? before.way : "grist";
  const beside = {
    factor: keptOrUsual("factor"),
    mass: keptOrUsual("mass"),
  };
  /**
   * What the browser kept of a number, if that may be; the usual one if not.
   *
   * @param {"factor" | "mass"} key
   */
  function keptOrUsual(key) {
    const [asked, value] = [/** @type {Asked} */ (description.ways[key]), before[key]];
    const isGood = typeof value === "number" && program.takes(asked, value);
    return isGood ? value : /** @type {number} */ (asked.default);
  }

  const grist = () => /** @type {number} */ (numbers.value(name));
  const factor = () => numbers.balanceFactor ?? beside.factor;

  /** The present number of each field. */
  const now = {
    cut: () => program.cut_from_grist(grist(), factor()),
    factor,
    length: () => program.length(beside.mass, grist()),
    mass: () => beside.mass,
  };
  /** The grist, when a field gets another number; the other field of its way stays. */
  const then = {
    /** @param {number} cut */
    cut: (cut) => program.grist_from_cut(cut, factor()),
    /** @param {number} other */
    factor(other) {
      const cut = now.cut();
      beside.factor = other;
      return program.grist_from_cut(cut, other);
    },
    /** @param {number} length */
    length: (length) => program.grist(length, beside.mass),
    /** @param {number} other */
    mass(other) {
      const length = now.length();
      beside.mass = other;
      return program.grist(length, other);
    },
  };
  /** @typedef {keyof typeof now} Field */

  const picker = make("select");
  picker.id = `${id}-way`;
  picker.append(...Object.values(WAYS).map(({ words }) => new Option(words)));
  picker.selectedIndex = Object.keys(WAYS).indexOf(way);
  picker.addEventListener("change", () => {
    way = /** @type {Way} */ (Object.keys(WAYS)[picker.selectedIndex]);
    keepWay();
    show();
  });
  const label = make("label", "ys-way-label", "I have");
  label.htmlFor = picker.id;
  const choice = make("div", "ys-way");
  choice.append(label, picker);
  const el = make("div", "ys-ways");
  el.append(choice);

  const fields = /** @type {Field[]} */ (Object.keys(now)).map((key) => {
    const asked = /** @type {Asked} */ (description.ways[key]);
    const field = make("input");
    Object.assign(field, { id: `${id}-${key}`, autocomplete: "off", maxLength: MOST_LETTERS });
    const title = make("label", "ys-way-label", asked.title);
    title.htmlFor = field.id;
    const unit = make("span", "ys-unit");
    const typed = make("div", "ys-typed");
    typed.append(field, unit);
    const row = make("div", "ys-way");
    row.append(title, typed);
    el.append(row);

    const written = () => program.written(asked, now[key](), numbers.shown);
    field.addEventListener("input", hear.typing);
    field.addEventListener("change", () => {
      const [value, wrong] = program.read_number(asked, field.value, numbers.shown);
      if (value === null) {
        hear.refuse(wrong);
        return;
      }
      const old = { ...beside };
      const found = then[key](value);
      if (!program.takes(numbers.asked(name), found)) {
        Object.assign(beside, old);
        const shown = numbers.toShown("grist", found);
        hear.refuse(program.outside(numbers.asked(name), shown, numbers.shown));
        return;
      }
      keepWay();
      hear.set(found);
      show();
    });
    return {
      show() {
        const asks = /** @type {readonly string[]} */ (WAYS[way].asks);
        const isAsked = key === "factor" && numbers.balanceFactor !== undefined;
        row.hidden = !asks.includes(key) || isAsked;
        setText(unit, numbers.label(asked.dimension));
        field.value = written();
      },
    };
  });

  function keepWay() {
    keep(KEPT, { way, ...beside });
  }

  function show() {
    for (const field of fields) field.show();
  }

  return { el, show };
}

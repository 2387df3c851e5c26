/* Places on a slider, and how far a step of it goes.
 *
 * A slider without a step of its own has equal ratios at equal distances: its places are
 * logarithms, and one step is about one per cent.
 */

/** @import {Asked} from "./types" */
/** @import {Numbers} from "./numbers.js" */

const PART = 0.01;

/** How many steps a key goes, to the right or to the left. */
const STEPS = /** @type {Record<string, number>} */ ({
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
});

/**
 * @param {Asked} asked
 * @param {number} value
 */
export const toPlace = ({ step }, value) => (step === null ? Math.log10(value) : value);

/**
 * @param {Asked} asked
 * @param {number} place
 */
export const fromPlace = ({ step }, place) => (step === null ? 10 ** place : place);

/**
 * The ends of a slider's track, and the distance of the places on it.
 *
 * @param {Asked} asked
 */
export function trackOf(asked) {
  const [min, max] = [toPlace(asked, asked.low), toPlace(asked, asked.high)];
  if (asked.step !== null) return { min, max, step: asked.step };
  const count = Math.ceil((max - min) / Math.log10(1 + PART));
  return { min, max, step: (max - min) / count };
}

/**
 * The round value nearest to a shown number, within an input's range.
 *
 * @param {Numbers} numbers
 * @param {Asked} asked
 * @param {number} shown
 */
export function roundNear(numbers, asked, shown) {
  const step = stepAt(numbers, asked, shown);
  const round = Number((Math.round(shown / step) * step).toPrecision(12));
  const value = numbers.toOwn(asked.dimension, round);
  return Math.min(Math.max(value, asked.low), asked.high);
}

/**
 * Where a key takes an input's value; undefined if it is none that moves.
 *
 * @param {Numbers} numbers
 * @param {Asked} asked
 * @param {number} value
 * @param {string} key
 */
export function pressed(numbers, asked, value, key) {
  if (key === "Home") return asked.low;
  if (key === "End") return asked.high;
  const steps = STEPS[key];
  if (steps === undefined) return undefined;
  /** @param {number} own */
  const toShown = (own) => numbers.toShown(asked.dimension, own);
  const shown = toShown(value);
  const step = stepAt(numbers, asked, shown);
  const to = shown + (toShown(asked.high) > toShown(asked.low) ? steps : -steps) * step;
  return roundNear(numbers, asked, asked.step === null ? Math.max(to, step) : to);
}

/**
 * One step from a shown number, in the unit shown.
 *
 * @param {Numbers} numbers
 * @param {Asked} asked
 * @param {number} shown
 */
function stepAt(numbers, { step, dimension }, shown) {
  if (step === null) return numbers.program.round_step(Math.max(shown * PART, 1e-9));
  return numbers.hasUnit(dimension)
    ? numbers.program.round_step(numbers.toShown(dimension, step))
    : step;
}

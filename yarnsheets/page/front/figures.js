/* The charts of a sheet: what they read, how far their axes reach, when they are drawn. */

import { makeChart } from "./chart.js";
import { makePart } from "./dom.js";
import { makeReach } from "./reach.js";

/**
 * @import {Charts, Known} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

/**
 * Make the charts. They are drawn when the chart library has come.
 *
 * @param {Numbers} numbers
 * @param {(name: string, shown: number) => void} move an input to about a shown number
 */
export function makeFigures(numbers, move) {
  const el = makePart("section", "ys-charts", "Charts");
  const { charts, labels } = numbers.description;
  let isHeld = false; // a point is being dragged, and the axes keep still
  const hand = {
    move,
    hold() {
      isHeld = true;
    },
    drop() {
      isHeld = false;
      update();
    },
  };
  const figures = charts.map((chart) => makeChart(numbers, chart, hand));
  el.append(...figures.map((figure) => figure.el));

  /** @type {Charts | undefined} */
  let library;
  /** @type {(known: Known) => Record<string, number>} */
  let reach = () => ({});
  /** @type {Record<string, number>} */
  const tops = {};
  /** @type {number[]} */
  let widths = [];
  const widthsNow = () => figures.map((figure) => figure.room());

  function update() {
    for (const figure of figures) figure.describe();
    if (!library) return;
    const known = readByCharts(numbers);
    if (!isHeld)
      for (const [name, length] of Object.entries(reach(known)))
        tops[name] = numbers.program.round_above(length);
    Object.assign(known, tops);
    for (const [name, label] of Object.entries(labels)) known[name] = numbers.fill(label);
    for (const [at, figure] of figures.entries()) figure.draw(library, widths[at] ?? 0, known);
  }

  const resized = new ResizeObserver(() => {
    const now = widthsNow();
    if (now.every((width, at) => width === widths[at])) return;
    widths = now;
    update();
  });

  return {
    el,
    update,

    /**
     * Draw the charts for the first time.
     *
     * @param {Charts} given
     */
    start(given) {
      library = given;
      widths = widthsNow();
      const expressions = Object.assign({}, ...charts.map((chart) => chart.reach));
      reach = makeReach(library, expressions, readByCharts(numbers));
      update();
      for (const figure of figures) resized.observe(figure.el);
    },

    /**
     * Put the charts where there is room: side by side, or each under the input that its point
     * moves, so that on a phone both are seen together.
     *
     * @param {boolean} isNarrow
     * @param {(input: string) => Element | null} placeOf
     */
    place(isNarrow, placeOf) {
      for (const figure of figures) {
        const input = isNarrow && figure.input ? placeOf(figure.input) : null;
        if (input) input.after(figure.el);
        else el.append(figure.el);
      }
    },

    end() {
      resized.disconnect();
      for (const figure of figures) figure.end();
    },
  };
}

/**
 * What charts read by name: all that is known, and the units shown.
 *
 * @param {Numbers} numbers
 * @returns {Known}
 */
function readByCharts(numbers) {
  const known = { ...numbers.known };
  for (const [dimension, scale] of Object.entries(numbers.shown.scales)) {
    const [factor, power] = scale[numbers.unit(dimension)] ?? [1, 1];
    known[`${dimension}_factor`] = factor;
    if (dimension === "grist") known["grist_power"] = power;
  }
  return known;
}

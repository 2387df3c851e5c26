/* One chart: its heading, its picture, the words under it, and the handle on its marked point. */

import { make } from "./dom.js";
import { Drawn } from "./drawn.js";
import { makeGrip } from "./grip.js";

/**
 * @import {View} from "vega"
 * @import {ChartDescription, Charts, Known} from "./types"
 * @import {Row} from "./drawn.js"
 * @import {Hand} from "./grip.js"
 * @import {Numbers} from "./numbers.js"
 */

const GAP = { right: 24, top: 34, bottom: 46 }; // and on the left, what the chart asks for
const LEAST_WIDTH = 120;
const HIGH = { least: 260, most: 380, share: 0.32 }; // of the width, for a wide screen

/** @typedef {ReturnType<typeof makeChart>} Chart */

/**
 * Make a chart; it has no picture until it is drawn.
 *
 * @param {Numbers} numbers
 * @param {ChartDescription} description
 * @param {Hand} hand
 */
export function makeChart(numbers, description, hand) {
  const el = make("figure", "ys-chart");
  el.dataset["name"] = description.name;
  const frame = make("div", "ys-frame");
  frame.setAttribute("role", "img");
  const picture = /** @type {HTMLElement & {view?: View}} */ (make("div", "ys-picture"));
  picture.setAttribute("aria-hidden", "true"); // the frame has its words
  frame.append(picture);
  const caption = make("figcaption");
  el.append(make("h2", "", description.title), frame, caption);
  const grip = description.grip && makeGrip(numbers, description.grip, hand);
  if (grip) frame.append(grip.el);

  const parameters = description.spec.params.map(({ name }) => name);
  /** @type {View | null} */
  let view = null;
  let isGrowing = false; // as high as it has room, and not a row of so much for each bar
  /** @type {unknown} */
  let units; // those that stand in the titles of the axes
  /** @type {Map<string, unknown>} */
  const told = new Map(); // to the view, by name
  /** @type {Map<string, Drawn>} */
  const tables = new Map();

  /**
   * Make the view: once, and again when other units change the titles of its axes.
   *
   * @param {Charts} library
   * @param {number} width
   */
  function embed({ view: makeView, changeset, compile }, width) {
    end();
    units = numbers.shown;
    const text = JSON.stringify(description.spec).replace(/\{(\w+)_unit\}/g, (_, dimension) =>
      numbers.label(dimension),
    );
    const padding = { ...GAP, left: description.left };
    const { spec } = compile({ ...JSON.parse(text), width, padding, autosize: "none" });
    for (const name of description.tables) tables.set(name, new Drawn(changeset));
    isGrowing = typeof spec.height === "number";
    view = makeView(spec, picture);
    picture.view = view; // so that a console, or a test, can read the chart's data
  }

  function end() {
    view?.finalize();
    view = null;
    told.clear();
  }

  return {
    el,
    end,
    input: description.grip?.input, // the one that the marked point moves

    /** The width that the picture can have, as the page is laid out now. */
    room: () => Math.max(frame.clientWidth - description.left - GAP.right, LEAST_WIDTH),

    /** Write the words. */
    describe() {
      // without an answer, only what a flag that holds calls for
      const lines = numbers.hasAnswer
        ? description.caption
        : description.caption.filter(([when]) => when && !when.startsWith("not "));
      const words = numbers.said(lines).join(" ");
      if (caption.textContent === words) return;
      caption.textContent = words;
      frame.setAttribute("aria-label", `${description.title}. ${words}`);
    },

    /**
     * Draw what has changed.
     *
     * @param {Charts} library
     * @param {number} width
     * @param {Known} known what charts read, by name
     */
    draw(library, width, known) {
      if (!view || units !== numbers.shown) embed(library, width);
      if (!view) return;
      if (view.width() !== width) view.width(width);
      if (isGrowing) view.height(highAt(width));
      for (const name of parameters) {
        const value = known[name];
        if (told.has(name) && Object.is(told.get(name), value)) continue;
        told.set(name, value);
        view.signal(name, value);
      }
      for (const name of description.tables) {
        const change = tables.get(name)?.take(/** @type {Row[]} */ (numbers.found[name]));
        if (change) view.change(name, change);
      }
      view.run();
      grip?.place(view, { left: description.left, top: GAP.top });
    },
  };
}

/** @param {number} width */
const highAt = (width) => Math.min(Math.max(Math.round(width * HIGH.share), HIGH.least), HIGH.most);

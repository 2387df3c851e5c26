/* The host for a plain page: HTML's own controls, and no kernel behind them.
 *
 * A classic script, since a page that was opened as a file may load no modules.
 */

import { pageAddress } from "./address.js";
import { make } from "./dom.js";
import { handout } from "./handout.js";
import { keep, kept } from "./kept.js";
import { listenToClass } from "./room.js";
import { mount } from "./sheet.js";
import { trackOf } from "./track.js";

/**
 * @import {Asked, Charts, Choice, Control, Description, Host, Program, Slider, Values}
 *   from "./types"
 */

const CHARTS_COME = "yarnsheet-charts"; // what charts.js says when it has run
const UNITS = "yarnsheets-units"; // where the browser keeps the units chosen, for all pages

/**
 * Open a sheet in its place on the page.
 *
 * @param {string} place the id of an element
 * @param {Description} description
 * @param {Program} program
 * @param {{values: Values, choice: Choice}} given
 */
function open(place, description, program, given) {
  const el = document.getElementById(place);
  if (el) mount(el, description, program, makeHost(description, given));
}

/**
 * @param {Description} description
 * @param {{values: Values, choice: Choice}} given
 * @returns {Host}
 */
function makeHost(description, { values, choice }) {
  /** @param {string} name */
  const asked = (name) => /** @type {Asked} */ (description.inputs[name]);
  const options = {
    measure: description.measures.map(({ name }) => name),
    grist_unit: description.gristUnits.map(({ name }) => name),
  };
  return {
    values,
    choice: { ...choice, ...handout?.choice, ...kept(UNITS) },
    address: pageAddress(),
    charts: loadCharts,
    slider: (name) => makeSlider(asked(name)),
    box: () => control(make("input")),
    lines() {
      const field = make("textarea");
      field.rows = 6;
      return control(field);
    },
    pick(name) {
      const field = make("select");
      const words =
        name === "measure" || name === "grist_unit"
          ? options[name]
          : Object.values(asked(name).options);
      field.append(...words.map((text) => new Option(text)));
      return control(field);
    },
    settle: (_, chosen) => keep(UNITS, chosen),
    onGiven: listenToClass, // nobody else moves the page
  };
}

/**
 * @template {HTMLElement} Field
 * @param {Field} field
 * @returns {Control<Field>}
 */
const control = (field) => ({ el: field, field });

/**
 * @param {Asked} asked
 * @returns {Slider}
 */
function makeSlider(asked) {
  const el = make("input", "ys-slider");
  Object.assign(el, { type: "range", ...trackOf(asked) });
  return {
    el,
    set(place) {
      el.value = String(place);
    },
    onMove: (listen) => el.addEventListener("input", () => listen(el.valueAsNumber)),
    name: (text) => el.setAttribute("aria-label", text),
    skip() {
      el.tabIndex = -1;
    },
    say: (text) => el.setAttribute("aria-valuetext", text),
  };
}

/** @returns {Promise<Charts>} */
function loadCharts() {
  return new Promise((resolve) => {
    const come = () => globalThis.yarnsheet_charts && resolve(globalThis.yarnsheet_charts);
    come();
    addEventListener(CHARTS_COME, come, { once: true });
  });
}

Object.assign(globalThis, { yarnsheets: { open } });

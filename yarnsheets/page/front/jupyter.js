/* The host for Jupyter and Voila: stock ipywidgets controls, and Python behind them.
 *
 * Python puts the sheet's program before this module, as `yarnsheet_program`.
 */

import { pageAddress } from "./address.js";
import { mount } from "./sheet.js";

/** @import {Charts, Host, Model, Slider} from "./types" */

/**
 * Draw the widget.
 *
 * @param {{model: Model, el: HTMLElement}} given
 */
function render({ model, el }) {
  return mount(el, model.get("description"), yarnsheet_program, makeHost(model));
}

/**
 * @param {Model} model
 * @returns {Host}
 */
function makeHost(model) {
  const { inputs, units } = model.get("controls");
  /** @type {Record<string, Model>} */
  const sliders = {};
  let isTelling = false; // so as not to hear ourselves

  return {
    values: model.get("values"),
    choice: model.get("choice"),
    address: document.body.dataset.voila ? pageAddress() : null,
    charts: () => loadCharts(model),

    async slider(name) {
      const control = await controlOf(model, inputs[name].slider);
      sliders[name] = control;
      return stockSlider(await viewOf(model, control));
    },
    box: (name) => stock(model, inputs[name].box, "input"),
    lines: (name) => stock(model, inputs[name].lines, "textarea"),
    pick: (name) => stock(model, units[name] ?? inputs[name].pick, "select"),

    /* Tell the kernel, and let the stock controls' own state follow. */
    settle(values, choice) {
      for (const [name, slider] of Object.entries(sliders)) {
        if (slider.get("value") === values[name]) continue;
        slider.set("value", values[name]);
        slider.save_changes();
      }
      isTelling = true;
      model.set({ values, choice });
      isTelling = false;
      model.save_changes();
    },

    onGiven(listen) {
      const tell = () => {
        if (!isTelling) listen(model.get("values"), model.get("choice"));
      };
      model.on("change:values", tell);
      model.on("change:choice", tell);
    },
  };
}

/**
 * @param {Model} model
 * @param {string} reference to another widget
 */
const controlOf = (model, reference) =>
  model.widget_manager.get_model(reference.replace("IPY_MODEL_", ""));

/**
 * @param {Model} model
 * @param {Model} control
 */
async function viewOf(model, control) {
  const { el } = await model.widget_manager.create_view(control);
  for (const titled of [el, ...el.querySelectorAll("[title]")]) titled.removeAttribute("title");
  return el;
}

/**
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Model} model
 * @param {string} reference to a stock control
 * @param {Tag} tag what of it the reader uses
 */
async function stock(model, reference, tag) {
  const el = await viewOf(model, await controlOf(model, reference));
  const field = el.querySelector(tag);
  if (!field) throw new Error(`A stock control has no ${tag}.`);
  return { el, field };
}

/**
 * @param {HTMLElement} el the stock slider, drawn by noUiSlider
 * @returns {Slider}
 */
function stockSlider(el) {
  const track = /** @type {any} */ (el.querySelector(".noUi-target")).noUiSlider;
  const thumb = el.querySelector(".noUi-handle");
  return {
    el,
    set: (place) => track.set(place, false),
    onMove: (listen) =>
      track.on("slide", (/** @type {unknown} */ _, /** @type {unknown} */ __, [place = NaN]) =>
        listen(place),
      ),
    name: (text) => thumb?.setAttribute("aria-label", text),
    skip: () => thumb?.setAttribute("tabindex", "-1"),
    say: (text) => thumb?.setAttribute("aria-valuetext", text),
  };
}

/**
 * The chart library: a page asks the kernel for it once, by whichever sheet comes first.
 *
 * @param {Model} model
 * @returns {Promise<Charts>}
 */
function loadCharts(model) {
  globalThis.yarnsheet_charts_coming ??= new Promise((resolve) => {
    model.on("msg:custom", async ({ sent }, [file]) => {
      if (sent !== "charts" || !file) return;
      const url = URL.createObjectURL(
        new Blob([/** @type {BlobPart} */ (file)], { type: "text/javascript" }),
      );
      await import(url);
      URL.revokeObjectURL(url);
      if (globalThis.yarnsheet_charts) resolve(globalThis.yarnsheet_charts);
    });
    model.send({ send: "charts" });
  });
  return globalThis.yarnsheet_charts_coming;
}

export default { render };

/* The chart library: of Vega and Vega-Lite what a page needs, and nothing of ours. */

import { View, changeset, parse, version as vegaVersion } from "vega";
import { expressionInterpreter } from "vega-interpreter";
import { compile, version as vegaLiteVersion } from "vega-lite";
import { handout } from "./handout.js";

const isStrict = handout?.strict ?? false;

/**
 * @param {object} spec
 * @param {Element} [container] none, and nothing is drawn
 */
function view(spec, container) {
  const runtime = parse(spec, undefined, { ast: isStrict });
  return new View(runtime, {
    renderer: container ? "svg" : "none",
    hover: false,
    ...(container && { container }),
    ...(isStrict && { expr: expressionInterpreter }),
  });
}

globalThis.yarnsheet_charts = { view, changeset, compile, vegaVersion, vegaLiteVersion };
dispatchEvent(new Event("yarnsheet-charts"));

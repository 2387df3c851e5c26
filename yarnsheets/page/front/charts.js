/* The chart library: of Vega and Vega-Lite what a page needs, and nothing of ours. */

import { View, changeset, parse, version as vegaVersion } from "vega";
import { compile, version as vegaLiteVersion } from "vega-lite";

globalThis.yarnsheet_charts = { View, changeset, parse, compile, vegaVersion, vegaLiteVersion };
dispatchEvent(new Event("yarnsheet-charts"));

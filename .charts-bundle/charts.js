// Everything the page needs of Vega, as one ES module: nothing of ours is in here.
export { View, parse, format, version as vegaVersion } from "vega";
export { compile, version as vegaLiteVersion } from "vega-lite";

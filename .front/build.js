// Builds the front end's files into yarnsheets/page/built, where they are committed.
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const NOTICE =
  "/* Vega and Vega-Lite, (c) University of Washington Interactive Data Lab, BSD-3-Clause;" +
  " d3, (c) Mike Bostock, ISC. */";
const CODE_NOTICE = "/* qrcode-generator, (c) Kazuhiko Arase, MIT. */";

const settings = {
  outdir: here("../yarnsheets/page/built"),
  nodePaths: [here("node_modules")],
  bundle: true,
  minify: true,
  target: "es2022",
  legalComments: "none",
  logLevel: "warning",
};
const entry = (name) => ({
  ...settings,
  entryPoints: [here(`../yarnsheets/page/front/${name}.js`)],
});

await build({ ...entry("page"), format: "iife", banner: { js: CODE_NOTICE } });
await build({ ...entry("around"), format: "iife" });
await build({ ...entry("offline"), format: "iife" });
await build({ ...entry("phone"), format: "iife" });
await build({ ...entry("jupyter"), format: "esm", banner: { js: CODE_NOTICE } });
// a page may hold this file once for each of its sheets
await build({
  ...entry("charts"),
  format: "iife",
  banner: { js: `${NOTICE}\nif (!globalThis.yarnsheet_charts) {` },
  footer: { js: "}" },
});

/* A code that phones read, drawn of a text. */

import qrcode from "qrcode-generator";

const SVG = "http://www.w3.org/2000/svg";
const QUIET = 4; // squares left white round a code (ISO/IEC 18004)

/** @param {string} text */
export function drawCode(text) {
  const code = qrcode(0, "L"); // as small as it can be: a tag stays clean
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  let path = "";
  for (let row = 0; row < count; row++)
    for (let column = 0; column < count; column++)
      if (code.isDark(row, column)) path += `M${column + QUIET} ${row + QUIET}h1v1h-1z`;
  const size = count + 2 * QUIET;
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("viewBox", `0 0 ${size} ${size}`);
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", "Code for phones");
  svg.setAttribute("shape-rendering", "crispEdges");
  /**
   * @param {string} d
   * @param {string} fill
   */
  const add = (d, fill) => {
    const part = document.createElementNS(SVG, "path");
    part.setAttribute("d", d);
    part.setAttribute("fill", fill);
    svg.append(part);
  };
  // dark on white in a dark page too, or phones do not read it
  add(`M0 0h${size}v${size}H0z`, "#fff");
  add(path, "#000");
  return svg;
}

/* How far the axes of charts must reach: expressions of Vega's, worked out by a view that draws
 * nothing.
 */

/** @import {Charts, Known} from "./types" */

/**
 * Make what works the expressions out, by name, from what charts read.
 *
 * @param {Charts} library
 * @param {Record<string, string>} expressions
 * @param {Known} known
 * @returns {(known: Known) => Record<string, number>}
 */
export function makeReach({ view: make }, expressions, known) {
  const read = new Set(Object.values(expressions).flatMap((text) => text.match(/\w+/g) ?? []));
  const names = Object.keys(known).filter((name) => read.has(name));
  const view = make({
    signals: [
      ...names.map((name) => ({ name })),
      ...Object.entries(expressions).map(([name, update]) => ({ name: `reach_${name}`, update })),
    ],
  });
  return (now) => {
    for (const name of names) view.signal(name, now[name]);
    view.run();
    return Object.fromEntries(
      Object.keys(expressions).map((name) => [name, view.signal(`reach_${name}`)]),
    );
  };
}

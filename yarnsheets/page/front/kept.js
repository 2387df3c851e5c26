/* What the browser keeps from page to page, under a name; a page inside another may keep nothing. */

/**
 * @param {string} name
 * @returns {Record<string, unknown>}
 */
export function kept(name) {
  try {
    const found = JSON.parse(localStorage.getItem(name) ?? "{}");
    return typeof found === "object" && found !== null ? found : {};
  } catch {
    return {};
  }
}

/**
 * @param {string} name
 * @param {object} what
 */
export function keep(name, what) {
  try {
    localStorage.setItem(name, JSON.stringify(what));
  } catch {
    // not kept, then
  }
}

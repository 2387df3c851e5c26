/* Making and changing parts of the page. */

/**
 * Make an element.
 *
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {string} [className]
 * @param {string} [text]
 * @returns {HTMLElementTagNameMap[Tag]}
 */
export function make(tag, className, text) {
  const el = document.createElement(tag);
  if (className) el.className = className;
  if (text) el.textContent = text;
  return el;
}

/**
 * Make a part of the page that has a name of its own.
 *
 * @param {"section" | "nav"} tag
 * @param {string} className
 * @param {string} [name]
 */
export function makePart(tag, className, name) {
  const el = make(tag, className);
  if (name) el.setAttribute("aria-label", name);
  return el;
}

/**
 * Make a list of texts or elements.
 *
 * @param {"ol" | "ul"} tag
 * @param {(string | Node)[]} items
 */
export function makeList(tag, items) {
  const list = make(tag);
  for (const item of items) {
    const li = make("li");
    li.append(item);
    list.append(li);
  }
  return list;
}

/**
 * Make a button.
 *
 * @param {string} text
 * @param {() => void} act
 */
export function makeButton(text, act) {
  const button = make("button", "ys-button", text);
  button.type = "button";
  button.addEventListener("click", act);
  return button;
}

/**
 * Set a text if it is another: what does not change needs no drawing.
 *
 * @param {Element} el
 * @param {string} text
 */
export function setText(el, text) {
  if (el.textContent !== text) el.textContent = text;
}

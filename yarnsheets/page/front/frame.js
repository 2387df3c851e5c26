/* A page inside another one, such as a worksheet in the middle of an article. */

const ALONE = "alone"; // asks, behind "?", for the sheet without what stands around it

export const isFramed = window.top !== window;

export const isAlone = new URLSearchParams(location.search).has(ALONE);

/** Tell the page around this one how high it would like to be, now and whenever that changes. */
export function tellHeight() {
  if (!isFramed) return;
  const tell = () => {
    const height = Math.ceil(document.body.getBoundingClientRect().height);
    parent.postMessage({ yarnsheets: { height } }, "*"); // to whoever it is: it is no secret
  };
  new ResizeObserver(tell).observe(document.body);
}

/**
 * Wait until a part of the page is about to be seen or printed. Many pages may stand in one
 * article, and most are never scrolled to.
 *
 * @param {Element} el
 * @returns {Promise<void>}
 */
export function aboutToBeSeen(el) {
  return new Promise((resolve) => {
    if (!isFramed) return resolve();
    const come = () => {
      seen.disconnect();
      resolve();
    };
    const seen = new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) come();
    });
    seen.observe(el);
    addEventListener("beforeprint", come, { once: true });
  });
}

/* The service worker of a handout: what was opened once opens again without a network.
 *
 * The handout writes its version and its files before it. Pages come from the network as long as
 * it answers, or a later version of the handout would never be seen.
 */

/** @import {OfflineWorker} from "./types" */

const worker = /** @type {OfflineWorker} */ (/** @type {unknown} */ (globalThis));
const KIND = `yarnsheets ${worker.registration.scope} `;
const NAME = KIND + handout_version;
const PATIENCE_MS = 3000;

/**
 * Fetch files, as many as can be had.
 *
 * @param {string[]} addresses
 */
async function fetchAll(addresses) {
  const kept = await caches.open(NAME);
  await Promise.allSettled(addresses.map((address) => kept.add(address)));
}

/** Keep, as it is now, what an earlier version had kept. */
async function takeOver() {
  for (const name of await caches.keys()) {
    if (!name.startsWith(KIND) || name === NAME) continue;
    const requests = await (await caches.open(name)).keys();
    await fetchAll(requests.map(({ url }) => url));
    await caches.delete(name);
  }
}

/**
 * @param {Request} request
 * @returns {Promise<Response>}
 */
async function answer(request) {
  const kept = await caches.open(NAME);
  const address = request.url.replace(/[?#].*/, "");
  const before = await kept.match(address);
  const now = fetch(request).then((found) => {
    if (found.ok) kept.put(address, found.clone());
    return found;
  });
  if (!before) return now;
  const late = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS, before));
  return Promise.race([now.catch(() => before), late]);
}

worker.addEventListener("install", (event) => {
  event.waitUntil(fetchAll(handout_files).then(() => worker.skipWaiting()));
});
worker.addEventListener("activate", (event) => {
  event.waitUntil(takeOver().then(() => worker.clients.claim()));
});
worker.addEventListener("fetch", (event) => {
  if (event.request.method === "GET") event.respondWith(answer(event.request));
});

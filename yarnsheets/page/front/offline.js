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

const isEarlier = (/** @type {string} */ name) => name.startsWith(KIND) && name !== NAME;

/** Fetch what is new, and anew what an earlier version had kept. */
async function install() {
  const earlier = (await caches.keys()).filter(isEarlier);
  const requests = await Promise.all(earlier.map(async (name) => (await caches.open(name)).keys()));
  await fetchAll([...handout_files, ...requests.flat().map(({ url }) => url)]);
  await worker.skipWaiting();
}

/* Nothing is fetched here: pages wait for it. */
async function takeOver() {
  await Promise.all((await caches.keys()).filter(isEarlier).map((name) => caches.delete(name)));
  await worker.clients.claim();
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

worker.addEventListener("install", (event) => event.waitUntil(install()));
worker.addEventListener("activate", (event) => event.waitUntil(takeOver()));
worker.addEventListener("fetch", (event) => {
  if (event.request.method === "GET") event.respondWith(answer(event.request));
});

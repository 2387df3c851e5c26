"""How fast the class worksheet follows a key and a drag, measured inside the page.

Run by hand: `python -m tests.benchmark_page`. It asserts nothing: times differ by machine.
"""

from __future__ import annotations

import statistics

from playwright.sync_api import sync_playwright

from tests.browser import CHROMIUM_OPTIONS, chromium, serving

# From a key press to the last change of the sentence, and of any chart's picture.
KEYS = """async (presses) => {
    const thumb = document.querySelector("[data-name=grist] .noUi-handle");
    const parts = [...document.querySelectorAll(".ys-sentence, .ys-picture")];
    const all = { childList: true, attributes: true, characterData: true, subtree: true };
    const taken = [];
    for (let i = 0; i < presses; i++) {
        const at = parts.map(() => NaN);
        const watchers = parts.map((part, k) => {
            const watcher = new MutationObserver(() => { at[k] = performance.now(); });
            watcher.observe(part, all);
            return watcher;
        });
        const key = i % 40 < 20 ? "ArrowRight" : "ArrowLeft";
        const start = performance.now();
        thumb.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
        await new Promise((done) => setTimeout(done, 60));
        watchers.forEach((watcher) => watcher.disconnect());
        taken.push([at[0] - start, Math.max(...at) - start]);
    }
    return taken;
}"""

# A second of dragging a chart's point: frames of the screen, and those that drew a chart anew.
DRAG = """async () => {
    const grip = document.querySelector(".ys-grip");
    const box = grip.getBoundingClientRect();
    const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const send = (type, dx) => grip.dispatchEvent(new PointerEvent(type, {
        pointerId: 1, clientX: at.x + dx, clientY: at.y, bubbles: true, cancelable: true }));
    grip.setPointerCapture = () => {};
    let changed = false;
    const watcher = new MutationObserver(() => { changed = true; });
    watcher.observe(document.querySelector(".ys-picture"),
        { childList: true, attributes: true, characterData: true, subtree: true });
    send("pointerdown", 0);
    const start = performance.now();
    let frames = 0, drawn = 0;
    while (performance.now() - start < 1000) {
        await new Promise(requestAnimationFrame);
        frames += 1;
        drawn += changed ? 1 : 0;
        changed = false;
        send("pointermove", 60 * Math.sin(frames / 10));
    }
    grip.dispatchEvent(new PointerEvent("lostpointercapture", { pointerId: 1 }));
    watcher.disconnect();
    return [frames, drawn];
}"""


def percentile(values: list[float], share: float) -> float:
    """Return the value below which this share of them lies."""
    return sorted(values)[round(share * (len(values) - 1))]


def main() -> None:
    """Print the figures."""
    with serving("--no-browser") as server, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=CHROMIUM_OPTIONS)
        page = browser.new_page(viewport={"width": 1280, "height": 900})
        page.goto(server.address + "voila/render/how-many-yards.ipynb")
        page.wait_for_function("document.querySelector('.ys-sentence')?.textContent")
        page.wait_for_load_state("networkidle")
        page.evaluate(KEYS, 10)  # the browser compiles what it runs often
        taken = page.evaluate(KEYS, 200)
        for name, times in zip(
            ("sentence", "sentence and charts"), zip(*taken, strict=True), strict=True
        ):
            print(
                f"key press to {name}: median {statistics.median(times):.1f} ms, "
                f"p95 {percentile(list(times), 0.95):.1f} ms"
            )
        frames, drawn = page.evaluate(DRAG)
        print(f"one second of dragging: {drawn} of {frames} frames drew the chart anew")
        browser.close()


if __name__ == "__main__":
    main()

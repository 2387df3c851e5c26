"""How soon a cut is on the projector, with sixty phones that send at once.

Run by hand: `python -m tests.benchmark_class`. It asserts nothing. The time is from a phone's
sending to the change of the sentence on the projector's page, so the chart's drawing is in it
whenever it comes first.
"""

from __future__ import annotations

import asyncio
import json
import random
import statistics
import time

from playwright.async_api import async_playwright
from tornado.httpclient import AsyncHTTPClient

from tests.benchmark_page import percentile, table
from tests.browser import CHROMIUM_OPTIONS, chromium, serving

PHONES = 60
EACH = 5  # cuts a phone
MINUTE = 20.0  # seconds in which they come, at random

# Notes when the page first says so many cuts.
WATCH = """() => {
    globalThis.came = {};
    const note = () => {
        const count = document.querySelectorAll("#arrived li").length;
        const said = document.querySelector(".ys-sentence").textContent;
        if (said.includes(`${count} cuts`)) came[count] ??= Date.now() / 1000;
    };
    new MutationObserver(note).observe(document.body,
        { childList: true, characterData: true, subtree: true });
}"""


async def send(address: str, phone: int, sent: list[float]) -> None:
    """Send the cuts of one phone, each some time after the last."""
    client = AsyncHTTPClient()
    rng = random.Random(phone)  # noqa: S311
    for at in range(EACH):
        await asyncio.sleep(rng.uniform(0, 2 * MINUTE / EACH))
        cut = {"id": f"{phone} {at}", "balance": str(phone % 8 + 1)}
        cut["cut"] = f"{rng.gauss(10, 0.6):.2f}"
        start = time.time()
        await client.fetch(
            f"{address}heron/cuts",
            method="POST",
            headers={"Content-Type": "application/json", "Origin": address.rstrip("/")},
            body=json.dumps(cut),
        )
        sent.append(start)


async def main() -> None:
    """Print the figures."""
    AsyncHTTPClient.configure(None, max_clients=PHONES)
    with serving("--no-browser", "--port=0", "--class", "heron") as server:
        server.wait_until_made()
        async with async_playwright() as playwright:
            browser = await playwright.chromium.launch(
                executable_path=chromium(), args=CHROMIUM_OPTIONS
            )
            page = await browser.new_page(viewport={"width": 1920, "height": 1080})
            await page.goto(f"{server.address}heron/all")
            await page.wait_for_selector(".ys-picture svg")
            await page.evaluate(WATCH)
            sent: list[float] = []
            await asyncio.gather(*(send(server.address, each, sent) for each in range(PHONES)))
            await asyncio.sleep(2)
            came = {int(count): at for count, at in (await page.evaluate("came")).items()}
            await browser.close()
    # the cut that made the table so long, and the first picture with it
    order = sorted(sent)
    taken = []
    for count, start in enumerate(order, start=1):
        at = min((when for seen, when in came.items() if seen >= count), default=float("nan"))
        taken.append((at - start) * 1000)
    table(
        [f"{PHONES} phones, {len(sent)} cuts, ms", "median", "p95", "longest"],
        [
            "from a phone to the projector",
            f"{statistics.median(taken):.0f}",
            f"{percentile(taken, 0.95):.0f}",
            f"{max(taken):.0f}",
        ],
    )


if __name__ == "__main__":
    asyncio.run(main())

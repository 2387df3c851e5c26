"""A process that runs worksheets and renders their pages, one after another as it is told.

It is started with the folder of the worksheets. On its standard input it hears of each by a line,
with its name and the place for its page; it answers with a line when the page is kept or failed.
Its kernel runs worksheet after worksheet for as long as nothing is left in it of what it ran.
"""

from __future__ import annotations

import ast
import asyncio
import json
import logging
import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import IO, TYPE_CHECKING, Any

from jupyter_client.manager import AsyncKernelManager

from yarnsheets.page.html import LINKED
from yarnsheets.serve.kept import FAILED, keep
from yarnsheets.serve.settings import add_share_folder, settings

if TYPE_CHECKING:
    from nbformat import NotebookNode

LONGEST = 120  # seconds that a cell may take

# Of all that Voila loads, the grammar of internet addresses takes longest by far, for a check that
# is left out where the grammar is not installed.
sys.modules.setdefault("rfc3987_syntax", None)  # type: ignore[arg-type] # refuses its import


class Press:
    """What runs worksheets and prints their pages."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.kernel: AsyncKernelManager | None = None
        self.config = settings()
        self.config.VoilaExporter.template_file = "kept.html.j2"
        self.config.VoilaExecutor.timeout = LONGEST

    async def make(self, name: str, place: Path) -> None:
        """Run a worksheet and keep its page."""
        kernel = self.kernel or await self.start("python3")
        worksheet = self.renderer(f"{name}.ipynb")  # Voila loads while the kernel starts
        await worksheet.initialize()
        wanted = worksheet.notebook.metadata.kernelspec.name
        if kernel.kernel_name != wanted:
            await self.stop()
            kernel = await self.start(wanted)
        html = await worksheet.generate_content_str("", kernel)
        keep(place, html)
        if FAILED in html or not leaves_nothing(worksheet.notebook):
            await self.stop()
        else:
            await forget(kernel)

    async def start(self, kernel_name: str) -> AsyncKernelManager:
        """Start a kernel."""
        self.kernel = AsyncKernelManager(kernel_name=kernel_name)
        await self.kernel.start_kernel(
            cwd=str(self.folder),
            env={**os.environ, LINKED: "1"},
            # What a worksheet prints past its kernel must not be taken for an answer of ours.
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        return self.kernel

    async def stop(self) -> None:
        """Stop the kernel, if there is one."""
        if self.kernel is not None:
            await self.kernel.shutdown_kernel(now=True)
            self.kernel = None

    def renderer(self, path: str) -> Any:
        """Return what renders a worksheet: Voila's own, with our template."""
        from jupyter_client.kernelspec import KernelSpecManager
        from jupyter_server.services.contents.largefilemanager import LargeFileManager
        from voila.configuration import VoilaConfiguration
        from voila.notebook_renderer import NotebookRenderer
        from voila.paths import collect_template_paths

        return NotebookRenderer(
            voila_configuration=VoilaConfiguration(config=self.config),
            traitlet_config=self.config,
            notebook_path=path,
            template_paths=collect_template_paths(["voila", "nbconvert"], "yarnsheets", prune=True),
            contents_manager=LargeFileManager(root_dir=str(self.folder)),
            kernel_spec_manager=KernelSpecManager(),
            base_url="/",
            page_config={},  # Voila writes into it
        )


async def forget(kernel: AsyncKernelManager) -> None:
    """Take away every name that a worksheet gave, for the next to start as if it were the first."""
    client = kernel.client()
    client.start_channels(iopub=False, stdin=False, hb=False)
    try:
        await client.execute("%reset -f", reply=True)
    finally:
        client.stop_channels()


class Reasons(logging.Formatter):
    """Says why a worksheet failed, as its author would see it in Jupyter.

    Voila says it with the whole cell and all that came of it, and not of which worksheet it is.
    """

    worksheet = ""

    def format(self, record: logging.LogRecord) -> str:
        """Return the reason alone where a cell failed."""
        error = record.exc_info[1] if record.exc_info else None
        if record.name == "traitlets" and error is not None:
            return f"In {self.worksheet}: {error}"
        return super().format(record)


def leaves_nothing(notebook: NotebookNode) -> bool:
    """Tell whether a worksheet loads sheets alone; other libraries could remember it."""
    cells = [cell.source for cell in notebook.cells if cell.cell_type == "code"]
    try:
        nodes = [node for cell in cells for node in ast.walk(ast.parse(cell))]
    except SyntaxError:  # perhaps one of Jupyter's own commands
        return False
    loaded = [each.name for node in nodes if isinstance(node, ast.Import) for each in node.names]
    loaded += [str(node.module) for node in nodes if isinstance(node, ast.ImportFrom)]
    return all(name.split(".")[0] == "yarnsheets" for name in loaded)


async def work(press: Press, orders: IO[str], answers: IO[str], reasons: Reasons) -> None:
    """Make page after page until there are no more orders."""
    try:
        for line in orders:
            name, place = json.loads(line)
            reasons.worksheet = name
            try:
                await press.make(name, Path(place))
            except Exception:
                logging.exception("The worksheet %s could not be opened.", name)
                await press.stop()
            print(flush=True, file=answers)
    finally:
        await press.stop()


def end(*_: object) -> None:
    """End, and say nothing of the worksheet that is broken off."""
    logging.disable()
    sys.exit()


def main() -> None:
    """Work until the orders end or a signal comes."""
    signal.signal(signal.SIGTERM, end)
    reasons = Reasons()
    said = logging.StreamHandler()
    said.setFormatter(reasons)
    logging.basicConfig(handlers=[said], level=logging.ERROR)
    if hasattr(os, "nice"):
        os.nice(5)  # whoever reads a page goes first
    add_share_folder()
    asyncio.run(work(Press(Path(sys.argv[1])), sys.stdin, sys.stdout, reasons))


if __name__ == "__main__":
    main()

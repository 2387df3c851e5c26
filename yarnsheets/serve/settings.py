"""The one place for how Voila shows worksheets: kept, live, and on a BinderHub."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from traitlets.config import Config

from yarnsheets.serve.files import built_in
from yarnsheets.serve.worksheets import in_parts, title, worksheets_in

if TYPE_CHECKING:
    from nbformat import NotebookNode
    from tornado.web import RequestHandler

SHARE = Path(__file__).parent / "share"
COLOURS = Path(__file__).parent.parent / "page/front/colours.css"

# The browser itself refuses whatever is not of this server: a page works with the network cable
# pulled out because it cannot ask for anything. Widgets come as modules from blob: addresses, and
# Vega compiles its expressions with `Function`, hence unsafe-eval; Voila sends inline scripts.
CONTENT_SECURITY_POLICY = "; ".join(
    [
        "default-src 'self'",
        "script-src 'self' 'unsafe-inline' 'unsafe-eval' blob:",
        "style-src 'self' 'unsafe-inline'",
        "img-src 'self' data: blob:",
        "font-src 'self' data:",
        "object-src 'none'",
        "base-uri 'self'",
        "form-action 'self'",
    ]
)


def add_share_folder() -> None:
    """Let Jupyter find our page template beside the code, in a checkout and in a wheel alike."""
    known = os.environ.get("JUPYTER_PATH", "").split(os.pathsep)
    if str(SHARE) not in known:
        os.environ["JUPYTER_PATH"] = os.pathsep.join(filter(None, [str(SHARE), *known]))


def prepare_worksheet(handler: RequestHandler | None, notebook: NotebookNode, **_: object) -> None:
    """Name the page after its first heading and let a live page stop its kernel when it closes.

    A closing page asks for its kernel to be stopped and sends along the `_xsrf` cookie, which Voila
    sets with the list of worksheets but not with a worksheet that was opened directly: the request
    is refused then, and the kernel stays. Reading `xsrf_token` sets the cookie. The other way,
    switching the check off with `disable_check_xsrf`, would let any web site ask for it too.
    """
    if handler is not None:
        handler.xsrf_token  # noqa: B018
    notebook.metadata["title"] = title(notebook)


def complete_page(
    page: dict[str, Any], settings: dict[str, Any], notebook_path: str, **_: object
) -> dict[str, Any]:
    """Give the list of worksheets what it shows; let a live page set formulas without the network.

    Voila has a MathJax of its own and uses it when no address of another is given.
    """
    page["fullMathjaxUrl"] = page["mathjaxConfig"] = None
    page["colours"] = COLOURS.read_text("utf-8")
    if not notebook_path.endswith(".ipynb"):
        folder = Path(settings["contents_manager"].root_dir)
        page["parts"] = in_parts(worksheets_in(folder))
        page["files"] = built_in()
    return page


def settings(framing: str = "frame-ancestors 'self'") -> Config:
    """Return the settings by which Voila and a Jupyter server show the worksheets."""
    config = Config()

    page = config.VoilaConfiguration
    page.template = "yarnsheets"
    page.allow_template_override = "NO"
    page.allow_theme_override = "NO"
    page.classic_tree = True
    page.strip_sources = True
    page.show_tracebacks = False
    # Nothing of the folder is handed out but the pages: pictures are built into them.
    page.file_allowlist = []
    # Of all extensions that may be installed for JupyterLab, only what draws widgets is loaded.
    page.extension_allowlist = [
        "@voila-dashboards/widgets-manager8",
        "@jupyter-widgets/jupyterlab-manager",
        "anywidget",
    ]
    page.prelaunch_hook = prepare_worksheet
    page.page_config_hook = complete_page
    config.VoilaExporter.markdown_renderer_class = "yarnsheets.serve.prose.Prose"
    config.VoilaExporter.filters = {"mathml": "yarnsheets.serve.prose.mathml"}

    kernels = config.MappingKernelManager
    kernels.allow_tracebacks = False
    config.MultiKernelManager.kernel_manager_class = "yarnsheets.serve.kernels.WorksheetKernel"
    # A page that closes stops its kernel. Where it could not (the power went, the phone was put
    # away), the kernel is stopped after a quarter of an hour without a page; a page that is open
    # and connected keeps its kernel however long its reader thinks.
    kernels.cull_idle_timeout = 15 * 60
    kernels.cull_interval = 60
    kernels.cull_connected = False

    if sys.platform == "linux":
        # Over TCP, kernels started in a burst can be given the same port. Elsewhere the names of
        # such sockets may be too long (macOS) or not exist (Windows).
        config.KernelManager.transport = "ipc"

    config.VoilaExecutor.cell_error_instruction = ""

    server = config.Voila
    server.config_file_paths = []  # a voila.json lying about elsewhere changes nothing here
    server.log_level = "ERROR"
    server.tornado_settings = {
        "headers": {
            "Content-Security-Policy": f"{CONTENT_SECURITY_POLICY}; {framing}",
            "Referrer-Policy": "same-origin",
        },
    }
    return config

"""The kernel behind a page, as the server keeps it."""

from __future__ import annotations

from jupyter_server.services.kernels.kernelmanager import ServerKernelManager


class WorksheetKernel(ServerKernelManager):
    """A kernel whose errors reach the page without their traceback.

    jupyter_server (2.21 and before) looks for the words to put in place of a traceback here, where
    they are not, and then passes nothing on to that page any more.
    """

    traceback_replacement_message = "An error, not described here."

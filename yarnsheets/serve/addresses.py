"""Where the worksheets listen, and how a browser gets there."""

from __future__ import annotations

import errno
import ipaddress
import re
import socket
from urllib.parse import urlsplit

from tornado.netutil import bind_sockets

LOOPBACK = "127.0.0.1"
EVERYWHERE = "0.0.0.0"  # noqa: S104  # what --class is for, and what it says
FIRST_PORT = 8866
PORTS_TRIED = 50


class CannotServe(Exception):  # noqa: N818  # the message says what is in the way and what to do
    """What is in the way and what to do, in the reader's words."""


def listen(address: str, port: int | None) -> tuple[list[socket.socket], str]:
    """Return sockets on the port asked for, or else on the first free one, and what to tell."""
    if port is not None:
        sockets = bind(address, port)
        if sockets is None:
            msg = (
                f"Port {port} is in use by another program. "
                "Give another number with --port, or leave --port out to use the next free port."
            )
            raise CannotServe(msg)
        return sockets, ""
    for candidate in range(FIRST_PORT, FIRST_PORT + PORTS_TRIED):
        sockets = bind(address, candidate)
        if sockets is not None:
            moved = f"Port {FIRST_PORT} is in use by another program; using port {candidate}."
            return sockets, moved if candidate != FIRST_PORT else ""
    last = FIRST_PORT + PORTS_TRIED - 1
    msg = f"Ports {FIRST_PORT} to {last} are all in use. Give a free one with --port."
    raise CannotServe(msg)


def bind(address: str, port: int) -> list[socket.socket] | None:
    """Return listening sockets, or None if the port is in use."""
    if not 0 <= port < 65536:
        msg = f"There is no port {port}. Give a number from 1024 to 65535 with --port."
        raise CannotServe(msg)
    try:
        return bind_sockets(port, address)
    except OSError as error:
        if error.errno == errno.EADDRINUSE:
            return None
        msg = (
            f"It is not possible to listen on {address}, port {port}: {error.strerror}. Give an "
            "address of this machine with --address and a number from 1024 to 65535 with --port."
        )
        raise CannotServe(msg) from None


def site(address: str) -> str:
    """Return a web site as browsers are told of it, from the address of any page of it.

    >>> site("https://guild.example/workshop/"), site("http://127.0.0.1:8000")
    ('https://guild.example', 'http://127.0.0.1:8000')
    """
    parts = urlsplit(address)
    if parts.scheme not in {"http", "https"} or not re.fullmatch(r"[\w.:\[\]-]+", parts.netloc):
        msg = (
            f"{address} is no web site. Give --framed-by an address such as https://guild.example."
        )
        raise CannotServe(msg)
    return f"{parts.scheme}://{parts.netloc}"


def is_loopback(host: str) -> bool:
    """Tell whether only this machine can reach the address.

    >>> is_loopback("127.0.0.1"), is_loopback("0.0.0.0")
    (True, False)
    """
    return ipaddress.ip_address(host).is_loopback


def page_address(host: str, port: int, page: str = "") -> str:
    """Return the address for a browser on this machine.

    >>> page_address("0.0.0.0", 8866)
    'http://127.0.0.1:8866/'
    >>> page_address("::1", 8866, "voila/tree")
    'http://[::1]:8866/voila/tree'
    """
    ip = ipaddress.ip_address(host)
    name = LOOPBACK if ip.is_unspecified else f"[{ip}]" if ip.version == 6 else str(ip)
    return f"http://{name}:{port}/{page}"


def network_address(host: str) -> str:
    """Return the address by which other machines reach this one, as far as it is known here."""
    if not ipaddress.ip_address(host).is_unspecified:
        return host
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            # No packet is sent: it only asks which of our addresses would be used.
            # 192.0.2.1 stands for an address anywhere outside (RFC 5737).
            probe.connect(("192.0.2.1", 9))
            return str(probe.getsockname()[0])
        except OSError:
            return socket.gethostname()

"""What a visitor who means harm can do: without `--live` there is no kernel to reach or start."""

from __future__ import annotations

import re
import socket
from contextlib import closing
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import psutil
import pytest
from nbformat.v4 import new_code_cell as code

from tests.browser import serving, wait_until
from tests.serve.small import write, write_all

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from tests.browser import Server

PRIVATE = "PRIVATE = 1"  # stands in a file beside the worksheets


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("worksheets")
    write_all(made)
    (made.parent / "outside").mkdir()
    write(made.parent / "outside", "secret", code(f"print({PRIVATE!r})"))
    return made


@pytest.fixture(scope="module")
def attacked(folder: Path) -> Iterator[Server]:
    with serving("--no-browser", "--port", "0", "--folder", str(folder)) as running:
        running.wait_until_made()
        yield running
        assert running.error_output() == ""


@pytest.fixture(autouse=True)
def nothing_started(attacked: Server) -> Iterator[None]:
    server = psutil.Process(attacked.process.pid)
    before = server.memory_info().rss
    yield
    assert not attacked.processes()
    assert server.memory_info().rss - before < 20 * 2**20
    assert "Worksheets" in attacked.get()


class Answer:
    """An answer as it came over the wire."""

    def __init__(self, sent: bytes) -> None:
        head, _, body = sent.partition(b"\r\n\r\n")
        first, *rest = head.decode("latin-1").split("\r\n")
        self.status = int(first.split()[1]) if first.startswith("HTTP/") else 0  # 0: cut off
        self.headers = dict(line.lower().split(": ", 1) for line in rest)
        self.body = body.decode(errors="replace")


def ask(server: Server, method: str, path: str, *headers: str, body: str = "") -> Answer:
    """Send a request as it stands, which no tidy client would."""
    place = urlsplit(server.address)
    named = [] if any(line.lower().startswith("host:") for line in headers) else [place.netloc]
    lines = [f"{method} {path} HTTP/1.1", *(f"Host: {name}" for name in named), *headers]
    if body:
        lines.append(f"Content-Length: {len(body)}")
    request = "\r\n".join([*lines, "Connection: close", "", body]).encode("latin-1")
    return Answer(exchange(place.hostname, place.port, request))


def exchange(host: str, port: int, request: bytes) -> bytes:
    with closing(socket.create_connection((host, port), timeout=10)) as line:
        answer = b""
        try:
            line.sendall(request)
            while part := line.recv(2**16):
                answer += part
        except ConnectionError:
            pass  # cut off in the middle, which is an answer too
        return answer


WORKSHEET = "/voila/render/skein.ipynb"
IDENTITY = "0" * 8 + "-0000-0000-0000-" + "0" * 12


@pytest.mark.parametrize("method", ["GET", "POST", "DELETE"])
@pytest.mark.parametrize(
    "path",
    [
        "/api",
        "/api/kernels",
        f"/api/kernels/{IDENTITY}",
        f"/api/kernels/{IDENTITY}/interrupt",
        f"/api/kernels/{IDENTITY}/channels",
        "/api/kernelspecs",
        "/api/sessions",
        "/api/contents",
        "/api/contents/skein.ipynb",
        "/api/terminals",
        "/api/config/notebook",
        "/api/shutdown",
        "/files/own.py",
        "/terminals/websocket/1",
        "/lsp/ws/python",
        "/lab/tree/skein.ipynb",
        "/nbconvert/html/skein.ipynb",
        "/login",
        "/voila/api/contents",
        "/voila/api/themes/x",
        f"/voila/api/shutdown/{IDENTITY}",
        f"/voila/execution/{IDENTITY}",
        "/voila/execute",
        f"/voila/query/{IDENTITY}",
        "/voila/files/own.py",
        "/voila/files/skein.ipynb",
        "/voila/static/voila.js",
        "/voila/labextensions/anywidget/install.json",
        "/voila/templates/yarnsheets/static/page.css",
        "/voila/templates/yarnsheets/index.html.j2",
    ],
)
def test_nothing_of_jupyter_is_there(attacked: Server, method: str, path: str) -> None:
    answer = ask(attacked, method, path, body="" if method == "GET" else "{}")
    assert answer.status == (404 if method == "GET" else 405)
    assert PRIVATE not in answer.body


@pytest.mark.parametrize("path", [f"/api/kernels/{IDENTITY}/channels", "/", WORKSHEET, "/ws"])
def test_no_connection_stays_open(attacked: Server, path: str) -> None:
    handshake = [
        "Upgrade: websocket",
        "Sec-WebSocket-Version: 13",
        "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==",  # the example of RFC 6455, 1.3
    ]
    answer = ask(attacked, "GET", path, *handshake)
    assert answer.status in {200, 404}
    assert "sec-websocket-accept" not in answer.headers


@pytest.mark.parametrize(
    "method", ["POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "CONNECT"]
)
@pytest.mark.parametrize("path", ["/", WORKSHEET, "/voila/tree", "/static/x/page.js"])
def test_pages_take_nothing(attacked: Server, method: str, path: str) -> None:
    answer = ask(attacked, method, path, "X-Mine: echo", body="code=1")
    assert answer.status == 405
    assert "echo" not in answer.body
    assert not [name for name in answer.headers if name.startswith("access-control")]


@pytest.mark.parametrize(
    "query",
    [
        "?execute=1",
        "?template=lab",
        "?theme=../../x",
        "?token=x",
        "?kernel_name=python3",
        "#x=1",
        "?",
    ],
)
def test_a_question_behind_an_address_changes_nothing(attacked: Server, query: str) -> None:
    plain = ask(attacked, "GET", WORKSHEET)
    assert ask(attacked, "GET", WORKSHEET + query.replace("#", "?")).body == plain.body


CLIMBS = ["../", "..%2f", "%2e%2e/", "%2e%2e%2f", "%252e%252e%252f", "..%5c", "..\\", "..%c0%af"]


@pytest.mark.parametrize("climb", CLIMBS)
@pytest.mark.parametrize(
    "path",
    [
        "/voila/render/{}outside/secret.ipynb",
        "/voila/render/x/{}{}outside/secret.ipynb",
        "/voila/render/{}{}{}{}{}etc/passwd.ipynb",
        "/voila/render/{}own.py",
        "/voila/render//etc/passwd%00.ipynb",
        "/voila/tree/{}",
        "/static/{}own.py",
        "/static/HASH/{}{}{}own.py",
        "/static/{}HASH/page.css/{}own.py",
        "/{}{}{}{}etc/passwd",
        "/voila/render/skein.ipynb/{}own.py",
        "/voila/render/skein.ipynb%00.html",
        "/voila/render/%2fetc%2fpasswd.ipynb",
        "/voila/render/file:///etc/passwd.ipynb",
        "/voila/render/*.ipynb",
        "/voila/render/.ipynb",
    ],
)
def test_no_address_leads_to_a_file(attacked: Server, path: str, climb: str) -> None:
    known = re.search(r"/static/(\w+)/page\.css", attacked.get())[1]
    answer = ask(attacked, "GET", path.replace("{}", climb).replace("HASH", known))
    assert answer.status in {400, 404}
    assert PRIVATE not in answer.body
    assert "root:" not in answer.body


@pytest.mark.parametrize(
    "host",
    [
        "rebound.example",
        "rebound.example:80",
        "127.0.0.1.rebound.example",
        "localhost.rebound.example",
        "127.0.0.1@rebound.example",
        "rebound.example#127.0.0.1",
        "192.168.0.1",
        "0.0.0.0",  # noqa: S104
        "[fe80::1]",
        "2130706433",
        "",
        "[::1",
    ],
)
@pytest.mark.parametrize("path", ["/", WORKSHEET, "/none", "/static/x/page.css"])
def test_a_web_site_that_points_its_name_at_this_machine_is_refused(
    attacked: Server, host: str, path: str
) -> None:
    answer = ask(attacked, "GET", path, f"Host: {host}")
    assert answer.status in {400, 403}
    assert "Worksheets" not in answer.body.replace("All worksheets", "")


def test_a_second_host_name_does_not_help(attacked: Server) -> None:
    name = urlsplit(attacked.address).netloc
    assert ask(attacked, "GET", "/", f"Host: {name}", "Host: rebound.example").status == 400
    answer = ask(attacked, "GET", "/", "Host: rebound.example", f"X-Forwarded-Host: {name}")
    assert answer.status == 403


@pytest.mark.parametrize("origin", ["http://other.example", "null", "file://"])
@pytest.mark.parametrize("path", ["/", WORKSHEET, "/static/x/page.js"])
def test_another_site_is_not_let_in(attacked: Server, origin: str, path: str) -> None:
    answer = ask(attacked, "GET", path, f"Origin: {origin}", "Cookie: _xsrf=1")
    assert not [name for name in answer.headers if name.startswith("access-control")]
    assert "set-cookie" not in answer.headers
    assert "frame-ancestors 'self'" in answer.headers["content-security-policy"]


@pytest.mark.parametrize("path", ["/", WORKSHEET, "/none", "/voila/render/other_widgets.ipynb"])
def test_the_browser_is_told_to_allow_a_page_nothing(attacked: Server, path: str) -> None:
    headers = ask(attacked, "GET", path).headers
    policy = headers["content-security-policy"].split("; ")
    assert "default-src 'none'" in policy  # so no connection, no worker, no frame, no form
    assert not [rule for rule in policy if re.search(r"\*|https?:", rule)]
    assert not [rule for rule in policy if rule.split()[0] == "connect-src"]
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["referrer-policy"] == "same-origin"
    assert "server" not in headers


@pytest.mark.parametrize(
    "request_sent",
    [
        b"GET / HTTP/1.1\r\nX: " + b"a" * 2**20 + b"\r\n\r\n",
        b"GET /" + b"a" * 2**20 + b" HTTP/1.1\r\n\r\n",
        b"GET / HTTP/1.1\r\n" + b"X: 1\r\n" * 2**16 + b"\r\n",
        b"POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 99999999999\r\n\r\n" + b"a" * 2**20,
        b"POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: -1\r\n\r\n",
        b"POST / HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\n\r\nffffffff\r\n"
        + b"a" * 2**20,
        b"POST / HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\nContent-Length: 3\r\n"
        b"\r\n0\r\n\r\n",
        b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03" + b"\0" * 600 + b"\r\n\r\n",
        b"\r\n" * 2**16,
        b"GET\r\n\r\n",
        b"GET / HTTP/9.9\r\n\r\n",
    ],
    ids=lambda sent: sent[:24].decode("latin-1").encode("unicode_escape").decode(),
)
def test_what_is_too_large_or_no_request_is_cut_off(attacked: Server, request_sent: bytes) -> None:
    place = urlsplit(attacked.address)
    answer = Answer(exchange(place.hostname, place.port, request_sent))
    assert answer.status in {0, 400, 405, 413, 431}


def test_slow_and_silent_visitors_keep_nobody_waiting(attacked: Server) -> None:
    place = urlsplit(attacked.address)
    lines = [socket.create_connection((place.hostname, place.port)) for _ in range(200)]
    try:
        for line in lines[::2]:
            line.sendall(b"GET / HTTP/1.1\r\nHost: loc")
        assert ask(attacked, "GET", WORKSHEET).status == 200
    finally:
        for line in lines:
            line.close()


def test_visitors_who_leave_before_the_answer_leave_nothing_behind(attacked: Server) -> None:
    place = urlsplit(attacked.address)
    server = psutil.Process(attacked.process.pid)
    for _ in range(50):
        with closing(socket.create_connection((place.hostname, place.port))) as line:
            line.sendall(f"GET {WORKSHEET} HTTP/1.1\r\nHost: localhost\r\n\r\n".encode())
    wait_until(
        lambda: not [one for one in server.net_connections() if one.status == "ESTABLISHED"],
        "every connection is closed",
    )

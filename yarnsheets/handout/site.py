"""The files of a handout: an index, the pages, and what they share."""

from __future__ import annotations

import base64
import dataclasses
import json
import re
from hashlib import sha256
from typing import TYPE_CHECKING, Any, NamedTuple

from yarnsheets.page.html import built
from yarnsheets.serve import files, look
from yarnsheets.serve.kept import code
from yarnsheets.serve.worksheets import describe, in_parts

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from yarnsheets.handout.wishes import Wishes

INDEX = "index.html"
PARTS = "parts"  # the folder of what pages share


class Told(NamedTuple):
    """What the frame of a page knows of its handout."""

    wishes: Wishes
    data: str  # for the page's own program
    policy: str


def site(folder: Path, contents: Mapping[str, str], wishes: Wishes) -> dict[str, str]:
    """Return the files by name, from what the worksheets of a folder say."""
    version = files.short_hash(
        code().encode(),
        json.dumps([contents, dataclasses.asdict(wishes)]).encode(),
    )

    def told(start: str = "") -> str:
        data = {
            "version": version,
            "all": wishes.shared,
            "strict": wishes.strict,
            "worksheets": list(contents),
            "start": start,
            "choice": wishes.choice,
        }
        return json.dumps(data).replace("<", r"\u003c")

    pages = {name: f"{name}.html" for name in contents}
    listed = [
        describe(folder / f"{name}.ipynb")._replace(file=page) for name, page in pages.items()
    ]
    made = {INDEX: _page("tree.html", wishes, told(), parts=in_parts(listed))}
    for worksheet, (name, content) in zip(listed, contents.items(), strict=True):
        made[worksheet.file] = _page(
            "worksheet.html",
            wishes,
            told(wishes.start.get(name, "")),
            title=worksheet.title,
            content=_led_on(content, pages),
        )
    if wishes.shared:
        asked = "".join(made.values())
        parts = {_shared(name): path for name, path in files.FILES.items()}
        made |= {part: path.read_text("utf-8") for part, path in parts.items() if part in asked}
    kept = ["./", *(made if wishes.shared else [INDEX])]  # a host may show the index at "./"
    head = f"const handout_version={json.dumps(version)},handout_files={json.dumps(kept)};\n"
    made[f"offline-{version}.js"] = head + built("offline.js")
    return made


def _page(template: str, wishes: Wishes, data: str, **known: Any) -> str:
    """Return a page that forbids itself whatever it does not need."""
    tags = files.linked(_shared) if wishes.shared else files.built_in()

    def render(policy: str) -> str:
        told = Told(wishes, data, policy)
        return look.render(template, files=tags, home=INDEX, handout=told, **known)

    programs = "'unsafe-inline' 'unsafe-eval'"
    if wishes.strict:
        hashes = {
            base64.b64encode(sha256(text.encode()).digest()).decode()
            for text in re.findall(r"<script>(.*?)</script>", render(""), re.DOTALL)
        }
        programs = " ".join(sorted(f"'sha256-{each}'" for each in hashes))
    shared = "'self' " if wishes.shared else ""
    return render(
        "; ".join(
            [
                "default-src 'none'",
                f"script-src {shared}{programs}",
                f"style-src {shared}'unsafe-inline'",
                "img-src data: blob:",
                "connect-src 'self'",
                "worker-src 'self'",
                "base-uri 'none'",
                "form-action 'none'",
            ]
        )
    )


def _shared(name: str) -> str:
    """Return where a file is that pages share, by its content: hosts keep files as they like."""
    stem, _, kind = name.rpartition(".")
    return f"{PARTS}/{stem}-{files.short_hash(files.FILES[name].read_bytes())}.{kind}"


def _led_on(content: str, pages: Mapping[str, str]) -> str:
    """Let links in the prose lead to the pages there are, and be mere words otherwise."""

    def leads(link: re.Match[str]) -> str:
        name, numbers, words = link.groups()
        return f'<a href="{pages[name]}{numbers}">{words}</a>' if name in pages else words

    return re.sub(r'<a href="([\w-]+)\.ipynb([^"]*)">(.*?)</a>', leads, content, flags=re.DOTALL)

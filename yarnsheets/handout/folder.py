"""Files put into a folder: all of them, or none."""

from __future__ import annotations

import re
import shutil
from pathlib import Path
from tempfile import mkdtemp
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

# Files with the hash of their content or version in their name: an earlier handout's, under a
# name that nobody else would give.
OUTDATED = re.compile(r"offline-[0-9a-f]{24}\.js|parts/[a-z]+-[0-9a-f]{24}\.(?:css|js)")


class CannotMake(Exception):  # noqa: N818  # the message says what is in the way and what to do
    """Why there will be no handout, in the reader's words."""


def put(folder: Path, files: Mapping[str, str], *, replace: bool) -> None:
    """Write files into a folder, which may not be there yet.

    All are written beside their places first, so that a full disk leaves the folder as it was.
    """
    there = [name for name in files if (folder / name).exists()]
    if there and not replace:
        some = ", ".join(there[:3]) + (" and others" if len(there) > 3 else "")
        msg = (
            f"{folder} has {some} already. Nothing was written. Give another folder, or --replace "
            "to write over them."
        )
        raise CannotMake(msg)
    new = _first_missing(folder)
    aside = None
    try:
        folder.mkdir(parents=True, exist_ok=True)
        aside = Path(mkdtemp(prefix=".handout-", dir=folder))
        for name, text in files.items():
            part = aside / name
            part.parent.mkdir(parents=True, exist_ok=True)
            part.write_text(text, "utf-8", newline="\n")
        for name in files:
            (folder / name).parent.mkdir(exist_ok=True)
            (aside / name).replace(folder / name)
    except OSError as reason:
        if new is not None:
            shutil.rmtree(new, ignore_errors=True)
        msg = (
            f"The handout could not be written to {folder}: {reason.strerror}. Give a folder that "
            "you can write to, on a disk with room."
        )
        raise CannotMake(msg) from None
    finally:
        if aside is not None:
            shutil.rmtree(aside, ignore_errors=True)
    for path in [*folder.glob("offline-*"), *folder.glob("parts/*")]:
        name = path.relative_to(folder).as_posix()
        if OUTDATED.fullmatch(name) and name not in files:
            path.unlink(missing_ok=True)


def _first_missing(folder: Path) -> Path | None:
    """Return the topmost folder that has to be made, to take away again if it comes to nothing."""
    missing = [each for each in (folder, *folder.parents) if not each.exists()]
    return missing[-1] if missing else None

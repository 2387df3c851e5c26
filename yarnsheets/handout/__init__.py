"""`yarnsheets handout`: worksheets as files, for any web host, a USB stick or a phone."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from yarnsheets.handout.folder import CannotMake, put
from yarnsheets.handout.wishes import PARTS, Wishes, check_hidden, start_of, units_of
from yarnsheets.serve.worksheets import describe, worksheets_folder

if TYPE_CHECKING:
    from collections.abc import Sequence

__all__ = ["main"]

EMBED = "embed.txt"


def main(argv: Sequence[str]) -> int:
    """Make a handout; the exit code is 0 unless there is none."""
    options = parser().parse_intermixed_args(argv)
    try:
        names = find(options.worksheets, options.worksheet)
        wishes = Wishes(
            title=options.title,
            note=options.note,
            contact=options.contact,
            start=start_of(options.start, names),
            choice=units_of(options.units, options.grist),
            hide=tuple(options.hide.split(",")) if options.hide else (),
            shared=options.shared,
            strict=options.strict,
        )
        make(options.folder, options.worksheets.resolve(), names, wishes, options)
    except CannotMake as reason:
        print(reason, file=sys.stderr)
        return 1
    print(f"The handout is in {options.folder}. Open {options.folder / 'index.html'} to see it.")
    if options.embed is not None:
        print(f"{options.folder / EMBED} has the lines that show a worksheet in a page of yours.")
    return 0


def parser() -> argparse.ArgumentParser:
    """Return the command's options."""
    options = argparse.ArgumentParser(
        prog="yarnsheets handout",
        description="Write worksheets as files that work by themselves: put the folder on any web "
        "host or a USB stick, or open its index.html.",
    )
    options.add_argument("folder", type=Path, help="the folder to write")
    options.add_argument(
        "worksheet", nargs="*", help="worksheets such as how-many-yards (default: all)"
    )
    options.add_argument(
        "--shared",
        action="store_true",
        help="small pages beside one folder of what they share, rather than pages that are each "
        "complete in one file",
    )
    options.add_argument(
        "--start",
        metavar="LINK",
        action="append",
        default=[],
        help="start a worksheet with the numbers of a link that was copied from it, in quotation "
        "marks; may be given for each worksheet",
    )
    options.add_argument("--title", default="", help="what the handout is called")
    options.add_argument("--note", default="", help="a line of your own")
    options.add_argument("--contact", default="", help="who to ask: an address, a link, or words")
    options.add_argument("--units", help='lengths and weights, such as "metres, grams"')
    options.add_argument("--grist", help="grist, as the worksheets name it, such as tex")
    options.add_argument(
        "--hide",
        metavar="PARTS",
        default="",
        help=f"leave out what is not for today, such as text,charts: {', '.join(PARTS)}, or inputs "
        "by their names in a link, such as plies",
    )
    options.add_argument(
        "--embed",
        nargs="?",
        const="",
        metavar="ADDRESS",
        help="write the lines of HTML too that show a worksheet in a page of yours; with the "
        "address that the folder will have, for pages that are somewhere else",
    )
    options.add_argument(
        "--strict",
        action="store_true",
        help="forbid the pages every program but their own, for hosts that ask for it; charts "
        "follow a little slower",
    )
    options.add_argument(
        "--replace", action="store_true", help="write over files of the same names"
    )
    options.add_argument(
        "--worksheets",
        type=Path,
        metavar="FOLDER",
        default=worksheets_folder(),
        help="take the worksheets in this folder (default: those that come with the program)",
    )
    return options


def find(folder: Path, wanted: Sequence[str]) -> list[str]:
    """Return the names of the worksheets wanted, or say what there is instead."""
    there = sorted(path.stem for path in folder.glob("*.ipynb"))
    names = [each.removesuffix(".ipynb") for each in wanted] or there
    for name in names:
        if name not in there:
            msg = (
                f"There is no worksheet {name} in {folder}. "
                f"There are: {', '.join(there) or 'none at all'}."
            )
            raise CannotMake(msg)
    if not names:
        msg = f"There are no worksheets in {folder}."
        raise CannotMake(msg)
    return list(dict.fromkeys(names))


def make(
    folder: Path, worksheets: Path, names: list[str], wishes: Wishes, options: argparse.Namespace
) -> None:
    """Write the handout."""
    from yarnsheets.handout.embed import all_lines
    from yarnsheets.handout.site import site
    from yarnsheets.serve.pages import made_now

    contents: dict[str, str] = {}
    for name, kept in made_now(worksheets, names):
        if kept is None or kept.failed:
            msg = f"The worksheet {name} could not be worked out, so no handout was written."
            raise CannotMake(msg)
        if kept.needs_kernel:
            msg = (
                f"The worksheet {name} has widgets other than sheets, which need a program behind "
                "them. Leave it out of the handout: name the worksheets that you want."
            )
            raise CannotMake(msg)
        contents[name] = kept.content
    check_hidden(wishes.hide, contents)
    files = site(worksheets, contents, wishes)
    if options.embed is not None:
        titles = {name: describe(worksheets / f"{name}.ipynb").title for name in names}
        files[EMBED] = all_lines(options.embed, titles)
    put(folder, files, replace=options.replace)

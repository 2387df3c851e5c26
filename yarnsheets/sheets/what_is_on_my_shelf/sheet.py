"""What is on the shelf, skein by skein, and which skeins together make a project."""

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from yarnsheets.estimates.estimate import factor_interval
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Table
from yarnsheets.page.listing import Column, Listing
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, no_answer
from yarnsheets.sheets.shared.doubt import times
from yarnsheets.sheets.what_is_on_my_shelf.asked import AskedOfShelf
from yarnsheets.sheets.what_is_on_my_shelf.drawn import stack, thickness
from yarnsheets.shelf.choosing import Choice, OnShelf, choose, why
from yarnsheets.shelf.evidence import Reckoned, Skein, lacking, reckoned
from yarnsheets.shelf.tags import OPENS, tag

_NARROW = 1.01  # high end over low, below which both may be written alike
_MOST_NAMED = 3
_MOST_LETTERS = 40


class WhatIsOnMyShelf(AskedOfShelf):
    """The yards of every skein with their range, and the skeins that make a project.

    Examples
    --------
    >>> sheet = WhatIsOnMyShelf(project=600)
    >>> sheet.chosen_names
    'Marsh 1, Marsh 2 and Marsh 3'
    """

    question = "What is on my shelf?"
    onward = (
        Onward("what-does-this-spin-take", {"grist_wanted": "like_grist", "project": "project"}),
        Onward("how-sure-is-the-grist", {"balance_factor": "balance_factor"}),
    )

    has_yarn = Found("flag", "there are skeins with yards")
    is_broad = Found("flag", "there are, and the ends of their range are told apart")
    is_narrow = Found("flag", "there are, and the ends may be written alike")
    has_none = Found("flag", "no skein has yards yet")
    has_choice = Found("flag", "some skeins together are enough for the project")
    is_short = Found("flag", "no choice of skeins is enough")
    is_unweighed = Found("flag", "no skein with yards has a weight")
    has_lacking = Found("flag", "some skeins have no yards yet")
    total = Found("length", "yarn on the shelf")
    total_low = Found("length", "low end of its range")
    total_high = Found("length", "high end of its range")
    total_within = Found("share", "how far the farther end of its range is off, of it")
    count = Found("number", "skeins with yards")
    lacking = Found("number", "skeins without")
    chosen_names = Found("word", "the skeins chosen")
    chosen_yards = Found("length", "yarn in the skeins chosen")
    left = Found("length", "what they leave over")
    times = Found("word", "the chance that they are enough, in words")
    chance = Found("share", "the chance that they are enough")
    more = Found("length", "yarn missing, where no choice is enough")
    like_names = Found("word", "the skeins that come nearest")
    like_grist = Found("grist", "grist of the skeins chosen, or of those that come nearest")
    chosen_top = Found("length", "the larger of project and yarn chosen")
    fibre_top = Found("length", "most yarn of one fibre")
    grist_least = Found("grist", "least grist of a skein with wraps")
    grist_most = Found("grist", "greatest grist of a skein with wraps")
    wraps_most = Found("wraps", "most wraps of a skein")

    reckoned = Table("each skein's yards, by what, and whether it is chosen")
    points = Table("each skein with wraps: its grist with its range")
    names = Table("the rows of points that lie together")
    bars = Table("the yards of each fibre, by thickness")
    stack = Table("the skeins chosen, one on top of another")

    tags = Table("what each skein's tag says")
    listings = (
        Listing(
            "tags",
            "Tags for the skeins",
            (
                Column("Code", "link", "link", OPENS),
                Column("Name", "name", "word"),
                Column("Fibre, colour", "kind", "word"),
                Column("Holds", "holds", "template"),
                Column("Range", "range", "template"),
                Column("Weight, grist", "weighs", "template"),
                Column("Wraps", "laid", "template"),
                Column("Day", "", "day"),
            ),
            tags=True,
        ),
    )

    answer = (
        (
            "is_broad",
            "Your shelf holds {total~*}, between {total_low!~} and {total_high~}, 95% sure.",
        ),
        (
            "is_narrow",
            "Your shelf holds {total:4*}, right to within {total_within:2}, 95% sure.",
        ),
        (
            "has_none",
            "No skein has yards yet: the table says what each one lacks.",
        ),
        (
            "has_choice",
            "For {project}, take {chosen_names}: {chosen_yards}, enough {times}.",
        ),
        (
            "is_short",
            "No choice will do for {project}: spin {more:2^} more like {like_names}.",
        ),
        (
            "is_unweighed",
            "To choose some for {project}, weigh them: only skeins of like grist go together.",
        ),
        (
            "has_lacking",
            "{lacking|skein has|skeins have} no yards yet: the table says what is lacking.",
        ),
    )

    def work_out(self) -> Mapping[str, Any]:
        """Reckon every skein, and choose some for the project."""
        skeins, doubts, wanted = self.on_shelf(), self.doubts(), self.wanted()
        if not skeins:
            return no_answer(
                "The shelf is empty: type a skein, paste rows from a spreadsheet, or open a file."
            )
        found = [reckoned(each, doubts) for each in skeins]
        at_hand = [each for each in found if each]
        places = [at for at, each in enumerate(found) if each and not math.isnan(each.grist)]
        shelf = [_on_shelf(skeins[at], found[at]) for at in places]
        choice = choose(shelf, wanted)
        roles = dict(zip(places, why(shelf, choice, wanted), strict=True))
        chosen = [places[at] for at in choice.chosen]
        total = sum(each.yards for each in at_hand)
        low, high = factor_interval(total, _half_together(at_hand))
        missing = len(skeins) - len(at_hand)
        is_narrow = high < low * _NARROW
        return (
            {
                "has_yarn": bool(at_hand),
                "is_broad": bool(at_hand) and not is_narrow,
                "is_narrow": bool(at_hand) and is_narrow,
                "has_none": not at_hand,
                "has_choice": bool(chosen),
                "is_short": bool(choice.lot) and not chosen,
                "is_unweighed": bool(at_hand) and not shelf,
                "has_lacking": missing > 0 and bool(at_hand),
                "total": total if at_hand else math.nan,
                "total_low": low if at_hand else math.nan,
                "total_high": high if at_hand else math.nan,
                "total_within": high / total - 1 if at_hand else math.nan,
                "count": len(at_hand),
                "lacking": missing,
                "reckoned": [
                    _row(result, "" if result else lacking(each, doubts), roles.get(at, ""))
                    for at, (each, result) in enumerate(zip(skeins, found, strict=True))
                ],
                "tags": [
                    tag(each, result)
                    for each, result in zip(skeins, found, strict=True)
                    if self.paper == "tags"
                ],
                "stack": stack(skeins, found, [places[at] for at in choice.chosen or choice.lot]),
            }
            | self._of_project(skeins, choice, places)
            | thickness(skeins, found)
        )

    def _of_project(
        self,
        skeins: Sequence[Skein],
        choice: Choice,
        places: Sequence[int],
    ) -> dict[str, Any]:
        """Give what is said of the choice, or of what is missing."""
        if not choice.lot:
            return {"chosen_top": self.project}  # no skein that could be chosen
        if not choice.chosen:
            nearest = [places[at] for at in choice.lot]
            return {
                "more": choice.more,
                "like_names": _named(nearest, skeins),
                "like_grist": choice.grist,
                "chosen_top": max(choice.yards, self.project),
            }
        chosen = [places[at] for at in choice.chosen]
        return {
            "chosen_names": _named(chosen, skeins),
            "chosen_yards": choice.yards,
            "left": choice.yards - self.project,
            "like_grist": choice.grist,
            "times": times(choice.chance),
            "chance": choice.chance,
            "chosen_top": max(choice.yards, self.project),
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how skeins come to their yards, and how some are chosen."""
        yield (
            None,
            "Each skein is reckoned by every measure its row has, as the worksheet on that measure"
            " does, and the one with the narrowest range counts.",
        )
        yield (
            None,
            "Wraps alone leave a yarn anywhere from airy to dense: 1.8 times less or more.",
        )
        yield (
            "has_yarn",
            "All {count|skein|skeins} with yards come to {total:4}. One hand, one scale and one"
            " reel made and measured them, so their doubts are taken to err together and add"
            " plainly.",
        )
        yield (
            "has_choice",
            "Of all choices of like skeins that are enough with the chance you asked for, the one"
            " with the fewest yards: {chosen_yards:4}, {left} more than {project}.",
        )
        yield (
            "is_short",
            "Even all of {like_names} are not enough with the chance you asked for. {more:4} more"
            " of the same, as much in doubt, would be.",
        )


def _on_shelf(skein: Skein, found: Reckoned | None) -> OnShelf:
    assert found is not None
    return OnShelf(found.yards, found.relative, found.grist, skein.fibre, skein.colour)


def _half_together(found: Sequence[Reckoned]) -> float:
    """Give half the range of all skeins together: their doubts add plainly."""
    total = sum(each.yards for each in found)
    return sum(each.yards * each.half for each in found) / total if found else 0.0


def _row(found: Reckoned | None, lacks: str, role: str) -> dict[str, Any]:
    """Give what stands beside a row."""
    return {
        "is_reckoned": found is not None,
        "is_lacking": found is None,
        "yards": found.yards if found else math.nan,
        "low": found.low if found else math.nan,
        "high": found.high if found else math.nan,
        "evidence": _evidence(found) if found else "",
        "lacking": lacks,
        "role": role if found is None or role else "weigh it: its grist is not known",
    }


def _evidence(found: Reckoned) -> str:
    return f"{found.kind}, but its {found.disputed} say otherwise" if found.disputed else found.kind


def _named(places: Sequence[int], skeins: Sequence[Skein]) -> str:
    """Name skeins, if they are few."""
    names = [skeins[at].name or f"row {at + 1}" for at in places]
    if len(names) > _MOST_NAMED or len("".join(names)) > _MOST_LETTERS:
        return f"{len(names)} skeins, marked in the table"
    return " and ".join([*([", ".join(names[:-1])] if names[:-1] else []), names[-1]])

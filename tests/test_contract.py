"""The contract: every sheet's program gives in a JavaScript engine what Python gives."""

from __future__ import annotations

import json
import math
import random
import subprocess
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from tests.javascript import node
from yarnsheets import sheets
from yarnsheets.page import choices
from yarnsheets.page.compiler import program
from yarnsheets.page.inputs import Asked, Blank, Input, Pairs, Pick, Readings
from yarnsheets.page.reading import read_lines, read_number, read_pairs, round_above, written
from yarnsheets.page.rows import Rows

if TYPE_CHECKING:
    from yarnsheets.page.sheet import Sheet

RUNNER = Path(__file__).with_name("contract.js")
ALL = [getattr(sheets, name) for name in sheets.__all__]
TRIALS = 520
TOLERANCE = 1e-9  # of a number; words are compared to the letter

NO_JSON = {"NaN": math.nan, "Infinity": math.inf, "-Infinity": -math.inf}

TYPED = (
    *("12", "1,200", "1,2", "9 3/8", "9-3/8", "9½", "−3", "0", "1e9", "", "  7 ", "12 %", "nine"),
    *("1200,500", "1/0", "2.5", ".5", "99999999", "3\n4\n\n5½", "3\nx", "1,234,567.5", "9,5"),
    *("3 oz", "85 g", "85g", "9.4 in", "23.9cm", "1200 yd/lb", "5 Nm", "2 x", "420 TEX", "3 %"),
    *("9.6, 10.1", "9.5;9.6\t10", "9.5,9.6,9.7", '9.4"', "9 3/8 in, 24 cm", "xxx", "3 m/100 g"),
    *("48 2.95\n68, 85 g", "48: 2", "48", "7 x\n8 9"),
    *("3/8", "0,125", "12,5", "1 1⁄4", "x", "1 2", "1/0/2", "--3", "1,20,0", "3/", "1e5", "3 5/4"),
)


def any_value(rng: random.Random, asked: Asked, default: Any) -> Any:
    """Pick something allowed: most often near the default, sometimes an end of the range."""
    near = lambda value: value * math.exp(rng.gauss(0, 0.3))  # noqa: E731
    if isinstance(asked, Input):
        if asked.step == 1:
            return float(rng.randint(math.ceil(asked.low), math.floor(asked.high)))
        anywhere = rng.choice([asked.low, asked.high, rng.uniform(asked.low, asked.high)])
        value = near(default) if rng.random() < 0.8 else anywhere
        return min(max(value, asked.low), asked.high)
    if isinstance(asked, Blank):
        value = rng.choice([asked.low, asked.high, rng.uniform(-999, 999), 10 ** rng.uniform(0, 4)])
        return rng.choice([None, min(max(value, asked.low), asked.high)])
    if isinstance(asked, Readings):
        if rng.random() < 0.5:  # each near its own, as lists must be that are read side by side
            values = [value * math.exp(rng.gauss(0, 0.02)) for value in default]
            return [min(max(value, asked.low), asked.high) for value in values]
        count = rng.choice([0, 1, 2, 3, 6, len(default), len(default)])
        spread = rng.choice([0.0, 0.01, 0.04, 0.15])
        start = rng.choice(default or [math.sqrt(max(asked.low, 1e-3) * asked.high)])
        values = [start * math.exp(rng.gauss(0, spread)) for _ in range(count)]
        ends = [asked.low, asked.high] if rng.random() < 0.05 else []
        return [min(max(value, asked.low), asked.high) for value in values + ends]
    if isinstance(asked, Pairs):
        pairs = [[near(one) for one in pair] for pair in default][: rng.choice([0, 1, 2, 9])]
        parts = asked.parts
        whole = lambda part, one: round(one) if part.step == 1 else one  # noqa: E731
        return [
            [min(max(whole(p, one), p.low), p.high) for one, p in zip(pair, parts, strict=True)]
            for pair in (pairs if rng.random() < 0.7 else sorted(pairs))
        ]
    if isinstance(asked, Rows):
        return [any_row(rng, asked) for _ in range(rng.choice([0, 1, 3, 6, 12]))]
    if isinstance(asked, Pick):
        return rng.choice(list(asked.options))
    return rng.choice([default, "", "kr", "“a\\b`${c}"])


def any_row(rng: random.Random, asked: Rows) -> list[Any]:
    """Pick a row like those of the example, with some cells changed and some left empty."""
    like = dict(zip(asked.columns, rng.choice(asked.rows), strict=True))
    for name, column in asked.columns.items():
        known = like[name] if like[name] is not None else column.default_value
        if rng.random() < 0.3:
            like[name] = any_value(rng, column, known)
        elif rng.random() < 0.1:
            like[name] = None
    return asked.row(like)


def trials(sheet: type[Sheet]) -> list[dict[str, Any]]:
    """Give inputs in every choice of units: the blank sheet, then some changed at a time.

    Few are changed, so that most have an answer.
    """
    rng = random.Random(sheet.__name__)  # noqa: S311 - to be the same at every run
    blank = sheet()
    asked = sheet.inputs()
    units = [(m, g) for m in choices.MEASURES for g in choices.GRIST_UNITS]
    made = []
    for at in range(TRIALS):
        most = 0 if at < len(units) else rng.choice([1, 2, len(asked)])
        changed = rng.sample(list(asked), min(most, len(asked)))
        values = {name: getattr(blank, name) for name in asked}
        values |= {name: any_value(rng, asked[name], values[name]) for name in changed}
        measure, grist = units[at % len(units)]
        typed = [
            [name, rng.choice(TYPED)]
            for name in asked
            if isinstance(asked[name], Blank | Input | Readings | Pairs)
        ]
        made.append(
            {
                "values": values,
                "choice": {"measure": measure.name, "grist_unit": grist.unit},
                "worked": f"{measure.name}|{grist.unit}",
                "typed": typed,
            }
        )
    return made


def in_python(sheet: type[Sheet], described: dict[str, Any], trial: dict[str, Any]) -> Any:
    """Answer a trial as contract.js does."""
    here = sheet(**trial["values"], **trial["choice"])
    shown = here.units_shown()
    boxes, typed = [], []
    for name, text in trial["typed"]:
        asked = described["inputs"][name]
        read = {"readings": read_lines, "pairs": read_pairs}.get(asked["kind"], read_number)
        typed.append(read(asked, text, shown))
        for value in [getattr(here, name)] if asked["kind"] == "number" else []:
            box = written(asked, value, shown)
            boxes.append([box, read_number(asked, box, shown), round_above(value)])
    return {
        "found": {
            name: getattr(here, name) for name in (*sheet.finds(), *sheet.tables(), "warnings")
        },
        "unused": here.unused(),
        "sentence": here.sentence,
        "arithmetic": here.arithmetic,
        "captions": [here.said(chart["caption"]) for chart in described["charts"]],
        "labels": [here.say(label) for label in described["labels"].values()],
        "typed": typed,
        "boxes": boxes,
    }


def differences(ours: Any, theirs: Any, at: str = "") -> list[str]:
    """Say where two answers are not the same."""
    if isinstance(ours, dict) and isinstance(theirs, dict):
        if ours.keys() != theirs.keys():
            return [f"{at}: {sorted(ours.keys() ^ theirs.keys())} on one side only"]
        return [d for key in ours for d in differences(ours[key], theirs[key], f"{at}.{key}")]
    if isinstance(ours, list | tuple) and isinstance(theirs, list):
        if len(ours) != len(theirs):
            return [f"{at}: {ours!r:.200} and {theirs!r:.200}"]
        pairs = enumerate(zip(ours, theirs, strict=True))
        return [d for i, (a, b) in pairs for d in differences(a, b, f"{at}[{i}]")]
    if is_number(ours):
        other = NO_JSON.get(theirs, theirs) if isinstance(theirs, str) else theirs
        if is_number(other) and (
            math.isclose(ours, other, rel_tol=TOLERANCE, abs_tol=1e-15)
            or (math.isnan(ours) and math.isnan(other))
        ):
            return []
    elif ours == theirs and type(ours) is type(theirs):
        return []
    return [f"{at}: {ours!r} and {theirs!r}"]


def is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


@pytest.mark.parametrize("sheet", ALL, ids=lambda sheet: sheet.__name__)
def test_a_sheet_gives_the_same_in_javascript(sheet: type[Sheet]) -> None:
    described = json.loads(json.dumps(sheet.describe()))
    tried = trials(sheet)
    sent = [{"description": described, "text": program(sheet)}, *tried]
    done = subprocess.run(
        [node(), RUNNER],
        input="\n".join(json.dumps(each) for each in sent),
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    assert len(answers) == len(tried) == TRIALS
    found = [
        (difference, trial)
        for trial, answer in zip(tried, answers, strict=True)
        for difference in differences(in_python(sheet, described, trial), answer)
    ]
    assert not found, f"{len(found)} differences, the first: {found[0]}"
    # most inputs have an answer, or the comparison would be of warnings
    answered = [answer for answer in answers if not answer["found"]["warnings"]]
    assert len(answered) > 0.3 * TRIALS

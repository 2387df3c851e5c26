"""A blank to be filled, and the next draw by one press, in a real browser beside Python."""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING, Any
from urllib.parse import parse_qs, urlencode, urlsplit

import pytest
import traitlets

from tests.browser import open_sheet
from tests.page.test_labels import STRUCK, WIDTHS
from tests.reader import box, pick, said, type_in, unfold
from yarnsheets.page import choices
from yarnsheets.page.inputs import Blank
from yarnsheets.page.reading import read_number
from yarnsheets.sheets import CanIWorkItOut, WhatIsGrist
from yarnsheets.sheets.can_i_work_it_out.ranges import METRES, YARDS
from yarnsheets.sheets.can_i_work_it_out.sheet import KINDS, drawn

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

SKEIN = {"kind": "skein", "draw": 3}  # 3.2 oz at 600 yd/lb: 120 yd


@pytest.fixture
def exercises(page: Page, server: Server) -> Page:
    """Open the exercises at the one of the skein."""
    open_sheet(page, server, "can-i-work-it-out")
    page.get_by_label("Kind of exercise").select_option("length in a skein")
    type_in(page, "draw", "3")
    return page


def another(page: Page) -> None:
    page.get_by_role("button", name="Another one").click()


def link(page: Page) -> dict[str, str]:
    page.wait_for_timeout(400)  # the address follows when the hand has rested
    return {name: one for name, (one,) in parse_qs(urlsplit(page.url).fragment).items()}


# ---- a blank ----------------------------------------------------------------------------------


def test_a_blank_that_is_left_empty_is_no_error(exercises: Page) -> None:
    field = box(exercises, "answer_length")
    field.focus()
    field.blur()
    assert field.input_value() == ""
    assert said(exercises) == CanIWorkItOut(**SKEIN).sentence
    assert not exercises.locator(".ys-error:visible, .ys-stale:visible").count()


def test_a_slip_is_met_and_the_next_try_is_right(exercises: Page) -> None:
    type_in(exercises, "answer_length", "1920")
    assert said(exercises) == CanIWorkItOut(**SKEIN, answer_length=1920).sentence
    assert "takes an ounce for a pound" in said(exercises)
    unfold(exercises)
    assert exercises.locator(".ys-worked li").all_text_contents() == ["3.2\xa0oz ÷ 16 = 0.2\xa0lb."]
    type_in(exercises, "answer_length", "360 ft")
    assert said(exercises).startswith("Right: 120\xa0yd.")
    assert exercises.locator(".ys-worked li").count() == 2


def test_half_an_answer_is_not_judged(exercises: Page) -> None:
    before = said(exercises)
    box(exercises, "answer_length").press_sequentially("12")
    assert said(exercises) == before
    exercises.keyboard.type("0")
    exercises.keyboard.press("Enter")
    assert said(exercises).startswith("Right")


def test_what_is_no_number_is_refused_and_stays(exercises: Page) -> None:
    type_in(exercises, "answer_length", "a lot")
    assert (
        exercises.locator("[data-name=answer_length] .ys-error").inner_text().startswith("“a lot”")
    )
    assert box(exercises, "answer_length").input_value() == "a lot"
    another(exercises)  # it was for the exercise before
    assert box(exercises, "answer_length").input_value() == ""
    assert not exercises.locator(".ys-error:visible, .ys-stale:visible").count()


def test_an_answer_may_be_taken_back(exercises: Page) -> None:
    type_in(exercises, "answer_length", "1920")
    type_in(exercises, "answer_length", "")
    assert said(exercises) == CanIWorkItOut(**SKEIN).sentence


# ---- the next draw -----------------------------------------------------------------------------


def test_another_one_is_one_press_and_starts_anew(exercises: Page) -> None:
    type_in(exercises, "answer_length", "120")
    another(exercises)
    assert box(exercises, "draw").input_value() == "4"
    assert box(exercises, "answer_length").input_value() == ""
    assert said(exercises) == CanIWorkItOut(kind="skein", draw=4).sentence


def test_after_the_last_draw_comes_the_first(exercises: Page) -> None:
    type_in(exercises, "draw", "9999")
    another(exercises)
    assert box(exercises, "draw").input_value() == "1"


def test_the_same_number_again_keeps_the_answer(exercises: Page) -> None:
    type_in(exercises, "answer_length", "120")
    type_in(exercises, "draw", "3")
    assert box(exercises, "answer_length").input_value() == "120"


def test_another_kind_or_other_units_are_another_exercise(exercises: Page) -> None:
    type_in(exercises, "answer_length", "120")
    exercises.get_by_label("Length, weight", exact=True).select_option("metres, grams")
    assert box(exercises, "answer_length").input_value() == ""
    metres = {"measure": "metres, grams", "grist_unit": "m/100g"}
    assert said(exercises) == CanIWorkItOut(**SKEIN, **metres).sentence
    type_in(exercises, "answer_length", "114")
    assert said(exercises).startswith("Right")
    exercises.get_by_label("Kind of exercise").select_option("enough or not")
    assert box(exercises, "answer_length").input_value() == ""


def test_another_unit_of_grist_is_the_same_exercise(exercises: Page) -> None:
    type_in(exercises, "answer_length", "120")
    pick(exercises, "yards, ounces", "tex")
    assert said(exercises).startswith("Right")


# ---- the address and the file ------------------------------------------------------------------


def test_the_address_gives_everyone_the_same_and_holds_an_answer(
    exercises: Page, page: Page
) -> None:
    held = link(exercises)
    assert (held["kind"], held["draw"]) == ("skein", "3")
    assert "answer_length=&" in exercises.url  # so that it empties the box of an open page
    type_in(exercises, "answer_length", "1920")
    assert link(exercises)["answer_length"] == "1920"
    address, here = exercises.url, said(exercises)
    page.goto("about:blank")
    page.goto(address)
    page.wait_for_selector(".ys-sheet .ys-sentence")
    assert said(page) == here
    assert box(page, "answer_length").input_value() == "1920"


def test_a_file_of_the_numbers_does_not_tell_the_answer(exercises: Page) -> None:
    def rows() -> str:
        with exercises.expect_download() as download:
            exercises.get_by_role("button", name="Save the numbers").click()
        return str(download.value.path().read_text("utf-8"))

    before = rows()
    assert "how many yards" in before
    assert not re.search(r"\{|right length|\b120\b|null", before)
    type_in(exercises, "answer_length", "119")
    assert '"the right length, once it is found",120,yd' in rows()


# ---- a pick with a next one --------------------------------------------------------------------


def test_a_lesson_goes_step_by_step_and_hides_the_next_answer(page: Page, server: Server) -> None:
    open_sheet(page, server, "what-is-grist")
    for step in list(WhatIsGrist.step.options)[1:]:
        page.get_by_role("button", name="Next step").click()
        assert said(page) == WhatIsGrist(step=step).sentence
        if page.get_by_label("The answer").is_visible():
            page.get_by_role("button", name="Show it, or hide it").click()
            assert said(page) == WhatIsGrist(step=step, shown="yes").sentence
    page.get_by_role("button", name="Next step").click()
    assert said(page) == WhatIsGrist().sentence


# ---- at every width -----------------------------------------------------------------------------


def struck(page: Page, name: str, every: list[dict[str, Any]]) -> list[str]:
    """Take a page through inputs by its address; give the words of charts that touch."""
    cls = {"can-i-work-it-out": CanIWorkItOut, "what-is-grist": WhatIsGrist}[name]
    found = []
    for inputs in every:
        page.evaluate("(link) => { location.hash = link; }", urlencode(inputs))
        page.wait_for_function(
            "(said) => document.querySelector('.ys-sentence').textContent === said",
            arg=cls(**inputs).sentence,
        )
        found += page.evaluate(STRUCK)
    return found


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("measure", ["yards, ounces", "metres, grams"])
def test_words_of_answered_exercises_do_not_touch(
    page: Page, server: Server, width: int, measure: str
) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    open_sheet(page, server, "can-i-work-it-out")
    page.wait_for_selector(".ys-picture svg")
    every = []
    for kind, (of, _) in KINDS.items():
        one = drawn(kind, 5, YARDS if measure == "yards, ounces" else METRES)
        answers = [one.right, *(slip.answer for slip in one.slips)]
        given = {"kind": kind, "draw": 5, "measure": measure, "grist_unit": "yd/lb"}
        every += [{**given, f"answer_{of}": answer} for answer in answers]
    assert not struck(page, "can-i-work-it-out", every)


@pytest.mark.parametrize("width", WIDTHS)
def test_words_of_the_lesson_do_not_touch(page: Page, server: Server, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    open_sheet(page, server, "what-is-grist")
    page.wait_for_selector(".ys-picture svg")
    every = [
        {"step": step, "shown": shown}
        for step in WhatIsGrist.step.options
        for shown in ("no", "yes")
    ]
    assert not struck(page, "what-is-grist", every)


# ---- in Python ---------------------------------------------------------------------------------


def test_a_blank_refuses_in_words_and_takes_none() -> None:
    sheet = CanIWorkItOut(kind="cut")
    with pytest.raises(traitlets.TraitError, match="Your answer can be"):
        sheet.answer_grist = -1
    sheet.answer_grist = 12
    sheet.answer_grist = None
    assert sheet.is_open


@pytest.mark.parametrize("text", ["", "   "])
def test_an_empty_blank_reads_as_nothing_and_as_nothing_wrong(text: str) -> None:
    blank: Any = Blank("A", "length", low=0, high=9, measure="", anew=())
    assert read_number(json.loads(json.dumps(blank.describe())), text, choices.OWN) == (None, "")

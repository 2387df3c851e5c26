"""The charts' own text, worked out in Python row by row, against the sheet."""

import json
import re

import altair as alt
import pytest

from tests.emitted import names_in, run
from yarnsheets import sheets, units
from yarnsheets.page.chart import table
from yarnsheets.sheets import HowManyYards

SHEET = HowManyYards(grist=2400, weight=0.6, plies=2, take_up=1.05, project=900)
DESCRIBED = SHEET.describe()
CHARTS = {chart["name"]: chart for chart in DESCRIBED["charts"]}
VEGAS_OWN = {"width", "height", "format", "atan2"}
TOPS = {"weight_top": 20.0, "yards_top": 1000.0, "grist_top": 400.0, "fibre_top": 500.0}
# metres, grams and tex: the choice in which nothing is the sheet's own unit
METRIC = {
    "length_factor": units.scale("yd", "m").factor,
    "mass_factor": units.scale("lb", "g").factor,
    "grist_factor": units.scale("yd/lb", "tex").factor,
    "grist_power": -1,
}
# of every sheet, the charts described as plain data
EVERY_CHART = {
    f"{name}-{chart['name']}": (chart, getattr(sheets, name).describe())
    for name in sheets.__all__
    for chart in getattr(sheets, name).describe()["charts"]
}
VALUES = SHEET.all_known() | METRIC | TOPS | {"plied_top": 1}


def rows(name: str, *fields: str) -> list[list[dict[str, float]]]:
    """Compute the rows of each layer of a chart that has all these fields."""
    found = []
    for layer in CHARTS[name]["spec"]["layer"]:
        steps = layer.get("transform", [])
        if set(fields) <= {step["as"] for step in steps}:
            data = layer["data"]["sequence"]
            computed: list[dict[str, float]] = []
            for at in range(data["start"], data["stop"]):
                row: dict[str, float] = {"at": at}
                for step in steps:
                    row[step["as"]] = run(step["calculate"], VALUES, row)
                computed.append(row)
            found.append(computed)
    return found


def test_the_length_line_is_weight_times_plied_grist() -> None:
    line = rows("yards_against_weight", "weight", "yards")[0]
    tex = 2 * 1.05 * units.convert(2400, "yd/lb", "tex")  # direct count: strands add, by hand
    for row in line:
        assert row["yards"] == pytest.approx(row["weight"] / tex * 1000, rel=1e-12)


def test_the_marked_point_is_the_sheets_answer() -> None:
    points = [line[0] for line in rows("yards_against_weight", "weight", "yards")]
    here = {"weight": units.convert(0.6, "lb", "g"), "yards": units.convert(SHEET.yards, "yd", "m")}
    assert any(
        row["weight"] == pytest.approx(here["weight"], rel=1e-12)
        and row["yards"] == pytest.approx(here["yards"], rel=1e-12)
        for row in points
    )


def test_the_crossing_is_where_the_line_reaches_the_project() -> None:
    tables = rows("yards_against_weight", "weight", "yards")
    line = tables[0][1]
    crossing = next(t[0] for t in tables if len(t) == 1 and t[0]["weight"] > 1 and t is not line)
    assert crossing["yards"] == pytest.approx(900 * 0.9144, rel=1e-12)
    assert crossing["weight"] / line["weight"] == pytest.approx(
        crossing["yards"] / line["yards"], rel=1e-12
    )


def test_the_fibre_curve_in_tex_is_length_times_tex() -> None:
    curve = rows("fibre_against_grist", "grist", "fibre")[0]
    assert len(curve) > 50
    for row in curve:
        grams = 900 * 0.9144 / 1000 * 2 * 1.05 * row["grist"]
        assert row["fibre"] == pytest.approx(grams, rel=1e-12)


def test_plied_grist_at_each_ply_count() -> None:
    line = rows("grist_against_plies", "plies", "grist")[0]
    single = units.convert(2400, "yd/lb", "tex")
    expected = [single] + [n * 1.05 * single for n in range(2, 9)]
    assert [row["plies"] for row in line] == list(range(1, 9))
    assert [row["grist"] for row in line] == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize("name", EVERY_CHART)
def test_every_name_a_chart_reads_is_a_named_parameter(name: str) -> None:
    spec = EVERY_CHART[name][0]["spec"]
    named = {param["name"] for param in spec["params"]}
    assert not any(re.match(r"param_\d", n) for n in named)
    texts = re.findall(r'"(?:calculate|expr|filter)": "([^"]*)"', json.dumps(spec))
    assert texts or not named
    for text in texts:
        assert names_in(text) <= named | VEGAS_OWN, text


def test_a_field_of_a_table_is_not_computed_from_itself() -> None:
    # Vega would work it out again, on its own result, whenever a parameter moves
    with pytest.raises(ValueError, match="reads itself"):
        table("readings", grist=alt.datum.grist * 2)
    assert table("readings", shown=alt.datum.grist * 2).mark_point().to_dict()["transform"]


@pytest.mark.parametrize("name", [n for n, (chart, _) in EVERY_CHART.items() if chart["grip"]])
def test_a_charts_handle_moves_an_input_and_stands_on_numbers(name: str) -> None:
    chart, described = EVERY_CHART[name]
    grip = chart["grip"]
    known = described["inputs"] | described["found"]
    assert grip["input"] in described["inputs"]
    assert {grip["x"], grip["y"]} <= set(known)


# which of a chart's axis lengths the height of its point must fit in; the other one is the width
UPRIGHT = {"yards_top", "fibre_top", "plied_top"}
DIMENSIONS = {"weight": "mass", "weight_needed": "mass", "yards": "length"}


@pytest.mark.parametrize("name", CHARTS)
def test_the_axes_reach_past_the_point(name: str) -> None:
    chart = CHARTS[name]
    for top, text in chart["reach"].items():
        number = chart["grip"]["y" if top in UPRIGHT else "x"]
        own, unit = {
            "mass": ("lb", "g"),
            "length": ("yd", "m"),
            "grist": ("yd/lb", "tex"),
        }[DIMENSIONS.get(number, "grist")]
        point = units.convert(getattr(SHEET, number), own, unit)
        assert run(text, VALUES) > point


@pytest.mark.parametrize("name", EVERY_CHART)
def test_a_chart_declares_no_parameter_it_does_not_read(name: str) -> None:
    spec = EVERY_CHART[name][0]["spec"]
    text = json.dumps({part: spec[part] for part in spec if part != "params"})
    for param in spec["params"]:
        assert re.search(rf"\b{param['name']}\b", text), param["name"]

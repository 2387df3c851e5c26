"""How sure a result is: its range, its error budget, and how many readings are enough."""

from yarnsheets.estimates.agreement import (
    Agreement,
    absolute_agreement,
    relative_agreement,
)
from yarnsheets.estimates.budget import (
    Budget,
    Component,
    balance_budget,
    rectangular,
    resolution,
    stated,
    unevenness,
)
from yarnsheets.estimates.comparison import (
    Comparison,
    Verdict,
    compare,
    compare_all,
)
from yarnsheets.estimates.control import (
    ControlChart,
    Signal,
    control_chart,
    drift,
)
from yarnsheets.estimates.correlation import (
    correlated_relative,
)
from yarnsheets.estimates.counter import (
    corrected_length,
    counter_factor,
)
from yarnsheets.estimates.course import (
    Course,
    course,
)
from yarnsheets.estimates.enough import (
    chance_enough,
    doubt_for_chance,
    length_for_chance,
)
from yarnsheets.estimates.estimate import (
    Estimate,
    Interval,
    PositiveEstimate,
    t_factor,
    t_probability,
)
from yarnsheets.estimates.odd_one import (
    OddOne,
    odd_one,
)
from yarnsheets.estimates.readings import (
    grist_from_cuts,
    mean,
    spread_of_cuts,
    standard_deviation,
)
from yarnsheets.estimates.sample_size import (
    cuts_needed,
    cuts_needed_if_spread_known,
    further_cuts,
    half_width,
)
from yarnsheets.estimates.skeins import (
    grist_from_skeins,
    skein_budget,
    wound_circumference,
)
from yarnsheets.estimates.unlikely import (
    unlikely_cut,
    unlikely_cuts,
    unlikely_grist,
    unlikely_wraps,
)
from yarnsheets.estimates.unlikely_skeins import (
    unlikely_counter,
    unlikely_mass,
    unlikely_step,
    unlikely_tare,
    unlikely_turns,
)

__all__ = [
    "Agreement",
    "Budget",
    "Comparison",
    "Component",
    "ControlChart",
    "Course",
    "Estimate",
    "Interval",
    "OddOne",
    "PositiveEstimate",
    "Signal",
    "Verdict",
    "absolute_agreement",
    "balance_budget",
    "chance_enough",
    "compare",
    "compare_all",
    "control_chart",
    "corrected_length",
    "correlated_relative",
    "counter_factor",
    "course",
    "cuts_needed",
    "cuts_needed_if_spread_known",
    "doubt_for_chance",
    "drift",
    "further_cuts",
    "grist_from_cuts",
    "grist_from_skeins",
    "half_width",
    "length_for_chance",
    "mean",
    "odd_one",
    "rectangular",
    "relative_agreement",
    "resolution",
    "skein_budget",
    "spread_of_cuts",
    "standard_deviation",
    "stated",
    "t_factor",
    "t_probability",
    "unevenness",
    "unlikely_counter",
    "unlikely_cut",
    "unlikely_cuts",
    "unlikely_grist",
    "unlikely_mass",
    "unlikely_step",
    "unlikely_tare",
    "unlikely_turns",
    "unlikely_wraps",
    "wound_circumference",
]

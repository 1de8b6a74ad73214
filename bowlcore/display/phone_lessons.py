"""Which panel of each lesson is given away as a page for a phone, over which settings, and what is said above it."""

import json
import re
from collections.abc import Callable
from functools import lru_cache, partial
from typing import NamedTuple

from bowlcore.coaching import (
    evening_told,
    log_compare,
    log_source,
    release_doubt,
    rules,
    rules_told,
)
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.display.a_lane_that_changes import a_lane_that_changes_panel
from bowlcore.display.did_it_help import did_it_help_panel
from bowlcore.display.first_shot import first_shot_panel
from bowlcore.display.measure_a_release import measure_a_release_panel
from bowlcore.display.own_numbers import own_numbers_panel
from bowlcore.display.path_lab import path_lab_panel
from bowlcore.display.pattern_builder import pattern_builder_panel
from bowlcore.display.phone_page import phone_page
from bowlcore.display.pocket import pocket_panel
from bowlcore.display.rules import rules_panel
from bowlcore.display.settings import shown_in
from bowlcore.display.skid_hook_roll import skid_hook_roll_panel
from bowlcore.display.two_faces import two_faces_panel
from bowlcore.display.what_leaves_the_hand import what_leaves_the_hand_panel
from bowlcore.locate import workbooks_folder
from bowlcore.motion.oil import pattern_names

WITHOUT = {"11": "11 Run a clinic is planned on paper and has no page for a phone: see bowlcore sheets."}
_SPEEDS_MPH = range(12, 22)
_LINK = re.compile(r"\[([^\]]+)\]\([^)]+\)")


class PhoneLesson(NamedTuple):
    """Panel, one sentence about it, the steps of its controls in trade units, and how wide its figure is on a phone."""

    make: Callable
    about: str
    controls: dict
    width_in: float


@lru_cache(maxsize=1)
def phone_lessons() -> dict[str, PhoneLesson]:
    """By the number of the lesson. A figure of 3.45 in fits a phone held upright; two charts side by side need more."""
    # shipped ones only: the name of a lane of one's own may say where it is
    shapes = sorted(pattern_names(), key=lambda name: name != "house")
    initials = log_source.entries_of(log_source.DEMO).bowlers
    return {
        "00": PhoneLesson(
            first_shot_panel,
            "One ordinary shot: choose its speed and the oil, and read what the ball does.",
            {"speed_mph": _SPEEDS_MPH, "pattern": shapes},
            3.45,
        ),
        "01": PhoneLesson(
            what_leaves_the_hand_panel,
            "The ball as it leaves the hand: how far its axis points sideways, and how far it leans up.",
            {"axis_rotation_deg": range(0, 91, 10), "axis_tilt_deg": (0, 5, 13, 20, 30, 40)},
            6.0,
        ),
        "02": PhoneLesson(
            skid_hook_roll_panel,
            "One shot and how fast it slips over the lane: it turns only while it slips.",
            {"speed_mph": _SPEEDS_MPH, "rev_rate_rpm": range(0, 501, 50)},
            3.45,
        ),
        "03": PhoneLesson(
            pattern_builder_panel,
            "An oil pattern made from its length and its volume, and always the same throw on it.",
            {"length_ft": range(32, 53, 4), "volume_ml": range(8, 41, 8)},
            6.6,
        ),
        "04": PhoneLesson(
            partial(path_lab_panel, show="same line"),
            "What axis rotation and axis tilt do to one ball, on the same line and re-aimed to the pocket.",
            {
                "axis_rotation_deg": range(0, 91, 15),
                "axis_tilt_deg": (0, 5, 13, 20, 30),
                "show": ("same line", "re-aimed"),
            },
            6.4,
        ),
        "05": PhoneLesson(
            pocket_panel,
            "One ball among the pins: where it comes in and how steep, and what then stands.",
            {"entry_board": [15 + half / 2 for half in range(11)], "entry_angle_deg": range(1, 7)},
            7.5,
        ),
        "06": PhoneLesson(
            two_faces_panel,
            "Two balls that come in late and look alike: the first met too much oil, the second rolled too early.",
            {"tighter_percent": range(0, 49, 16), "looser_percent": range(0, 91, 15)},
            8.8,
        ),
        "07": PhoneLesson(
            a_lane_that_changes_panel,
            "An evening of six bowlers on one pair: what becomes of the oil, and of one bowler's line.",
            {"bowler": evening_told.NAMES, "games": (1, 2, 3), "moving": (True, False)},
            10.6,
        ),
        "08": PhoneLesson(
            own_numbers_panel,
            "Where the feet go for each pin, the target always the same.",
            {"bowler": list(load_bowlers()), "pattern": ("house", "flat", "long_heavy", "dried_out")},
            5.0,
        ),
        "09": PhoneLesson(
            measure_a_release_panel,
            "Three balls of an invented bowler, measured by eye: how sure the numbers are, and what that doubt does.",
            {"pattern": shapes, "timed": list(release_doubt.TIMED)},
            9.0,
        ),
        "10": PhoneLesson(
            did_it_help_panel,
            "Two groups of balls out of an invented log: better, or luck?",
            {
                "bowler": [log_source.EVERYBODY, *initials],
                "measure": log_compare.MEASURES,
                "split": log_compare.SPLITS,
            },
            6.2,
        ),
        "12": PhoneLesson(
            rules_panel,
            "Sayings of the trade, each tried in this model: for whom they hold, and by how much.",
            {"number": [rule.number for rule in rules.RULES], "tell": rules_told.TELLS},
            7.4,
        ),
    }


def lesson_page(lesson, hand="right", metric=False, **values) -> str:
    """The page of one lesson, as an HTML document.

    Parameters
    ----------
    lesson : str
        A number in `phone_lessons`.
    hand : "right" or "left"
    metric : bool
    values : controls of its panel, in trade units
        A bowler's own, such as speed_mph; those that this panel does not have are left out.

    Raises
    ------
    ValueError
        In one sentence, for a value that a control cannot take.
    """
    one = phone_lessons()[lesson]
    title, caution = _told_in(lesson)
    with shown_in(metric, hand):
        panel = one.make()
        own = {name: value for name, value in values.items() if name in panel.controls}
        for name, value in own.items():
            panel.control(name).check(value)
        panel.set(**own)
        return phone_page(
            panel, one.controls, title=title, about=one.about, cautions=[caution], width_in=one.width_in
        )


def not_asked_for(lesson, names) -> list[str]:
    """Those of the names that the panel of a lesson has no control for."""
    asked = phone_lessons()[lesson].make().controls
    return [name for name in names if name not in asked]


def _told_in(lesson):
    """Title and safety line, as the lesson itself has them."""
    [book] = workbooks_folder().glob(f"{lesson}_*.ipynb")
    cells = json.loads(book.read_text(encoding="utf-8"))["cells"]
    text = "\n".join("".join(cell["source"]) for cell in cells if cell["cell_type"] == "markdown")
    title, caution = re.search(r"^# (.+)$", text, re.M)[1], re.search(r"\*\*Safety\.\*\* (.+)", text)[1]
    return tuple(_LINK.sub(r"\1", text).replace("*", "") for text in (title, caution))

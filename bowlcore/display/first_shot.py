"""One ordinary shot: four controls, one lane."""

from bowlcore.coaching import first_shot
from bowlcore.coaching.path_lab import lane_of
from bowlcore.display.controls import Choice, Number, starting, target_number
from bowlcore.display.one_lane import one_lane
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.motion.release import Release
from bowlcore.motion.units import KMH_PER_MPH


def first_shot_panel(**start):
    """One shot as a live panel; keyword arguments are starting values of its controls.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Number(
                "speed_mph", "Ball speed", "mph", 8, 24, 0.1, at("speed_mph", 17), ("km/h", KMH_PER_MPH, 0.2)
            ),
            Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
            Number("laydown_board", "Laydown", "board", 1, 39, 0.5, at("laydown_board", 17)),
            target_number(at),
        ]
        folds = {
            "Hand and lane": [
                Number(
                    "axis_rotation_deg", "Axis rotation", "degrees", -30, 100, 1, at("axis_rotation_deg", 45)
                ),
                Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 60, 1, at("axis_tilt_deg", 13)),
                Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
            ]
        }
    return Panel("first_shot_panel", draw, main, folds)


def draw(pattern, metric=False, hand="right", **v) -> Drawn:
    """Picture, sentence and table of the shot."""
    told = first_shot.answer(Release(**v, hand=hand), lane_of(pattern), metric=metric)
    return Drawn(
        one_lane(told.release, told.path, told.sentence, pattern, metric, hand), told.sentence, told.rows
    )

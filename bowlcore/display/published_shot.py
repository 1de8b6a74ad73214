"""The published shot on two zones of friction."""

from bowlcore.coaching import published_shot
from bowlcore.display.controls import Number, starting
from bowlcore.display.one_lane import one_lane
from bowlcore.display.panel import Drawn, Panel
from bowlcore.motion.units import FOOT_M


def published_shot_panel(**start):
    """The published shot as a live panel: where the oil ends, and a tilt that was not published."""
    with starting(start) as at:
        low, high = published_shot.ENDS_FT
        main = [
            Number(
                "oil_end_ft", "Oil ends at", "ft", low, high, 0.5, at("oil_end_ft", 38), ("m", FOOT_M, 0.1)
            ),
            Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 25, 1, at("axis_tilt_deg", 0)),
        ]
    return Panel("published_shot_panel", draw, main)


def draw(oil_end_ft, axis_tilt_deg, metric=False, hand="right") -> Drawn:
    """Picture, sentence and table of the published shot."""
    told = published_shot.answer(oil_end_ft, axis_tilt_deg, metric=metric, hand=hand)
    return Drawn(
        one_lane(told.release, told.path, told.sentence, oil_end_ft, metric, hand), told.sentence, told.rows
    )

"""Sayings about rotation and tilt (1 to 5), tried on the adults who can change their hand."""

from dataclasses import replace

from bowlcore.coaching.rule_bench import (
    FRESH,
    HANDS,
    LESS_TILT,
    MORE_ROTATION,
    MORE_TILT,
    SEEN_DEG,
    SEEN_FT,
    TIE,
    aimed,
    hand,
)
from bowlcore.coaching.rule_trials import (
    corner_deg,
    late_share,
    remedy_case,
    rolls_at_ft,
    same_line_case,
)
from bowlcore.coaching.rule_verdict import Case

ENOUGH_DEG, MORE_DEG = 45.0, (70.0, 90.0)
BEYOND_DEG, SIDE_ROLL_DEG = 110.0, 90.0
SEEN_SHARE = 5.0  # points of the turn


def on_all(case, lanes=FRESH, names=HANDS):
    """The cases of every bowler on every lane."""
    return [case(name, lane) for name in names for lane in lanes]


def beyond_ninety():
    """110 degrees of rotation against 90, both re-aimed: true where it is no better."""

    def case(name, lane):
        tilt = hand(name)[1]
        found = remedy_case(name, lane, (SIDE_ROLL_DEG, tilt), (BEYOND_DEG, tilt))
        true = None if found.true is None else not found.true
        return replace(found, true=true)

    return on_all(case)


def forty_five():
    """45 degrees against the better of 70 and 90, re-aimed: true where no more than a tie is lost."""

    def case(name, lane):
        tilt = hand(name)[1]
        tried = {deg: aimed(name, lane, (deg, tilt)) for deg in (ENOUGH_DEG, *MORE_DEG)}
        tried = {deg: found for deg, found in tried.items() if found is not None}
        if ENOUGH_DEG not in tried or len(tried) < 2:
            return Case(name, lane.words)
        best = max((deg for deg in tried if deg != ENOUGH_DEG), key=lambda deg: tried[deg].odds.pocket)
        found = remedy_case(name, lane, (best, tilt), (ENOUGH_DEG, tilt))
        return replace(found, true=found.number > -TIE)

    return on_all(case)


def _same_line(read, low, **moved):
    return on_all(lambda name, lane: same_line_case(name, lane, read, low, **moved))


def tilt_skids_longer():
    """Ten degrees more tilt: feet by which it rolls later."""
    return _same_line(rolls_at_ft, SEEN_FT, tilt_deg=MORE_TILT)


def _turns_late(**moved):
    return on_all(
        lambda name, lane: same_line_case(
            name, lane, late_share(lane.surface.pattern.length_ft), SEEN_SHARE, **moved
        )
    )


def tilt_turns_late():
    """Ten degrees more tilt: points more of the turn after the oil."""
    return _turns_late(tilt_deg=MORE_TILT)


def tilt_sharper_corner():
    """Ten degrees more tilt: degrees more within the ten feet where it turns most."""
    return _same_line(corner_deg, SEEN_DEG, tilt_deg=MORE_TILT)


def less_tilt_earlier():
    """Ten degrees less tilt: feet by which it rolls sooner."""
    return _same_line(rolls_at_ft, SEEN_FT, tilt_deg=LESS_TILT, sign=-1.0)


def less_tilt_smoother():
    """Ten degrees less tilt: degrees less within the ten feet where it turns most."""
    return _same_line(corner_deg, SEEN_DEG, tilt_deg=LESS_TILT, sign=-1.0)


def rotation_skids_longer():
    """Fifteen degrees more rotation: feet by which it rolls later."""
    return _same_line(rolls_at_ft, SEEN_FT, rotation_deg=MORE_ROTATION)


def rotation_sharper_corner():
    """Fifteen degrees more rotation: degrees more within the ten feet where it turns most."""
    return _same_line(corner_deg, SEEN_DEG, rotation_deg=MORE_ROTATION)


def rotation_turns_late():
    """Fifteen degrees more rotation: points more of the turn after the oil."""
    return _turns_late(rotation_deg=MORE_ROTATION)

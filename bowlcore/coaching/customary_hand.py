"""What coaches customarily do with the hand as a lane changes, and what this model makes of it.

Common practice, no source; the numbers behind "less" and "least" are ours. Both hands are re-aimed in the
same way before they are compared, and nothing here asks a bowler to throw them.
"""

from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

from bowlcore.coaching import words
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.moves import best_line
from bowlcore.coaching.odds import Odds, odds_together
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.release import Release

_HIGH, _LESS, _LEAST, _LESS_ROTATION = 20.0, 7.0, 0.0, 30.0  # degrees
_NO_HAND = "A young or sore hand is left as it is: no change of rotation or tilt is shown, only where to stand and look."


class Custom(NamedTuple):
    """A rule in words, and the rotation and tilt that it is taken to mean [deg]."""

    words: str
    axis_rotation_deg: float
    axis_tilt_deg: float


CUSTOMS = {
    "fresh": Custom("medium to high tilt with 45 degrees of rotation", 45.0, _HIGH),
    "drying": Custom("reduce rotation and tilt", _LESS_ROTATION, _LESS),
    "carrydown": Custom("less tilt, keep 45 degrees of rotation", 45.0, _LESS),
    "wet-dry": Custom("least tilt, keep 45 degrees of rotation", 45.0, _LEAST),
}


# the shipped shape that stands for each state; tests read the state from its oil against the house shape
SHAPES = {"fresh": "house", "drying": "dried_out", "carrydown": "carried_down", "wet-dry": "wet_dry"}
TIE = 0.10  # share of balls in the pocket under which two hands are alike


class Compared(NamedTuple):
    """Odds on one lane: the bowler's own hand and the customary one, where they are and each on its best line.

    own_line, custom_line : Release on those best lines
    """

    own_here: Odds
    custom_here: Odds
    own: Odds
    custom: Odds
    own_line: Release
    custom_line: Release


def compare_hands(bowler, surface, state) -> Compared:
    """The own and the customary hand for a state of the lane.

    Parameters
    ----------
    bowler : Bowler
        On the present line; its best line is looked for within can_change.
    surface : as for `simulate`
    state : "fresh", "drying", "carrydown" or "wet-dry"

    Raises
    ------
    ValueError
        For another state.
    """
    if state not in CUSTOMS:
        raise ValueError(f"state must be one of {', '.join(CUSTOMS)}, got {str(state)[:40]!r}")
    custom = CUSTOMS[state]
    hand = replace(
        bowler.release, axis_rotation_deg=custom.axis_rotation_deg, axis_tilt_deg=custom.axis_tilt_deg
    )
    here = [bowler, replace(bowler, release=hand)]
    there = [best_line(one, surface, worth=0.0) for one in here]
    odds = odds_together([(one, surface) for one in (*here, *there)])
    return Compared(*odds, there[0].release, there[1].release)


class HandAnswer(NamedTuple):
    """Comparison for each state, whether another hand is offered at all, the sentence and the table."""

    compared: dict
    hand_offered: bool
    sentence: str
    rows: list


@lru_cache(maxsize=16)
def answer(name) -> HandAnswer:
    """A demo bowler's own and customary hand on the four shipped shapes.

    Nobody young or sore is asked to change the hand: only the own hand is then told.
    """
    bowlers = load_bowlers()
    if name not in bowlers:
        raise ValueError(f"bowler must be one of {', '.join(bowlers)}, got {str(name)[:40]!r}")
    bowler = bowlers[name]
    compared = {state: compare_hands(bowler, lane_of(shape), state) for state, shape in SHAPES.items()}
    offered = not bowler.young_or_sore
    rows = [_row(state, found, offered) for state, found in compared.items()]
    return HandAnswer(compared, offered, _sentence(compared) if offered else _NO_HAND, rows)


def _row(state, found, offered):
    row = {
        "the lane": state,
        "own hand, first line": words.percent(found.own_here.pocket),
        "own hand, re-aimed": words.percent(found.own.pocket),
    }
    if offered:
        custom = CUSTOMS[state]
        row |= {
            "customary": f"{custom.words} (here {custom.axis_rotation_deg:.0f}, tilt {custom.axis_tilt_deg:.0f})",
            "customary hand, first line": words.percent(found.custom_here.pocket),
            "customary hand, re-aimed": words.percent(found.custom.pocket),
            "re-aimed, the customary hand": verdict(found),
        }
    return row


def verdict(found: Compared) -> str:
    """ "gains", "loses" or "a tie" in the pocket, both hands re-aimed."""
    gain = found.custom.pocket - found.own.pocket
    return "a tie" if abs(gain) < TIE else "gains" if gain > 0 else "loses"


def _sentence(compared):
    dry = compared["drying"]
    told = (
        f"Dried out, nothing moved: {_hundred(dry.own_here)} of 100 balls find the pocket with the own hand, "
        f"{_hundred(dry.custom_here)} with the customary one. Feet moved as well: {_hundred(dry.own)} and "
        f"{_hundred(dry.custom)}."
    )
    others = {state: verdict(found) for state, found in compared.items() if state != "drying"}
    alike = [state for state, said in others.items() if said == "a tie"]
    if alike:
        told += f" Both re-aimed, a tie (under ten balls) on: {', '.join(alike)}."
    for state, said in others.items():
        if said != "a tie":
            told += f" On {state} the customary hand {said}."
    return told


def _hundred(odds):
    return f"{100 * odds.pocket:.0f}"

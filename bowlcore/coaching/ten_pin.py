"""The corner pin on the own side (a right-hander's 10) by ball and release: which is made most often?

Each release gets its own aim first: feet fixed, target found, so that the ball comes into the middle of
the window. Then it is thrown with the bowler's scatter, on that lane and, on the same line, on another.
"""

from dataclasses import dataclass, replace

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.spare_windows import own_pin
from bowlcore.coaching.spares import (
    BALLS,
    PLAIN_BALL,
    STRIKE_BALL,
    ball_for,
    chances_of,
    lines_to_middle,
)
from bowlcore.motion.checks import number_in
from bowlcore.rack.leave import Leave

TILTS_DEG = np.arange(0.0, 30.1, 5.0)
TIE = 0.05  # shares closer than this are called a tie
_SHOTS = 128


@dataclass(frozen=True)
class TenPin:
    """Keys are (ball, rotation_deg); NaN where no line reaches the middle of the window.

    made : share made over `TILTS_DEG`, on the lane that was aimed for
    usual, elsewhere : share at the bowler's own tilt there, and on the same line on the other lane
    """

    made: dict
    usual: dict
    elsewhere: dict
    tilt_deg: float
    sentence: str
    rows: list


def answer(bowler, surface, other, laydown_board=25.0, low_rotation_deg=10.0) -> TenPin:
    """Plain ball or strike ball, usual or low rotation, tilt 0 to 30.

    Parameters
    ----------
    bowler : Bowler
    surface, other : as for `simulate`
        Aimed on the first; the same lines are thrown on the second too.
    laydown_board : float
        Where the ball is laid down, across the lane: 15 to 36.
    low_rotation_deg : float
        The rotation compared with the usual one, 0 to 45. For a child or a sore wrist it is left out:
        no change of the hand is tried.

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """
    number_in("laydown_board", laydown_board, 15, 36, "boards")
    number_in("low_rotation_deg", low_rotation_deg, 0, 45, "degrees")
    pin = own_pin(10, bowler.release.hand)
    rotations, tilts = [bowler.release.axis_rotation_deg], [bowler.release.axis_tilt_deg]
    if not bowler.young_or_sore:
        tilts = [*tilts, *TILTS_DEG]
        if abs(low_rotation_deg - rotations[0]) >= 1:
            rotations.append(low_rotation_deg)
    made, usual, elsewhere = {}, {}, {}
    shares = _made(bowler, (surface, other), pin, laydown_board, rotations, tilts)
    for kind, here, there in zip(BALLS, *shares, strict=True):
        for rotation, row, away in zip(rotations, here, there, strict=True):
            made[kind, rotation], usual[kind, rotation] = row[1:], float(row[0])
            elsewhere[kind, rotation] = float(away[0])
    told = _sentence(bowler, pin, made, usual, elsewhere, rotations)
    return TenPin(made, usual, elsewhere, tilts[0], told, _rows(made, usual, elsewhere, rotations[0]))


def _made(bowler, surfaces, pin, laydown, rotations, tilts):
    """Shares made: array (lane, ball as in BALLS, rotation, tilt). All are followed together."""
    stand = replace(bowler.release, laydown_board=float(laydown))
    releases = [
        replace(stand, axis_rotation_deg=float(rotation), axis_tilt_deg=float(tilt))
        for rotation in rotations
        for tilt in tilts
    ]
    balls = [ball for ball in (ball_for(bowler, name) for name in BALLS) for _ in releases]
    releases, leave = releases * len(BALLS), Leave.of(pin)
    lines = lines_to_middle(releases, [leave] * len(releases), surfaces[0], balls, keep="feet")
    there = [i for i, line in enumerate(lines) if line is not None]
    shares = np.full((2, len(releases)), np.nan)
    if there:
        bowlers = [replace(bowler, release=lines[i]) for i in there] * 2
        lanes = [lane for lane in surfaces for _ in there]
        found = chances_of(bowlers, lanes, [leave] * len(bowlers), [balls[i] for i in there] * 2, _SHOTS)
        shares[:, there] = np.reshape([one.front for one in found], (2, -1))
    return shares.reshape(2, len(BALLS), len(rotations), len(tilts))


def _rows(made, usual, elsewhere, now):
    return [
        {
            "ball": kind,
            "rotation": f"{words.degrees(rotation)} ({'usual' if rotation == now else 'tried'})",
            "usual tilt": _share(usual[kind, rotation]),
            "same line, on the other lane": _share(elsewhere[kind, rotation]),
        }
        | {f"tilt {tilt:.0f}": _share(share) for tilt, share in zip(TILTS_DEG, row, strict=False)}
        for (kind, rotation), row in made.items()
    ]


def _share(value):
    return words.percent(value) if value == value else "no line to it"


def _sentence(bowler, pin, made, usual, elsewhere, rotations):
    now = rotations[0]
    plain, strike = usual[PLAIN_BALL, now], usual[STRIKE_BALL, now]
    told = [
        f"The {pin}-pin with the usual hand: plain ball {_share(plain)}, strike ball {_share(strike)}"
        f"{_which(plain, strike, 'the plain ball', 'the strike ball')}."
    ]
    if len(rotations) > 1:
        low = rotations[1]
        told.append(
            f"With {words.degrees(low)} of rotation instead of {words.halves(now)}: plain ball "
            f"{_share(usual[PLAIN_BALL, low])}, strike ball {_share(usual[STRIKE_BALL, low])}."
        )
        told.append(
            f"On the same line, if the lane is really the other one: plain ball {_share(elsewhere[PLAIN_BALL, now])} with the "
            f"usual rotation, {_share(elsewhere[PLAIN_BALL, low])} with the low one."
        )
    if bowler.young_or_sore:
        told.append("No change of the hand is tried for a child or a sore wrist.")
    else:
        told.append(
            f"Tilt: {_tilt(made[PLAIN_BALL, now], 'plain ball')}; "
            f"{_tilt(made[STRIKE_BALL, now], 'strike ball')}."
        )
    return " ".join(told)


def _which(one, other, first, second):
    if one != one and other != other:
        return ""
    one, other = (value if value == value else 0.0 for value in (one, other))
    if abs(one - other) < TIE:
        return " (a tie)"
    return f": {first if one > other else second} is better"


def _tilt(row, name):
    low, high = row[0], row[-1]
    if low != low and high != high:
        return f"{name} no line to it, whatever the tilt"
    said = f"{name} {_share(low)} with none, {_share(high)} with {TILTS_DEG[-1]:.0f} degrees"
    return said + (" (a tie)" if abs(high - low) < TIE else "")

"""Which axis rotation is best? It depends on what is asked: four questions, three bowlers, one lane."""

from dataclasses import replace

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.lines import lines_to_pocket
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.ball import Ball
from bowlcore.motion.closed_form import best_rotation_deg
from bowlcore.motion.many import simulate_many
from bowlcore.motion.release import Release
from bowlcore.motion.units import MPH_MPS, RPM_RADS

# Ordinary lines on an ordinary house lane (common practice, no source).
BOWLERS = {
    "lower revs": Release(15, 200, 35, 15, 12, 10),
    "medium revs": Release(17, 300, 45, 13, 17, 13),
    "high revs": Release(18, 450, 45, 10, 27, 18.5),
}
_ROTATIONS = np.arange(0.0, 90.1, 5.0)


def rows(metric=False, hand="right") -> list[dict]:
    """One row a bowler: the rotation [deg, to 5] that is largest in each sense, on the house shape."""
    lane, ball, table = lane_of("house"), Ball(), []
    for name, usual in BOWLERS.items():
        usual = replace(usual, hand=hand)
        spin_mps = ball.radius_m * usual.rev_rate_rpm * RPM_RADS * np.cos(np.radians(usual.axis_tilt_deg))
        pushed = best_rotation_deg(usual.speed_mph * MPH_MPS, spin_mps)
        releases = [replace(usual, axis_rotation_deg=float(rotation)) for rotation in _ROTATIONS]
        shots = simulate_many(releases, lane, ball)
        aimed = [lines_to_pocket(release, lane, ball).entry_angle_deg for release in releases]
        steepest = np.array([angles.max() if len(angles) else np.nan for angles in aimed])
        table.append(
            {
                "bowler": f"{name}: {words.speed(usual.speed_mph, metric)}, {words.revs(usual.rev_rate_rpm)}",
                "most push sideways while it skids": f"{5 * round(float(pushed) / 5)}°",
                "comes in highest, same line": _best(shots["entry_board"].to_numpy()),
                "comes in steepest, same line": _best(shots["entry_angle_deg"].to_numpy()),
                "comes in steepest, re-aimed": _best(steepest),
            }
        )
    return table


def _best(values):
    rotation = _ROTATIONS[int(np.nanargmax(values))]
    return f"{rotation:.0f}°" + (" (the most tried)" if rotation == _ROTATIONS[-1] else "")

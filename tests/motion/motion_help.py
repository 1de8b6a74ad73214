"""What several motion tests share: reference tables, releases at random, a path taken apart again."""

from math import sqrt
from pathlib import Path

import numpy as np

from bowlcore.motion import units
from bowlcore.motion.ball import Ball
from bowlcore.motion.data_file import read_table
from bowlcore.motion.release import Release

DATA = Path(__file__).parents[1] / "data"


def rows(name, text_columns=()):
    """The rows of a reference table as dicts; its header is checked like that of any data file."""
    return read_table(DATA / f"{name}.csv", text_columns)[0].to_dict("records")


def ball_with(inertia_factor):
    """A ball of the default size with this inertia factor."""
    return Ball(rg_in=sqrt(inertia_factor) * Ball().diameter_in / 2)


def everyday_lines():
    """Release for each row of the table of everyday lines."""
    names = (
        "speed_mph",
        "rev_rate_rpm",
        "axis_rotation_deg",
        "axis_tilt_deg",
        "laydown_board",
        "target_board",
    )
    return [Release(*(row[name] for name in names)) for row in rows("everyday_lines")]


def random_releases(count, seed, **fixed):
    """Ordinary releases, a little wide on purpose, that mostly stay on the lane."""
    rng = np.random.default_rng(seed)
    made = []
    for _ in range(count):
        values = {
            "speed_mph": rng.uniform(12, 21),
            "rev_rate_rpm": rng.uniform(50, 550),
            "axis_rotation_deg": rng.uniform(0, 90),
            "axis_tilt_deg": rng.uniform(-10, 40),
            "laydown_board": rng.uniform(12, 28),
        }
        values["target_board"] = values["laydown_board"] - rng.uniform(0, 6)
        made.append(Release(**(values | fixed)))
    return made


def vectors(path, ball):
    """Velocity, roll velocity (arrays n x 2) and upright spin (n) along a path, from its public arrays."""
    heading, spin = np.radians(path.heading_deg), path.rev_rate_rpm * units.RPM_RADS
    tilt, along = np.radians(path.axis_tilt_deg), heading + np.radians(path.axis_rotation_deg)
    speed, roll = path.speed_mph * units.MPH_MPS, ball.radius_m * spin * np.cos(tilt)
    v = speed[:, None] * np.c_[np.cos(heading), np.sin(heading)]
    w = roll[:, None] * np.c_[np.cos(along), np.sin(along)]
    return v, w, spin * np.sin(tilt)

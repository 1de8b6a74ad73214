"""Textbook problems through the pencil formulas and through the integrator: any g, any size, any inertia.

Each row of data/textbook_slides.csv carries its own source.
"""

import numpy as np
import pytest
from motion_help import rows

from bowlcore.motion import closed_form
from bowlcore.motion.slide import slide, start

PROBLEMS = rows("textbook_slides", ("problem", "source", "length_unit"))
each_problem = pytest.mark.parametrize("p", PROBLEMS, ids=[p["problem"] for p in PROBLEMS])


@pytest.mark.claim(
    "The pencil formulas give the answers of textbook problems of a ball that slides until it rolls",
    against=(
        "Beer & Johnston, Halliday, Resnick & Walker, and exercises; read second-hand or from memory, some "
        "outputs our own: each row of tests/data/textbook_slides.csv says which"
    ),
    kind="published",
)
@each_problem
def test_pencil_formulas_give_the_printed_answer(p, figure):
    v, w = (p["speed"], 0.0), (p["radius"] * p["spin"], 0.0)
    end = closed_form.roll_out(v, w, p["friction"], p["inertia_factor"], p["gravity"])
    pairs = ((end.time_s, "time_s"), (end.velocity_mps[0], "end_speed"), (end.displacement_m[0], "distance"))
    off = max(abs(got / p[name] - 1) for got, name in pairs)
    figure("off by", off / p["rounding"], "of the rounding of the printed answer", asked="1")
    assert end.time_s == pytest.approx(p["time_s"], rel=p["rounding"])
    assert end.velocity_mps[0] == pytest.approx(p["end_speed"], rel=p["rounding"])
    assert end.displacement_m[0] == pytest.approx(p["distance"], rel=p["rounding"])


@pytest.mark.claim(
    "The program that follows the ball step by step gives the same textbook answers",
    against=(
        "Beer & Johnston, Halliday, Resnick & Walker, and exercises; read second-hand or from memory, some "
        "outputs our own: each row of tests/data/textbook_slides.csv says which"
    ),
    kind="published",
)
@each_problem
def test_integrator_gives_the_printed_answer(p, figure):
    motion = start(p["speed"], 0.0, p["radius"] * p["spin"], 0.0, p["inertia_factor"])
    nodes = np.linspace(0.0, 1.3 * p["distance"], 41).tolist()
    track = slide([lambda x, y, slip: p["friction"]] * 40, motion, nodes, 0.0, p["gravity"])
    time = track.t[-1] - (nodes[-1] - track.roll_x) / motion.roll_x
    pairs = ((time, "time_s"), (motion.roll_x, "end_speed"), (track.roll_x, "distance"))
    off = max(abs(got / p[name] - 1) for got, name in pairs)
    figure("off by", off / p["rounding"], "of the rounding of the printed answer", asked="1")
    assert track.roll_x == pytest.approx(p["distance"], rel=p["rounding"])
    assert time == pytest.approx(p["time_s"], rel=p["rounding"])
    assert motion.roll_x == pytest.approx(p["end_speed"], rel=p["rounding"])


@each_problem
def test_integrator_and_pencil_agree_far_below_the_rounding(p):
    v, w = (p["speed"], 0.0), (p["radius"] * p["spin"], 0.0)
    end = closed_form.roll_out(v, w, p["friction"], p["inertia_factor"], p["gravity"])
    motion = start(*v, *w, p["inertia_factor"])
    nodes = np.linspace(0.0, 1.3 * p["distance"], 41).tolist()
    track = slide([lambda x, y, slip: p["friction"]] * 40, motion, nodes, 0.0, p["gravity"])
    assert track.roll_x == pytest.approx(end.displacement_m[0], rel=1e-6)


def test_slowing_and_spinning_up_of_a_ball_thrown_without_spin():
    # Halliday, Resnick & Walker, chapter 11: -2.06 m/s2 and 46.8 rad/s2 (from memory)
    radius, beta, push, step = 0.11, 0.4, 0.21 * 9.8, 1e-3
    nodes = [0.0, 8.5 * step]
    motion = start(8.5, 0.0, 0.0, 0.0, beta)
    track = slide([lambda x, y, slip: 0.21], motion, nodes, 0.0, 9.8)
    speed = motion.roll_x + motion.along_x * track.slip[1]
    roll = speed - track.slip[1]
    assert (8.5 - speed) / track.t[1] == pytest.approx(2.06, abs=0.005)
    assert roll / radius / track.t[1] == pytest.approx(46.8, abs=0.05)
    assert push == pytest.approx(2.058)


def test_a_uniform_sphere_keeps_five_sevenths_of_its_speed():
    # the billiard-ball result, common in textbooks; two fifths is a uniform sphere's inertia factor
    assert closed_form.final_velocity((7.0, 0.0), (0.0, 0.0), 0.4)[0] == pytest.approx(5.0, abs=1e-12)

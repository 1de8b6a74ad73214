"""One number, the friction impulse, fixes speed, heading, rotation, tilt and rev rate together.

Source of the printed values: our own calculation (closed form and rigid-body integration agree); the
definition is angular momentum about a point of the lane.
"""

import numpy as np
import pytest
from motion_help import rows

from bowlcore.motion import closed_form, units

V2 = {"speed": 8.04672, "rpm": 350, "rotation": 45, "tilt": 15, "b": 0.356218, "radius": 0.108522}
V3 = {"speed": 8.9408, "rpm": 500, "rotation": 60, "tilt": 10, "b": 0.336930, "radius": 0.108522}


def after(d, impulse):
    """Speed [m/s], heading, rotation to heading, tilt [deg] and rev rate [rpm] after an impulse."""
    spin, turn, tilt = d["rpm"] * units.RPM_RADS, np.radians(d["rotation"]), np.radians(d["tilt"])
    roll = d["radius"] * spin * np.cos(tilt)
    v, w = closed_form.after_impulse(
        (d["speed"], 0.0), (roll * np.cos(turn), roll * np.sin(turn)), impulse, d["b"]
    )
    heading, along = (np.degrees(np.arctan2(part[1], part[0])) for part in (v, w))
    upright, rolls = spin * np.sin(tilt), np.hypot(*w)
    revs = np.hypot(rolls / d["radius"], upright) / units.RPM_RADS
    return np.hypot(*v), heading, along - heading, np.degrees(np.arctan2(d["radius"] * upright, rolls)), revs


def test_v2_at_the_end_of_its_oil():
    # friction 0.040 for 1.5686 s: 40 ft out
    speed, heading, rotation, tilt, revs = after(V2, 0.040 * units.G_MPS2 * 1.5686)
    assert speed == pytest.approx(7.5037, abs=1e-4)
    assert heading == pytest.approx(2.134, abs=1e-3)
    assert rotation == pytest.approx(22.29, abs=0.006) and tilt == pytest.approx(12.42, abs=0.006)
    assert revs == pytest.approx(421.1, abs=0.06)


def test_v3_stands_up_first_a_trap_for_models_that_force_the_roll():
    # friction 0.030 for 1.4593 s: tilt above and revs below their release values, since w > v cos(rotation)
    *_, tilt, revs = after(V3, 0.030 * units.G_MPS2 * 1.4593)
    assert tilt == pytest.approx(10.07, abs=0.006) and revs == pytest.approx(496.7, abs=0.06)


@pytest.mark.parametrize("d", rows("nine_deliveries", ("id", "roll_m")), ids=lambda d: d["id"])
def test_at_the_whole_impulse_both_velocities_are_the_final_one(d):
    roll = 0.108522 * d["rev_rate_rpm"] * units.RPM_RADS * np.cos(np.radians(d["tilt_deg"]))
    turn = np.radians(d["rotation_deg"])
    hand = (d["speed_mps"], 0.0), (roll * np.cos(turn), roll * np.sin(turn))
    whole = closed_form.friction_impulse_to_roll(*hand, d["inertia_factor"])
    v, w = closed_form.after_impulse(*hand, np.array([0.0, whole]), d["inertia_factor"])
    assert v[0] == pytest.approx(hand[0]) and w[0] == pytest.approx(hand[1])
    assert v[1] == pytest.approx(closed_form.final_velocity(*hand, d["inertia_factor"]), abs=1e-12)
    assert w[1] == pytest.approx(v[1], abs=1e-12)


def test_a_ball_that_rolls_already_takes_no_push():
    v, w = closed_form.after_impulse((5.0, 0.0), (5.0, 0.0), 0.3, 0.4)
    assert v.tolist() == w.tolist() == [5.0, 0.0]


def test_the_sideways_share_is_the_sine_between_slip_and_travel():
    share = closed_form.sideways_share(8.0, 4.0, np.array([0.0, 60.0, 90.0]))
    slip = [np.array([8.0 - 4.0 * np.cos(t), -4.0 * np.sin(t)]) for t in np.radians([0, 60, 90])]
    assert share == pytest.approx([abs(s[1]) / np.hypot(*s) for s in slip])
    assert share[1] == pytest.approx(0.5)  # its largest: spin speed / ball speed, at arccos of it

"""What the panels of lessons 01 and 09 answer: the hand as seen, the hands on the ball, doubt at the pins, the demo clip."""

from dataclasses import replace

import numpy as np
import pytest

from bowlcore import Release, load_bowlers, simulate
from bowlcore.coaching import demo_clip, hand_numbers, hand_technique, release_doubt
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.release_doubt import Reading

EVERYDAY = Release(17, 300, 45, 13, 17, 13)
BALLS = [Reading(2.50, 72, 1.5, 11.5), Reading(2.54, 70, 1.25, 11.75), Reading(2.47, 75, 1.75, 11.375)]


# our own calculation: horizontal spin speed in m/s at 18 mph (8.0467 m/s), 350 rpm
@pytest.mark.parametrize("tilt, spin_mps", [(0, 3.978), (10, 3.917), (20, 3.738), (30, 3.445), (40, 3.047)])
def test_spin_over_speed(tilt, spin_mps):
    assert hand_numbers.spin_ratio(Release(18, 350, 45, tilt, 17, 13)) == pytest.approx(
        spin_mps / 8.0467, rel=1e-3
    )


def test_most_push_at_61_degrees_for_18_mph_and_350_rpm():  # our own calculation
    rows = hand_numbers.answer(Release(18, 350, 45, 13, 17, 13)).rows
    assert float(rows[0]["most sideways push while it skids at"].split(" ")[0]) == pytest.approx(61, abs=0.5)


@pytest.mark.parametrize("rotation, tilt", [(0, 0), (45, 13), (90, 30), (-20, 5)])
def test_the_ring_is_90_plus_tilt_from_the_axis_and_touches_the_lane(rotation, tilt):
    told = hand_numbers.answer(replace(EVERYDAY, axis_rotation_deg=rotation, axis_tilt_deg=tilt))
    for seen in (told.behind, told.above):
        assert np.degrees(np.arccos(seen.ring @ seen.axis[1])) == pytest.approx(90 + tilt)
    assert told.behind.ring[:, 1].min() == pytest.approx(-1, abs=1e-6)


def test_the_clock_from_above():
    # section 4 of the trade sheet: to the side (west, 9 o'clock) 0, facing the bowler (6 o'clock) 90
    for rotation, place in ((0, (-1, 0)), (90, (0, -1))):
        seen = hand_numbers.answer(replace(EVERYDAY, axis_rotation_deg=rotation, axis_tilt_deg=0)).above
        assert seen.axis[1][:2] == pytest.approx(place)
        left = hand_numbers.answer(
            replace(EVERYDAY, axis_rotation_deg=rotation, axis_tilt_deg=0, hand="left")
        ).above
        assert left.axis[1][:2] == pytest.approx((-place[0], place[1]))


def test_turning_the_ball_moves_the_second_strip_only():
    start, half, whole = (hand_numbers.answer(EVERYDAY, turned) for turned in (0, 180, 360))
    assert half.behind.axis == pytest.approx(start.behind.axis)
    assert whole.behind.tape == pytest.approx(start.behind.tape)
    assert np.abs(half.behind.tape - start.behind.tape).max() > 0.5


def test_kinds_of_the_demo_bowlers():
    kinds = {
        name: hand_numbers.kind_of(hand_numbers.spin_ratio(one.release))
        for name, one in load_bowlers().items()
    }
    assert kinds["league one-hander"] == "matched" and kinds["high-rev two-hander"] == "rev-dominant"
    assert kinds["child of eight"] == kinds["low-rev senior"] == "speed-dominant"


def test_no_revs_and_no_number():
    told = hand_numbers.answer(replace(EVERYDAY, rev_rate_rpm=0))
    assert "Without revs nothing turns." in told.sentence and told.ratio == 0


@pytest.mark.parametrize("name, number, more", [
    ("hand follows through round the side", "axis_rotation_deg", True),
    ("hand stays behind the ball", "axis_rotation_deg", False),
    ("hand inside, support hand outside", "axis_tilt_deg", True),
    ("neutral hand, support hand centred", "axis_tilt_deg", False),
])  # fmt: skip
@pytest.mark.parametrize("style", hand_technique.STYLES)
def test_what_the_hands_are_said_to_do(name, number, more, style):  # common practice, no source
    told = hand_technique.answer(name, style, 10)
    assert (told.technique.number, told.technique.way > 0) == (number, more)
    assert "Common practice says" in told.sentence and told.sentence.startswith(style.capitalize())
    moved = told.after.behind.axis[1] - told.before.behind.axis[1]
    assert np.linalg.norm(moved) > 0.1


def test_unknown_techniques_are_refused():
    with pytest.raises(ValueError, match="technique must be one of"):
        hand_technique.answer("twist", "one-handed")
    with pytest.raises(ValueError, match="style must be one of one-handed, two-handed, got 'no hands'"):
        hand_technique.answer("hand stays behind the ball", "no hands")


def test_doubt_at_the_pins_is_what_simulate_says():
    told = release_doubt.answer(BALLS)
    lane = lane_of("house")
    up, down = (
        simulate(replace(told.release, axis_rotation_deg=told.release.axis_rotation_deg + d), lane)
        for d in (5, -5)
    )
    assert told.by_eye[0] == pytest.approx(abs(up.entry_board - down.entry_board) / 2, abs=1e-6)
    assert told.by_eye[1] == pytest.approx(abs(up.entry_angle_deg - down.entry_angle_deg) / 2, abs=1e-6)


def test_doubts_add_up_as_independent_errors_do():
    told = release_doubt.answer(BALLS)
    squares = sum(boards**2 for boards in told.boards_all.values())  # textbook: root of the sum of squares
    assert told.together == pytest.approx(np.sqrt(squares), rel=0.15)


def test_the_means_are_those_of_the_three_balls():
    told = release_doubt.answer(BALLS)
    # 60 x 3 x 120 / frames; 30 degrees an hour; 90 (1 - W/13.5): section 4
    assert told.release.rev_rate_rpm == pytest.approx(np.mean([21600 / f for f in (72, 70, 75)]))
    assert told.release.axis_rotation_deg == pytest.approx(45)
    assert told.release.axis_tilt_deg == pytest.approx(
        np.mean([90 * (1 - w / 13.5) for w in (11.5, 11.75, 11.375)])
    )
    assert told.rows[2]["balls needed"].startswith("about") and len(told.rows) == 4


def test_a_stop_watch_is_worse_than_a_clip_and_a_left_hander_reads_the_same():
    clip, watch = (release_doubt.answer(BALLS, timed=timed) for timed in ("clip", "stop-watch"))
    assert watch.boards_one["speed_mph"] > 3 * clip.boards_one["speed_mph"]
    assert release_doubt.answer(BALLS, hand="left").sentence == clip.sentence


def test_a_line_into_the_gutter_says_so():
    backing_up = [replace(ball, tape_hours=-0.5) for ball in BALLS]
    assert (
        "goes into the gutter" in release_doubt.answer(backing_up, laydown_board=3, target_board=1).sentence
    )


def test_bad_readings_are_one_sentence():
    with pytest.raises(ValueError, match="timed must be one of clip, stop-watch, got 'guess'"):
        release_doubt.answer(BALLS, timed="guess")
    with pytest.raises(ValueError, match="width_in must be a number between"):
        release_doubt.answer([replace(BALLS[0], width_in=0)])


def test_the_demo_clip_is_told_with_its_truth():
    told = demo_clip.answer()
    assert told.fitted is not None and len(told.rows) == 3 and "12 frames clicked." in told.sentence
    few = demo_clip.answer(count=5)
    assert few.fitted is None and few.sentence.startswith("The frames cannot tell: 5 frames are clicked")
    assert few.rows[0]["from the clicks"] == "cannot tell"


def test_careless_clicks_widen_the_demo_s_limits():
    careful, careless = (demo_clip.answer(noise_px=px).fitted.tilt for px in (1.0, 5.0))
    assert careless.high - careless.low > 2 * (careful.high - careful.low)

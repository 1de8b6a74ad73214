"""By-eye measurements against figures worked out by hand, our own geometry."""

from dataclasses import replace

import numpy as np
import pytest

from bowlcore import OiledLane, Release, ZonedLane, load_pattern, pattern_names, simulate
from bowlcore.coaching import measuring as m
from bowlcore.coaching.spin_axis import axis_point, turning

EVERYDAY = Release(17, 300, 45, 13, 17, 13)
HOUSE = OiledLane(load_pattern("house"))
KMH = 1.609344  # km/h in one mph


@pytest.mark.claim(
    "The mean speed from a stop-watch is 60 ft over the time",
    against="figures worked out on paper, our own",
    kind="exact",
)
@pytest.mark.parametrize("time_s, mph, kmh", [(2.0, 20.45, 32.92), (2.4, 17.05, 27.43)])
def test_mean_speed_from_a_time(time_s, mph, kmh, figure):
    found = m.mean_speed(time_s)
    figure("off by", abs(found.value - mph), "mph", asked="0.01")
    assert found.value == pytest.approx(mph, abs=0.01) and found.value * KMH == pytest.approx(kmh, abs=0.01)


@pytest.mark.parametrize("time_s, mph", [(2.0, 0.34), (2.4, 0.24)])  # section 4: one frame at 30 a second
def test_one_frame_at_30_a_second(time_s, mph):
    assert m.mean_speed_from_frames(time_s * 30, 30).error == pytest.approx(mph, abs=0.005)


def test_a_stop_watch_is_good_to_about_0_8_mph():  # section 4: 0.1 s
    assert m.mean_speed(2.2).error == pytest.approx(0.8, abs=0.1)


def test_clock_reading_of_19_hours():  # check 21: Tauno 2006; the source prints 238
    assert m.rev_rate_from_clock(19, 10, 25).value == pytest.approx(237.5, abs=0.5)


@pytest.mark.parametrize(
    "frames_per_s, each", [(25, 12.5), (30, 15)]
)  # section 4: rpm for an hour in 10 frames
def test_an_hour_in_ten_frames(frames_per_s, each):
    found = m.rev_rate_from_clock(20, 10, frames_per_s)
    assert found.value == pytest.approx(20 * each) and found.error == pytest.approx(each / 2)


def test_a_clock_seen_askew_is_a_third_of_an_hour_out_at_most():
    # our own geometry, by turning a tape about an axis 45 degrees off the line of sight
    hour = np.radians(np.arange(0, 360, 1.0))
    tape = turning(hour[:, None] * axis_point(45.0, 0.0)) @ [0.0, 0.0, 1.0]
    seen = np.unwrap(
        np.arctan2(-tape[:, 1] / np.cos(np.pi / 4), tape[:, 2])
    )  # stretched back: what it would be
    raw = np.unwrap(np.arctan2(-tape[:, 1], tape[:, 2]))
    assert np.abs(np.abs(seen) - hour).max() < 1e-6
    assert np.degrees(np.abs(np.abs(raw) - hour).max()) / 30 == pytest.approx(1 / 3, abs=0.02)


@pytest.mark.parametrize("frames_per_s, frames, percent", [(30, 5.14, 14), (60, 10.3, 7), (240, 41.1, 1.7)])
def test_one_turn_at_350_rpm(frames_per_s, frames, percent):  # section 4
    found = m.rev_rate_from_turns(1, frames, frames_per_s)
    assert found.value == pytest.approx(350, rel=0.01)
    assert 100 * found.error / found.value == pytest.approx(percent, rel=0.03)
    three = m.rev_rate_from_turns(3, 3 * frames, frames_per_s)
    assert three.error / three.value == pytest.approx(found.error / found.value / 3)


RIGHT = [("9:00", "right", 0), ("7:30", "right", 45), (6, "right", 90)]
LEFT = [(3, "left", 0), (4.5, "left", 45), (6, "left", 90)]


@pytest.mark.parametrize("clock, hand, deg", RIGHT + LEFT)
def test_tape_as_a_clock_seen_from_above(
    clock, hand, deg
):  # section 4: to the side (west) 0, facing the bowler 90
    found = m.rotation_from_tape(clock, hand)
    assert found.value == pytest.approx(deg) and found.error == 5  # section 4: by eye, common practice


@pytest.mark.parametrize("deg", [0, 30, 45, 90])
def test_the_clock_agrees_with_the_axis(deg):
    ahead, inwards, _ = axis_point(deg, 20.0)
    hours = (np.degrees(np.arctan2(-inwards, ahead)) / 30) % 12  # clockwise from the pins
    assert m.rotation_from_tape(float(hours)).value == pytest.approx(deg)


@pytest.mark.parametrize(
    "clock, deg", [("11:00", 30), ("10:30", 45), ("10:00", 60), ("9:00", 90)]
)  # section 4
def test_rotation_in_clock_words(clock, deg):
    found = m.rotation_from_words(clock)
    hours = m.clock_hours(clock)
    assert found.value == deg and found.error == 15 and m.rotation_from_words(12 - hours, "left").value == deg


def test_release_speed_is_the_one_that_takes_this_time():
    time = simulate(EVERYDAY, HOUSE).time_s[-1]
    found = m.release_speed(m.mean_speed(time), replace(EVERYDAY, speed_mph=12), HOUSE)
    assert found.value == pytest.approx(17, abs=0.01)


@pytest.mark.claim(
    "A ball leaves the hand half a mph to one and a half faster than its mean speed down the lane",
    against="the nine deliveries of our own calculation give 1 to 1.5; thick oil less",
    kind="own",
)
def test_release_speed_is_half_a_mph_to_one_and_a_half_over_the_mean(figure):
    # section 4: mean + about 1 to 1.5; on lanes with thick oil the model loses less
    over = {}
    for name in pattern_names():
        mean = m.mean_speed(2.4)
        over[name] = m.release_speed(mean, EVERYDAY, OiledLane(load_pattern(name))).value - mean.value
    zones = ZonedLane([(40, 0.04), (60, 0.2)])  # our own calculation: 18 mph comes in at 14.95, 2.454 s
    over["zones"] = m.release_speed(m.mean_speed(2.454), EVERYDAY, zones).value - m.mean_speed(2.454).value
    figure("most", max(over.values()), "mph", asked="1.6")
    figure("least", min(over.values()), "mph", asked="0.3")
    assert all(0.3 < value < 1.6 for value in over.values()), over
    assert over["zones"] == pytest.approx(18 - 40.91 / 2.454, abs=0.1)


def test_another_lane_matters_less_than_a_stop_watch():
    mean = m.mean_speed(2.4)
    found = [m.release_speed(mean, EVERYDAY, OiledLane(load_pattern(n))) for n in pattern_names()]
    assert max(f.value for f in found) - min(f.value for f in found) < 2 * found[0].error


def test_a_speed_without_friction_is_the_mean():
    found = m.release_speed(m.mean_speed(2.3, 0.05), EVERYDAY, ZonedLane([(60, 0.0)]))
    straight = np.cos(np.radians(EVERYDAY.launch_heading_deg))  # it runs slightly across the lane
    assert found.value * straight == pytest.approx(m.mean_speed(2.3).value, rel=1e-4)
    assert found.error == pytest.approx(m.mean_speed(2.3, 0.05).error / straight, rel=1e-3)


def test_display_and_its_offset():
    offset = m.display_offset([15.0, 16.0, 17.0], [16.5, 17.5, 18.5])
    assert offset.value == pytest.approx(1.5) and offset.error == pytest.approx(0, abs=1e-9)
    assert "add 1.5 mph" in offset.sentence
    found = m.speed_from_display(16, m.display_offset([15, 16, 17, 16], [16, 18, 18, 18]))
    assert found.value == pytest.approx(17.5)
    assert found.error == pytest.approx(np.hypot(0.5, 0.5 / np.sqrt(3)))  # differences 1, 2, 1, 2


def test_sentences_are_no_finer_than_an_eye():
    assert m.rev_rate_from_clock(19, 10, 25).sentence == "Rev rate 240 rpm, give or take 10 rpm."
    assert m.rotation_from_tape("7:30").sentence == "Axis rotation 45 degrees, give or take 5 degrees."
    assert m.mean_speed(2.4, 0.01).sentence.startswith("Ball speed 17 mph, give or take 0.5 mph.")
    assert m.mean_speed(2.4, 0.01, metric=True).sentence.startswith(
        "Ball speed 27 km/h, give or take 1 km/h."
    )


@pytest.mark.parametrize("call, words", [
    (lambda: m.mean_speed(0.5), "time_s must be a number between 1.3 and 15 s, got 0.5"),
    (lambda: m.mean_speed(2.4, float("nan")), "time_error_s must be a number between 0.001 and 1 s, got nan"),
    (lambda: m.mean_speed_from_frames(10, 30), "frames must be a number between 39 and 450 frames, got 10"),
    (lambda: m.mean_speed_from_frames(60, 5), "frames_per_s must be a number between 20 and 1000, got 5"),
    (lambda: m.rev_rate_from_turns(1.5, 10, 30), "turns must be a whole number, got 1.5"),
    (lambda: m.rev_rate_from_turns(3, 4, 30), "0.75 turns in one frame cannot be told"),
    (lambda: m.rev_rate_from_clock(0, 10, 30), "hours must be a number between 0.5 and 240 hours, got 0"),
    (lambda: m.rotation_from_tape("half past"), 'clock must be hours from 0 to 12 or a text such as "7:30"'),
    (lambda: m.rotation_from_tape("7:75"), "minutes must be a number between 0 and 59, got 75"),
    (lambda: m.rotation_from_tape(13), "clock must be a number between 0 and 12 hours, got 13"),
    (lambda: m.rotation_from_tape(9, "both"), 'hand must be "right" or "left", got \'both\''),
    (lambda: m.display_offset([15, 16], [16, 17]), "must hold the same 3 or more balls, got 2 and 2"),
    (lambda: m.display_offset([15, 16, 99], [16, 17, 17]), "display_mph must be a number between 3 and 30 mph, got 99"),
    (lambda: m.release_speed(m.rotation_from_tape(9), EVERYDAY, HOUSE), "mean must be a speed, got axis rotation"),
    (lambda: m.Measured("spin", 1, 1, ""), "name must be one of speed_mph"),
])  # fmt: skip
def test_bad_input_is_one_sentence(call, words):
    with pytest.raises(ValueError) as problem:
        call()
    assert words in str(problem.value) and "\n" not in str(problem.value)

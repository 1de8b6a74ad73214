"""The renderer on its own: what stands still, what comes back, what hides; our own geometry throughout."""

import numpy as np
import pytest

from bowlcore import Release, ZonedLane, simulate
from bowlcore.coaching.clip_render import Clip, Scene, draw_ball
from bowlcore.coaching.spin_axis import axis_point, steady_spin, turned_along, turning, view
from bowlcore.motion.units import RPM_RADS

FREE = ZonedLane([(60, 0.0)])  # without friction the spin never changes


def clip(scene, rotation=45, tilt=13, rpm=300, surface=FREE, **moved):
    release = Release(17, rpm, rotation, tilt, 20, 20, **moved)
    return Clip(simulate(release, surface), scene)


@pytest.mark.parametrize("camera", ["behind", "beside, on the right", "beside, on the left"])
def test_a_mark_on_the_axis_does_not_move(camera):
    still = clip(Scene(frames=30, tape_from_axis_deg=0, camera=camera))
    assert np.ptp(still.tape_seen(), axis=0) == pytest.approx(0, abs=1e-9)


def test_one_turn_brings_the_picture_back():
    shown = clip(Scene(frames=25, frames_per_s=120, radius_px=40))  # 300 rpm: a turn takes 24 frames
    first, last = (draw_ball(shown.scene, shown.turned[i], shown.tape, shown.axis, 13) for i in (0, 24))
    half = draw_ball(shown.scene, shown.turned[12], shown.tape, shown.axis, 13)
    assert np.abs(first.astype(int) - last).max() <= 1 and np.abs(first.astype(int) - half).max() > 50
    assert shown.tape_seen()[24] == pytest.approx(shown.tape_seen()[0], abs=1e-6)


def test_every_mark_keeps_its_distance_from_the_axis():
    shown = clip(Scene(frames=40, tape_from_axis_deg=70), rotation=30, tilt=20)
    seen = shown.tape_seen() @ shown.view
    assert np.degrees(np.arccos(seen @ axis_point(30, 20))) == pytest.approx(70)


def test_top_of_the_ball_goes_to_the_pins_and_a_hooking_ball_turns_away_from_the_own_gutter():
    # end over end: the top moves ahead; full side roll: the top moves in (towards rising boards)
    for rotation, way in ((0, [1, 0, 0]), (90, [0, 1, 0])):
        step = steady_spin(*(np.array([x]) for x in (np.radians(rotation), 0.0, 1.0, 0.0)), np.array([1e-6]))[
            0, 0
        ]
        assert (step @ [0, 0, 1] - [0, 0, 1]) / 1e-6 == pytest.approx(way, abs=1e-5)


def test_tilt_is_spin_about_the_upright():
    step = steady_spin(*(np.array([x]) for x in (0.0, np.pi / 2, 1.0, 0.0)), np.array([0.1]))[0, 0]
    assert step @ [0, 0, 1] == pytest.approx([0, 0, 1]) and (step @ [1, 0, 0])[1] > 0


def test_a_steady_swing_agrees_with_many_small_steps():
    # the closed form against brute force; no other source
    turn, up, spin, swing = 0.7, 0.3, 30.0, -0.3
    at, dt = np.eye(3), 1e-5
    for i in range(20000):
        middle = turn + swing * (i + 0.5) * dt
        at = turning(axis_point(np.degrees(middle), np.degrees(up)) * spin * dt) @ at
    closed = steady_spin(*(np.array([x]) for x in (turn, up, spin, swing)), np.array([0.2]))[0, 0]
    assert closed == pytest.approx(at, abs=1e-5)


def test_small_steps_along_a_path_agree_with_steady_spin():
    path = simulate(Release(17, 300, 45, 13, 20, 20), FREE)
    times = np.array([0.0, 0.1234, 0.5])
    closed = steady_spin(
        *(np.array([x]) for x in (np.radians(45), np.radians(13), 300 * RPM_RADS, 0.0)), times
    )[0]
    assert turned_along(path, 0.0, times) == pytest.approx(closed, abs=1e-9)


def test_a_left_hander_is_the_mirror_in_the_picture():
    right = clip(Scene(frames=20, radius_px=30))
    left = clip(Scene(frames=20, radius_px=30, hand="left"), hand="left")
    assert left.tape_seen() * (-1, 1, 1) == pytest.approx(right.tape_seen())
    from_the_left = clip(Scene(frames=20, camera="beside, on the left", hand="left"), hand="left")
    from_the_right = clip(Scene(frames=20, camera="beside, on the right"))
    assert from_the_left.tape_seen() * (-1, 1, 1) == pytest.approx(from_the_right.tape_seen())


def test_the_tape_is_drawn_where_it_is_and_only_when_in_view():
    shown = clip(Scene(frames=24, radius_px=60))
    height, width = shown.scene.size_px
    for i in (0, 6, 12, 18):
        x, y, near = shown.tape_seen()[i]
        picture = shown.frame(i).astype(int)
        yellow = (picture[..., 0] - picture[..., 2] > 5) & (picture[..., 0] - picture[..., 2] < 40)
        left, top = shown.scene.centre_px(i)
        rows, columns = np.indices((height, width))
        on_ball = (columns - left) ** 2 + (rows - top) ** 2 < (0.95 * 60) ** 2
        found = yellow & on_ball
        if near > 0.3:
            at = columns[found].mean(), rows[found].mean()
            assert at == pytest.approx((left + 60 * x, top - 60 * y), abs=3)
        elif near < -0.3:
            assert not found.any()


def test_the_ring_touches_the_lane():
    # seen from behind as it is let go, the ring passes under the lowest point, whatever the tilt
    for tilt in (0, 20, 40):
        shown = clip(Scene(frames=2, radius_px=60, tape_from_axis_deg=5), tilt=tilt, rotation=60)
        down = view()[1] * -1.0
        assert np.degrees(np.arcsin(down @ shown.axis)) == pytest.approx(-tilt)


def test_blur_smears_the_tape_and_keeps_the_outline():
    frame = int(np.argmax(clip(Scene(frames=24)).tape_seen()[:, 2]))  # where the tape faces the camera
    sharp, blurred = (
        clip(Scene(frames=24, radius_px=40, shutter=s)).frame(frame).astype(int) for s in (0.0, 0.9)
    )
    changed = np.abs(sharp - blurred).max(axis=2) > 20
    assert 20 < changed.sum() < 0.2 * changed.size and sharp.shape == blurred.shape


def test_clicks_without_noise_are_the_truth():
    shown = clip(Scene(frames=30))
    clicks = shown.clicks([0, 3])
    assert clicks.offset_px[1] / 80 == pytest.approx(shown.tape_seen()[3, :2])


@pytest.mark.parametrize("moved, words", [
    ({"radius_px": 2}, "radius_px must be a number between 8 and 300 pixels, got 2"),
    ({"shutter": 1.5}, "shutter must be a number between 0 and 1, got 1.5"),
    ({"camera": "above"}, "camera must be one of behind; beside, on the right; beside, on the left, got 'above'"),
    ({"hand": "both"}, "hand must be"),
    ({"frames": 1}, "frames must be a number between 2 and 2000, got 1"),
])  # fmt: skip
def test_bad_input_is_one_sentence(moved, words):
    with pytest.raises(ValueError, match=words.replace("(", r"\(")):
        Scene(**moved)


def test_a_clip_longer_than_the_lane_is_refused():
    with pytest.raises(ValueError, match="400 frames at 120 a second last 3.3 s, longer than"):
        clip(Scene(frames=400))

"""Clicks as they were made: the circle they fix, the file beside the clip, and what is done with a bad file."""

import json
import math

import numpy as np
import pytest

from bowlcore.coaching import clip_places
from bowlcore.coaching.clip_folder import clicks_path
from bowlcore.coaching.clip_places import RIM, TAPE, Place, Places, circle, keep, kept

NAME = "one.mp4"
THREE = [Place(4, RIM, 100 + 50 * math.cos(a), 80 + 50 * math.sin(a)) for a in (0.3, 2.4, 4.5)]


@pytest.fixture(autouse=True)
def clips(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "clips").mkdir()
    (tmp_path / "clips" / NAME).write_bytes(b"x")
    return tmp_path / "clips"


def said(action, *given):
    with pytest.raises(ValueError) as problem:
        action(*given)
    assert "\n" not in str(problem.value)
    return str(problem.value)


# -- the circle --


def test_a_right_angle_stands_on_a_diameter():
    # Thales (Euclid III.31): the middle of the long side of a 6-8-10 triangle, and half of it
    centre, radius = circle([(1, 2), (9, 2), (1, 8)])
    assert centre == pytest.approx((5, 5)) and radius == pytest.approx(5)


def test_many_places_give_the_nearest_circle():
    rng = np.random.default_rng(4)
    around = np.linspace(0, 6, 40)
    points = np.column_stack([300 + 90 * np.cos(around), 200 + 90 * np.sin(around)])
    centre, radius = circle(points + rng.normal(0, 1, points.shape))
    # one standard error of a mean of 40 places is about a sixth of a pixel
    assert centre == pytest.approx((300, 200), abs=1) and radius == pytest.approx(90, abs=1)


@pytest.mark.parametrize("points", [
    [(0, 0), (50, 0), (100, 0)],  # in a line
    [(0, 0), (0, 0), (100, 0)],  # twice the same
    [(0, 0), (0, 0), (0, 0)],
    [(100, 0), (99, 14), (96, 28)],  # all at one end
    [(100, 0), (-100, 0), (0, 100), (0, -10)],  # one of four is none of the rim
])  # fmt: skip
def test_places_that_make_no_circle(points):
    assert "do not lie round one circle; spread them" in said(circle, points)


def test_a_ball_too_small_to_click():
    assert "the ball's radius must be a number between 5 and 5000 pixels" in said(
        circle, [(0, 0), (6, 0), (0, 6)]
    )


# -- one by one --


def test_three_on_the_rim_and_one_on_the_tape_make_a_frame():
    places = Places(240.0)
    missing = []
    for place in [*THREE, Place(4, TAPE, 110, 90)]:
        missing.append(places.missing(4))
        places = places.with_place(place)
    assert missing == [RIM, RIM, RIM, TAPE] and places.missing(4) is None and places.missing(5) == RIM
    [click] = places.clicked.clicks
    assert click.centre_px == pytest.approx((100, 80)) and click.radius_px == pytest.approx(50)
    assert click.mark_px == (110, 90) and places.clicked.frames_per_s == 240


def test_a_second_click_on_the_tape_counts_until_it_is_taken_back():
    places = Places(240.0, places=[*THREE, Place(4, TAPE, 110, 90), Place(4, TAPE, 111, 91)])
    assert places.tape(4) == (111, 91) and places.without_last().tape(4) == (110, 90)


def test_a_tape_beside_the_ball_is_refused_in_either_order():
    words = "the tape lies 80 pixels from the ball's middle, outside its outline of 50"
    assert words in said(Places(240.0, places=THREE).with_place, Place(4, TAPE, 180, 80))
    assert words in said(Places(240.0, places=[Place(4, TAPE, 180, 80), *THREE[:2]]).with_place, THREE[2])


@pytest.mark.parametrize("make, words", [
    (lambda: Place(-1, RIM, 0, 0), "frame must be a number between 0"),
    (lambda: Place(1.5, RIM, 0, 0), "frame must be a whole number, got 1.5"),
    (lambda: Place(1, "nose", 0, 0), 'what must be "rim" or "tape", got \'nose\''),
    (lambda: Place(1, RIM, float("nan"), 0), "x_px must be a number"),
    (lambda: Place(1, RIM, 0, "12"), "y_px must be a number"),
    (lambda: Places(5), "frames_per_s must be a number between 20 and 1000, got 5"),
    (lambda: Places(120, camera="above"), "camera must be one of behind"),
    (lambda: Places(120, hand="both"), "hand must be"),
    (lambda: Places(120, places=[Place(i, TAPE, 0, 0) for i in range(2001)]), "2001 clicks are too many"),
])  # fmt: skip
def test_bad_input_is_one_sentence(make, words):
    assert words in said(make)


# -- the file beside the clip --


def test_what_is_kept_comes_back_and_can_be_read_by_anything():
    places = Places(240.0, "beside, on the left", "left", [*THREE, Place(4, TAPE, 110.25, 90)])
    keep(NAME, places, Places(120.0))
    assert kept(NAME, Places(120.0), 5) == (places, "")
    plain = json.loads(clicks_path(NAME).read_text())
    assert plain["version"] == 1 and plain["camera"] == "beside, on the left"
    assert plain["places"][-1] == {"frame": 4, "what": "tape", "x_px": 110.25, "y_px": 90}


def test_without_a_file_one_begins_afresh(clips):
    assert kept(NAME, Places(120.0), 60) == (Places(120.0), "")
    assert [p.name for p in clips.iterdir()] == [NAME], "looking wrote something"


_GOOD = {"version": 1, "frames_per_s": 120, "camera": "behind", "hand": "right", "places": []}
_CLICK = {"frame": 1, "what": "tape", "x_px": 3, "y_px": 4}


@pytest.mark.parametrize("content, reason", [
    (b"", "it is no JSON"),
    (b"half a fi", "it is no JSON"),
    (b"\xff\xfe\x00", "it is no JSON"),
    (b"[" * 100_000, "it is no JSON"),
    (b"[1]", "it does not hold the clicks of a clip"),
    (b"null", "it does not hold the clicks of a clip"),
    (b'{"version": 1}', "it does not hold the clicks of a clip"),
    ({**_GOOD, "version": 2}, "kept by version 2 of this file, not 1"),
    ({**_GOOD, "version": {"a": 1}}, "kept by version {'a': 1}"),
    ({**_GOOD, "more": 1}, "it does not hold the clicks of a clip"),
    ({**_GOOD, "places": [1]}, "it does not hold the clicks of a clip"),
    ({**_GOOD, "places": [{**_CLICK, "more": 1}]}, "it does not hold the clicks of a clip"),
    ({**_GOOD, "places": [{**_CLICK, "x_px": "<script>"}]}, "x_px must be a number"),
    ({**_GOOD, "places": [{**_CLICK, "x_px": 10**400}]}, "x_px must be a number between -10000 and 20000 pixels, got a"),
    (b'{"version": 1, "frames_per_s": NaN, "places": []}', "frames_per_s must be a number"),
    ({**_GOOD, "camera": ["behind"]}, "camera must be one of"),
    ({**_GOOD, "places": [{**_CLICK, "frame": 60}]}, "frame 60 is clicked, and the clip has only 60 frames"),
    ({**_GOOD, "places": [{**_CLICK, "frame": True}]}, "frame must be a number"),
    (b" " * 1_000_001, "the file has more than 1 MB"),
])  # fmt: skip
def test_a_bad_file_is_one_sentence_and_kept_aside(content, reason, clips):
    content = content if isinstance(content, bytes) else json.dumps(content).encode()
    clicks_path(NAME).write_bytes(content)
    places, note = kept(NAME, Places(120.0), 60)
    assert places == Places(120.0) and reason in note and "\n" not in note
    assert "are kept as one.mp4.clicks kept.json, and you begin anew" in note
    assert (clips / "one.mp4.clicks kept.json").read_bytes() == content
    keep(NAME, places.with_place(THREE[0]), places)
    clicks_path(NAME).write_bytes(b"bad again")
    assert "one.mp4.clicks kept (2).json" in kept(NAME, Places(120.0), 60)[1]
    assert (clips / "one.mp4.clicks kept.json").read_bytes() == content


def test_a_link_in_place_of_the_file_is_not_followed(tmp_path, clips):
    away = tmp_path / "away.json"
    away.write_text(json.dumps(_GOOD))
    clicks_path(NAME).symlink_to(away)
    assert "it is no plain file" in kept(NAME, Places(120.0), 60)[1]
    keep(NAME, Places(120.0, places=THREE), Places(120.0))
    assert json.loads(away.read_text()) == _GOOD


def test_a_disk_that_is_full_leaves_the_old_clicks_whole(clips, monkeypatch):
    before = Places(120.0, places=THREE[:1])
    keep(NAME, before, Places(120.0))
    old = clicks_path(NAME).read_bytes()

    def disk_full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.replace", disk_full)
    with pytest.raises(OSError, match="No space left"):
        keep(NAME, before.with_place(THREE[1]), before)
    assert clicks_path(NAME).read_bytes() == old
    assert sorted(p.name for p in clips.iterdir()) == [NAME, f"{NAME}.clicks.json"]


def test_two_pages_on_one_clip_do_not_overwrite_each_other():
    nothing = Places(120.0)
    one, two = nothing.with_place(THREE[0]), nothing.with_place(THREE[1])
    keep(NAME, one, nothing)
    assert "were changed on another page" in said(keep, NAME, two, nothing)
    assert kept(NAME, nothing, 60)[0] == one


def test_no_clicks_are_kept_of_a_clip_that_is_gone(clips):
    (clips / NAME).unlink()
    assert "There is no clip 'one.mp4'" in said(keep, NAME, Places(120.0), Places(120.0))
    assert list(clips.iterdir()) == []


def test_a_hostile_file_is_read_in_no_time(clips):
    import time

    places = [{**_CLICK, "frame": i // 4, "what": ("rim", "rim", "rim", "tape")[i % 4]} for i in range(2000)]
    clicks_path(NAME).write_text(json.dumps({**_GOOD, "places": places}))
    start = time.perf_counter()
    kept(NAME, Places(120.0), 10_000)
    assert time.perf_counter() - start < 3
    assert clip_places.VERSION == 1

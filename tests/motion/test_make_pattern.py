"""A pattern made from length, volume and side ratio has exactly these, or the call says why not."""

from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bowlcore.motion.shapes import make_pattern

calm = settings(max_examples=60, deadline=None, derandomize=True)


@calm
@given(
    length_ft=st.floats(30, 48),
    volume_ml=st.floats(5, 40),
    side_ratio=st.one_of(st.just(1), st.just(inf), st.floats(1, 1000)),
    taper=st.floats(0.35, 1),
    end_ramp_ft=st.floats(1, 12),
)
def test_asked_is_got(length_ft, volume_ml, side_ratio, taper, end_ramp_ft):
    pattern = make_pattern(length_ft, volume_ml, side_ratio, taper, end_ramp_ft)
    assert pattern.length_ft == pytest.approx(length_ft, abs=1e-6)
    assert pattern.volume_ml == pytest.approx(volume_ml, rel=1e-9)
    assert pattern.side_ratio == pytest.approx(side_ratio, rel=1e-6)
    assert pattern.thickness_um.min() >= 0


@pytest.mark.claim(
    "A pattern built from length, volume and side ratio has exactly these",
    against="its own map measured again",
    kind="exact",
)
@pytest.mark.parametrize(("length_ft", "volume_ml"), [(34, 14), (40, 24), (45, 32), (25, 3), (52, 55)])
@pytest.mark.parametrize("side_ratio", [1, 2.5, 10, 16, 1e4, inf])
def test_asked_is_got_over_what_centres_say(length_ft, volume_ml, side_ratio, figure):
    pattern = make_pattern(length_ft, volume_ml, side_ratio, end_ramp_ft=10)
    figure("length off by", abs(pattern.length_ft - length_ft), "ft", asked="0.000001")
    figure("volume off by", abs(pattern.volume_ml - volume_ml), "mL", asked="rounding")
    assert pattern.length_ft == pytest.approx(length_ft, abs=1e-6)
    assert pattern.volume_ml == pytest.approx(volume_ml, rel=1e-9)
    assert pattern.side_ratio == pytest.approx(side_ratio, rel=1e-6)


def test_ratio_one_is_flat_and_infinite_is_bare_outside():
    flat, bare = make_pattern(40, 24, 1), make_pattern(40, 24, inf)
    for ft in (0, 20, 40):
        assert flat.oil_um(5, ft) == pytest.approx(flat.oil_um(20, ft), abs=1e-12)
    assert bare.oil_um(9, 10) == 0 == bare.oil_um(31, 10)
    assert bare.oil_um(20, 10) > 1


def test_less_taper_leaves_less_oil_down_the_lane():
    def share(taper):
        pattern = make_pattern(40, 24, 10, taper)
        return pattern.oil_um(20, 36) / pattern.oil_um(20, 0)

    assert share(0.4) < share(0.6) < share(1.0)


def test_the_end_is_a_ramp_of_at_least_one_cell():
    pattern = make_pattern(40, 24, 10, end_ramp_ft=1)
    drop = [pattern.oil_um(20, ft) - pattern.oil_um(20, ft + 0.5) for ft in (38.5, 39, 39.5, 40, 40.5)]
    assert max(drop) < 0.6 * pattern.oil_um(20, 30)


def test_the_title_says_what_it_is():
    assert make_pattern(40, 24, 10).title == "40 ft, 24 mL, 10 to 1"
    assert make_pattern(40, 24, 10, title="ours").title == "ours"


@pytest.mark.parametrize(
    ("wanted", "words"),
    [
        ({"length_ft": 24.9}, ("length_ft", "25", "55", "24.9")),
        ({"length_ft": 56}, ("length_ft", "25", "55", "56")),
        ({"volume_ml": 2.9}, ("volume_ml", "3", "60", "2.9")),
        ({"volume_ml": 61}, ("volume_ml", "3", "60", "61")),
        ({"side_ratio": 0.5}, ("side_ratio", "from 1", "0.5")),
        ({"side_ratio": float("nan")}, ("side_ratio", "from 1", "nan")),
        ({"side_ratio": True}, ("side_ratio", "True")),
        ({"side_ratio": "8:1"}, ("side_ratio", "8:1")),
        ({"taper": 0.3}, ("taper", "0.35", "0.3")),
        ({"end_ramp_ft": 0}, ("end_ramp_ft", "1", "30", "got 0")),
        ({"length_ft": 54, "end_ramp_ft": 30}, ("ramp", "beyond the pins", "shorter")),
        ({"side_ratio": 1e300}, ("side_ratio", "infinite")),
        ({"volume_ml": "much"}, ("volume_ml", "number", "much")),
        ({"length_ft": None}, ("length_ft", "number", "None")),
    ],
    ids=lambda v: "-".join(map(str, v)) if isinstance(v, dict) else "",
)
def test_what_cannot_be_is_refused_in_words(wanted, words):
    with pytest.raises(ValueError) as caught:
        make_pattern(**wanted)
    said = str(caught.value)
    assert "\n" not in said
    for word in words:
        assert word in said

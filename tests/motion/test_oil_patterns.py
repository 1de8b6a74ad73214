"""Volume, length, side ratio and interpolation of a pattern: computed, against arithmetic.

Source of the worked volumes: our own arithmetic. 1 unit of oil is 0.0167 mL on a square foot (from
memory); a lane is 41.5 in wide (second-hand) and a board 41.5/39 in.
"""

import numpy as np
import pytest

from bowlcore.motion import units
from bowlcore.motion.oil import OilPattern, load_pattern, pattern_names

WIDTH_FT = 41.5 / 12


def constant(thickness_um):
    return OilPattern([0, 60], [0.5, 39.5], np.full((2, 2), thickness_um))


def test_volume_of_an_even_film_is_area_times_thickness():
    assert constant(1.0).volume_ml == pytest.approx(WIDTH_FT * 60 * 0.3048**2, rel=1e-9)


def test_one_unit_on_a_square_foot_is_0_0167_ml():
    assert constant(units.OIL_UNIT_UM).volume_ml == pytest.approx(0.0167 * WIDTH_FT * 60, rel=1e-9)
    assert pytest.approx(0.18, abs=0.0005) == units.OIL_UNIT_UM


def test_27_ml_over_42_ft_is_11_13_units_on_average():
    # trade arithmetic, our own calculation: 27 mL on 42 ft x 41.5 in
    film = constant(27 / (42 * WIDTH_FT * 0.3048**2))  # 1 mL on 1 m2 is 1 um
    assert film.oil_um(20, 10) / units.OIL_UNIT_UM == pytest.approx(11.13, abs=0.005)
    assert film.volume_ml * 42 / 60 == pytest.approx(27)


def test_one_microlitre_on_a_board_foot_is_0_675_unit():
    # trade arithmetic, our own calculation: 1 uL on one board of one foot
    thickness_um = 1e-3 / (41.5 / 39 * 0.0254 * 0.3048)
    assert thickness_um / units.OIL_UNIT_UM == pytest.approx(0.675, abs=0.0005)
    assert constant(thickness_um).volume_ml == pytest.approx(39 * 60 * 1e-3, rel=1e-9)


def test_40_units_over_4_is_ten_to_one():
    boards = np.arange(1.0, 40.0)
    oil = np.where((boards >= 10.5) & (boards <= 29.5), 40.0, 4.0) * units.OIL_UNIT_UM
    pattern = OilPattern([0, 60], boards, np.vstack([oil, oil]))
    assert pattern.side_ratio == pytest.approx(10)


def test_side_ratio_is_read_at_10_ft():
    ratio = OilPattern([0, 10, 60], [1, 10, 30, 39], [[9, 1, 1, 9], [1, 1, 1, 1], [9, 1, 1, 9]]).side_ratio
    assert ratio == pytest.approx(1)


def test_side_ratio_of_a_bare_outside_is_infinite():
    assert OilPattern([0, 60], [10, 11, 29, 30], [[0, 1, 1, 0]] * 2).side_ratio == np.inf


def test_length_is_where_board_20_last_holds_a_third_of_its_most():
    pattern = OilPattern([0, 30, 45, 60], [1, 39], [[3, 3], [3, 3], [0, 0], [0, 0]])
    assert pattern.length_ft == pytest.approx(40)  # from 3 to 0 over 15 ft: 1 is left at 40 ft
    again = OilPattern([0, 30, 31, 50, 51, 60], [1, 39], [[3, 3], [0, 0], [2, 2], [2, 2], [0, 0], [0, 0]])
    assert again.length_ft == pytest.approx(50.5)  # the last place counts, not the first
    assert constant(1.0).length_ft == 60
    assert constant(0.0).length_ft == 0


def test_oil_between_the_nodes_is_bilinear():
    pattern = OilPattern([0, 10, 60], [1, 5, 39], [[1, 2, 3], [5, 9, 7], [0, 0, 0]])
    assert pattern.oil_um(3, 0) == pytest.approx(1.5)
    assert pattern.oil_um(1, 5) == pytest.approx(3)
    assert pattern.oil_um(3, 5) == pytest.approx((1 + 2 + 5 + 9) / 4)
    assert pattern.oil_um(2, 2.5) == pytest.approx(0.75 * 1.25 + 0.25 * 6)
    for i, x in enumerate((0, 10, 60)):
        assert pattern.oil_um([1, 5, 39], x) == pytest.approx(pattern.thickness_um[i])


def test_oil_is_held_constant_beyond_the_last_nodes():
    pattern = OilPattern([5, 50], [10, 30], [[1, 2], [3, 4]])
    assert pattern.oil_um(0.5, 0) == 1 and pattern.oil_um(39.5, 60) == 4


def test_a_number_comes_back_for_numbers_and_an_array_for_arrays():
    pattern = constant(2.0)
    assert isinstance(pattern.oil_um(20, 10), float)
    assert pattern.oil_um(np.arange(3.0)[:, None], np.arange(4.0)[None, :]).shape == (3, 4)


@pytest.mark.claim(
    "The volume told of a pattern is the volume of the oil on its map",
    against="the film summed up in small squares, our own arithmetic",
    kind="exact",
)
def test_volume_is_the_exact_integral_of_the_map(figure):
    pattern = load_pattern("wet_dry")
    b, x = np.arange(0.5 + 1 / 32, 39.5, 1 / 16), np.arange(1 / 16, 60, 1 / 8)
    cell_m2 = 41.5 / 39 * 0.0254 / 16 * 0.3048 / 8
    summed_ml = pattern.oil_um(b[:, None], x[None, :]).sum() * cell_m2
    figure("off by", 100 * abs(summed_ml / pattern.volume_ml - 1), "%", asked="0.01")
    assert summed_ml == pytest.approx(pattern.volume_ml, rel=1e-4)


def test_patterns_cannot_be_changed_in_place():
    pattern = load_pattern("house")
    with pytest.raises(ValueError, match="read-only"):
        pattern.thickness_um[0, 0] = 1


@pytest.mark.parametrize("name", pattern_names())
def test_shipped_patterns_load_with_title_and_source(name):
    pattern = load_pattern(name)
    assert pattern.title and "invented" in pattern.source
    assert 0 <= pattern.thickness_um.min() and pattern.thickness_um.max() <= 50


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"thickness_um": [[1, -0.1], [1, 1]]}, ("thickness_um", "0 and 50 um", "-0.1")),
        ({"thickness_um": [[1, 50.1], [1, 1]]}, ("thickness_um", "0 and 50 um", "50.1")),
        ({"thickness_um": [[1, float("nan")], [1, 1]]}, ("thickness_um", "nan")),
        ({"thickness_um": [[1, 1]]}, ("thickness_um", "shape", "(2, 2)")),
        ({"distance_ft": [10, 0]}, ("distance_ft", "rise")),
        ({"distance_ft": [0, 0]}, ("distance_ft", "rise")),
        ({"distance_ft": [0, 61]}, ("distance_ft", "0 to 60", "61")),
        ({"lane_board": [39, 1]}, ("lane_board", "rise")),
        ({"lane_board": [0, 39]}, ("lane_board", "0.5 to 39.5")),
    ],
)
def test_a_faulty_map_is_refused(change, words):
    good = {"distance_ft": [0, 60], "lane_board": [1, 39], "thickness_um": [[1, 1], [1, 1]]}
    with pytest.raises(ValueError) as caught:
        OilPattern(**(good | change))
    for word in words:
        assert word in str(caught.value)

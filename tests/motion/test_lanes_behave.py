"""The shipped shapes do what a coach expects of such lanes, with the default law.

Source of the lines and of every bound here: common practice, no source (data/everyday_lines.csv). The
shapes and the law are chosen so that they come true together; no lane was measured.
"""

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pandas as pd
import pytest
from motion_help import everyday_lines, rows

from bowlcore.locate import data_folder
from bowlcore.motion.many import simulate_many
from bowlcore.motion.oil import load_pattern, pattern_names
from bowlcore.motion.path import simulate
from bowlcore.motion.surface import FrictionLaw, OiledLane

ROWS, LINES = rows("everyday_lines"), everyday_lines()
NAMES = [f"{line.speed_mph:g} mph {line.rev_rate_rpm:g} rpm" for line in LINES]
each_line = pytest.mark.parametrize(("line", "row"), list(zip(LINES, ROWS, strict=True)), ids=NAMES)


def lane(name):
    return OiledLane(load_pattern(name))


def hit(release, name):
    return simulate(release, lane(name)).entry_board


def rolls(release, name):
    """Start of roll [ft]; 99 where it still slips at the pins."""
    start = simulate(release, lane(name)).roll_start_ft
    return 99.0 if np.isnan(start) else start


@pytest.mark.claim(
    "Ordinary lines hit the pocket on the house shape, at the angle and with the roll that coaches expect",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="practice",
)
@each_line
def test_an_everyday_line_hits_the_pocket_on_the_house_shape(line, row, figure):
    path = simulate(line, lane("house"))
    figure("away from board 17.5 by", abs(path.entry_board - 17.5), "boards", asked="1.5")
    assert path.entry_board == pytest.approx(17.5, abs=1.5)
    assert row["angle_low_deg"] <= path.entry_angle_deg <= row["angle_high_deg"]
    assert row["roll_low_ft"] <= rolls(line, "house") <= row["roll_high_ft"]


@pytest.mark.claim(
    "On the house shape a miss of one board at the arrows moves the hit by a board and a half at most",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="practice",
)
@each_line
@pytest.mark.parametrize("move", [-1, 1], ids=["one board out", "one board in"])
def test_the_house_shape_forgives(line, row, move, figure):
    moved = replace(line, target_board=line.target_board + move)
    figure("moves the hit by", abs(hit(moved, "house") - hit(line, "house")), "boards", asked="1.5")
    assert abs(hit(moved, "house") - hit(line, "house")) <= 1.5


@pytest.mark.claim(
    "On the flat shape a miss of one board at the arrows moves the hit by about four",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="practice",
)
@each_line
@pytest.mark.parametrize("move", [-1, 1], ids=["one board out", "one board in"])
def test_on_the_flat_shape_a_board_is_worth_four(line, row, move, figure):
    moved = replace(line, target_board=line.target_board + move)
    moves = move * (hit(moved, "flat") - hit(line, "flat"))
    figure("at most", moves, "boards", asked="4.5")
    figure("at least", moves, "boards", asked="3.5", least=True)
    assert 3.5 <= moves <= 4.5


def test_there_are_seven_shapes_or_more_with_a_house_and_a_flat_among_them():
    names = pattern_names()
    assert len(names) >= 7
    assert any("house" in name for name in names) and any("flat" in name for name in names)


@pytest.mark.claim(
    "The shipped shapes hold as much oil as the sheets of centres say",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="practice",
)
@pytest.mark.parametrize("name", pattern_names())
def test_volume_is_believable(name, figure):
    low = 14 if name in ("short", "dried_out") else 20
    figure("most", load_pattern(name).volume_ml, "mL", asked="32")
    figure("least", load_pattern(name).volume_ml, "mL", asked="20, short and dried out 14", least=True)
    assert low <= load_pattern(name).volume_ml <= 32


@pytest.mark.claim(
    "The shipped shapes are as long as their titles say",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="own",
)
def test_the_lengths_are_those_of_the_titles(figure):
    for name, length in (("house", 40), ("flat", 40), ("short", 34), ("long_heavy", 45), ("wet_dry", 40)):
        figure("off by", abs(load_pattern(name).length_ft - length), "ft", asked="2.5")
        assert load_pattern(name).length_ft == pytest.approx(length, abs=2.5), name


@pytest.mark.claim(
    "The flat shape has side ratio 1 and the house shape one that is customary for house shapes",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="practice",
)
def test_the_side_ratios_are_those_of_their_kind(figure):
    assert load_pattern("flat").side_ratio == pytest.approx(1, abs=1e-9)
    figure("house shape", load_pattern("house").side_ratio, "to 1", asked="10 to 25")
    assert 10 <= load_pattern("house").side_ratio <= 25
    assert load_pattern("wet_dry").side_ratio > 100


def forgiving_lines(release, name):
    """Laydown, breakpoint board and distance of the lines to the pocket that forgive most (mean of five)."""
    laydown, open_boards = (a.ravel() for a in np.meshgrid(np.arange(6, 31.0), np.arange(0, 9.0)))
    frame = pd.DataFrame([vars(release)] * len(laydown)).assign(laydown_board=laydown)

    def play(move):
        return simulate_many(
            frame.assign(target_board=np.maximum(laydown - open_boards, 2) + move), lane(name)
        )

    table, out, inside = play(0), play(-1), play(1)
    room = np.maximum(abs(out.entry_board - table.entry_board), abs(inside.entry_board - table.entry_board))
    table = table.assign(room=room, laydown=laydown)
    hits = table[(table.entry_board - 17.5).abs() < 1.5]
    return hits.nsmallest(5, "room")[["laydown", "breakpoint_board", "breakpoint_ft"]].mean()


@pytest.mark.claim(
    "A short oil is played from further out, and the ball breaks earlier on it",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="practice",
)
@each_line
def test_short_is_played_from_further_out_and_breaks_earlier(line, row):
    short, house = forgiving_lines(line, "short"), forgiving_lines(line, "house")
    assert short.laydown < house.laydown
    assert short.breakpoint_board < house.breakpoint_board - 1
    assert short.breakpoint_ft < house.breakpoint_ft - 1


@pytest.mark.claim(
    "On long and heavy oil the ball rolls at least two feet later, or not before the pins",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="practice",
)
@each_line
def test_long_and_heavy_rolls_at_least_two_feet_later_or_not_at_all(line, row):
    assert rolls(line, "long_heavy") >= rolls(line, "house") + 2


@pytest.mark.claim(
    "On the wet-dry lane a miss to the outside comes in high",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="practice",
)
def test_wet_dry_turns_a_miss_out_into_a_high_hit(figure):
    higher = [
        hit(replace(line, target_board=line.target_board - 1), "wet_dry")
        - hit(replace(line, target_board=line.target_board + 1), "wet_dry")
        for line in LINES
    ]
    figure("by more than four boards on", sum(np.array(higher) > 4), "of six lines", asked="5 and more")
    assert sum(np.array(higher) > 4) >= 5


def test_on_the_flat_shape_the_same_two_misses_are_eight_boards_the_other_way():
    for line in LINES:
        out, inside = (hit(replace(line, target_board=line.target_board + m), "flat") for m in (-1, 1))
        assert inside - out == pytest.approx(8, abs=0.6)


def test_carried_down_is_the_house_shape_with_its_end_moved_on_and_softened():
    house, carried = load_pattern("house"), load_pattern("carried_down")
    assert carried.length_ft > house.length_ft + 2
    assert carried.oil_um(20, 5) == pytest.approx(house.oil_um(20, 5), rel=0.05)

    def steepest(pattern):
        return np.diff(pattern.oil_um(20, np.arange(30, 61))).min()

    assert steepest(carried) > 0.9 * steepest(house)
    for line in LINES:
        assert hit(line, "carried_down") < hit(line, "house")


@pytest.mark.claim(
    "On the dried lane the ordinary ball comes in high and rolls sooner",
    against=(
        "common practice, no source (tests/data/everyday_lines.csv); lanes and friction were chosen so that "
        "it comes true"
    ),
    kind="practice",
)
def test_dried_out_hits_high_and_rolls_sooner(figure):
    line = LINES[0]  # the 300 rpm line
    figure("comes in on board", hit(line, "dried_out"), asked="19.5 and more")
    figure("rolls sooner by", rolls(line, "house") - rolls(line, "dried_out"), "ft", asked="2 and more")
    assert hit(line, "dried_out") >= 19.5
    assert rolls(line, "dried_out") <= rolls(line, "house") - 2


def test_dried_out_has_less_oil_than_the_house_shape_everywhere():
    house, dry = load_pattern("house"), load_pattern("dried_out")
    assert (dry.thickness_um <= house.thickness_um + 1e-9).all()
    track = dry.oil_um(10, 5) / house.oil_um(10, 5)
    assert track < 0.4 < dry.oil_um(20, 5) / house.oil_um(20, 5)


def test_friction_stays_between_0_01_and_0_32():
    for name in pattern_names():
        boards, feet = np.meshgrid(np.arange(0.5, 40, 0.5), np.arange(0, 61.0))
        mu = lane(name).friction(boards, feet)
        assert 0.01 <= mu.min() and mu.max() <= 0.32, name


def test_tighter_and_looser_do_what_they_say():
    for line in LINES:
        tight, loose = (
            simulate(line, OiledLane(load_pattern("flat"), FrictionLaw().scaled(factor))).entry_board
            for factor in (0.9, 1.1)
        )
        assert tight < hit(line, "flat") < loose


@pytest.fixture(scope="module")
def maker():
    sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
    try:
        import make_patterns
    finally:
        sys.path.pop(0)
    return make_patterns


def test_every_shipped_shape_is_what_its_study_writes(maker):
    assert sorted(maker.SHAPES) == pattern_names()
    for name, (title, oil) in maker.SHAPES.items():
        shipped = (data_folder() / "patterns" / f"{name}.csv").read_bytes()
        assert shipped == maker.text_of(title, oil).encode("utf-8"), name

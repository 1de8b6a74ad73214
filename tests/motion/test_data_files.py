"""A faulty pattern file is refused in one sentence that names file, line, value and what is allowed.

The faults are those the project's data format names; each one alone, in an otherwise good file.
"""

import pytest
from motion_help import DATA

from bowlcore.locate import data_folder
from bowlcore.motion.ball import Ball, load_balls
from bowlcore.motion.data_file import read_table
from bowlcore.motion.oil import load_pattern, pattern_names

GOOD = """\
# title:   a small shape for the tests
# version: 1
# source:  invented for teaching
# licence: CC0-1.0
# frame:   boards from the right edge, distance from the foul line
# column:  distance_ft [ft] where the row applies
# column:  b01 [um] oil on board 1
# column:  b20 [um] oil on board 20
# column:  b39 [um] oil on board 39
distance_ft,b01,b20,b39
0,0.5,4,0.5
20,0.25,3,0.25
40,0,1,0
60,0,0,0
"""


def written(tmp_path, text, name="mine.csv"):
    path = tmp_path / name
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def refused(path):
    with pytest.raises(ValueError) as caught:
        load_pattern(path)
    said = str(caught.value)
    assert "\n" not in said and len(said) < 300
    assert path.name in said
    return said


def test_the_good_file_loads(tmp_path):
    pattern = load_pattern(written(tmp_path, GOOD))
    assert pattern.title == "a small shape for the tests"
    assert pattern.source == "invented for teaching"
    assert pattern.oil_um(20, 20) == 3 and pattern.oil_um(1, 10) == pytest.approx(0.375)


@pytest.mark.parametrize("kept", ["text", "path"])
def test_a_path_may_be_text_or_path(tmp_path, kept):
    path = written(tmp_path, GOOD)
    assert load_pattern(str(path) if kept == "text" else path).oil_um(20, 0) == 4


def test_line_ends_and_byte_order_mark_of_other_systems(tmp_path):
    text = b"\xef\xbb\xbf" + GOOD.replace("\n", "\r\n").encode()
    assert load_pattern(written(tmp_path, text)).oil_um(20, 0) == 4


def test_empty_lines_and_spaces_do_no_harm(tmp_path):
    text = GOOD.replace("20,0.25,3,0.25", "\n20, 0.25, 3 ,0.25\n")
    assert load_pattern(written(tmp_path, text)).oil_um(20, 20) == 3


@pytest.mark.parametrize("key", ["title", "version", "source", "licence", "frame"])
@pytest.mark.parametrize("how", ["absent", "blank"])
def test_missing_header_line(tmp_path, key, how):
    lines = [line for line in GOOD.splitlines() if not line.startswith(f"# {key}:")]
    text = "\n".join(lines) if how == "absent" else f"# {key}:\n" + "\n".join(lines)
    assert f"# {key}:" in refused(written(tmp_path, text))


FAULTS = {
    "no header at all": (("#", "~"), ("header",)),
    "no column lines": (("# column:", "# kolumn:"), ("# column: name [unit] meaning",)),
    "missing unit": (("b20 [um] oil", "b20 oil"), ("line 8", "name [unit] meaning", "b20 oil")),
    "blank unit": (("b20 [um]", "b20 [ ]"), ("line 8", "name [unit] meaning")),
    "column without a header line": (
        ("# column:  b39 [um] oil on board 39\n", ""),
        ("line 9", "b39", "unit"),
    ),
    "text in a number": (("20,0.25,3,0.25", "20,0.25,three,0.25"), ("line 12", "b20", "number", "'three'")),
    "a blank cell": (("20,0.25,3,0.25", "20,0.25,,0.25"), ("line 12", "b20", "number", "''")),
    "NaN": (("20,0.25,3,0.25", "20,0.25,NaN,0.25"), ("line 12", "b20", "finite", "'NaN'")),
    "infinity": (("20,0.25,3,0.25", "20,0.25,inf,0.25"), ("line 12", "b20", "finite", "'inf'")),
    "negative oil": (("20,0.25,3,0.25", "20,0.25,-3,0.25"), ("line 12", "b20", "0 and 50 um", "-3")),
    "far too much oil": (("20,0.25,3,0.25", "20,0.25,300,0.25"), ("line 12", "b20", "0 and 50 um", "300")),
    "repeated distance": (("40,0,1,0", "20,0,1,0"), ("line 13", "distance_ft", "20")),
    "unsorted distance": (("40,0,1,0", "10,0,1,0"), ("line 13", "distance_ft", "20 ft", "10")),
    "distance beyond the pins": (("60,0,0,0", "61,0,0,0"), ("line 14", "0 and 60 ft", "61")),
    "distance before the foul line": (("0,0.5,4,0.5", "-1,0.5,4,0.5"), ("line 11", "0 and 60 ft", "-1")),
    "a value too few": (("20,0.25,3,0.25", "20,0.25,3"), ("line 12", "4 values", "3")),
    "a value too many": (("20,0.25,3,0.25", "20,0.25,3,0.25,9"), ("line 12", "4 values", "5")),
    "no rows": (("0,0.5,4,0.5\n20,0.25,3,0.25\n40,0,1,0\n60,0,0,0\n", ""), ("no rows",)),
    "one row": (("20,0.25,3,0.25\n40,0,1,0\n60,0,0,0\n", ""), ("distance_ft", "two")),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_each_fault_alone(tmp_path, fault):
    (old, new), words = FAULTS[fault]
    assert old in GOOD
    said = refused(written(tmp_path, GOOD.replace(old, new)))
    for word in words:
        assert word in said, said


@pytest.mark.parametrize(
    ("names", "words"),
    [
        (("b01", "b39", "b20"), ("rise", "b01 to b39")),  # unsorted
        (("b01", "b20", "b20"), ("b20", "twice")),  # repeated
        (("b01", "b20", "b40"), ("b01 to b39", "b40")),  # off the lane
        (("b00", "b20", "b39"), ("b01 to b39", "b00")),
        (("b01", "b20", "left"), ("b01 to b39", "left")),
    ],
    ids=["unsorted", "repeated", "board 40", "board 0", "no board"],
)
def test_boards_are_named_on_the_lane_and_rise(tmp_path, names, words):
    text = GOOD.replace("distance_ft,b01,b20,b39", "distance_ft," + ",".join(names))
    text = "\n".join(f"# column: {name} [um] oil" for name in names) + "\n" + text
    said = refused(written(tmp_path, text))
    for word in words:
        assert word in said, said


def test_distance_column_is_needed(tmp_path):
    said = refused(written(tmp_path, GOOD.replace("distance_ft", "feet")))
    assert "distance_ft" in said


def test_more_than_5_mb(tmp_path):
    said = refused(written(tmp_path, GOOD + "# x\n" * 1_300_000))
    assert "5.2 MB" in said and "5 MB" in said


def test_just_5_mb_is_read(tmp_path):
    text = GOOD + "#" * (5_000_000 - len(GOOD) - 1) + "\n"
    assert load_pattern(written(tmp_path, text)).oil_um(20, 0) == 4


def test_empty_file(tmp_path):
    assert "empty" in refused(written(tmp_path, ""))


def test_only_blank_lines(tmp_path):
    assert "header" in refused(written(tmp_path, "\n\n \n"))


def test_folder(tmp_path):
    folder = tmp_path / "lanes.csv"
    folder.mkdir()
    assert "folder" in refused(folder)


def test_folder_without_suffix(tmp_path):
    folder = tmp_path / "lanes"
    folder.mkdir()
    assert "folder" in refused(folder)


def test_missing_file(tmp_path):
    assert "no file" in refused(tmp_path / "nowhere.csv")


@pytest.mark.parametrize(
    "data", [b"\x89PNG\r\n\x1a\n\x00\x00\xff\xfe", b"\x00\x01\x02" * 50, bytes(range(256))]
)
def test_binary_file(tmp_path, data):
    assert refused(written(tmp_path, data))


def test_unknown_name_lists_the_names_there_are():
    with pytest.raises(ValueError) as caught:
        load_pattern("hous")
    said = str(caught.value)
    assert "'hous'" in said and all(name in said for name in pattern_names())


@pytest.mark.parametrize("odd", ["", ".", "..", "../patterns", "a" * 5000, "house.csv.csv", 7, None])
def test_odd_names_are_refused_in_words(odd):
    with pytest.raises(ValueError) as caught:
        load_pattern(odd)
    assert "\n" not in str(caught.value)


@pytest.mark.claim(
    "Every shipped oil pattern and ball says in its own file that it is invented",
    against="the header of each file",
    kind="own",
)
def test_every_shipped_data_file_has_its_header():
    shipped = [*sorted(data_folder().glob("patterns/*.csv")), data_folder() / "balls.csv"]
    assert len(shipped) >= 8
    for path in shipped:
        _, header = read_table(path, text_columns=("name",))
        assert "invented" in header["source"], path.name


def test_every_reference_table_has_its_header_and_source():
    tables = sorted(DATA.glob("*.csv"))
    assert len(tables) >= 6
    for path in tables:
        text = path.read_text(encoding="utf-8")
        for key in ("title", "version", "source", "licence", "frame", "column"):
            assert f"# {key}:" in text, path.name


def test_the_demo_balls_load_and_cover_the_roles():
    balls = load_balls()
    assert all(isinstance(ball, Ball) for ball in balls.values())
    for role in ("benchmark", "stronger", "weaker", "spare"):
        assert any(role in name for name in balls), role
    weights = {ball.mass_lb for name, ball in balls.items() if "house" in name}
    assert {6, 8, 10, 12, 14, 16} <= weights

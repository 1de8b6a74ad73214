"""A batch of worksheets: no answer on the student's copy, all parts, the same seed the same sheets, allowed numbers."""

import pytest
from sheet_help import Page

from bowlcore.coaching.sheet import LEVELS, Ask, Balls, Blank, Lane, Pins, Table
from bowlcore.coaching.sheet_lessons import LESSONS, make_sheets
from bowlcore.coaching.sheet_numbers import RANGES
from bowlcore.display.sheet_pages import coach, sheets, student

CASES = [(lesson, level) for lesson in LESSONS for level in LEVELS]
SEED = 7


def scrambled(sheet):
    """The same sheet with every answer replaced."""

    def other(part):
        if isinstance(part, Ask):
            return part._replace(answer="ANSWER")
        if isinstance(part, Table):
            rows = tuple(
                tuple(Blank("ANSWER") if isinstance(cell, Blank) else cell for cell in row)
                for row in part.rows
            )
            return part._replace(rows=rows)
        if isinstance(part, Pins):
            return part._replace(ringed=(8,))
        if isinstance(part, Balls):
            return part._replace(balls=tuple((name, 77.0, 5.0) for name, _, _ in part.balls))
        assert isinstance(part, Lane)
        more = {"rev_rate_rpm": 555} | ({"laydown_board": 2} if part.pin else {})
        return part._replace(
            lines=tuple(line._replace(shot=line.shot.but(**more), marks_ft=(9.0,)) for line in part.lines)
        )

    return sheet._replace(parts=tuple(map(other, sheet.parts)), computed="ANSWER")


@pytest.mark.parametrize("lesson, level", CASES)
def test_the_students_copy_contains_no_answer(lesson, level):
    sheet = make_sheets(lesson, 1, level, SEED)[0]
    assert student(sheet) == student(scrambled(sheet))
    assert coach(sheet) != coach(scrambled(sheet)) and "ANSWER" in coach(scrambled(sheet))


@pytest.mark.parametrize("lesson, level", CASES)
def test_every_sheet_has_its_parts(lesson, level):
    sheet = make_sheets(lesson, 1, level, SEED)[0]
    kinds = {type(part) for part in sheet.parts}
    assert {Lane, Table, Ask} <= kinds and sheet.given
    text = Page(student(sheet)).text
    assert "At the lanes." in text and "Safety." in text and "numbness" in text
    if level == "8-9":
        assert "degree" not in text and "angle" not in text


@pytest.mark.parametrize("lesson, level", [("00", "8-9"), ("05", "from 10"), ("08", "from 14")])
def test_twenty_four_sheets_differ_and_the_same_seed_gives_the_same(lesson, level):
    made = make_sheets(lesson, 24, level, 5)
    assert len({sheet.given for sheet in made}) == 24
    assert made[:5] == make_sheets(lesson, 5, level, 5), "sheet 3 is sheet 3 however many are made"
    assert made[0].given != make_sheets(lesson, 1, level, 6)[0].given
    assert sheets(lesson, 2, level, 5) == sheets(lesson, 2, level, 5)


@pytest.mark.parametrize("level", LEVELS)
def test_numbers_come_from_the_allowed_ranges(level):
    ranges = RANGES[level]
    for sheet in make_sheets("00", 12, level, 9):
        line = next(part for part in sheet.parts if isinstance(part, Lane)).lines[0]
        release = line.shot.release
        for name in ("speed_mph", "rev_rate_rpm", "axis_rotation_deg", "axis_tilt_deg", "laydown_board"):
            steps, value = getattr(ranges, name), getattr(release, name)
            assert steps.low <= value <= steps.high and ((value - steps.low) / steps.step) % 1 == 0


@pytest.mark.parametrize(
    "wrong, told",
    [
        ({"lesson": "99"}, "lesson must be one of 00, 01"),
        ({"level": "from 3"}, "level must be one of 8-9, from 10, from 14, got 'from 3'"),
        ({"people": 0}, "people must be a number between 1 and 60, got 0"),
        ({"people": 61}, "people must be a number between 1 and 60, got 61"),
        ({"people": 2.5}, "people must be a whole number, got 2.5"),
        ({"people": float("nan")}, "people must be a number between 1 and 60"),
        ({"seed": -1}, "seed must be a number between 0 and 999999, got -1"),
        ({"hand": "both"}, "hand must be one of right, left, got 'both'"),
        ({"size": "A3"}, "paper must be one of A4, Letter, got 'A3'"),
    ],
)
def test_bad_input_is_one_sentence(wrong, told):
    with pytest.raises(ValueError) as problem:
        sheets(**{"lesson": "00", "people": 1, "level": "from 10"} | wrong)
    assert str(problem.value).startswith(told) and "\n" not in str(problem.value)

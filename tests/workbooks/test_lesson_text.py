"""What counts as a number in a lesson, and what is only the name of a thing."""

import pytest
from lesson_text import numbers, passages


@pytest.mark.parametrize(
    "text, found",
    [
        ("It comes in on board 17.5 at 6 degrees.", ["17.5", "6"]),
        ("Dots are the same places (15, 40, 45, 50 and 55 ft).", ["15", "40", "45", "50", "55"]),
        ("A clip of 30 a second, and 18, 17 and 19 frames.", ["30", "18", "17", "19"]),
        ("Boards 10, 11 and 12.", ["10", "11", "12"]),
        ("It stood on board 12\n\nThe ball then turned.", ["12"]),
        ("Best are 4-6 degrees on boards 17-18.", ["4", "6", "17", "18"]),
        ("Scores of 185-195, and 2-3 balls.", ["185", "195", "2", "3"]),
        ("12 pins a game, 5 pins more.", ["12", "5"]),
        ("The rule of 31: 10 ft (3 m), 1 to 1, 10,000 racks, 6.9 %.", ["31", "10", "3", "1", "1", "10,000", "6.9"]),
        ("| try | 3 |\n|---|---|\n| 1. as it starts | 4 |", ["3", "4"]),
        ("Tilt −5, then -7.", ["−5", "-7"]),
        ("About 2020.5 ft and 1999 % of it.", ["2020.5", "1999"]),
    ],
)  # fmt: skip
def test_numbers_are_found(text, found):
    assert numbers(text) == found


@pytest.mark.parametrize(
    "text",
    [
        "The 10-pin, the 4-pin and the 7-pin.",
        "It leaves the 6-10, the 4-6-7-10 or the 3-10.",
        "3-6-9 and 2-4-6, 3:1:2.",
        "2-and-1, 3-and-1 or 2, *5-and-2*.",
        "Saying 7, and saying 15 after it.",
        "1. first\n2. second",
        "| 1. as it starts | |\n| 12. the last | |",
        "This one, 01, 05, 04, 08: pins early; lessons 04, 06 and 11.",
        "[10 Keep a log](10_keep_a_log.ipynb), 11, [12 Rules of thumb](12_rules_of_thumb.ipynb)",
        "*Ball 1 …* to *Ball 3 …*",
        "In 1990 to 2008, and in 2020.",
        "`0`, `47`, $x = 3$ and $$\\frac{1}{2}$$",
    ],
)
def test_names_are_left_out(text):
    assert numbers(text) == []


def test_passages_are_paragraphs_and_points_on_one_line_each():
    told = "# A head\n\nOne *line*\nand on.\n\n* a point\n* [another](page.md#there)\n\n| a | table |\n"
    assert passages(told) == ["One line and on.", "a point", "another"]

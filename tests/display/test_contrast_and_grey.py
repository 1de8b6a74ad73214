"""Letters and lines stand out from their ground, and no picture speaks by hue alone.

Contrast is (L1 + 0.05) / (L2 + 0.05) of the relative luminances, at least 4.5 for words and 3 for graphics: Web
Content Accessibility Guidelines 2.2, criteria 1.4.3 and 1.4.11 and "relative luminance" (from memory). None of our
letters on pictures is large in their sense. The colours are read from what is drawn and from the style files.
"""

import re
from functools import cache
from itertools import combinations
from pathlib import Path

import numpy as np
import pytest
from panels_help import ALL_PANELS, RACK_PANELS, TABLE_PANELS
from shapes_of_a_picture import Shape, shapes

import bowlcore
from bowlcore.coaching.sheet_lessons import LESSONS, LEVELS
from bowlcore.display.sheet_pages import sheets

WORDS, GRAPHICS = 4.5, 3.0
TOLD_APART = 1.5  # between two greys; our choice, half of what a line needs against its ground
NEAR_PT = 60.0  # a word this near in a line's own colour is its label: our choice

PANELS = {make.__name__: make for make in ALL_PANELS + RACK_PANELS + TABLE_PANELS}
# at these settings shades are darkest or most pins stand
MORE = {"carry_map_panel": {"scatter_boards": 0.5}, "pocket_panel": {"entry_board": 22.0}}
EVERY = pytest.mark.parametrize("name", PANELS)


def luminance(color):
    parts = [int(color[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_contrast_of_known_pairs():
    """Black on white is 21 by the definition; #767676 is the lightest grey that keeps 4.5 (known, from memory)."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#767676", "#ffffff") >= 4.5 > contrast("#777777", "#ffffff")


@cache
def drawn(name):
    """A panel's pictures: at its start, and where its shades are darkest."""
    panel = PANELS[name]()
    pictures = [panel._drawn.svg, *([panel.drawn_at(**MORE[name]).svg] if name in MORE else [])]
    return [shapes(svg) for svg in pictures if svg.startswith("<svg")]


@pytest.mark.claim(
    "Words on every picture stand out from what lies beneath them",
    against="WCAG 2.2 (W3C Recommendation 2023), success criterion 1.4.3, from memory",
    kind="published",
)
@pytest.mark.slow
@EVERY
def test_words_stand_out_from_what_lies_beneath_them(name, figure):
    for picture in drawn(name):
        for i, word in enumerate(picture):
            if word.kind == "words":
                ground = beneath(word, picture[:i])
                reached = contrast(word.color, ground)
                figure("lowest contrast", reached, "to 1", asked=f"{WORDS:g} or more", least=True)
                assert reached >= WORDS, f"{word.text!r}: {word.color} on {ground}"


@pytest.mark.claim(
    "Lines and marks on every picture stand out from the lane",
    against="WCAG 2.2 (W3C Recommendation 2023), success criterion 1.4.11, from memory",
    kind="published",
)
@pytest.mark.slow
@EVERY
def test_lines_and_marks_stand_out_from_the_lane(name, figure):
    for picture in drawn(name):
        for shape in picture:
            if shape.color and shape.color not in ("#ffffff", shape.fill) and not shape.grid:
                reached = contrast(shape.color, "#ffffff")
                figure("lowest contrast", reached, "to 1", asked=f"{GRAPHICS:g} or more", least=True)
                assert reached >= GRAPHICS, shape


@pytest.mark.claim(
    "No two things on a picture differ by hue alone: it can be read in grey",
    against="WCAG 2.2 (W3C Recommendation 2023), success criterion 1.4.1, from memory",
    kind="published",
)
@pytest.mark.slow
@EVERY
def test_no_two_things_differ_by_hue_alone(name):
    for picture in drawn(name):
        labels = [shape for shape in picture if shape.kind == "words"]
        for one, other in combinations([shape for shape in picture if shape.place and not shape.grid], 2):
            if same_in_grey(one, other):
                assert has_label(one, labels, picture) and has_label(other, labels, picture), (one, other)


def test_blue_and_red_of_one_look_are_one_grey():
    def line(color, dash="none", width=2.0):
        return Shape("line", color, "", (dash, width, False), np.zeros((9, 2)), (), 1.0, False)

    blue, red = line("#0072b2"), line("#b34700")
    assert same_in_grey(blue, red) and not same_in_grey(blue, line("#000000"))
    assert not same_in_grey(blue, line("#b34700", dash="4 2")) and not same_in_grey(
        blue, line("#b34700", width=3.0)
    )


def beneath(word, painted):
    """The colour under a word's place, boxes for shapes and the darkest pixel for images."""
    (x, y), ground = word.points[0] - [0.0, 3.0], "#ffffff"
    for shape in painted:
        left, top, right, bottom = shape.box
        if shape.kind in ("area", "image") and shape.fill and left <= x <= right and top <= y <= bottom:
            ground = mixed(shape.fill, ground, shape.alpha)
    return ground


def mixed(color, ground, share):
    pairs = ((int(color[i : i + 2], 16), int(ground[i : i + 2], 16)) for i in (1, 3, 5))
    return "#" + "".join(f"{round(share * over + (1 - share) * under):02x}" for over, under in pairs)


def same_in_grey(one, other):
    """Two things in one chart, of different colours, that nothing but hue tells apart."""
    if (one.kind, one.place) != (other.kind, other.place) or is_rule(one) != is_rule(other):
        return False
    a, b = (shape.fill if shape.kind == "area" else shape.color for shape in (one, other))
    if not a or not b or a == b or "#ffffff" in (a, b) or contrast(a, b) >= TOLD_APART:
        return False
    if one.kind == "mark":
        return one.look == other.look
    dash, width, *more = one.look
    its_dash, its_width, *its_more = other.look
    edges = one.kind == "area" and (one.color == one.fill, other.color == other.fill) != (True, True)
    return (
        (dash, more) == (its_dash, its_more)
        and abs(width - its_width) < 0.8
        and not (edges and one.color != other.color)
    )


def is_rule(shape):
    """A line of a few corners: a rule, a frame, an arrow; a curve is told from it by its form."""
    return shape.kind == "line" and len(shape.points) <= 5


def has_label(shape, labels, picture):
    """A word inside or beside an area; one on a line, or in its colour beside it; for a mark, the line that it lies on."""
    if shape.kind == "area":
        left, top, right, bottom = shape.box
        return any(
            left - 10 <= x <= right + 10 and top - 3 <= y <= bottom + 3
            for x, y in (word.points[0] for word in labels)
        )
    if any(nearest(shape, w.points[0]) < (NEAR_PT if w.color == shape.color else 12) for w in labels):
        return True
    lines = [line for line in picture if line.kind == "line" and line.color == shape.color]
    return shape.kind == "mark" and any(nearest(line, shape.points[0]) < 12 for line in lines)


def nearest(shape, point):
    return np.hypot(*(shape.points - point).T).min()


STYLES = [path for path in Path(bowlcore.__file__).parent.rglob("*") if path.suffix in (".css", ".py", ".j2")]
BODY = re.compile(r"\{([^{}]*)\}")
DECLARED = re.compile(
    r"(?<![\w-])(color|background|border[\w-]*|outline|accent-color)\s*:[^;{}]*?(#[0-9a-fA-F]{3,6}\b)"
)


def declared(path):
    """Rules of a style sheet, or of one inside a module, as dicts of property and colour."""
    text = path.read_text(encoding="utf-8")
    for name, value in re.findall(r"(--[\w-]+):\s*(#\w+)", text):
        text = text.replace(f"var({name})", value)
    for body in BODY.findall(text):
        found = {name: whole(color) for name, color in DECLARED.findall(body)}
        if found:
            yield found


def whole(color):
    return "#" + ("".join(2 * digit for digit in color[1:]) if len(color) == 4 else color[1:]).lower()


def test_words_and_borders_of_pages_and_paper_stand_out():
    seen = 0
    for path in STYLES:
        rules = list(declared(path))
        letters = {found["color"] for found in rules if "color" in found} | {"#000000"}
        for found in rules:
            ground = found.pop("background", "#ffffff")
            for color in {found.pop("color")} if "color" in found else letters:
                assert contrast(color, ground) >= WORDS, f"{path.name}: {color} on {ground}"
            for name, color in found.items():
                assert contrast(color, ground) >= GRAPHICS, f"{path.name}: {name} {color}"
            seen += 1
    assert seen > 30  # or the pattern above no longer finds them


@pytest.mark.parametrize("lesson", LESSONS)
def test_drawings_on_worksheets_stand_out(lesson):
    """Lines, letters and edges of the coach's copy, whose shades are greys."""
    page = "".join(sheets(lesson, 1, LEVELS[-1]))
    shades = set(re.findall(r'fill="(#\w+)"', page)) | {"#ffffff"}
    darkest = min((whole(shade) for shade in shades if contrast(whole(shade), "#000000") > 10), key=luminance)
    for stroke in set(re.findall(r'stroke="(#\w+)"', page)) - {"#fff"}:
        assert contrast(whole(stroke), "#ffffff") >= GRAPHICS
    assert contrast("#000000", darkest) >= WORDS

"""Every panel's numbers in metric units and for a left-hander, one by one against the right-hander's in feet and mph.

1 ft = 0.3048 m and 1 mile = 1.609 344 km exactly: NIST Special Publication 811 (2008), appendix B.8, from memory.
A left-hander on a lane that is the same from both sides is the right-hander in a mirror: the same numbers, boards
from the own side. Pins change names as they lie: 2 and 3, 4 and 6, 7 and 10, 8 and 9.
"""

import re
import sys
from functools import cache
from pathlib import Path
from zlib import crc32

import numpy as np
import pytest
from panels_help import ALL_PANELS, RACK_PANELS, TABLE_PANELS
from picture_parts import picture_parts

sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
from any_setting import random_values  # noqa: E402

from bowlcore.display.panel import Drawn  # noqa: E402

SEED = 1
PANELS = {make.__name__: make for make in ALL_PANELS + RACK_PANELS + TABLE_PANELS}
EVERY = pytest.mark.parametrize("name", PANELS)
SETTINGS = pytest.mark.parametrize("setting", ["start", pytest.param("random", marks=pytest.mark.slow)])
NUMBER = re.compile(r"(\d+(?:\.\d+)?)")
SCALE = re.compile(rf"−?{NUMBER.pattern}")
# of each unit: its name in metric, the factor, and half of the last step that each of the two shows
UNITS = {"ft": ("m", 0.3048, 0.5, 0.05), "mph": ("km/h", 1.609344, 0.25, 0.5), "in": ("cm", 2.54, 0.01, 0.1)}
FEET = re.compile(r"(\d|\b(one|two|three|five|six|ten|fifteen|twenty|thirty)) (feet|foot)\b")  # not of a body
# said to everyone: both units, a rule of feet, the end of the lane
BOTH = re.compile(r"\b[\w ]{1,9} (?:ft|feet|foot) \([\d.]+ c?m\)|\bin feet less 31\b|\blast foot\b")
MIRROR = {1: 1, 2: 3, 3: 2, 4: 6, 5: 5, 6: 4, 7: 10, 8: 9, 9: 8, 10: 7}

# its rows are taken every 10 ft or every 3 m: other places of the same ball
OTHER_PLACES = {"skid_hook_roll_panel"}
# these speak of people with hands of their own (a case, a log), whatever the settings say
OWN_HANDS = {"case_panel", "log_views_panel", "did_it_help_panel", "luck_or_better_panel"}
OWN_HANDS |= {"published_pins_panel", "published_spares_panel"}  # as they were counted, right-handers' pins
# drawn as seen from the approach or from behind the ball, so that the picture itself is the mirror
LONE_PINS = {"spares_panel", "pocket_panel"}  # a number alone in its picture is a pin
FROM_BEHIND = {"three_six_nine_panel", "what_leaves_the_hand_panel", "hand_technique_panel"}


@pytest.mark.claim(
    "Every panel says the same numbers in metres and km/h",
    against="1 ft = 0.3048 m and 1 mile = 1.609 344 km: NIST Special Publication 811 (2008), from memory",
    kind="published",
)
@SETTINGS
@EVERY
def test_metric_numbers_are_those_of_the_trade_converted(name, setting):
    trade, metric, _ = drawn(name, setting)
    if name in OTHER_PLACES:
        trade, metric = (shown._replace(rows=shown.rows[:1]) for shown in (trade, metric))
    one, other = picture_parts(trade.svg), picture_parts(metric.svg)
    for (heading, a), (_, b) in zip(texts(trade, one), texts(metric, other), strict=True):
        assert_converted(a, b, heading)
    for a, b in zip(one.axes, other.axes, strict=True):
        assert_axis_converted(a, b)
    assert close(one.curves, other.curves), "a curve lies elsewhere"


@EVERY
def test_controls_name_places_and_values_in_metric_units(name):
    for control in panel_of(name).controls.values():
        trade, at_ends = control.title, [control.told(end) for end in control.ends]
        unit = re.search(r", (ft|mph|in)$", trade)
        assert not said_twice(control)
        control.use_units(True)
        assert_converted(trade, control.title, "")
        assert not said_twice(control)
        for a, b in zip(at_ends, map(control.told, control.ends), strict=True):
            assert_converted(a, b, f"({unit[1]})" if unit else "")
        control.use_units(False)


@pytest.mark.claim(
    "Every panel shows a left-hander the right-hander in a mirror",
    against="geometry: the same numbers from the own side, pins 2 and 3, 4 and 6, 7 and 10, 8 and 9 exchanged",
    kind="exact",
)
@SETTINGS
@EVERY
def test_left_hander_is_the_right_hander_in_a_mirror(name, setting):
    right, _, left = drawn(name, setting)
    if name in OWN_HANDS:
        assert mirrorless(right) == mirrorless(left)
        return
    one, other = picture_parts(right.svg), picture_parts(left.svg)
    said = [mirrored(text, heading) for heading, text in texts(right, one, name in LONE_PINS)]
    its = [text for _, text in texts(left, other)]
    assert (sorted(said) == sorted(its)) if name in FROM_BEHIND else (said == its)
    for a, b in zip(one.axes, other.axes, strict=True):
        heading = a.label or ("" if all(map(SCALE.fullmatch, a.ticks)) else "what stands")
        assert b.label == mirrored(a.label)
        assert sorted(b.ticks) == sorted(mirrored(tick, heading) for tick in a.ticks)
    assert name in FROM_BEHIND or close(one.curves, other.curves), "a curve lies elsewhere"


@pytest.mark.parametrize(
    "metric", ["It hooks at 40 m.", "It hooks at 12.9 m.", "It hooks at 12.2 ft.", "It hooks at 40 ft."]
)
def test_a_wrong_conversion_is_seen(metric):
    assert_converted("It hooks at 40 ft.", "It hooks at 12.2 m.", "")
    with pytest.raises(AssertionError):
        assert_converted("It hooks at 40 ft.", metric, "")


def test_pins_in_words_are_mirrored():
    """The lane lies in a mirror, so the pins on the right get the names of those on the left."""
    said = "The 10-pin stays, then 3-6-10 stand; 3-6-9 with the ball on board 10 from the right."
    assert (
        mirrored(said) == "The 7-pin stays, then 2-4-7 stand; 3-6-9 with the ball on board 10 from the left."
    )
    assert mirrored("6", "pin; 6") == "4" and mirrored("6", "board; 6") == "6"


def mirrorless(shown):
    return shown.sentence, shown.lead, shown.rows, picture_parts(shown.svg)


def said_twice(control):
    """Words, without a plural's s, that stand in the label and again in the unit behind it."""
    texts = control.label, control.title.removeprefix(control.label)
    label, unit = ({word.removesuffix("s") for word in re.findall(r"\w+", text.lower())} for text in texts)
    return label & unit


@cache
def panel_of(name):
    return PANELS[name]()


@cache
def drawn(name, setting):
    """What a panel shows at its start or at a random setting: as always, in metric units, for the left hand."""
    panel = panel_of(name)
    if setting == "random":
        values = random_values(panel, np.random.default_rng([SEED, crc32(name.encode())]))
    else:
        values = {name: control.start for name, control in panel.controls.items()}
    return [draw(panel, values, **how) for how in ({}, {"metric": True}, {"hand": "left"})]


def draw(panel, values, metric=False, hand="right"):
    try:
        return panel._draw(metric=metric, hand=hand, **values, **panel.memory)
    except ValueError as problem:  # a panel shows it in place of its sentence
        return Drawn("", str(problem), [])


def texts(shown, parts, lone_pins=False):
    """All that is said, each with what stands above it and before it in its table."""
    yield from (("", said) for said in (shown.lead, shown.sentence, parts.alt))
    yield from (("pin" if lone_pins and said.isdigit() else "", said) for said in parts.words)
    for row in shown.rows:
        first, *_ = row.values()
        for heading, cell in row.items():
            yield "", heading
            yield f"{heading}; {first}", str(cell)


def in_metric(words):
    words = re.sub(r"\bft\b", "m", words).replace("mph", "km/h")
    return re.sub(r", in$", ", cm", words)  # in any other place "in" is no inch


def assert_converted(trade, metric, heading):
    """The same words with the other units, and each number the conversion of the one in its place."""
    trade, metric = BOTH.sub("", trade), BOTH.sub("", metric)
    assert not FEET.search(metric), metric
    trade = re.sub(r"(?<=\d) (feet|foot)\b", " ft", trade)
    words, numbers = NUMBER.split(trade)[::2], NUMBER.findall(trade)
    assert [in_metric(some) for some in words] == NUMBER.split(metric)[::2]
    for i, (one, other) in enumerate(zip(numbers, NUMBER.findall(metric), strict=True)):
        unit = unit_of(words[i + 1 :], heading)
        if unit is None:
            assert one == other, f"{trade!r} became {metric!r}"
        else:
            _, factor, half, its_half = UNITS[unit]
            assert abs(float(one) * factor - float(other)) <= half * factor + its_half + 1e-9, (
                f"{trade!r}: {metric!r}"
            )


def unit_of(words, heading):
    """The unit that stands behind a number, or behind the next one of a range, or in the heading of a bare number."""
    if re.fullmatch(r" to | and | or ", words[0]):
        words = words[1:]
    found = re.match(r"[ -](ft|mph)\b", words[0]) or re.search(
        r"\((ft|mph|in)\)", heading if words == [""] else ""
    )
    return found and found[1]


def assert_axis_converted(trade, metric):
    """Ticks stand where the physical value is, in the unit that the label names."""
    assert in_metric(trade.label) == metric.label
    if not all(map(SCALE.fullmatch, trade.ticks)):
        for a, b in zip(trade.ticks, metric.ticks, strict=True):
            assert_converted(a, b, "")
        return
    unit = re.search(r"\b(ft|mph)\b", trade.label)
    factors = [UNITS[unit[1]][1]] if unit else [1.0, UNITS["ft"][1], UNITS["mph"][1]]
    (slope, at_0), (its, its_at_0) = scale(trade), scale(metric)
    assert any(np.allclose([slope * f, at_0 * f], [its, its_at_0], rtol=1e-3, atol=1e-3) for f in factors), (
        trade.ticks
    )


def scale(axis):
    return np.polyfit(axis.places, [float(tick.replace("−", "-")) for tick in axis.ticks], 1)


def close(curves, others):
    return len(curves) == len(others) and all(
        len(a) == len(b) and np.allclose(a, b, atol=0.05) for a, b in zip(curves, others, strict=True)
    )


def mirrored(text, heading=""):
    """What a right-hander is told, as a left-hander reads it."""
    text = text.replace("from the right", "from the left")
    if PIN_COLUMNS.match(heading) or PIN_ALONE.fullmatch(text):
        return re.sub(r"^[\d-]+(?=$| \(|\n|:)", other_pins, text)
    return PINS.sub(other_pins, text)


PIN_COLUMNS = re.compile(r"(pin|what stands|left most often)(?=[;,]|$)")
PIN_ALONE = re.compile(r"\d+\n\d+ %")
ONE = r"(?:10|[1-9])(?!\.?\d)"
PIN = r"(?<![\d.-])" + ONE
PINS = re.compile(
    rf"{PIN}(?=-pin| stands?\b)|(?!3-6-9 with){PIN}(?:-{ONE})+(?!-)|(?<=often left: ){PIN}"
    rf"|(?<=between the ){PIN}|(?<=deck over the ){PIN}|(?<=\d and the ){PIN}"
    rf"|(?:(?<=[fF]or the )|(?<=Missed: )){PIN}(?:, {PIN})*(?: and {PIN})?"
)


def other_pins(found):
    if "-" in found[0]:
        return "-".join(map(str, sorted(MIRROR[int(pin)] for pin in found[0].split("-"))))
    return re.sub(r"\d+", lambda pin: str(MIRROR[int(pin[0])]), found[0])

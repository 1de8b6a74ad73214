"""The card of a bowler as a panel: its four pages on the screen, on paper to be folded."""

from dataclasses import replace
from functools import lru_cache

from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.bowler_card import bowler_card
from bowlcore.coaching.evening_told import on_the_pair
from bowlcore.coaching.feet import line_words, on_line
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.typed_names import read_names
from bowlcore.coaching.words import percent
from bowlcore.display.bowler_card_page import CSS, card_page, card_section
from bowlcore.display.controls import Choice, Number, Words, starting
from bowlcore.display.handouts import before_league_page
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.printing import SCREEN, paper_controls, paper_of, paper_words, with_written, write_pages
from bowlcore.motion.units import KMH_PER_MPH

WRITE, BEFORE = "Write the card", "Write 'ten minutes before league'"
ONE_LANE = "one lane only"
_OWN = ("axis_rotation_deg", "axis_tilt_deg", "speed_mph", "rev_rate_rpm")


def card_panel(**start):
    """The card of a bowler on a lane or a pair; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("bowler", "Bowler (invented)", list(load_bowlers()), at("bowler", "league one-hander")),
            Choice("left", "Left lane", pattern_options(), at("left", "house")),
            Choice("right", "Right lane", [(ONE_LANE, ""), *pattern_options()], at("right", "dried_out")),
            Number("bowlers", "On the pair", "bowlers", 1, 6, 1, at("bowlers", 2)),
        ]
        folds = {
            "A real person": _person(at),
            "Name and paper": [
                Words("name", "Name on the card", _one_name, "AK", at("name", "")),
                *paper_controls(at),
            ],
        }
    return Panel("card_panel", draw, main, folds, {WRITE: _write, BEFORE: _write_before})


def _person(at):
    """Numbers of one's own, in place of the invented bowler's; scatter and what can be changed stay the bowler's."""
    own = [("the bowler's above", False), ("typed below", True)]
    mph = ("km/h", KMH_PER_MPH, 0.2)
    return [
        Choice("own", "Hand and line", own, at("own", False)),
        Number("speed_mph", "Ball speed", "mph", 6, 24, 0.1, at("speed_mph", 17), mph),
        Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
        Number("axis_rotation_deg", "Axis rotation", "degrees", 0, 90, 1, at("axis_rotation_deg", 45)),
        Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 45, 1, at("axis_tilt_deg", 13)),
        Number("slide_board", "Slide foot", "board", 2, 38, 0.5, at("slide_board", 24)),
        Number("over_board", "Over, at the arrows", "board", 2, 34, 0.5, at("over_board", 13.5)),
    ]


def draw(metric=False, hand="right", written=None, **values) -> Drawn:
    """The card as four pages, its first line in words, and every line as a row."""
    card = _card(*_asked(values))
    names = _one_name(values["name"])
    lanes = " and ".join(f"{column.lane or 'this'} lane: {_told(column)}" for column in card.columns)
    folded = "not to be folded" if values["large"] else "folded twice it is a card of A6"
    sentence = f"{lanes[0].upper()}{lanes[1:]}. On {paper_words(values['size'], values['large'])}; {folded}."
    rows = [
        {
            "lane": column.lane or "this",
            "if": line.seen,
            "do": line.change.words,
            "in the pocket": percent(line.change.after.pocket),
        }
        for column in card.columns
        for line in column.lines
    ]
    section = card_section(card, names, _about(values), large=True)
    shown = f'<style>{CSS}{SCREEN}</style><div class="bm-preview">{section}</div>'
    return Drawn(shown, with_written(sentence, written, values, hand), rows)


def _told(column):
    return f"{line_words(column.bowler.release, column.bowler.feet)} ({percent(column.pocket)} in the pocket)"


def _asked(values):
    """What the card depends on, apart from name and paper."""
    own = tuple(values[name] for name in (*_OWN, "slide_board", "over_board")) if values["own"] else None
    return values["bowler"], own, values["left"], values["right"], int(values["bowlers"])


@lru_cache(maxsize=32)
def _card(name, own, left, right, bowlers):
    every = load_bowlers()
    company = [every[other] for other in on_the_pair(name, bowlers) if other != name][: bowlers - 1]
    return bowler_card(_bowler(name, own), _lanes(left, right), company=company)


def _bowler(name, own):
    bowler = load_bowlers()[name]
    if own is None:
        return bowler
    *hand, slide, over = own
    release = replace(bowler.release, **dict(zip(_OWN, hand, strict=True)))
    return replace(bowler, release=on_line(release, bowler.feet, slide, over), name="")


def _lanes(left, right):
    return {"left": lane_of(left), "right": lane_of(right)} if right else lane_of(left)


def _about(values):
    shapes = dict((name, title) for title, name in pattern_options())
    left, right = shapes[values["left"]], shapes.get(values["right"])
    return f"left: {left}; right: {right}" if right else left


def _one_name(text):
    names = read_names(text)
    if len(names) > 1:
        raise ValueError(f"one name belongs on a card, got {len(names)}")
    return names[0] if names else ""


def _write(panel):
    def make(values, hand):
        paper = paper_of(values)
        return {"card": card_page(_card(*_asked(values)), _one_name(values["name"]), _about(values), **paper)}

    write_pages(panel, make)


def _write_before(panel):
    def make(values, hand):
        name, own, left, right, _ = _asked(values)
        lanes = _lanes(left, right) if right else {"": lane_of(left)}
        paper = paper_of(values)
        return {
            "before_league": before_league_page(_bowler(name, own), lanes, _one_name(values["name"]), **paper)
        }

    write_pages(panel, make)

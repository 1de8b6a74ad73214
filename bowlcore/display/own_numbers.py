"""Find your own numbers: the slide board for each pin, a staircase for each ball; and the page to print."""

import numpy as np

from bowlcore.coaching import own_numbers, words
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spares import BALLS, PLAIN_BALL
from bowlcore.display import style
from bowlcore.display.controls import Choice, starting, target_number
from bowlcore.display.handouts import own_numbers_page
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.printing import PAPER, paper_controls, paper_of, paper_words, with_written, write_pages
from bowlcore.display.simple_chart import TITLE, chart
from bowlcore.display.spares import bowler_of

WRITE = "Write the page"


def own_numbers_panel(**start):
    """Where the feet go for each pin, target fixed, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("bowler", "Bowler (invented)", list(load_bowlers()), at("bowler", "league one-hander")),
            Choice("ball", "Ball", list(BALLS), at("ball", PLAIN_BALL)),
            target_number(at, 5, 30, 13.5),
            Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
        ]
        folds = {"Paper": paper_controls(at)}
    return Panel("own_numbers_panel", draw, main, folds, {WRITE: _write}, lines=4)


def draw(metric=False, hand="right", written=None, **values) -> Drawn:
    """The staircase, the sentence and the table of feet."""
    told, ball = _told(values, hand), values["ball"]

    def paint(axes):
        place = _places(told.pins, hand)
        for name, numbers in told.numbers.items():
            mine = name == ball
            axes.plot(place, numbers.slide_board, **_look(mine))
            for x, board in zip(place, numbers.slide_board, strict=True):
                if mine and board == board:
                    axes.annotate(words.halves(board), (x, board), (0, -13), textcoords="offset points",
                                  ha="center", color=style.BLUE, fontweight="bold")  # fmt: skip
        seen = np.concatenate([numbers.slide_board for numbers in told.numbers.values()])
        low, high = (np.nanmin(seen), np.nanmax(seen)) if np.isfinite(seen).any() else (0, 40)
        axes.set_ylim(low - 5, high + 3)

    paper = paper_of(values)
    other = "" if paper == PAPER else f" To print: {paper_words(**paper)}."
    sentence = with_written(told.sentence + other, written, values, hand)
    alt = f"{sentence} Picture: slide board for each pin, as seen from the approach, a line a ball."
    still = _frame, tuple(told.pins), hand, ball
    return Drawn(chart(alt, paint, still=still, moves="y"), sentence, told.rows)


def _look(mine):
    """Of a ball's line: the chosen one's, or the other's."""
    color, dash, size = (style.BLUE, "-", 6) if mine else (style.GREY, (0, (4, 3)), 4.5)
    return {"color": color, "linewidth": 1.2, "linestyle": dash, "marker": "o", "markersize": size,
            "mfc": style.BLUE if mine else "white"}  # fmt: skip


def _places(pins, hand):
    """From left to right: the 7-pin left, as people see it."""
    return np.arange(len(pins))[:: 1 if hand == "left" else -1]


def _frame(axes, pins, hand, ball):
    for name in BALLS:
        axes.plot([], [], label=name, **_look(name == ball))
    axes.legend(
        loc="center left", bbox_to_anchor=(1.02, 0.5), frameon=False, alignment="left",
        title="numbers: where to slide\nno mark: no place to stand",
    )  # fmt: skip
    axes.set_xlim(-0.05 * (len(pins) - 1), 1.05 * (len(pins) - 1))
    axes.set_xticks(_places(pins, hand), list(map(str, pins)))
    axes.set_title("Where the slide foot stops for each pin, the target kept", **TITLE)
    axes.set_xlabel("pin, from left to right as seen from the approach")
    axes.set_ylabel(f"board of the slide foot,\nfrom the {hand}")


def _told(values, hand):
    bowler, lane = bowler_of(values["bowler"], hand), lane_of(values["pattern"])
    return own_numbers.answer(bowler, lane, values["target_board"], values["ball"])


def _write(panel):
    def make(values, hand):
        shape = {name: title for title, name in pattern_options()}[values["pattern"]]
        what = (
            f"{values['bowler'].capitalize()}, {values['ball']}, target on board {words.halves(values['target_board'])} at the "
            f"arrows; oil: {shape}."
        )
        return {"own_numbers": own_numbers_page(_told(values, hand), what, **paper_of(values))}

    write_pages(panel, make)

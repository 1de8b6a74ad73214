"""Twenty balls of one bowler, the same hit each time: what they leave, in words."""

from bowlcore.coaching import pocket
from bowlcore.display import style
from bowlcore.display.controls import Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.simple_chart import chart

SIZE = (11.5, 2.2)


def twenty_balls_panel(**start):
    """Twenty equal hits as a live panel; a button throws twenty others.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Number("entry_board", "Comes in on", "board", 10, 30, 0.5, at("entry_board", 17.5)),
            Number("entry_angle_deg", "Entry angle", "degrees", 0, 8, 0.5, at("entry_angle_deg", 3.0)),
        ]
    return Panel("twenty_balls_panel", draw, main, buttons={"Throw twenty others": _others})


def _others(panel):
    panel.memory["seed"] = panel.memory.get("seed", 1) + 1


def draw(entry_board, entry_angle_deg, metric=False, hand="right", seed=1) -> Drawn:
    """The twenty leaves, the sentence, and how often each came."""
    texts, sentence = pocket.twenty_balls(entry_board, entry_angle_deg, seed=seed, hand=hand)

    def paint(axes):
        axes.set_axis_off()
        axes.set_xlim(0, 5)
        axes.set_ylim(3.6, -0.6)
        for i, text in enumerate(texts):
            strike = text == "strike"
            told = f"{text}-pin" if text.isdecimal() else text
            axes.text(
                i % 5, i // 5, told, ha="left", va="center", fontsize=style.TEXT_PT + 5,
                color=style.GREEN if strike else style.BLACK, fontweight="bold" if strike else "normal",
            )  # fmt: skip

    rows = [
        {"what stands": text, "of twenty": str(texts.count(text))}
        for text in sorted(set(texts), key=lambda text: (-texts.count(text), text))
    ]
    alt = f"{sentence} Picture: the twenty leaves in the order thrown, as words in four lines of five."
    return Drawn(chart(alt, paint, (0.02, 0.0, 0.97, 1.0), SIZE), sentence, rows)

"""Published spare counts beside this model's bounds: what agrees, and what does not.

Televised finals 2005-10 (a web page on ESPN The Magazine's counts, known second-hand): tries and shares made.
"""

from dataclasses import replace

from bowlcore.coaching import words
from bowlcore.coaching.bowler import SCATTERED, Spread, load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spare_windows import spare_leave, touched
from bowlcore.coaching.spares import PLAIN_BALL, ball_for, lines_to_middle
from bowlcore.motion.many import sweep_columns

PUBLISHED = {"10": (710, 0.959), "7": (333, 0.955), "9": (88, 0.989), "3-10": (35, 0.486), "7-10": (53, 0.0)}
SCATTER = 0.7  # of an ordinary bowler's: in this course it gives the published strikes of professionals
_LAYDOWN = {"10": 25.0, "3-10": 25.0, "9": 20.0, "7": 15.0, "7-10": 25.0}  # across the lane: common practice


def answer():
    """(sentence, rows) for a steady invented bowler with a plain ball on the flat shape, and on the house shape."""
    rows, worst = [], 0.0
    for text, (tries, made) in PUBLISHED.items():
        row = {"leave": text, "published: made": f"{100 * made:.1f} % of {tries}"}
        for pattern in ("flat", "house"):
            low, well, touch = bounds(text, pattern)
            low = well if len(spare_leave(text).pins) == 1 else low
            row[f"{pattern} shape, this model"] = f"{words.between(low, touch).replace('and', 'to')} in 100"
            if len(spare_leave(text).pins) == 1:
                worst = max(worst, well - made, made - touch)
        rows.append(row)
    sentence = (
        "One pin: from balls that hit it a board inside the window to any touch. Several pins: from balls that would "
        "touch every one to balls that touch the pin in front. "
    )
    if worst > 0.02:
        sentence += f"The furthest that a published single pin lies outside is {100 * worst:.0f} points."
    else:
        sentence += "Every published single pin lies inside, or within two points."
    return sentence, rows


def bounds(leave, pattern="house"):
    """Shares that touch every pin, hit the front pin a board inside its window, and touch it at all."""
    here, bowler = spare_leave(leave), load_bowlers()["league one-hander"]
    spread = Spread(**{name: SCATTER * getattr(bowler.spread, name) for name in SCATTERED})
    ball, lane = ball_for(bowler, PLAIN_BALL), lane_of(pattern)
    stand = replace(bowler.release, laydown_board=_LAYDOWN[here.text])
    line = lines_to_middle([stand], [here], lane, ball, keep="feet")[0]
    marks, _ = sweep_columns(replace(bowler, release=line, spread=spread).shots(), lane, ball)
    there = marks["entry_board"], marks["entry_angle_deg"]
    every, _ = touched(here, *there, thin_boards=0.0)
    front = spare_leave(here.pins[0])
    well, _ = touched(front, *there)
    touch, _ = touched(front, *there, thin_boards=0.0)
    return float(every.mean()), float(well.mean()), float(touch.mean())

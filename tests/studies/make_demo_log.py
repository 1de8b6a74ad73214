"""Writes data/demo_log.csv: an invented six-week youth course. Run: python tests/studies/make_demo_log.py

Six bowlers, one evening a week on one pair: eight practice balls each, then a game. From week 4 on two of them
try something new. What it really changes stands in TRULY below; nothing changes for the other. No person was watched.
"""

import random
from datetime import date, timedelta
from pathlib import Path

from bowlcore.coaching.frame_scores import score_of
from bowlcore.coaching.log_csv import COLUMNS, to_csv
from bowlcore.coaching.log_entries import Session, Shot, Total
from bowlcore.coaching.log_games import balls_of
from bowlcore.coaching.practice_log import PracticeLog
from bowlcore.rack.leave import MIRROR

FILE = Path(__file__).parents[2] / "data" / "demo_log.csv"
SEED, WEEKS, PRACTICE = 31, 6, 8
FIRST_DAY = date(2026, 1, 8)

# initials: hand, slide foot, board at the arrows, scatter there [boards], chance of each single pin
BOWLERS = {
    "AK": ("right", 22, 13, 2.2, 0.55),
    "BN": ("right", 21, 12, 2.8, 0.45),
    "CM": ("left", 22, 13, 1.6, 0.60),
    "DR": ("right", 20, 14, 3.2, 0.35),
    "EL": ("right", 23, 13, 1.9, 0.55),
    "FT": ("right", 21, 12, 2.5, 0.45),
}
USUAL, ARROWS, COUNT = "as always", "eyes on the arrow", "counting the steps"
TRYING = {"AK": ARROWS, "EL": COUNT}  # from week 4 on
TRULY = {ARROWS: 0.5, COUNT: 1.0}  # scatter at the arrows times this: the one helps, the other does nothing

_BOARDS_A_BOARD = 1.6  # at the pins for one at the arrows: the house shape pulls misses back (chosen)
_NOISE_BOARDS = 2.0  # at the pins, from speed and hand (chosen)
# leaves of a right-hander for each hit, with weights: chosen, after what is often said of them
LEAVES = {
    "flush": [("strike", 52), ("10", 16), ("8", 4), ("9", 5), ("7", 5), ("4", 6), ("6-10", 5), ("4-7", 4), ("3-10", 3)],
    "light": [("strike", 14), ("10", 10), ("5", 9), ("7", 9), ("2-8", 9), ("2-4-5", 8), ("2-4-5-8", 9), ("5-7", 6),
              ("2-10", 5), ("2-4-10", 7), ("2-4-8", 7), ("2-4-7-8", 7)],
    "high": [("strike", 12), ("4", 15), ("9", 8), ("4-9", 11), ("6-10", 10), ("3-10", 9), ("4-7", 10), ("3-6-10", 8),
             ("6", 9), ("7-10", 1), ("3-9", 7)],
    "nose": [("strike", 3), ("4-6", 12), ("4-6-7-10", 14), ("3-6-7-10", 11), ("4-6-7-9-10", 8), ("4-7-10", 12), ("3-10", 15),
             ("2-7", 13), ("6-7", 12)],
    "other side": [("strike", 15), ("7", 13), ("4-7", 13), ("3-5-6", 12), ("3-6-10", 11), ("3-5", 12), ("3-6", 9), ("8", 15)],
    "missed": [("1-2-4-10", 12), ("1-2-4-7", 10), ("1-2-4-5-7-8", 20), ("1-2-3-4-5-7-8-9", 18), ("1-2-3-4-5-6-7-8-9", 14),
               ("1-2-3-4-5-6-7-8-9-10", 26)],
}  # fmt: skip
SAID = [
    "",
    "",
    "",
    "",
    "",
    "",
    "tugged it",
    "slow feet",
    "felt good",
    "early arm",
    "ball too heavy today?",
    "yes!",
]


def one_ball(rng, who, week, lane):
    """Where it crosses the arrows, how it hits, and what stays."""
    hand, _, over, scatter, _ = BOWLERS[who]
    trying = TRYING.get(who, USUAL) if week >= 3 else USUAL
    arrow = rng.gauss(over, scatter * TRULY.get(trying, 1.0))
    carried = 0.8 if lane == "left" else -0.4  # the left lane hooks more (chosen)
    board = 17.4 + carried + _BOARDS_A_BOARD * (arrow - over) + rng.gauss(0, _NOISE_BOARDS)
    arrow = min(max(round(2 * arrow) / 2, 0.0), 40.0)
    hit = _hit(board)
    leaves, weights = zip(*LEAVES[hit], strict=True)
    standing = Shot(who, standing=rng.choices(leaves, weights)[0]).standing
    if hand == "left":
        standing = Shot(who, standing=tuple(MIRROR[pin] for pin in standing)).standing
    return arrow, hit, standing, trying


def _hit(board):
    if not 9.5 < board < 30.5:
        return "missed"
    edges = ((16.0, "light"), (19.0, "flush"), (21.0, "high"), (23.0, "nose"))
    return next((word for edge, word in edges if board < edge), "other side")


def second_ball(rng, who, standing):
    """Pins that the second ball takes."""
    single = BOWLERS[who][4]
    if len(standing) == 1:
        return int(rng.random() < single * (0.75 if standing[0] in (7, 10) else 1.0))
    if rng.random() < (0.5 * single if len(standing) < 5 else 0.1 * single):
        return len(standing)
    return rng.randint(0, len(standing) - 1)


def turn(rng, who, week, lane, game, second=True):
    """One shot, as it is written on the sheet."""
    arrow, hit, standing, trying = one_ball(rng, who, week, lane)
    _, slide, over, _, _ = BOWLERS[who]
    took = second_ball(rng, who, standing) if standing and second else None
    return Shot(who, standing, took, hit, lane, slide, over, arrow, trying, rng.choice(SAID), game)


def game_of(rng, who, week):
    """Ten frames with the balls that a strike or spare in the last one earns."""
    lanes = ("left", "right")
    shots = [turn(rng, who, week, lanes[frame % 2], 1) for frame in range(10)]
    if not shots[-1].standing:
        shots.append(turn(rng, who, week, "right", 1))
        if not shots[-1].standing:
            shots.append(turn(rng, who, week, "right", 1, second=False))
    elif shots[-1].made:
        shots.append(turn(rng, who, week, "right", 1, second=False))
    return shots


def build(log):
    """Fill a log with the course."""
    rng, number = random.Random(SEED), 0

    def keep(letter):
        nonlocal number
        number += 1
        return f"{letter}{number:05d}"

    for who, (hand, *_) in BOWLERS.items():
        log.add_bowler(who, hand)
    for week in range(WEEKS):
        note = f"week {week + 1} of 6" + (": from today two try something new" if week == 3 else "")
        day = FIRST_DAY + timedelta(weeks=week)
        session = log.add_session(Session(day, "a centre that does not exist", 7, 8, note), keep("s"))
        for number_of_ball in range(PRACTICE):
            for who in BOWLERS:
                lane = ("left", "right")[number_of_ball % 2]
                log.add_shot(session, turn(rng, who, week, lane, None), keep("k"))
        for who in BOWLERS:
            shots = game_of(rng, who, week)
            for shot in shots:
                log.add_shot(session, shot, keep("k"))
            log.add_total(session, Total(who, 1, score_of(balls_of(shots))), keep("t"))


def text():
    """The file as it is shipped."""
    head = {
        "title": "a six-week youth course of six bowlers, made up for teaching",
        "version": "1",
        "source": "invented; no person was watched. Written by tests/studies/make_demo_log.py, which says what is true in it",
        "licence": "CC0-1.0",
        "frame": "boards from each bowler's own side; pins as all number them",
    }
    lines = [f"# {name}: {said}" for name, said in head.items()]
    lines += [f"# column: {name} {said}" for name, said in COLUMNS.items()]
    with PracticeLog(":memory:") as log:
        with log.together():
            build(log)
        return to_csv(log, header="\n".join(lines) + "\n")


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8", newline="\n")
    print(f"{FILE.name}: {FILE.stat().st_size / 1e3:.0f} kB")

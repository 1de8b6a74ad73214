"""Worksheets about reading and change: 06 two late balls, 07 a lane that changes, 10 luck or better."""

from dataclasses import replace
from math import isnan

from bowlcore.coaching import words
from bowlcore.coaching.bowler import Bowler
from bowlcore.coaching.luck import band_of_share, chance_better, in_hundred
from bowlcore.coaching.moves import best_move, move_words
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.sheet import Ask, Blank, Lane, Line, Pins, Table
from bowlcore.coaching.sheet_numbers import (
    clear,
    computed_with,
    draw_shot,
    feet,
    first_pin,
    given_of,
    hand_of,
    hit_word,
    line_of,
)
from bowlcore.coaching.sheet_paths import DRAW, FURTHER, WATCH, Made, angle, board, further, guess
from bowlcore.coaching.transition import CARRIED, TAKEN_UP, play_shots
from bowlcore.motion.path import simulate

_GAMES = (0, 20, 40)  # balls of one bowler along one track
_LIGHT_BOARD = 13.0
_LATE = ("it still skidded", "it rolled too early")
_LESS = {"axis_rotation_deg": -25, "rev_rate_rpm": -80}  # a hand that gives less turn


def changing_lane(rng, level, hand) -> Made:
    """07: the same ball again and again; the lane changes under it."""

    def worth_it(one):
        return abs(one.path.entry_board - words.POCKET_BOARD) <= 1.2 and one.path.breakpoint_ft > 20

    shot = draw_shot(rng, level, hand, good=worth_it)
    lanes, lane = [lane_of("house")], lane_of("house")
    for before, after in zip(_GAMES, _GAMES[1:], strict=False):
        lane, _ = play_shots(lane, [shot.release] * (after - before), shot.ball)
        lanes.append(lane)
    paths = [simulate(shot.release, each, shot.ball) for each in lanes]
    columns = ["balls bowled", "my guess", "comes in on board", "light, pocket or high"]
    rows = [
        (f"{count}", guess(), board(path), Blank(hit_word(path.entry_board)))
        for count, path in zip(_GAMES, paths, strict=True)
    ]
    if level == "from 14":
        columns.append("entry angle (degrees)")
        rows = [(*row, angle(path)) for row, path in zip(rows, paths, strict=True)]
    parts = [
        Lane(f"{DRAW} The lane is fresh.", "house", (Line("", shot),)),
        Table(
            "Each ball takes up a little of the oil. On which board does the same ball come in?",
            tuple(columns),
            tuple(rows),
        ),
        Ask(
            f"After {_GAMES[-1]} balls: where does the same ball come in, against the first one?",
            further(paths[-1], paths[0]),
            FURTHER,
        ),
    ]
    if level == "8-9":
        path = paths[-1]
        parts.append(
            Pins(
                f"After {_GAMES[-1]} balls: which pin does it meet first? Put a ring round it.",
                (first_pin(path.entry_board, path.entry_angle_deg, hand),),
            )
        )
    else:
        move = best_move(Bowler(shot.release, ball=shot.ball), lanes[-1])
        parts.append(
            Ask(
                f"After {_GAMES[-1]} balls: do you move or stay? If you move: how many boards at the foul line, how many at "
                "the target, and which way?",
                move_words(move.feet, move.target),
            )
        )
    computed = (
        f"{computed_with(shot)} Each ball takes up {100 * TAKEN_UP:g} % of the oil under it and lays {100 * CARRIED:g} % of "
        "that down again further on: invented. Move: the smallest that does about as much as any, if it is worth ten balls "
        "in 100, for an ordinary scatter."
    )
    return Made(
        WATCH if level == "8-9" else "",
        given_of(shot, level),
        tuple(parts),
        computed,
    )


def two_late_balls(rng, level, hand) -> Made:
    """06: one comes in light because it still skids, one because the hand gave less turn."""

    def pair(one):
        skids, rolls = _late_pair(one)
        light = all(clear(each.path, 6.0, 15.4) for each in (skids, rolls))
        late = isnan(skids.path.roll_start_ft)
        return light and late and rolls.path.roll_start_ft < words.IN_TIME_FT + 0.5

    drawn_from = "from 10" if level == "8-9" else level  # one hand alone hardly ever gives such a pair
    shot = draw_shot(
        rng,
        drawn_from,
        hand,
        good=lambda one: abs(one.path.entry_board - words.POCKET_BOARD) <= 2 and pair(one),
    )
    skids, rolls = _late_pair(shot)
    order = rng.random() < 0.5
    balls = dict(zip("AB", (skids, rolls) if order else (rolls, skids), strict=True))
    which = {letter: _LATE[0] if one is skids else _LATE[1] for letter, one in balls.items()}
    columns = ["ball", "comes in on board", "how it finishes", "which of the two"]
    rows = []
    for letter, one in balls.items():
        last = (
            "still sliding at the pins"
            if one is skids
            else f"straight from {feet(one.path.roll_start_ft)} on"
        )
        rows.append((letter, f"{words.halves(one.path.entry_board)}", last, Blank(which[letter])))
    skid, roll = (next(k for k, one in balls.items() if one is each) for each in (skids, rolls))
    parts = [
        Lane(
            "Ball A: draw the way that it may have gone. Thick while it turns, dots while it rolls straight.",
            "house",
            (Line("A", balls["A"]),),
        ),
        Lane("Ball B: the same.", "house", (Line("B", balls["B"]),)),
        Table(
            "Both come in light, and both were over their target. Which one still skidded, and which one rolled too early?",
            tuple(columns),
            tuple(rows),
        ),
        Ask("Which ball tells you to ask about the hand first?", roll, ("A", "B")),
        Ask("Which ball tells you that there is more oil than you thought?", skid, ("A", "B")),
        Ask(
            "Both were light. What would you look at next, before you change anything?",
            "the last twenty feet of one more ball",
            ("the score", "the last twenty feet of one more ball", "which pins stand"),
        ),
    ]
    given = (hand_of(shot)[0], *line_of(shot)) if level == "8-9" else given_of(shot, level)
    computed = f"Ball {skid}: {computed_with(skids)} Ball {roll}: {computed_with(rolls)}"
    return Made(WATCH if level == "8-9" else "", given, tuple(parts), computed)


def _late_pair(shot):
    """The same throw on a lane with more oil than was thought, and a throw with less turn on a drier lane."""
    hand = {name: max(getattr(shot.release, name) + by, 0) for name, by in _LESS.items()}
    more = min(("long_heavy", "flat"), key=lambda name: abs(shot.on(name).path.entry_board - _LIGHT_BOARD))
    return shot.on(more), replace(shot.but(**hand), pattern="dried_out")


def luck_or_better(rng, level, hand) -> Made:
    """10: good balls before and after a change, and whether that tells."""
    shot = draw_shot(rng, level, hand)
    balls = rng.choice((10, 12) if level == "8-9" else (12, 16, 20, 30, 60))
    good = rng.randint(balls // 4, balls // 2)
    after = min(good + rng.randint(1, max(balls // 3, 2)), balls)
    many = 5
    chances = [chance_better(good * k, balls * k, after * k, balls * k) for k in (1, many)]
    rows = [("before", f"{good} of {balls}"), ("after", f"{after} of {balls}")]
    columns = ["", "good balls"]
    if level != "8-9":
        columns += ["share, in 100", "its band, in 100"]
        rows = [
            (*row, Blank(words.percent(k / balls)), Blank(in_hundred(*band_of_share(k, balls))))
            for row, k in zip(rows, (good, after), strict=True)
        ]
    options = ("luck can do that easily", "it seems better", "it is better, nearly sure")
    parts = [
        Lane(f"{DRAW} Over this board is a good ball.", "house", (Line("", shot),)),
        Table("Good balls before a change, and after it.", tuple(columns), tuple(rows)),
    ]
    if level == "8-9":
        parts.append(
            Table(
                "Count.",
                ("how many more after the change?", "good balls in all"),
                ((Blank(f"{after - good}"), Blank(f"{good + after}")),),
            )
        )
    parts.append(Ask("What does it tell?", _verdict(chances[0], options), options))
    parts.append(
        Ask(
            f"{many} times as many balls, and the same shares. What does it tell then?",
            _verdict(chances[1], options),
            options,
        )
    )
    parts.append(
        Table(
            "At the lanes: a friend writes. Say what is good before the first ball.",
            ("good is:", *map(str, range(1, 13))),
            (
                ("as always", *(guess() for _ in range(12))),
                ("trying one thing", *(guess() for _ in range(12))),
            ),
        )
    )
    computed = (
        f"Chance that the second share is really the larger: {words.percent(chances[0])}, with {many} times as many "
        f"{words.percent(chances[1])}; under 90 % we say luck can do that, from 98 % nearly sure (our limits). "
        f"{computed_with(shot)}"
    )
    return Made(WATCH if level == "8-9" else "", given_of(shot, level), tuple(parts), computed)


def _verdict(chance, options):
    return options[0] if chance < 0.90 else options[2] if chance >= 0.98 else options[1]

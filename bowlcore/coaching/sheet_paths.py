"""Worksheets about the path: 00 one shot, 02 skid, hook, roll, 03 several oils."""

from math import cos, isfinite, radians
from typing import NamedTuple

from bowlcore.coaching import words
from bowlcore.coaching.sheet import Ask, Blank, Lane, Line, Pins, Table
from bowlcore.coaching.sheet_numbers import (
    clear,
    computed_with,
    draw_shot,
    feet,
    first_pin,
    given_of,
    hit_word,
    plain_first_pin,
    pocket_told,
    speed,
)
from bowlcore.motion import units
from bowlcore.motion.closed_form import final_heading_deg

SHAPES = {
    "house": "house shape",
    "dried_out": "dried out",
    "long_heavy": "long and heavy",
    "short": "short",
    "flat": "flat shape",
}
FURTHER = ("further in", "on the same board", "further out")
DRAW = "Draw the ball's way before anyone shows it: thin for skid, thick for hook, dots for roll."
_PARTS = ("skids", "hooks", "rolls")
SLOWER_MPH = -2.0
_BALLS = 8  # of a counted trial
_OVER = "O for over the arrow I said, L or R for the side on which it passed"


class Made(NamedTuple):
    """What a maker makes of one set of numbers."""

    intro: str
    given: tuple
    parts: tuple
    computed: str


def board(path) -> Blank:
    """Where it comes in."""
    return Blank(words.halves(path.entry_board))


def angle(path) -> Blank:
    """How steeply, in degrees."""
    return Blank(words.halves(path.entry_angle_deg))


def guess() -> Blank:
    """A cell for a guess, which has no right answer."""
    return Blank("")


def further(now, before) -> str:
    """Which of FURTHER, by the half boards that are printed."""
    by = words.to_half(now.entry_board) - words.to_half(before.entry_board)
    return FURTHER[0] if by > 0 else FURTHER[2] if by < 0 else FURTHER[1]


def counted(told, *what) -> Table:
    """Room for what a partner writes at the lanes, a column a ball."""
    columns = ("ball", *map(str, range(1, _BALLS + 1)))
    return Table(
        f"At the lanes a partner writes: {told}.", columns, tuple((row, *_guesses()) for row in what)
    )


def _guesses():
    return (guess() for _ in range(_BALLS))


def start_here(rng, level, hand) -> Made:
    """00: one ordinary shot, and the same on a lane that has dried out."""

    def tells(one):
        if not hooks(one) or not clear(one.on("dried_out").path):
            return False
        if level == "8-9":
            return plain_first_pin(one.path, hand)
        return level != "from 14" or _turned(one.on("dried_out"), one) != _turned(_slower(one), one)

    shot = draw_shot(rng, level, hand, good=tells)
    dry, path = shot.on("dried_out"), shot.path
    parts = [Lane(DRAW, "house", (Line("", shot),))]
    dries = Ask(
        "The lane dries out: less oil everywhere. Same ball, same start. Where does it come in?",
        further(dry.path, path),
        FURTHER,
    )
    if level == "8-9":
        pin = first_pin(path.entry_board, path.entry_angle_deg, hand)
        table = [("fresh oil", guess(), board(path)), ("dried out", guess(), board(dry.path))]
        parts += [
            Pins("Which pin does the ball meet first? Put a ring round it.", (pin,)),
            Table(
                "On which board is it when it comes to the pins?", ("lane", "my guess", "board"), tuple(table)
            ),
            dries,
            counted(_OVER, "it went"),
        ]
        return Made(WATCH, given_of(shot, level), tuple(parts), computed_with(shot))
    shots = [("fresh oil", shot), ("dried out", dry)]
    columns = ["lane", "breakpoint (board)", "rolls from", "comes in on board", "light, pocket or high"]
    if level == "from 14":
        slower = _slower(shot)
        shots.append((f"fresh oil, but {speed(slower.release.speed_mph)}", slower))
        columns.append("entry angle (degrees)")
    rows = tuple((name, *_facts(one, level)) for name, one in shots)
    parts += [
        Table(
            f"Fill in. Ask for the answers, or set these numbers on the screen. {pocket_told()}",
            tuple(columns),
            rows,
        ),
        dries,
    ]
    if level == "from 14":
        near = min(
            ("the drier lane", dry),
            ("the slower ball", shots[2][1]),
            key=lambda one: _turned(one[1], shot),
        )
        parts.append(
            Ask(
                "Look at the last two rows. Which of the two changes the entry angle less?",
                near[0],
                ("the drier lane", "the slower ball"),
            )
        )
    parts.append(counted(_OVER, "it went"))
    return Made("", given_of(shot, level), tuple(parts), computed_with(shot))


def skid_hook_roll(rng, level, hand) -> Made:
    """02: where it skids, hooks and rolls; from 14 the final direction with a pencil."""
    shot = draw_shot(
        rng,
        level,
        hand,
        good=lambda one: (
            hooks(one)
            and one.path.roll_start_ft < 58.5
            and (level != "8-9" or plain_first_pin(one.path, hand))
        ),
    )
    path = shot.path
    ends = (path.hook_start_ft, path.roll_start_ft)
    places = [at for at in (10, 20, 30, 40, 45, 50, 55, 59) if min(abs(at - end) for end in ends) > 1.0]
    asked = _one_of_each(rng, places, path)
    rows = tuple(
        (f"{at} ft", *(Blank("x" if _part_at(path, at) == part else "") for part in _PARTS)) for at in asked
    )
    parts = [
        Lane(DRAW, "house", (Line("", shot),)),
        Table(
            "What does the ball do at these places? One cross in each row.",
            ("from the foul line", *_PARTS),
            rows,
        ),
    ]
    parts.append(
        Ask(
            "The ball rolls, and oil still lies on one side of it, dry boards on the other. Does it turn any more?",
            "no, it goes straight",
            ("yes, towards the dry", "no, it goes straight", "yes, towards the oil"),
        )
    )
    if level == "8-9":
        pin = first_pin(path.entry_board, path.entry_angle_deg, hand)
        parts.append(Pins("Which pin does the ball meet first? Put a ring round it.", (pin,)))
        return Made(WATCH, given_of(shot, level), tuple(parts), computed_with(shot))
    dry = shot.on("dried_out").path
    row = ("this lane", Blank(feet(ends[0])), Blank(feet(ends[1])))
    drier = ("dried out", Blank(feet(dry.hook_start_ft)), Blank(feet(dry.roll_start_ft)))
    parts.append(Table("Where does each part begin?", ("lane", "starts to hook", "rolls from"), (row, drier)))
    if level == "from 14":
        v, w, b = pencil_numbers(shot)
        turn = pencil_turn(shot)
        parts.append(
            Ask(
                f"With a pencil: tan(turn) = b w sin(rotation) / (v + b w cos(rotation)). Here v = {v:.1f} mph, the spin "
                f"speed of the cover w = {w:.1f} mph, b = {b:.3f}. By how many degrees does this ball turn until it rolls, on "
                "any oil?",
                words.degrees(turn),
            )
        )
    return Made("", given_of(shot, level), tuple(parts), computed_with(shot))


def pencil_numbers(shot) -> tuple[float, float, float]:
    """v and w [mph, one decimal] and b, as printed for the pencil."""
    release, ball = shot.release, shot.ball
    w_mps = ball.radius_m * release.rev_rate_rpm * units.RPM_RADS * cos(radians(release.axis_tilt_deg))
    return release.speed_mph, round(w_mps / units.MPH_MPS, 1), round(ball.inertia_factor, 3)


def pencil_turn(shot) -> float:
    """The whole turn until it rolls [deg], from the printed numbers."""
    v, w, b = pencil_numbers(shot)
    return float(final_heading_deg(v, w, shot.release.axis_rotation_deg, b))


def five_oils(rng, level, hand) -> Made:
    """03: one release on several patterns."""
    others = rng.sample(("long_heavy", "short", "dried_out"), 1 if level == "8-9" else 2)
    names = ("house", *others)

    def apart(shot):
        found = [shot.on(name).path for name in names]
        if not hooks(shot) or not all(clear(path, 5.0, 33.0) for path in found):
            return False
        boards = sorted(path.entry_board for path in found)
        return all(b - a > 0.8 for a, b in zip(boards, boards[1:], strict=False))

    shot = draw_shot(rng, level, hand, good=apart)
    on = {name: shot.on(name) for name in names}
    lanes = [
        Lane(f"{'ABC'[i]}: {SHAPES[name]}. Draw the way of the ball.", name, (Line("", on[name]),))
        for i, name in enumerate(names[:2])
    ]
    columns = ["lane", "my guess", "comes in on board"]
    if level != "8-9":
        columns.append("rolls from")
    if level == "from 14":
        columns.append("entry angle (degrees)")
    rows = []
    for i, (name, one) in enumerate(on.items()):
        cells = [board(one.path), Blank(feet(one.path.roll_start_ft)), angle(one.path)][: len(columns) - 2]
        rows.append((f"{'ABC'[i]}: {SHAPES[name]}", guess(), *cells))
    furthest = max(on, key=lambda name: on[name].path.entry_board)
    parts = [
        *lanes,
        Table(
            "On which board does the same ball come in?",
            tuple(columns),
            tuple(rows),
        ),
        Ask(
            f"On which lane does it come in {'further' if level == '8-9' else 'furthest'} from your own gutter?",
            SHAPES[furthest],
            tuple(SHAPES[name] for name in names),
        ),
    ]
    if level == "from 14":
        rolled = sum(isfinite(one.path.roll_start_ft) for one in on.values())
        parts += [
            Ask("On how many of these lanes has it rolled before the pins?", f"{rolled}"),
            Ask(
                "What is alike wherever it has rolled?",
                "the entry angle",
                ("the board it comes in on", "the entry angle", "where it begins to roll"),
            ),
        ]
    return Made(WATCH if level == "8-9" else "", given_of(shot, level), tuple(parts), computed_with(shot))


WATCH = "A grown-up throws this ball. It bends."


def hooks(shot):
    """True where an eye sees the ball go out and come back before the pins."""
    path = shot.path
    return (
        path.breakpoint_ft > 20
        and path.breakpoint_board > 3
        and path.entry_angle_deg > 1.5
        and isfinite(path.hook_start_ft)
    )


def _slower(shot):
    return shot.but(speed_mph=shot.release.speed_mph + SLOWER_MPH)


def _turned(shot, before):
    """Difference of the entry angles as they are printed, in half degrees."""
    return abs(words.to_half(shot.path.entry_angle_deg) - words.to_half(before.path.entry_angle_deg))


def _facts(shot, level):
    path = shot.path
    facts = (
        Blank(words.halves(path.breakpoint_board)),
        Blank(feet(path.roll_start_ft)),
        board(path),
        Blank(hit_word(path.entry_board)),
    )
    return (*facts, angle(path)) if level == "from 14" else facts


def _one_of_each(rng, places, path):
    """Four places in order, each part of the path among them where that can be."""
    picked = [
        rng.choice(there) for part in _PARTS if (there := [at for at in places if _part_at(path, at) == part])
    ]
    others = [at for at in places if at not in picked]
    return sorted(picked + rng.sample(others, min(4 - len(picked), len(others))))


def _part_at(path, at_ft):
    if at_ft < path.hook_start_ft:
        return _PARTS[0]
    return _PARTS[1] if at_ft < path.roll_start_ft else _PARTS[2]

"""Worksheet 04: the same line, and one thing changed."""

from bowlcore.coaching import words
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.sheet import Ask, Blank, Lane, Line, Pins, Table
from bowlcore.coaching.sheet_numbers import clear, computed_with, draw_shot, first_pin, given_of
from bowlcore.coaching.sheet_paths import SLOWER_MPH, WATCH, Made, angle, board, further, guess, hooks
from bowlcore.motion.aiming import aim

_CHANGES = {
    "8-9": {
        "start 1 board further in": {"laydown_board": 1},
        "start 1 board further out": {"laydown_board": -1},
        "look 1 board further in": {"target_board": 1},
        "look 1 board further out": {"target_board": -1},
        "a slower ball": {"speed_mph": SLOWER_MPH},
        "a faster ball": {"speed_mph": -SLOWER_MPH},
    },
    "from 10": {
        "2 mph (3 km/h) slower": {"speed_mph": SLOWER_MPH},
        "2 mph (3 km/h) faster": {"speed_mph": -SLOWER_MPH},
        "rolled over a board 1 further out": {"target_board": -1},
        "rolled over a board 1 further in": {"target_board": 1},
        "60 rpm more": {"rev_rate_rpm": 60},
        "60 rpm fewer": {"rev_rate_rpm": -60},
    },
    "from 14": {
        "2 mph (3 km/h) slower": {"speed_mph": SLOWER_MPH},
        "60 rpm more": {"rev_rate_rpm": 60},
        "15 degrees more rotation": {"axis_rotation_deg": 15},
        "15 degrees less rotation": {"axis_rotation_deg": -15},
        "10 degrees more tilt": {"axis_tilt_deg": 10},
        "feet and target 2 boards in": {"laydown_board": 2, "target_board": 2},
    },
}


def one_change(rng, level, hand) -> Made:
    """04: the same line, and one thing changed."""
    names = list(_CHANGES[level])
    picked = rng.sample(names, 2)

    def works(shot):
        changed = [_changed(shot, level, name) for name in picked]
        return (
            hooks(shot) and all(clear(one.path, 10.0, 28.0) for one in changed) and _target(shot) is not None
        )

    shot = draw_shot(rng, level, hand, good=works)
    after = {name: _changed(shot, level, name) for name in picked}
    columns = ["ball", "my guess", "comes in on board", "further in or out"]
    rows = [("A: as printed", "", board(shot.path), "")]
    for letter, (name, one) in zip("BC", after.items(), strict=True):
        rows.append((f"{letter}: {name}", guess(), board(one.path), Blank(further(one.path, shot.path))))
    if level == "from 14":
        columns.append("entry angle (degrees)")
        rows = [(*row, angle(one.path)) for row, one in zip(rows, (shot, *after.values()), strict=True)]
    first = picked[0]
    both = (Line("A", shot), Line("B", after[first]))
    lanes = [
        Lane("Draw ball A with a thin line.", "house", both[:1]),
        Lane(f"Draw ball B, {first}, with a thick line. And ball A again, in dashes.", "house", both),
    ]
    if level == "8-9":
        lanes = [Lane(f"Draw ball A in dashes, and ball B, {first}, with a thick line.", "house", both)]
    parts = [
        *lanes,
        Table(
            "One thing is changed at a time. Guess first: further in, or further out?",
            tuple(columns),
            tuple(rows),
        ),
    ]
    moved = [
        abs(words.to_half(one.path.entry_board) - words.to_half(shot.path.entry_board))
        for one in after.values()
    ]
    more = "both alike" if moved[0] == moved[1] else "B" if moved[0] > moved[1] else "C"
    parts.append(Ask("Which change moved the ball more at the pins?", more, ("B", "C", "both alike")))
    if level == "8-9":
        pin = first_pin(after[first].path.entry_board, after[first].path.entry_angle_deg, hand)
        parts.append(Pins("Which pin does ball B meet first? Put a ring round it.", (pin,)))
    if level == "from 14":
        parts.append(
            Ask(
                "Feet and hand as printed: over which board must ball A be rolled to come in on 17.5?",
                words.halves(_target(shot)),
            )
        )
    return Made(WATCH if level == "8-9" else "", given_of(shot, level), tuple(parts), computed_with(shot))


def _changed(shot, level, name):
    return shot.but(
        **{field: getattr(shot.release, field) + by for field, by in _CHANGES[level][name].items()}
    )


def _target(shot):
    """The target board that brings the ball to board 17.5 with these feet; None if there is none."""
    try:
        return aim(shot.release, lane_of(shot.pattern), shot.ball).target_board
    except ValueError:
        return None

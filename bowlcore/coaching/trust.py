"""What in this course is true of any ball, and what was chosen: each with a number computed now."""

from dataclasses import replace

from bowlcore.coaching import words
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.ball import Ball
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import FrictionLaw

ORDINARY = Release(17, 300, 45, 13, 17, 13)  # common practice: an ordinary line on an ordinary house lane


def rows(metric=False, hand="right") -> list[dict]:
    """The table: one sentence of each kind a row."""
    law = FrictionLaw()
    here = replace(ORDINARY, hand=hand)
    on = {name: simulate(here, lane_of(name)) for name in ("short", "house", "dried_out")}
    angles = [path.entry_angle_deg for path in on.values()]
    boards = [path.entry_board for path in on.values()]
    tight, loose = (simulate(here, lane_of("house", percent)).entry_board for percent in (-10, 10))
    house = on["house"]
    lost = here.speed_mph - house.entry_speed_mph
    true = [
        "Once the ball rolls, its direction is fixed by the release and the ball. On three oil patterns "
        "(short, house, dried out) the ordinary "
        f"shot comes in on boards {words.halves(min(boards))} to {words.halves(max(boards))}, but its angle is "
        f"{words.degrees(min(angles))} on each (they differ by {max(angles) - min(angles):.2f} degrees).",
        "While it slips, friction pushes it in one unchanging direction, however the oil lies.",
        f"Friction slows it down: {words.speed(here.speed_mph, metric)} at release, "
        f"{words.speed(house.entry_speed_mph, metric)} at the pins "
        f"({lost / here.speed_mph:.0%} lost), whatever the oil, once it rolls.",
        "The weight of the ball cancels out of its path on the lane. It matters at the pins.",
    ]
    chosen = [
        f"How slippery the lane is: {law.oil:g} in thick oil, {law.dry:g} on dry boards. Ten percent tighter or looser "
        f"moves the ordinary shot from board {words.halves(house.entry_board)} "
        f"to {words.halves(tight)} or {words.halves(loose)}.",
        "The oil patterns are invented; no lane was measured. They were shaped so that ordinary lines reach the pocket.",
        f'"In the pocket" means within {words.halves(words.POCKET_REACH)} boards of {words.halves(words.POCKET_BOARD)}; '
        f'"in time" means rolling from {words.distance(words.IN_TIME_FT, metric)} or later.',
        f"The ball is as heavy and as large as most ({Ball().mass_lb:g} lb), with a radius of gyration of {Ball().rg_in:g} in, "
        "the same about every axis.",
    ]
    return [{"true of any ball": a, "chosen by us": b} for a, b in zip(true, chosen, strict=True)]

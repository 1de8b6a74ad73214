"""Worksheets about the hand: 01 what leaves the hand, 09 measuring a release, with a pencil and a clock."""

from math import cos, pi, radians

from bowlcore.coaching import words
from bowlcore.coaching.hand_numbers import KINDS, MATCHED, kind_of, spin_ratio
from bowlcore.coaching.measuring import mean_speed, release_speed, rev_rate_from_turns
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.sheet import Ask, Balls, Blank, Lane, Line, Table
from bowlcore.coaching.sheet_numbers import Shot, computed_with, draw_shot, given_of
from bowlcore.coaching.sheet_paths import DRAW, WATCH, Made
from bowlcore.motion import units
from bowlcore.motion.ball import Ball
from bowlcore.motion.release import Release

_ROTATIONS = {"from 10": (0, 30, 60, 90), "from 14": (0, 15, 30, 45, 60, 75, 90)}
_ROUND_FT = pi * Ball().diameter_in / 12.0  # once round the default ball
_FPS = (30, 60, 120)


def leaves_the_hand(rng, level, hand) -> Made:
    """01: turns and speed, spin against speed, where the axis looks."""
    return _turns(rng, hand) if level == "8-9" else _ratios(rng, level, hand)


def _turns(rng, hand):
    """Counting turns: whole numbers, no degrees."""
    seconds, turns = rng.choice((2, 3)), rng.sample(range(1, 7), 3)
    every_ft = 60.0 / (seconds * turns[0])
    board = rng.choice(range(8, 16))
    straight = Shot(
        Release(units.LANE_FT * units.FOOT_M / units.MPH_MPS / seconds, 0, 0, 0, board, board, hand=hand),
        "house",
        "benchmark",
    )
    marks = tuple(every_ft * k for k in range(1, seconds * turns[0] + 1) if every_ft * k < 60.5)
    rows = tuple(
        (letter, f"{each}", Blank(f"{each * seconds}")) for letter, each in zip("ABC", turns, strict=True)
    )
    most = "ABC"[turns.index(max(turns))]
    parts = (
        Lane(
            f"Ball A rolls straight along board {board}. Draw it, with a dot wherever it has turned once more.",
            "house",
            (Line("A", straight, marks),),
        ),
        Table("How many turns to the pins?", ("ball", "turns each second", "turns to the pins"), rows),
        Ask("All three are equally fast. Which one has the most spin for its speed?", most, tuple("ABC")),
        Balls(
            f"A strip of tape sits where the axis comes out of the ball, on its {_side(hand)}. Draw the axis, as seen "
            "from above.",
            (
                ("rolls like a wheel", 0.0, 0.0),
                ("turned half way to you", 45.0, 0.0),
                ("tape looks at you", 90.0, 0.0),
            ),
        ),
    )
    given = (("time to the pins", f"{seconds} seconds"), ("ball A rolls along board", f"{board}"))
    computed = f"Turns each second times {seconds} seconds; ball A turns once every {every_ft:.1f} ft. {hand}-hander."
    return Made(
        "Three balls need the same time to the pins. We count as if the spin stayed as it was.",
        given,
        parts,
        computed,
    )


def _ratios(rng, level, hand):
    """Spin against speed for three hands, and where the axis looks."""
    shot = draw_shot(rng, level, hand, good=lambda one: _clear_kind(one.release))
    others = [
        draw_shot(rng, level, hand, good=lambda one: _clear_kind(one.release)).release for _ in range(2)
    ]
    hands = [shot.release, *others]
    columns = ["hand", "ball speed, rev rate", "one turn takes (ft)"]
    if level == "from 14":
        columns += ["cos(tilt)", "spin over speed"]
    columns.append("which kind")
    rows = []
    for letter, one in zip("ABC", hands, strict=True):
        cells = [
            letter,
            f"{words.halves(one.speed_mph)} mph, {words.revs(one.rev_rate_rpm)}",
            Blank(f"{turn_ft(one):.1f}"),
        ]
        if level == "from 14":
            cells += [f"{cos(radians(one.axis_tilt_deg)):.2f}", Blank(f"{spin_ratio(one):.2f}")]
        rows.append((*cells, Blank(_kind(one, level))))
    low, high = MATCHED
    limits = (
        f"One turn takes 88 x mph / rpm feet of lane. Once round the ball is {_ROUND_FT:.2f} ft. Spin over speed: "
        f"{_ROUND_FT:.2f} / (one turn), times cos(tilt). Under {low:.2f} {KINDS[0]}, over {high:.2f} {KINDS[2]}; our limits."
        if level == "from 14"
        else f"One turn takes 88 x mph / rpm feet of lane. The fewer feet, the stronger the spin for this speed. "
        f"Over {_ROUND_FT / low:.1f} ft we say {KINDS[0]}, under {_ROUND_FT / high:.1f} ft {KINDS[2]}; our limits."
    )
    axes = rng.sample(_ROTATIONS[level], 3)
    most = max(range(3), key=lambda i: _strength(hands[i], level))
    parts = (
        Lane(f"{DRAW} Hand A.", "house", (Line("A", shot),)),
        Table(limits, tuple(columns), tuple(rows)),
        Ask("Which hand has the most spin for its speed?", "ABC"[most], tuple("ABC")),
        Balls(
            f"Axis seen from above: at 0 degrees of rotation the tape on it looks to the {_side(hand)}, at 90 it looks at you. "
            "Draw it.",
            tuple((f"{at} degrees", float(at), 0.0) for at in axes),
        ),
    )
    return Made("", given_of(shot, level), parts, computed_with(shot))


def turn_ft(release) -> float:
    """Feet of lane that one turn takes at first."""
    return release.speed_mph * units.MPH_MPS / units.FOOT_M * 60.0 / release.rev_rate_rpm


def _strength(release, level):
    """Spin over speed; from 14 the tilt counts, before that the turn alone decides."""
    return spin_ratio(release) if level == "from 14" else _ROUND_FT / turn_ft(release)


def _kind(release, level):
    return kind_of(_strength(release, level))


def _clear_kind(release):
    """True where rounding cannot change the kind, with the tilt or without it."""
    both = (spin_ratio(release), _ROUND_FT / turn_ft(release))
    return all(abs(ratio - limit) > 0.015 for ratio in both for limit in MATCHED)


def _side(hand):
    return "left" if hand == "right" else "right"


def measure(rng, level, hand) -> Made:
    """09: speed from a stop-watch, revs from turns counted in a clip, each with its error."""
    shot = draw_shot(rng, level, hand)
    seconds = [round(1.9 + 0.05 * k, 2) for k in rng.sample(range(0, 20), 3)]
    fps = rng.choice(_FPS)
    clips = []
    for turns in (1, 3, 5):
        frames = round(turns * fps / rng.uniform(3.0, 6.5))
        clips.append((turns, frames))
    rows = tuple((f"{at:.2f} s", Blank(words.halves(mean_speed(at).value))) for at in seconds)
    columns = ["time to the pins", "mean speed (mph): 40.9 / seconds"]
    if level == "from 14":
        columns.append("at release (mph), the lane takes the rest")
        rows = tuple(
            (*row, Blank(words.halves(_at_release(at, shot)))) for row, at in zip(rows, seconds, strict=True)
        )
    parts = [
        Lane(DRAW, "house", (Line("", shot),)),
        Table("A stop-watch, from the foul line to the head pin.", tuple(columns), rows),
    ]
    if level == "8-9":
        slowest = f"{max(seconds):.2f} s"
        parts.append(Ask("Which ball was the slowest?", slowest, tuple(f"{at:.2f} s" for at in seconds)))
        return Made(
            WATCH,
            given_of(shot, level),
            tuple(parts),
            computed_with(shot),
        )
    read = [rev_rate_from_turns(turns, frames, fps) for turns, frames in clips]
    rows = tuple(
        (
            f"{letter}: {turns} in {frames} frames",
            Blank(f"{one.value:.0f}"),
            Blank(f"{max(one.error, 1.0):.0f}"),
        )
        for letter, (turns, frames), one in zip("ABC", clips, read, strict=True)
    )
    parts += [
        Table(
            f"A clip of {fps} frames a second: rpm = turns x {fps} x 60 / frames.",
            ("ball: turns counted", "rpm", "give or take (rpm)"),
            rows,
        ),
        Ask(
            "How is the error of a count made smaller without another camera?",
            "count more turns",
            ("count more turns", "take the last turn only", "round the number"),
        ),
    ]
    return Made("", given_of(shot, level), tuple(parts), computed_with(shot))


def _at_release(seconds, shot):
    """Speed at release [mph] of a ball thrown like this one that takes so long."""
    return release_speed(mean_speed(seconds), shot.release, lane_of(shot.pattern), shot.ball).value

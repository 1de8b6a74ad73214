"""What the model answers to the questions of lessons 02 and 03: a function a question, its choice counted from 0."""

from dataclasses import replace

import numpy as np
from right_answers import EVERYDAY

from bowlcore.coaching.path_lab import ball_of, lane_of


def slipping(pattern="house", **moved):
    from bowlcore.coaching import skid_hook_roll

    return skid_hook_roll.answer(replace(EVERYDAY, **moved), lane_of(pattern), ball_of("benchmark"))


def stops_turning():
    path = slipping().path
    after = path.distance_ft > path.roll_start_ft + 0.5
    straight = np.ptp(path.heading_deg[after]) < 1e-9 and np.all(path.slip_mps[after] == 0)
    more_revs = path.rev_rate_rpm[-1] > path.rev_rate_rpm[0] + 100
    return 1 if straight and more_revs and path.roll_start_ft < 58 else None


def revs_at_the_pins():
    revs = slipping().path.rev_rate_rpm
    change = revs[-1] / revs[0]
    return 0 if change < 0.9 else 2 if change > 1.5 else 1


def only_the_place():
    house, dry = (slipping(pattern).path for pattern in ("house", "dried_out"))
    apart = house.roll_start_ft - dry.roll_start_ft
    speeds, directions = (
        abs(getattr(house, name)[-1] - getattr(dry, name)[-1]) for name in ("speed_mph", "heading_deg")
    )
    return 2 if apart > 1 and speeds < 0.01 and directions < 0.01 else None


def push_and_revs():
    from bowlcore.motion.closed_form import best_rotation_deg

    radius, rpm = ball_of("benchmark").radius_m, np.pi / 30
    low, high = (best_rotation_deg(17 * 0.44704, radius * revs * rpm) for revs in (200, 500))
    return 1 if high < low - 5 else 2 if high > low + 5 else 0


def five_oils():
    from bowlcore.coaching import five_patterns

    told = five_patterns.answer(replace(EVERYDAY, speed_mph=16))
    paths = [shot.path for shot in told.shots]
    boards, angles = (
        np.ptp([getattr(path, name) for path in paths]) for name in ("entry_board", "entry_angle_deg")
    )
    all_roll = all(path.roll_start_ft < 60 for path in paths)
    return 1 if all_roll and angles < 0.01 and boards > 3 else 0 if boards < 1 else None


def built(**moved):
    from bowlcore.coaching import pattern_builder

    line = moved.pop("line", "same line")
    target = moved.pop("target_board", 13)
    return pattern_builder.answer(replace(EVERYDAY, target_board=target), **moved, line=line)


def same_sheet():
    boards = [built(taper_percent=taper).path.entry_board for taper in (35, 66, 100)]
    return 0 if np.ptp(boards) < 0.25 else 1 if np.ptp(boards) < 1 else 2 if np.ptp(boards) > 2 else None


def side_ratio():
    off = [built(side_ratio=ratio, target_board=12).path.entry_board - 17.5 for ratio in (16, 1)]
    return 1 if abs(off[0]) < 1.5 and off[1] < -4 else 2 if off[1] > 1.5 else None


def longer_by_the_rule():
    short, long = (built(length_ft=feet, line="re-aimed").exit_board for feet in (36, 44))
    move = long - short
    return 0 if 6 < move < 10 else 1 if abs(move) < 4 else 2 if -10 < move < -6 else None

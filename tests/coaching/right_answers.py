"""What the model answers to each question of the lessons: a function a question, its choice counted from 0."""

from dataclasses import replace

import numpy as np

from bowlcore.coaching.lines import lines_to_pocket
from bowlcore.coaching.path_lab import ball_of, lane_of
from bowlcore.coaching.words import IN_TIME_FT
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release

EVERYDAY = Release(17, 300, 45, 13, 17, 13)


def shot(pattern="house", **moved):
    return simulate(replace(EVERYDAY, **moved), lane_of(pattern), ball_of("benchmark"))


def dried_lane():
    house, dry = shot(), shot("dried_out")
    same_turn = abs(house.entry_angle_deg - dry.entry_angle_deg) < 0.1
    same_speed = abs(house.entry_speed_mph - dry.entry_speed_mph) < 0.1
    return 0 if dry.breakpoint_ft < house.breakpoint_ft - 2 and same_turn and same_speed else None


def faster():
    change = shot(speed_mph=19).entry_board - shot().entry_board
    return 0 if change < -1 else 1 if change > 1 else 2


def more_rotation():
    now, then = shot(), shot(axis_rotation_deg=65)
    later, steeper = (
        then.roll_start_ft > now.roll_start_ft + 1,
        then.entry_angle_deg > now.entry_angle_deg + 0.5,
    )
    return {(True, True): 0, (False, True): 1, (True, False): 2}[later, steeper]


def more_tilt():
    now, then = shot(), shot(axis_tilt_deg=30)
    return (
        1
        if then.entry_angle_deg < now.entry_angle_deg - 0.4 and then.entry_board < now.entry_board - 1
        else None
    )


def rolled_too_early():
    lines = lines_to_pocket(EVERYDAY, lane_of("house"), ball_of("benchmark"))
    early = lines.roll_start_ft < IN_TIME_FT
    change = np.mean(lines.entry_angle_deg[early]) - np.max(lines.entry_angle_deg[~early])
    return 0 if change < -1 else None


def same_hit():
    from bowlcore.coaching.pocket import twenty_balls

    kinds = [len(set(twenty_balls(17.5, 3.0, seed=seed)[0])) for seed in range(20)]
    return 0 if min(kinds) >= 2 else None


def light_ball():
    from bowlcore.rack.discs import head_pin_blow

    light, heavy = (
        head_pin_blow(2.5, 3.0, lb)[0] for lb in (6.0, 15.0)
    )  # positive: away from the own gutter
    return 0 if light < heavy - 5 else 1 if light > heavy + 5 else 2


def spare_ball():
    from bowlcore.display.spares import spares_panel

    told = spares_panel().sentence.split("The strike ball on the same line")
    return 0 if "inside the window" in told[0] and "misses the window" in told[1] else None


def parallel_walk():
    from bowlcore.coaching.three_six_nine import pins_move
    from bowlcore.rack.pins import pin_distance_ft

    over = (
        pins_move(-9, 0, "parallel", float(pin_distance_ft(7))) - 16.92
    )  # boards from the head pin to the 7
    return 2 if over > 6 else 0 if over < 0 else 1


def corner_window():
    from bowlcore.coaching.spare_windows import pin_window

    share = pin_window(10).width / pin_window(5).width
    return 0 if share > 0.9 else 1 if 0.6 < share < 0.8 else 2 if share < 0.4 else None


def strikes_or_spares():
    from bowlcore.coaching import strikes_or_spares
    from bowlcore.coaching.bowler import load_bowlers

    told = strikes_or_spares.answer(load_bowlers()["league one-hander"], lane_of("house"))
    return (
        0
        if told.more_strikes > told.more_spares + 1
        else 1
        if told.more_spares > told.more_strikes + 1
        else 2
    )


def usual_evening(moving=True):
    from bowlcore.coaching.evening_told import NAMES, club_evening

    return NAMES, club_evening(NAMES, "house", 0, 8, 3, moving)


def staying_put():
    names, night = usual_evening(moving=False)
    changes = []
    for i, name in enumerate(names):
        looks = night.looks[i, "left"]
        if name in ("league one-hander", "high-rev two-hander", "low-rev senior", "spinner"):
            changes.append(looks[-1].path.entry_board - looks[0].path.entry_board)
    return 0 if min(changes) > 1 else 1 if max(changes) < -1 else 2


def other_side():
    names, night = usual_evening()
    moves = {
        name: sum(look.feet for lane in ("left", "right") for look in night.looks[i, lane])
        for i, name in enumerate(names)
    }
    left = moves.pop("left-hander")
    moves.pop("beginner of eleven")
    return None if min(moves.values()) <= 0 else 0 if left == 0 else 1 if left > 0 else 2


def which_way_in():
    from bowlcore.coaching.moves import moved
    from bowlcore.coaching.odds import bowler_odds

    names, night = usual_evening(moving=False)
    bowler, worn = night.bowlers[names.index("league one-hander")], night.lanes["left"][-1]

    def best(moves):
        return max(bowler_odds(moved(bowler, *move), worn, 64).pocket for move in moves)

    opening, alike = best([(2, 1), (4, 2), (3, 2)]), best([(i, i) for i in (1, 2, 3, 4)])
    out = best([(-i, -i) for i in (1, 2, 3, 4)])
    return 0 if opening > alike + 0.05 > out + 0.05 else 1 if alike > opening + 0.05 else None


def feet_or_hand():
    from bowlcore.coaching.customary_hand import answer

    gains = [
        answer(name).compared["drying"].own.pocket - answer(name).compared["drying"].custom_here.pocket
        for name in ("league one-hander", "high-rev two-hander", "left-hander", "spinner")
    ]
    return 0 if min(gains) > 0.05 else 1 if max(gains) < -0.05 else 2


def late_and_skidding():
    from bowlcore.coaching.rules_of_lanes import late_less_rotation, late_rolls_sooner

    rolls_sooner = all(case.true for case in late_rolls_sooner() if case.true is not None)
    nearer = [case.number for case in late_less_rotation() if case.true is not None]
    return 1 if rolls_sooner and max(nearer) < 0.5 else 0 if min(nearer) > 0.5 else None


def two_and_one():
    from bowlcore.coaching.rules_of_boards import WALKS, opened_deg

    opened = opened_deg(2.0 * WALKS["2 to 1"], 1.0)
    return 0 if opened > 0.01 else 1 if opened < -0.01 else 2


def rule_of_31():
    from bowlcore.coaching.rules_of_boards import exit_moves

    by_rule, really = exit_moves()
    return 0 if 1 < really < by_rule / 2 else 1 if abs(really - by_rule) < 2 else 2 if really <= 1 else None


def where_the_tape_looks():
    from bowlcore.coaching.spin_axis import axis_point

    ahead, inwards, up = axis_point(90.0, 0.0)
    return 0 if ahead < -0.9 else 1 if inwards > 0.9 else 2 if up > 0.9 else None


def same_revs_two_speeds():
    from bowlcore.coaching.hand_numbers import kind_of, spin_ratio

    slow, fast = (kind_of(spin_ratio(replace(EVERYDAY, speed_mph=mph))) for mph in (12, 20))
    said = {("matched", "matched"): 0, ("rev-dominant", "speed-dominant"): 1}
    return said.get((slow, fast), 2 if fast == "rev-dominant" else None)


def behind_the_ball():
    from bowlcore.coaching.hand_technique import TECHNIQUES

    one = TECHNIQUES["hand stays behind the ball"]  # common practice, no source
    return {("axis_rotation_deg", -1): 0, ("axis_rotation_deg", 1): 1, ("axis_tilt_deg", 1): 2}[
        one.number, one.way
    ]


def five_degrees():
    moved = [abs(shot(axis_rotation_deg=45 + d).entry_board - shot().entry_board) for d in (-5, 5)]
    return 0 if max(moved) < 1 else 1 if 2 <= max(moved) <= 3 else 2 if max(moved) > 5 else None


def one_turn_at_30():
    from bowlcore.coaching.measuring import rev_rate_from_turns

    found = rev_rate_from_turns(1, 60 * 30 / 350, 30)
    return int(np.argmin([abs(100 * found.error / found.value - percent) for percent in (1, 5, 14)]))


def wrong_side():
    from bowlcore.coaching.track_ring import tilt_from_width

    tilt = tilt_from_width(15).value
    return 0 if abs(tilt - 10) < 0.5 else 1 if abs(tilt + 10) < 0.5 else 2 if abs(tilt) < 0.5 else None


def twelve_balls():
    from bowlcore.coaching.did_it_help import SURE, shares

    better = shares((5, 12), (8, 12)).better
    return 0 if better >= SURE else 1 if better > 0.5 else 2


def where_pins_go():
    from bowlcore.coaching.log_games import games_of, pins_lost
    from bowlcore.coaching.log_source import DEMO, entries_of

    lost = [pins_lost(game) for game in games_of(entries_of(DEMO).shots)]
    causes = ("missed the pocket", "pocket, no strike", "single pins")
    sums = [sum(one[cause] for one in lost) for cause in causes]
    return sums.index(max(sums)) if max(sums) > 2 * sorted(sums)[-2] else None


def when_to_stop():
    from bowlcore.coaching.did_it_help import SURE
    from bowlcore.coaching.luck import chance_better

    good = np.cumsum(np.random.default_rng(8).random((400, 30, 2)) < 0.4, axis=1)
    sure = [[not 1 - SURE < chance_better(*(int(x) for x in (a, n, b, n))) < SURE
             for n, (a, b) in enumerate(case, 1)] for case in good]  # fmt: skip
    once, ever = np.mean([looks[-1] for looks in sure]), np.mean([any(looks) for looks in sure])
    return 1 if once < 0.13 and ever > 2 * once else 0 if ever < 0.13 else None


def near_the_cause():
    from bowlcore.coaching import log_compare
    from bowlcore.coaching.log_source import DEMO, entries_of

    told = [
        log_compare.answer(DEMO, "AK", look, log_compare.TRIED).told
        for look in (log_compare.MISS, log_compare.POCKETS)
    ]
    scores = [kept.entry.total for kept in entries_of(DEMO).totals if kept.entry.bowler == "AK"]
    early, late = scores[:3], scores[3:]
    error = np.sqrt((np.var(early, ddof=1) + np.var(late, ddof=1)) / 3)
    return 0 if told == [True, False] and abs(np.mean(late) - np.mean(early)) < 2 * error else None


def weights_of(seen):
    from bowlcore.coaching.bowler import load_bowlers
    from bowlcore.coaching.reading import read_reaction

    return {
        c.name: c.weight for c in read_reaction(seen, load_bowlers()["league one-hander"], lane_of("house"))
    }


def one_leave():
    from bowlcore.coaching.seen import Seen

    weights = weights_of(Seen(leave=(10,)))
    return 2 if max(weights, key=weights.get) == "cannot tell" else None


def where_to_look():
    """How far the share of "rolls too early" against "skids too far" moves with the finish, and with the pins."""
    from bowlcore.coaching.seen import Seen

    light, moved = Seen(hit="light", target_hit=True), []
    for looks in ([{"finish": "still skidding"}, {"finish": "stood up"}],
                  [{"leave": leave} for leave in ((), (10,), (5,), (2, 8))]):  # fmt: skip
        weights = [weights_of(replace(light, **look)) for look in looks]
        shares = [w["rolls too early"] / (w["rolls too early"] + w["skids too far"]) for w in weights]
        moved.append(max(shares) - min(shares))
    return 0 if moved[0] > moved[1] + 0.15 else None


def two_late_balls():
    from bowlcore.coaching.two_faces import answer

    faces = answer()
    thrown = faces.rolled.bowler.release
    out = simulate(
        replace(thrown, target_board=thrown.target_board - 1.5), faces.rolled.lane, ball_of("benchmark")
    )
    change = out.entry_board - faces.rolled.path.entry_board
    return (
        1
        if change < -0.5 and faces.helped["same feet, look 1.5 out"][0] > 0.1
        else 0
        if change > 0.5
        else None
    )


def earlier_and_earlier():
    from bowlcore.coaching.two_faces import earlier_ends_further_in

    pairs, further = earlier_ends_further_in()
    return 0 if pairs == further > 10 else None

"""A plan of a clinic is fair, kept to what was said, and recomputed from its timetable for 500 random groups."""

from collections import Counter
from dataclasses import replace
from functools import cache

import pytest
from clinic_help import random_pairs, where_everybody_is

from bowlcore.coaching import clinic_words as words
from bowlcore.coaching.clinic import DoesNotFit, plan_clinic
from bowlcore.coaching.clinic_evening import ClinicEvening
from bowlcore.coaching.clinic_people import INVENTED, Person, read_people
from bowlcore.coaching.clinic_rounds import what_would_fit
from bowlcore.coaching.course_plan import six_weeks, unnamed

POUND_KG = 0.45359237  # kilograms in a pound, exact: international pound of 1959 (from memory)
TRIED = 500


@cache
def tried():
    """Every random group with its plan, or with the sentence that says what does not fit."""
    told = []
    for people, evening in random_pairs(TRIED):
        try:
            told.append((people, evening, plan_clinic(people, evening), ""))
        except DoesNotFit as problem:
            told.append((people, evening, None, str(problem)))
    return told


def plans():
    return [(people, evening, plan) for people, evening, plan, _ in tried() if plan]


def turns(plan):
    """Balls of each person, counted from the places of the timetable."""
    counted = Counter()
    for block in plan.blocks:
        for place in block.places:
            if place.name.startswith("lane"):
                counted.update(dict.fromkeys(place.who, block.balls))
    return counted


def test_both_outcomes_are_common_among_the_random_groups():
    fit = len(plans())
    assert 150 < fit < 400


@pytest.mark.claim(
    "A clinic's timetable has everybody in one place at every minute",
    against="the timetable counted again for 500 random groups",
    kind="own",
)
def test_everybody_is_somewhere_and_nobody_in_two_places_at_every_minute():
    for people, evening, plan in plans():
        for minute in range(plan.blocks[-1].end_min):
            who, coaches = where_everybody_is(plan, minute)
            assert sorted(name for name, _ in who) == sorted(person.initials for person in people)
            assert len({coach for coach, _ in coaches}) == len(coaches) == evening.coaches
        assert plan.blocks[-1].end_min + plan.spare_min == evening.minutes and plan.spare_min >= 0


def test_all_have_equally_many_turns_and_at_least_as_many_as_asked():
    for people, evening, plan in plans():
        counted = turns(plan)
        assert set(counted) == {person.initials for person in people}
        assert max(counted.values()) - min(counted.values()) <= 1
        assert set(counted.values()) == {plan.balls_each} and plan.balls_each >= evening.balls_each


def test_a_lane_has_one_group_at_a_time_and_no_lane_is_invented():
    for _, evening, plan in plans():
        allowed = {f"lane {evening.first_lane + k}" for k in range(evening.lanes)}
        for block in plan.blocks:
            lanes = [place.name for place in block.places if place.name.startswith("lane")]
            assert len(set(lanes)) == len(lanes) and set(lanes) <= allowed


def test_nobody_waits_longer_than_said():
    """Between two own balls, before the first one, at the table, and after the last ball of a set."""
    for _, evening, plan in plans():
        seated = Counter()
        for block in plan.blocks:
            length = block.end_min - block.start_min
            for place in block.places:
                if place.name.startswith("lane"):
                    wait_s = (len(place.who) - 1) * evening.seconds_a_ball
                    assert wait_s <= 60 * evening.longest_wait_min and wait_s <= plan.longest_wait_s
                    fullest = max(len(p.who) for p in block.places if p.name.startswith("lane"))
                    # lanes with fewer people keep the pace of the fullest, the largest group sets the length
                    assert 60 * (length - 2) >= fullest * block.balls * evening.seconds_a_ball
                for who in place.who:
                    seated[who] = seated[who] + length if place.name == "table" else 0
                    assert seated[who] <= evening.table_min


@pytest.mark.claim(
    "At every minute of a clinic no coach has more children than was said, and there are two adults",
    against="the timetable counted again for 500 random groups",
    kind="own",
)
def test_coaches_keep_the_ratio_and_the_two_adults_at_every_minute():
    for people, evening, plan in plans():
        young = {person.initials for person in people if person.child}
        assert not young or evening.coaches >= 2
        for block in plan.blocks:
            here = {place.name: place.who for place in block.places}
            stands = Counter(post.places for post in block.posts)
            for places, coaches in stands.items():
                assert len(places) <= 2, "a coach for more than two lanes"
                if len(places) == 2:
                    one, two = (int(name.removeprefix("lane ")) for name in places)
                    assert two == one + 1, "lanes that are not neighbours"
                children = sum(who in young for name in places for who in here[name])
                assert children <= coaches * evening.children_per_coach
            watched = {name for places in stands for name in places}
            for name, who in here.items():
                assert name in watched or (name == "table" and not young & set(who))


def test_short_sets_where_there_are_children():
    for people, evening, plan in plans():
        if any(person.child for person in people):
            assert all(block.balls <= evening.set_balls for block in plan.blocks)


def test_children_are_spread_over_groups_and_lanes():
    """Dealt out like cards: no two lanes of a group differ by more than one child, nor do two groups."""
    for people, _, plan in plans():
        young = {person.initials for person in people if person.child}
        groups = {block.group: block for block in plan.blocks if block.balls}
        in_group = []
        for block in groups.values():
            on_lanes = [len(young & set(p.who)) for p in block.places if p.name.startswith("lane")]
            assert max(on_lanes) - min(on_lanes) <= 1
            in_group.append(sum(on_lanes))
        assert max(in_group) - min(in_group) <= 1


def test_kilograms_are_balls_times_weight():
    for people, _, plan in plans():
        counted = turns(plan)
        for person, load in zip(people, plan.loads, strict=True):
            assert load.person == person and load.balls == counted[person.initials]
            if person.ball_lb is None:
                assert load.lifted_kg is None
            else:
                expected = counted[person.initials] * person.ball_lb * POUND_KG
                assert load.lifted_kg == pytest.approx(expected, rel=1e-12)


def test_balls_at_once_are_enough_for_every_group():
    for people, _, plan in plans()[:100]:
        weight = {person.initials: person.ball_lb for person in people}
        at_once = plan.balls_at_once()
        for block in plan.blocks:
            used = Counter(weight[w] for p in block.places if p.name.startswith("lane") for w in p.who)
            assert all(at_once[ball] >= number for ball, number in used.items())


def test_the_same_people_give_the_same_plan():
    people, evening, plan = plans()[0]
    assert plan_clinic(people, evening) == plan


def test_a_number_that_would_fit_does_and_one_less_does_not():
    """Each number in the sentence is put back in, and one step less."""
    fields = {"lanes": "lanes", "minutes": "minutes", "coaches": "coaches"}
    checked = Counter()
    for people, evening, plan, said in tried():
        if plan or "What would: " not in said:
            continue
        for way in said.split("What would: ")[1].rstrip(".").split("; or "):
            number, _, unit = way.partition(" ")
            if unit in fields and " and " not in way:
                checked[unit] += 1
                plan_clinic(people, replace(evening, **{unit: int(number)}))
                with pytest.raises(DoesNotFit):
                    plan_clinic(people, replace(evening, **{unit: int(number) - 1}))
            elif unit in ("balls each", "ball each"):
                checked["balls"] += 1
                plan_clinic(people, replace(evening, balls_each=int(number)))
                with pytest.raises(DoesNotFit):
                    plan_clinic(people, replace(evening, balls_each=int(number) + 1))
    assert min(checked[unit] for unit in ("lanes", "minutes", "coaches", "balls")) >= 15, checked


def test_every_refusal_says_a_number_that_would_do():
    for _, evening, plan, said in tried():
        if not plan:
            assert f"{evening.minutes} minutes" in said and "do not fit" in said
            assert "What would: " in said or "Make two evenings of it" in said


def test_changes_that_are_needed_together_are_enough_together():
    people = [Person(f"A{k}", "9-11") for k in range(12)]
    evening = ClinicEvening(lanes=1, minutes=45, coaches=1, balls_each=9)
    first = what_would_fit(12, 0, evening)[0]
    assert first.split(" and ")[1:], "one change alone would have done"
    changes = {"lanes": "lanes", "coaches": "coaches", "minutes": "minutes"}
    values = {changes[part.split()[1]]: int(part.split()[0]) for part in first.split(" and ")}
    assert plan_clinic(people, replace(evening, **values)).balls_each >= 9


def test_too_many_children_for_the_ratio_is_said():
    people = unnamed(40)
    with pytest.raises(DoesNotFit, match="too many children for so few to each coach. Make two evenings"):
        plan_clinic(people, ClinicEvening(lanes=20, minutes=120, coaches=20, children_per_coach=1))


def test_the_invented_group_as_the_page_starts():
    """Counted by hand: 60 minutes on the lanes, six rounds of 10, 2 to change over, 8 min = 12 turns for 3 people."""
    plan = plan_clinic(read_people(INVENTED), ClinicEvening(lanes=2, minutes=90, coaches=3))
    assert (plan.balls_each, plan.counts.groups, plan.counts.on_a_lane) == (12, 2, 3)
    assert plan.longest_wait_s == 80 and plan.spare_min == 0
    assert [words.PARTS[block.task] for block in plan.blocks][3:5] == ["Drill", "Drill"]
    assert [load.lifted_kg for load in plan.loads][3] == pytest.approx(43.54, abs=0.005)  # 96 lb


@pytest.mark.parametrize(
    "field, value, said",
    [
        ("lanes", 0, "lanes must be a number between 1 and 24, got 0"),
        ("lanes", 2.5, "lanes must be a whole number between 1 and 24, got 2.5"),
        ("minutes", 20, "minutes must be a number between 30 and 240, got 20"),
        ("minutes", float("nan"), "minutes must be .* got nan"),
        ("coaches", 0, "coaches must be a number between 1 and 20, got 0"),
        ("coaches", "three", "coaches must be .* got 'three'"),
        ("lesson", "99", "lesson must be one of 00, .* got '99'"),
        ("equipment", ("cannon",), "equipment must be one of screen, .* got 'cannon'"),
        ("start", "5 pm", "start must be a time between 0:00 and 23:59, such as 17:00, got '5 pm'"),
        ("start", "24:00", "start must be a time"),
        ("start", None, "start must be a time"),
        ("children_per_coach", 11, "children_per_coach must be .* between 1 and 10, got 11"),
    ],
)
def test_an_impossible_evening_is_one_sentence(field, value, said):
    with pytest.raises(ValueError, match=said):
        ClinicEvening(**{"lanes": 2, "minutes": 90, "coaches": 3, field: value})


def test_a_clinic_may_run_past_midnight():
    evening = ClinicEvening(lanes=2, minutes=90, coaches=3, start="23:30")
    assert [evening.clock(minute) for minute in (0, 29, 30, 90)] == ["23:30", "23:59", "0:00", "1:00"]


def test_six_weeks_are_six_lessons_for_one_group():
    weeks = six_weeks(unnamed(8, 2), ClinicEvening(lanes=2, minutes=90, coaches=3))
    assert [week.plan.evening.lesson for week in weeks] == ["00", "01", "05", "04", "08", "10"]
    assert len({week.plan.blocks for week in weeks}) == 1, "the evenings should be alike"
    for week in weeks:
        assert week.lifted[8] == pytest.approx(week.plan.balls_each * 8 * POUND_KG)

"""A clinic in words: what each part is, safety at its minute, what to bring and to print. Plain text, not yet HTML."""

from itertools import groupby

from bowlcore.coaching.clinic import TABLE, coaches, crowd, group_letter
from bowlcore.coaching.clinic_evening import EQUIPMENT
from bowlcore.coaching.lesson_plans import LESSONS
from bowlcore.coaching.lesson_titles import numbered
from bowlcore.coaching.words import count

PARTS = {
    "welcome": "Welcome, rules", "warm-up": "Warm-up", "talk": "Talk, guess on paper", "drill": "Drill",
    "trial": "Counted trial", "game": "Game with pins", "compare": "Compare with the guess", "close": "Cool-down, exit question",
}  # fmt: skip
SAFETY = {
    "welcome": "dry soles; never over the foul line, the lane is oiled; one bowler on the approach, wait for the sweep; lift "
    "with two hands, from outside the return, never between balls.",
    "warm-up": "arms, wrists, fingers and legs, gently; a test slide without a ball.",
    "talk": "try your own ball: if it has to be gripped hard, or the holes pinch, take another one.",
    "change": "balls down before anyone moves. Pain, numbness or tingling? Then that is all for today.",
    "close": "each child leaves with the adult who came for that child; count them.",
}
ALWAYS = (
    "Always two adults, in sight of each other. No wrist is turned on purpose. A clip only after consent, a guardian's for "
    "a child. Local rules, the centre and licensed practice decide."
)
LOAD_ROWS = ("ball", "lifts", "a tenth of a body of")
WEIGHT_RULE = "Ball weight (common practice, no source): start from a tenth of the body at most, and from less while learning."


def heading(plan) -> str:
    return f"Clinic: {numbered(plan.evening.lesson)}"


def sentence(plan) -> str:
    """The evening in one or two sentences."""
    evening, counts = plan.evening, plan.counts
    children = sum(person.child for person in plan.people)
    text = (
        f"{crowd(children, len(plan.people) - children)}, {evening.clock(0)} to {evening.clock(plan.blocks[-1].end_min)}, "
        f"{lane_names(plan)}, {coaches(evening.coaches)}: everyone has "
        f"{count(plan.balls_each, 'ball')}, in {count(counts.tasks, 'set')} of {counts.balls_a_set}, and within a "
        f"set waits at most {plan.longest_wait_s} seconds for the next ball."
    )
    if plan.spare_min:
        text += f" {count(plan.spare_min, 'minute')} of the evening are left over."
    return text.replace(" 1 minute of the evening are", " 1 minute of the evening is")


def lane_names(plan) -> str:
    """ "lane 7", "lanes 7 and 8", "lanes 7 to 10": the lanes that are used."""
    first, number = plan.evening.first_lane, plan.counts.lanes
    if number == 1:
        return f"lane {first}"
    return f"lanes {first} {'and' if number == 2 else 'to'} {first + number - 1}"


def timetable(plan) -> list[dict]:
    """A row for each part: when, what, who is on the lanes and who is at the table."""
    return [
        {
            "time": f"{plan.evening.clock(block.start_min)} to {plan.evening.clock(block.end_min)}",
            "what": PARTS[block.task],
            "on the lanes": f"{_turn([block], plan)}, {count(block.balls, 'ball')} each"
            if block.balls
            else "",
            "at the table": _at_table(block, plan) if block.balls else "everyone",
        }
        for block in plan.blocks
    ]


def outline(plan) -> list[dict]:
    """A row for each part, its groups in turn: shorter than the timetable, for a group without initials."""
    rows = []
    for task, found in groupby(plan.blocks, key=lambda block: block.task):
        blocks = list(found)
        first, last = blocks[0], blocks[-1]
        rows.append(
            {
                "time": f"{plan.evening.clock(first.start_min)} to {plan.evening.clock(last.end_min)}",
                "what": PARTS[task],
                "who": f"{_turn(blocks, plan)}, {count(first.balls, 'ball')} each"
                if first.balls
                else "all together",
            }
        )
    return rows


def groups(plan) -> list[dict]:
    """A row for each group: who bowls on which lane, in this order, and which coach stands where meanwhile."""
    first_round = [block for block in plan.blocks if block.balls][: plan.counts.groups]
    rows = []
    for block in first_round:
        lanes = {place.name: " ".join(place.who) for place in block.places if place.name != TABLE}
        rows.append({"group": block.group, **lanes, "coaches": _coaches(block)})
    every = max(rows, key=len)  # a smaller group may need fewer lanes
    return [{name: row.get(name, "") for name in every} for row in rows]


def loads(plan) -> list[dict]:
    """A row for each child: ball, what all balls together weigh, and the body of which the ball is a tenth."""
    return [
        {
            "child": load.person.initials,
            "ball": f"{load.person.ball_lb:g} lb" if load.person.ball_lb else "?",
            "lifts": lifted(load),
            LOAD_ROWS[2]: f"{10 * load.lifted_kg / load.balls:.0f} kg" if load.lifted_kg else "?",
        }
        for load in plan.loads
        if load.person.child
    ]


def safety(plan) -> list[tuple[str, str]]:
    """(times, what is said then), in the order of the evening."""
    changes = [plan.evening.clock(block.start_min) for block in plan.blocks if block.balls]
    said = {block.task: plan.evening.clock(block.start_min) for block in plan.blocks if block.task in SAFETY}
    rows = [(when, SAFETY[task]) for task, when in said.items() if task != "close"]
    rows.append((", ".join(changes), SAFETY["change"]))
    caution = LESSONS[plan.evening.lesson].caution
    if caution:
        rows.append((changes[0], caution))
    return [*rows, (said["close"], SAFETY["close"])]


def bring(plan) -> list[str]:
    """What has to be there."""
    people, evening = plan.people, plan.evening
    needs = list(LESSONS[evening.lesson].needs)
    ramps = [person.initials for person in people if person.hand == "ramp"]
    young = [person for person in people if person.child]
    needs += ["ramp", "seats"] if ramps else []
    needs += ["bumpers"] if any(person.age_band == "under 9" for person in people) else []
    needs += ["light balls"] if any(not p.ball_lb or p.ball_lb <= 6 for p in young) else []
    there = [key for key in dict.fromkeys((*needs, *evening.equipment)) if key in evening.equipment]
    asked = [key for key in dict.fromkeys(needs) if key not in evening.equipment]
    lines = [f"balls on the lanes at once: {_balls(plan)}"]
    if asked:
        lines.append("ask for: " + ", ".join(EQUIPMENT[key] for key in asked))
    if there:
        lines.append("the centre has: " + ", ".join(EQUIPMENT[key] for key in there))
    if ramps:
        lines.append(f"a helper lifts the balls of {', '.join(ramps)} onto the ramp")
    return [*lines, "telephone numbers to call, something cold for a finger"]


def to_print(plan) -> str:
    """Sheets, key, cards and pencils."""
    number = len(plan.people)
    return (
        f"{number} sheets of lesson {plan.evening.lesson}, 1 answer key, {count(number, 'card')} to take home, "
        f"{count(number, 'pencil')}, something hard to write on"
    )


def tasks(plan) -> list[tuple[str, str]]:
    """(part, what is done) in the words of the lesson, for the parts that this plan has."""
    lesson = LESSONS[plan.evening.lesson]
    here = {block.task for block in plan.blocks}
    rows = [("Talk", lesson.talk), ("Guess", lesson.predict)]
    rows += [(PARTS[task], getattr(lesson, task)) for task in ("drill", "trial", "game") if task in here]
    rows += [("At the table", lesson.table)] if plan.counts.groups > 1 else []
    return [*rows, ("Exit question", lesson.exit_question)]


def lifted(load):
    if not load.lifted_kg:
        return "?"
    return f"{load.lifted_kg:.0f} kg" + (", a helper" if load.person.hand == "ramp" else "")


def _turn(blocks, plan):
    """Which group bowls, or which ones in turn."""
    if plan.counts.groups == 1:
        return "all"
    if len(blocks) == 1:
        return f"group {blocks[0].group}"
    return f"groups {blocks[0].group} {'and' if len(blocks) == 2 else 'to'} {blocks[-1].group} in turn"


def _at_table(block, plan):
    others = [group_letter(k) for k in range(plan.counts.groups) if group_letter(k) != block.group]
    return f"group{'s' if len(others) > 1 else ''} {', '.join(others)}" if others else ""


def _coaches(block):
    """ "1: lanes 7 and 8; 2, 3: table"."""
    stands = {}
    for post in block.posts:
        stands.setdefault(post.places, []).append(post.coach.removeprefix("coach "))
    return "; ".join(f"{', '.join(who)}: {_stand(places)}" for places, who in stands.items())


def _stand(places):
    if len(places) == 1:
        return places[0]
    return f"lanes {' and '.join(name.removeprefix('lane ') for name in places)}"


def _balls(plan):
    parts = [
        f"{number} of {weight:g} lb" if weight else f"{number} yet to be fitted"
        for weight, number in plan.balls_at_once().items()
    ]
    return ", ".join(parts)

"""What a group does with a lesson: talk, drill, counted trial, game, sheet, what goes home, rubric. Words, no numbers to defend.

Written for children and read by adults. Every task can be done with any hand, from a ramp or a seat, and without turning
a wrist. Drills and rubric levels: common practice, no source; their words are ours.
"""

from typing import NamedTuple

COURSE = ("00", "01", "05", "04", "08", "10")  # week by week: pins and pictures early


class LessonPlan(NamedTuple):
    """One lesson for a group.

    `rubric` holds the levels 0 to 3 of one skill; `needs` are keys of `clinic_evening.EQUIPMENT`.
    """

    aim: str
    talk: str
    predict: str
    drill: str
    trial: str
    game: str
    table: str
    home: str
    exit_question: str
    skill: str
    rubric: tuple[str, str, str, str]
    needs: tuple[str, ...] = ()
    caution: str = ""


LESSONS = {
    "00": LessonPlan(
        aim="Everyone can point to where the ball skids, hooks and rolls.",
        talk="Show one ordinary shot. Follow it with a finger: thin line, thick "
        "line, dots. Then the same ball on a drier lane.",
        predict="The lane dries out. Does the ball turn sooner, later, or at the same place?",
        drill="Soft start: no pins counted. Roll the ball over any arrow you "
        "like, and say its number before it gets there.",
        trial="Say an arrow, roll, and let a partner mark on the sheet: over it, left or right.",
        game="Call a number of pins before you roll. A right call is a point for the lane; help each other.",
        table="Colour the three parts of a path on the sheet, and draw where you would stand.",
        home="The coloured path, and one sentence: my ball did ...",
        exit_question="Where does the ball turn: in the oil, or where the oil is thin?",
        skill="Sees the path",
        rubric=(
            "not yet",
            "names skid, hook and roll",
            "points to them on a real ball",
            "says beforehand what a drier lane will do",
        ),
        needs=("screen",),
    ),
    "01": LessonPlan(
        aim="Everyone can say what speed, spin, rotation and tilt are, and see two of them on a ball.",
        talk="Turn the ball on the screen from behind and from above. The strip "
        "on the axis stays put, any other goes round.",
        predict="A ball spins end over end. Where does the tape on its axis look: to the side, up, or back at you?",
        drill="Open hand: let the ball roll off the hand as if you gave it to somebody. A partner watches the tape.",
        trial="A partner counts how often the tape comes round until the arrows, and "
        "writes it down. From a ramp: it counts as well.",
        game="Slow and steady: count aloud from the hand to the pins. The pair whose balls come out most alike wins.",
        table="Draw axis and ring on two paper circles: end over end, and full side roll.",
        home="The two circles, and your own number of turns.",
        exit_question="Two balls spin alike, one is slower. Which of them is nearer to rolling?",
        skill="Sees the spin",
        rubric=(
            "not yet",
            "names the four numbers",
            "shows axis and ring on a ball",
            "counts the turns twice and gets the same, give or take one",
        ),
        needs=("screen", "tape"),
        caution="nobody copies another hand.",
    ),
    "04": LessonPlan(
        aim="Everyone finds out what one change does, with everything else left alone.",
        talk="Move one slider at a time and let the group shout higher, lower or the same before the picture moves.",
        predict="You throw a little slower and change nothing else. Does the ball come in higher, lower or the same?",
        drill="Same line, calm swing: half of the balls at your own speed, half a "
        "little slower, by a shorter swing and not by braking.",
        trial="Half of the balls as always, half with one thing changed. A partner marks "
        "where each met the pins: near side, middle, far side.",
        game="Three gates: pins on the near side, the middle and the far side. Name one, then try to touch it.",
        table="Two lanes on the sheet: draw what you thought, and beside it what you saw.",
        home="Your own sentence: when I ..., my ball ...",
        exit_question="Why do we change only one thing at a time?",
        skill="Changes one thing",
        rubric=(
            "not yet",
            "names what was changed",
            "changes one thing and leaves the rest",
            "says beforehand which way it goes, and is right more often than not",
        ),
        needs=("screen",),
        caution="slower by a shorter swing, never by gripping or braking.",
    ),
    "05": LessonPlan(
        aim="Everyone can call a hit light, in the pocket or high, and knows that one leave proves nothing.",
        talk="On the screen, throw the same ball twenty times, then twenty "
        "different ones. Put a finger on the pin that will stand.",
        predict="The same good hit, twenty times. Does it always leave the "
        "same pins, nearly the same, or quite different ones?",
        drill="Call the hit: a partner says light, pocket or high as the ball "
        "meets the head pin, before the pins are counted.",
        trial="A partner writes the letter of each hit on the sheet, L, P or H, and under it what stood. No score.",
        game="Guess the leave: before the ball is away, each says one pin "
        "that will stand. A point for each right one.",
        table="Count your own letters, draw three columns, and find the pin that stood most often in the group.",
        home="The three columns, and the pin of the evening.",
        exit_question="You hit the pocket and a pin stays. What do you change?",
        skill="Reads the hit",
        rubric=(
            "not yet",
            "names light, pocket and high",
            "calls the hit before the pins are down",
            "calls as the partner does, most of the time",
        ),
        needs=("screen",),
    ),
    "06": LessonPlan(
        aim="Everyone can say whether a late ball still skidded or had rolled too early.",
        talk="Two balls on the screen, alike at fifty feet. Watch the last part only, and vote before the pins fall.",
        predict="A ball comes in light. Which tells most about the cause: its "
        "last twenty feet, the pins, or the score?",
        drill="Watch with one job: the first of the lane looks at the target only, the second at the end only.",
        trial="For each ball write target yes or no, and end: skids, turns, "
        "or rolls straight. Then one cause, in pencil.",
        game="Detective: the lane agrees on one cause and one change of the feet, and tries it.",
        table="Sort the cards of what was seen: my ball, my lane, or cannot tell.",
        home="Your own three sentences: I saw ..., it could be ..., next I would look at ...",
        exit_question="Which ball would you throw next to find out?",
        skill="Reads the reaction",
        rubric=(
            "not yet",
            "names the two faces of late",
            "tells them apart on a real ball",
            "says what to look at next before changing anything",
        ),
        needs=("screen",),
    ),
    "08": LessonPlan(
        aim="Everyone has a place of their own to stand for the corner pin on each side.",
        talk="One pin, a straight ball and a window. Move the feet on the screen and find where the window is full.",
        predict="For a pin on the right, do you stand more to the left, more to the right, or as for the first ball?",
        drill="From one side: look at one arrow, walk straight at it, and only the feet move between balls.",
        trial="Share the balls among three places: your own, a little further in, a "
        "little further out. Mark which side they passed.",
        game="One pin left: agree on a pin that counts. Touching it is a point, whatever else falls.",
        table="Draw the lines on the sheet and circle where the window is full.",
        home="A card with your own two places to stand.",
        exit_question="Why does crossing the lane help with a corner pin?",
        skill="Plays a spare",
        rubric=(
            "not yet",
            "names the pin by its number",
            "stands across from it",
            "has a place of their own and comes back to it",
        ),
        needs=("screen",),
        caution="far across you are near the next lane: look both ways, whoever is there first goes first.",
    ),
    "10": LessonPlan(
        aim="Everyone keeps a tally for a friend and says honestly whether something changed.",
        talk="Toss a coin twelve times together. Then two bands on the screen: could both be the same bowler?",
        predict="Five good balls of twelve, then eight of twelve. Did it help: yes, perhaps, or no?",
        drill="Say what counts as good before you roll: over the arrow, or "
        "in the pocket. The partner says yes or no.",
        trial="Take turns with yourself: as always, then trying one thing, "
        "then as always. A friend writes the tally.",
        game="The game you liked most of all, chosen by the group.",
        table="Add the tally up, draw two bars, and colour the levels of your own skills.",
        home="The tally, the coloured levels, and a card with your own next step.",
        exit_question="How many balls would you want to see before you believe it?",
        skill="Counts honestly",
        rubric=(
            "not yet",
            "names what counts as good",
            "keeps a tally for somebody else",
            "says whether it tells or could be luck",
        ),
        needs=("screen",),
    ),
}

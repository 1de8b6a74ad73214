"""What bowlers and coaches say, each with what it tells of one delivery. Common practice, no source.

Written for a right-hander; `phrase_book` mirrors pins and sides for a left-hander. So pins are digits, no
other digit occurs; "right" is a side, and so is "left" but for "left the".
"""

from dataclasses import dataclass

from bowlcore.coaching.seen import Seen


@dataclass(frozen=True)
class Phrase:
    """One thing people say.

    Parameters
    ----------
    say : str
        The usual wording.
    also : tuple of str
        Other wordings of the same.
    seen : Seen
        What it says for certain; empty where no field of it is certain.
    means : str
        In our own words.
    ask : str
        Where it can mean two things, or proves little: what to ask. Else "".
    """

    say: str
    also: tuple
    seen: Seen
    means: str
    ask: str = ""


def _said(say, also, means, ask="", **seen):
    return Phrase(say, tuple(filter(None, also.split("; "))), Seen(**seen), means, ask)


_FACES = (
    "Was it still skidding at the pins, or had it rolled out and stopped turning? The remedies are opposite."
)
_WAS_IT = "Fill in the hit only if you saw it: was it"
_ONE = "One leave proves little: a good hit leaves a pin now and then."
_OWN = "Such a ball says little of the lane: throw another before anything is moved."

PHRASES = (
    # where it hit: the usual readings, common practice
    _said("light", "thin; half hit; behind the head pin; came in short; low on the head pin",
          "It came in too far out and took too little of the head pin.", _FACES, hit="light"),
    _said("tight", "the lane is tight; slick; too much oil",
          "The lane gives the ball little hook; it comes in light.",
          "Watch the last third of the lane: only a ball that is still skidding there speaks of oil.", hit="light"),
    _said("high", "got up on me; too much head pin; hooked too much; came up high",
          "It came in too far in and took too much of the head pin.",
          "Was it the lane, or was the ball pulled in or thrown slowly?", hit="high"),
    _said("through the nose", "in the face; nose hit; on the nose; full on the nose; nosed it; nose ball",
          "Head pin full in the face.", "Once, or ball after ball? Did it hit the mark?", hit="nose"),
    _said("crossed over", "brooklyn; other side; went to the other side; wrong pocket",
          "It passed in front of the head pin and met the pocket of the other hand.",
          "Once, or ball after ball? Did it hit the mark?", hit="other side"),
    _said("flush", "dead flush; pure; buried it; packed it; perfect hit",
          "The middle of the pocket.", "Did all ten fall? If not, what stayed?", hit="flush"),
    _said("missed the head pin", "missed everything; washed out; no head pin; missed the rack",
          "The ball passed the head pin without touching it.", "On which side, and did it hit the mark?",
          hit="missed"),
    _said("light mixer", "swisher; carried a light one; lucky mixer; mixed them up",
          "Light, and yet all ten fell: pins rolled across the deck.",
          "A strike, but no line to trust: a light hit carries less often than a flush one.",
          hit="light", leave=()),
    _said("tripped the 4", "trip 4; late 4; 4 fell late",
          "High, and the 4-pin fell late.", "A strike, but the line is close to high.", hit="high", leave=()),
    _said("robbed", "tapped; got tapped; burned on a good one; good hit no strike; stuffed",
          "A good hit, and a pin stayed.", f"Which pin stayed? {_ONE}", hit="flush"),
    # what it did on the way
    _said("it never came back", "did not come back; never made the turn; did not make the corner; never recovered",
          "It stayed out and came in light, if at all.", f"Did it hit the mark? {_FACES}", hit="light"),
    _said("it skidded straight through", "hydroplaned; sailed; slid by; still sliding; still skidding; no hook;"
          " just kept sliding; never checked up; did not check up; never hooked; did not hook",
          "It was still sliding when it met the pins.",
          "Did it go further out than meant, or faster?", finish="still skidding"),
    _said("it never came off the spot", "no back end; back ends are gone; would not turn the corner; no recovery",
          "It went out as meant and did not turn from there.", _FACES, hit="light"),
    _said("carrydown", "carry down; it is carrying down; oil down the lane; back end is going away",
          "Oil moved beyond the end of the pattern: the ball turns later than it did.",
          "Did the same line hook earlier in the day? Then compare two balls of one bowler.",
          finish="still skidding"),
    _said("late", "came in late; behind; late to the pocket; did not come up; never came up",
          "It turned too late to reach the pocket.",
          _FACES, hit="light"),
    _said("it hung", "hung out there; hung on the edge; stayed out",
          "It stayed outside longer than meant before it turned, or did not turn.", _FACES, hit="light"),
    _said("it did not finish", "never finished; no finish; would not finish",
          "The last bit of turn was missing.", _FACES, hit="light"),
    _said("it quit", "gave up; stopped hooking; stopped turning; gave up at the end",
          "It turned, then ran straight before the pins: it had rolled out.",
          "Look at the last third of the lane again: a ball that is still sliding runs straight as well.",
          finish="stood up"),
    _said("it stood up", "stood up early; straightened out; laid down; rolled out; rolled early;"
          " came in flat; coming in flat; lost it at the end",
          "It rolled too early and went on straight: little entry angle, flat hits.",
          "Does it leave the deck early, towards the own side?", finish="stood up"),
    _said("it burnt up", "burned up; burned out; burnt out; used it all up; out of gas",
          "It met friction too early and had no turn to spare for the pins.",
          "Did it come in light and flat? If it went high, it hooked early and was still turning.",
          finish="stood up"),
    _said("burnt", "burned; toast; the lane is burnt; lane is dry; track is burnt; fried; dried out",
          "The oil in the track is worn: the ball hooks early.",
          "Did it then go high, or turn early and stop? And for everyone on the pair?", finish="early"),
    _said("it checked up early", "checked up; read early; read too early; hooked early; started up early; too early",
          "It began to hook sooner than meant.",
          "High, or early and then flat? And was the ball thrown slowly?", finish="early"),
    _said("hooked at my feet", "hooking at the arrows; it is hooking everywhere; hooks like crazy; jumped early",
          "The fronts or the whole lane give much friction: it hooks at once.",
          "Was the ball thrown slowly, or with more hand?", finish="early"),
    _said("it jumped", "snapped; flipped; whipped; took off; hard left; came out of there hard",
          "It turned late and sharply.", "Always, or only after going further out?", finish="late and hard"),
    _said("over-under", "wet dry; hit or miss; spotty; too sharp; no in between",
          "Out it hooks too much, in too little: small misses become large ones.",
          "Write down three balls with their boards: this cannot be seen in one.", finish="unsteady"),
    # how it went through the pins
    _said("it deflected", "bounced off; ran off; deflecting; hit weak; no drive; hit like a feather; hit flat; flat hit;"
          " hit soft",
          "The head pin threw it aside, towards the own side.", _FACES, exit="right of the 9"),
    _said("it drove", "drove through; good drive; drove through the rack; strong hit; hit hard",
          "It kept its way through the pins and went off near the middle.", "", exit="between 8 and 9"),
    _said("it went left through the rack", "drove left; plowed left; left of the 8",
          "It kept going away from the own side: high, or very steep.", "High, or just steep?",
          exit="left of the 8"),
    # the bowler's own part
    _said("I tugged it", "pulled it; yanked it; missed in; missed inside; got it in; hung onto it",
          "Sent inside the mark: further from the own gutter than meant.", _OWN, target_hit=False),
    _said("I threw it right", "sprayed it; lost it right; pushed it out; missed out; missed outside; got it out; leaked it",
          "Sent outside the mark: nearer the own gutter than meant.", _OWN, target_hit=False),
    _said("I hit my mark", "on target; threw it good; hit my target; good shot; on my line; made a good shot",
          "By the bowler's own word the ball went where it was meant to go.",
          "A partner sees better where it crossed the marks.", target_hit=True),
    _said("got away with one", "got lucky; missed and struck; lucky strike",
          "The mark was missed and all ten fell.", "Where did it cross the marks? That is the room this line has.",
          target_hit=False, leave=()),
    _said("I got it down fast", "too fast; threw it hard; muscled it; rushed it; got fast",
          "Faster than usual: such a ball skids further by itself.", _OWN),
    _said("I came up slow", "too slow; got slow; dropped it; babied it; fell asleep on it",
          "Slower than usual, or off the thumb badly: such a ball hooks more by itself.", _OWN),
    # what stayed
    _said("ringing 10", "ringer; wrapped 10; solid 10; wrap 10",
          "The 6-pin flew round the 10-pin: usually a hit close to good.",
          f"Slightly high, or good angle a little late? {_ONE}", leave=(10,)),
    _said("flat 10", "weak 10; dead 10; soft 10; lazy 10",
          "The 6-pin lay down in front of the 10-pin: too little angle, the ball deflects.",
          f"{_FACES} {_ONE}", leave=(10,)),
    _said("corner pin", "10 stayed; left the 10; 10 again",
          "The 10-pin stands; how the 6-pin passed it tells more.", f"Ringing or flat? {_ONE}", leave=(10,)),
    _said("solid 8", "stone 8; stoned 8", "The 5-pin went round the 8-pin: a flush hit.", _ONE,
          hit="flush", leave=(8,)),
    _said("8 stayed", "left the 8", "The 8-pin stands: often a flush hit.", f"{_WAS_IT} flush? {_ONE}",
          leave=(8,)),
    _said("stone 9", "solid 9; stoned 9; 9 stayed; left the 9", "The ball drove past the 9-pin: much angle.",
          _ONE, leave=(9,)),
    _said("blower 7", "7 stayed; solid 7; left the 7", "The 7-pin stands: high, or the 4-pin missed it.",
          f"{_WAS_IT} high? {_ONE}", leave=(7,)),
    _said("high 4", "4 stayed high", "High: the 4-pin stands.", _ONE, hit="high", leave=(4,)),
    _said("4 stayed", "solid 4; left the 4", "The 4-pin stands: usually high.", f"{_WAS_IT} high? {_ONE}",
          leave=(4,)),
    _said("4-9", "", "A split, usually from a high hit.", f"{_WAS_IT} high? {_ONE}", leave=(4, 9)),
    _said("bucket", "2-4-5-8", "Four pins behind the head pin stand: usually light.", f"{_WAS_IT} light? {_ONE}",
          leave=(2, 4, 5, 8)),
    _said("2-8", "", "The 2-pin with the 8-pin behind it: usually light.", f"{_WAS_IT} light? {_ONE}",
          leave=(2, 8)),
    _said("2-4-5", "", "Usually light.", f"{_WAS_IT} light? {_ONE}", leave=(2, 4, 5)),
    _said("5 stayed", "left the 5", "The 5-pin stands: usually light, and the ball deflected.",
          f"{_WAS_IT} light? {_ONE}", leave=(5,)),
    _said("5-7", "", "Usually light, and the ball deflected.", f"{_WAS_IT} light? {_ONE}", leave=(5, 7)),
    _said("8-10", "", "Usually light, and the ball deflected.", f"{_WAS_IT} light? {_ONE}", leave=(8, 10)),
    _said("big four", "4-6-7-10", "Two pins on either side stand: usually head pin full in the face.",
          f"{_WAS_IT} in the face? {_ONE}", leave=(4, 6, 7, 10)),
    _said("greek church", "4-6-7-9-10", "Five pins in a split: usually head pin full in the face.",
          f"{_WAS_IT} in the face? {_ONE}", leave=(4, 6, 7, 9, 10)),
    _said("bed posts", "7-10; goal posts; snake eyes", "Both corners stand: often a very steep hit through the middle.",
          _ONE, leave=(7, 10)),
    _said("washout", "wash out; 1-2-10; left the head pin", "The ball went by on the own side: head pin, 2-pin and 10-pin stand.",
          "Did it hit the mark, and was it still skidding?", hit="missed", leave=(1, 2, 10)),
)  # fmt: skip

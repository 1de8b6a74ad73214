"""What was seen is kept as it was said, or refused in one sentence."""

import numpy as np
import pytest

from bowlcore import Bowler, Leave, Release, Seen
from bowlcore.coaching import seen as seen_module
from bowlcore.coaching.seen import EXITS, FINISHES, HITS, contradictions, exit_word, merged
from bowlcore.rack.pins import pin_board


def test_words_are_the_contract():  # design of this course, section 5
    assert HITS == ("light", "flush", "high", "nose", "other side", "missed")
    assert FINISHES == ("still skidding", "late and hard", "early", "stood up", "unsteady")
    assert EXITS == ("right of the 9", "over the 9", "between 8 and 9", "over the 8", "left of the 8")
    for name, allowed in seen_module._WORDS.items():
        for word in allowed:
            assert getattr(Seen(**{name: word}), name) == word


def test_nothing_seen_is_allowed_and_empty():
    assert Seen().told == {} and Seen() == Seen(hit=None, leave=None)


@pytest.mark.parametrize(
    "given, kept",
    [((4, 7), (4, 7)), ([7, 4], (4, 7)), ("4-7", (4, 7)), ("10", (10,)), ("7 - 4", (4, 7)), ((), ()),
     ("strike", ()), ("X", ()), (Leave.of(7, 10), (7, 10)), (Leave(), ()), (np.array([10]), (10,))],
)  # fmt: skip
def test_leave_is_kept_as_a_rising_tuple(given, kept):
    assert Seen(leave=given).leave == kept


@pytest.mark.parametrize(
    "given, message",
    [
        ({"leave": (11,)}, "a pin must be a whole number between 1 and 10, got 11"),
        ({"leave": (0,)}, "got 0"),
        ({"leave": (True,)}, "got True"),
        ({"leave": (4.0,)}, "got 4.0"),
        ({"leave": (4, 7, 4)}, "pin 4 is named twice"),
        ({"leave": "4-4"}, "pin 4 is named twice"),
        ({"leave": "4-11"}, "got 11"),
        ({"leave": "baby split"}, "leave must be the pins that stand"),
        ({"leave": ""}, "leave must be the pins that stand"),
        ({"leave": "1-" * 10**6}, "leave must be the pins that stand"),
        ({"leave": 10}, "leave must be the pins that stand"),
        ({"hit": "Light"}, "hit must be one of light, flush, .*, got 'Light'"),
        ({"hit": ["light"]}, "hit must be one of"),
        ({"finish": "rolls"}, "finish must be one of still skidding"),
        ({"exit": "past the 9"}, "exit must be one of"),
        ({"lane": "middle"}, "lane must be one of left, right"),
        ({"target_hit": "yes"}, "target_hit must be True or False"),
        ({"target_hit": 1}, "target_hit must be True or False"),
        ({"arrow_board": 0}, "arrow_board must be a number between 1 and 39 boards, got 0"),
        ({"breakpoint_board": float("nan")}, "breakpoint_board must be a number between 1 and 39"),
    ],
)
def test_what_cannot_be_is_one_short_sentence(given, message):
    with pytest.raises(ValueError, match=message) as problem:
        Seen(**given)
    assert len(str(problem.value)) < 250


def test_frozen():
    with pytest.raises(AttributeError):
        Seen().hit = "light"


def test_merged_adds_up_and_refuses_two_words_for_one_thing():
    assert merged(Seen(hit="light"), Seen(leave=(10,)), Seen(hit="light")) == Seen("light", leave=(10,))
    assert merged() == Seen()
    with pytest.raises(ValueError, match='hit cannot be both "light" and "high"'):
        merged(Seen(hit="light"), Seen(hit="high"))
    with pytest.raises(ValueError, match="leave cannot be both a strike and the 10"):
        merged(Seen(leave=()), Seen(leave=(10,)))


BOWLER = Bowler(Release(17, 300, 45, 13, 17, 13))


@pytest.mark.parametrize(
    "seen, told",
    [
        (Seen(hit="missed", leave=()), "missed the head pin, yet no pin stands"),
        (Seen(hit="light", leave=(1, 2, 10)), 'The head pin stands, yet the hit is called "light"'),
        (Seen(arrow_board=10, breakpoint_board=16), "6 boards further in than where the ball crossed"),
        (Seen(target_hit=True, arrow_board=17), "The target is said to be hit, board 13"),
    ],
)
def test_contradictions_are_told(seen, told):
    assert told in contradictions(seen, BOWLER)[0] and len(contradictions(seen, BOWLER)) == 1


@pytest.mark.parametrize(
    "seen",
    [Seen(), Seen("missed", leave=(1, 2, 10)), Seen("flush", leave=()), Seen("light", leave=()),
     Seen(arrow_board=12, breakpoint_board=8), Seen(arrow_board=12, breakpoint_board=15),
     Seen(target_hit=True, arrow_board=14.5), Seen(target_hit=False, arrow_board=13)],
)  # fmt: skip
def test_what_can_be_is_no_contradiction(seen):
    assert contradictions(seen, BOWLER) == []


def test_exit_words_by_the_pins():
    # a ball over a pin's own board is over that pin; standard positions, trade sheet 1.1
    assert exit_word(float(pin_board(9))) == "over the 9" and exit_word(float(pin_board(8))) == "over the 8"
    assert exit_word(19) == "between 8 and 9"  # a flush hit leaves near board 19 (Ridenour, second-hand)
    assert exit_word(5) == "right of the 9" and exit_word(35) == "left of the 8"


def test_a_left_hander_uses_the_same_words_for_the_mirror_image():
    assert exit_word(5, "left") == "left of the 8" and exit_word(float(pin_board(9)), "left") == "over the 8"
    assert exit_word(20, "left") == Seen(exit="between 9 and 8").exit == "between 8 and 9"


def test_mirror():
    seen = Seen("light", "early", "right of the 9", (4, 7), True, 12, 8, "left")
    other = Seen("light", "early", "left of the 8", (6, 10), True, 12, 8, "right")
    assert seen.mirror == other and other.mirror == seen and Seen().mirror == Seen()

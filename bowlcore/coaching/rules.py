"""Twenty sayings of the trade as data, each tried now on invented bowlers and lanes.

The wording is ours; nearly all are common practice without a source. What counts as true stands beside each
claim and was chosen before any number was seen. Nothing here asks a bowler to throw it.
"""

from bowlcore.coaching import rules_of_boards as boards
from bowlcore.coaching import rules_of_hand as hands
from bowlcore.coaching import rules_of_lanes as lanes
from bowlcore.coaching import rules_of_pins as pins
from bowlcore.coaching.rule_bench import SEEN_BOARD, TIE
from bowlcore.coaching.rule_verdict import Part, Rule, Unit

_LATER, _SOONER = Unit("ft", "later", "sooner"), Unit("ft", "sooner", "later")
_MORE, _LESS = Unit("degree", "more", "less"), Unit("degree", "less", "more")
_TURN = Unit("point", "more", "fewer", 1.0, what="of the turn")
_NEARER, _LOWER = Unit("board", "nearer", "further off"), Unit("board", "lower", "higher")
_IN = Unit("board", "further in", "further out", none="right on it")
_ROOM = Unit("board", "to spare", "outside", none="right at its edge")
_SHARE = Unit("point", "more", "fewer", 1.0, what="in the pocket")
_MADE = Unit("point", "more", "fewer", 1.0, what="made")
_STRIKES = Unit("point", "more", "fewer", 1.0, what="of strikes")

_BETTER = (
    "re-aimed, at least ten more of 100 balls come into the pocket; or fewer than ten either way (a tie), and the "
    "entry is at least half a degree steeper"
)
_SKID = "it rolls at least half a foot (15 cm) {}; a ball that still skids at the pins is carried on as in the last foot"
_CORNER = "within the ten feet (3 m) where it turns most it turns at least half a degree {}"
_SHARE_LATE = "at least five points (hundredths) more of the whole turn come after the end of the oil"
_NEAR = "the house line kept, it comes in at least half a board nearer to board 17.5"
_HIGH = "The usual hand on its house line, a lane that hooks more: it comes in at least one board high."
_LATE = (
    "The usual hand on its house line, a slick lane: it comes in at least one board light and still skids, or rolls "
    "after 55 ft (16.8 m)."
)
_EARLY = (
    "A drier lane, the feet kept, the ball sent wider until it comes into the pocket: it rolls before 50 ft (15.2 m) "
    "and comes in flat, which leaves corner pins."
)
_MORE_TILT = "Ten degrees more tilt, all else kept, on the line that is right for the usual hand."
_LESS_TILT = (
    "Ten degrees less tilt (never below 0), all else kept, on the line that is right for the usual hand."
)
_MORE_ROTATION = "Fifteen degrees more rotation, all else kept, on the line that is right for the usual hand."
_HOUSES = " in three houses: as it is, and 10 % tighter and looser."


def _better(claim, test):
    return Part(claim, _BETTER, _SHARE, test, TIE, tie=TIE)


def _near(claim, test):
    return Part(claim, _NEAR, _NEARER, test, SEEN_BOARD)


def _at_all(text):
    return lambda: text


RULES = (
    Rule(1, "Rotation: 0 to 90, 45 is enough",
         "Useful rotation lies between 0 and 90 degrees, and about 45 is high enough.",
         "Fresh lanes, re-aimed. (Below 0 the ball backs up and hooks the other way; that is not tried.)",
         (Part("nothing to gain beyond 90", "110 degrees is not better than 90, where better means: " + _BETTER,
               _SHARE, hands.beyond_ninety, tie=TIE),
          Part("45 is enough", "with 45 degrees fewer than ten of 100 balls are lost from the pocket against the "
               "better of 70 and 90", _SHARE, hands.forty_five, -10.0)),
         note=_at_all("Enough for the pocket. The entry angle still grows with more rotation: see the table in Shape the path.")),
    Rule(2, "More tilt, longer skid",
         "More tilt makes the ball skid longer.", _MORE_TILT,
         (Part("longer skid", _SKID.format("later"), _LATER, hands.tilt_skids_longer, 0.5),)),
    Rule(3, "More tilt, sharper finish",
         "More tilt makes the finish sharper.", _MORE_TILT,
         (Part("sharper, that is a later turn", _SHARE_LATE, _TURN, hands.tilt_turns_late, 5.0),
          Part("sharper, that is a tighter corner", _CORNER.format("more"), _MORE, hands.tilt_sharper_corner, 0.5)),
         note=_at_all("This is experience that the physics in here does not give. Whether a real ball does it for another "
                      "reason, such as a smaller ring of oil on it, is an open question."),
         first=True),
    Rule(4, "Less tilt, earlier roll",
         "Less tilt makes the ball roll earlier and smoother.", _LESS_TILT,
         (Part("earlier", _SKID.format("sooner"), _SOONER, hands.less_tilt_earlier, 0.5),
          Part("smoother", _CORNER.format("less"), _LESS, hands.less_tilt_smoother, 0.5))),
    Rule(5, "More rotation, long and sharp",
         "More rotation makes the ball skid longer and finish sharper.", _MORE_ROTATION,
         (Part("longer skid", _SKID.format("later"), _LATER, hands.rotation_skids_longer, 0.5),
          Part("sharper, that is a later turn", _SHARE_LATE, _TURN, hands.rotation_turns_late, 5.0),
          Part("sharper, that is a tighter corner", _CORNER.format("more"), _MORE, hands.rotation_sharper_corner, 0.5)),
         "USBC magazine, December 2011, known second-hand.", first=True),
    Rule(6, "Hooks too much: less rotation",
         "It hooks too much or crosses over: first less rotation, then less tilt.", _HIGH,
         (_near("less rotation, same line", lanes.high_less_rotation),
          _near("then less tilt, same line", lanes.high_then_less_tilt),
          _better("both, against the usual hand, each re-aimed", lanes.high_re_aimed)), first=True),
    Rule(7, "Late, it skids: less rotation",
         "It is late because it skids: first less rotation, then less tilt.", _LATE,
         (Part("less rotation: it rolls sooner", _SKID.format("sooner"), _SOONER, lanes.late_rolls_sooner, 0.5),
          _near("less rotation, same line", lanes.late_less_rotation),
          _near("then less tilt, same line", lanes.late_then_less_tilt),
          _better("both, against the usual hand, each re-aimed", lanes.late_re_aimed)),
         note=_at_all("It does roll sooner, as the saying has it. But the turn that was taken off is missed at the pins.")),
    Rule(8, "Late, it rolled early: more of both",
         "It is late because it rolled too early, and leaves ten pins: more rotation, more tilt, and move in.", _EARLY,
         (_better("move in, same hand", lanes.early_move_in),
          _better("more rotation as well", lanes.early_more_rotation),
          _better("more tilt as well", lanes.early_then_more_tilt)), first=True),
    Rule(9, "Corner pin: low rotation and tilt",
         "For the corner pin: low rotation and low tilt.",
         "The strike ball on the line that makes most corner pins on the house shape; then the same line on a dried out and on "
         "a long, heavy lane. Low means 10 degrees of rotation, 5 of tilt.",
         (Part("low rotation", "at least ten more of 100 corner pins are made", _MADE, pins.corner_low_rotation, 10.0),
          Part("low tilt as well", "at least ten more of 100 again", _MADE, pins.corner_low_tilt, 10.0)),
         note=_at_all("A plain spare ball is another answer to the same question: see Spares.")),
    Rule(10, "Fresh lane: 45, and some tilt",
         "On a fresh lane: medium to high tilt with 45 degrees of rotation.",
         "20 degrees of tilt and 45 of rotation, against the usual hand.",
         (_better("against the usual hand, each re-aimed", lanes.fresh),)),
    Rule(11, "Carrydown: less tilt",
         "On carrydown: less tilt, rotation kept at 45.",
         "7 degrees of tilt and 45 of rotation, against the usual hand, on the carried down lane" + _HOUSES,
         (_better("against the usual hand, each re-aimed", lanes.carrydown),)),
    Rule(12, "Drying lane: less of both",
         "On a drying lane: less rotation and less tilt.",
         "30 degrees of rotation and 7 of tilt, against the usual hand, on drying lanes.",
         (_better("against the usual hand, each re-aimed", lanes.drying),),
         note=_at_all("This is for hands that have found their line again. For whoever stays on the old line see saying 6.")),
    Rule(13, "Still ten pins: move in",
         "Still ten pins: move in and start again from the fresh setting.",
         "Drying lanes: 45 degrees of rotation and 20 of tilt further in, against 30 and 7.",
         (_better("against the reduced hand, each re-aimed", lanes.still_ten_pins),)),
    Rule(14, "Wet-dry lane: the least tilt",
         "On a wet-dry lane: the least tilt, rotation kept at 45.",
         "No tilt and 45 degrees of rotation, against the usual hand, on the wet-dry lane" + _HOUSES,
         (_better("against the usual hand, each re-aimed", lanes.wet_dry),)),
    Rule(15, "Rule of 31",
         "Rule of 31: the ball should leave the oil on the board that is its length less 31.",
         "The best line of the usual hand on four lengths and shapes of oil.",
         (Part("exit board", "the line that brings most balls into the pocket leaves the oil within two boards of it", _IN,
               boards.exit_of_the_oil, -2.0, 2.0),),
         "Common practice; origin and evidence: none found.", boards.exit_note),
    Rule(16, "3-6-9",
         "3-6-9: for the 2-, 4- and 7-pin stand three, six and nine boards further out and keep the target.",
         "Counted from the strike line, on the side away from the hook; a window is taken one board narrower on each side, "
         "since a thin touch may leave the pin.",
         (Part("a straight ball, on paper", "it comes in inside the pin's window", _ROOM, boards.three_six_nine_on_paper, 0.0),
          Part("the strike ball, own walk", "all three pins are hit", _ROOM, boards.three_six_nine_thrown, 0.0)),
         "Web pages, known second-hand; the geometry is our own.", boards.three_six_nine_note, True),
    Rule(17, "3:1:2",
         "3:1:2: two boards at the start are one at the foul line and three at the pins.",
         "One board out at the foul line, the target kept.",
         (Part("three at the pins", "the ball comes in two and a half to three and a half boards further in", _IN,
               boards.three_one_two, 2.5, 3.5),),
         "A web page on spares, known second-hand; the geometry is our own.", boards.three_one_two_note),
    Rule(18, "2-and-1",
         "2-and-1: it came in high, so move the feet two boards in and the target one.", _HIGH,
         (Part("walking parallel", "it comes in at least half a board lower", _LOWER, boards.two_and_one_parallel, 0.5),
          Part("with a walk that drifts two to one", "it comes in at least half a board lower", _LOWER,
               boards.two_and_one_drifting, 0.5)),
         note=boards.two_and_one_note, first=True),
    Rule(19, "Four to six degrees",
         "Four to six degrees on board 17 to 18 strike best.",
         "256 balls of the usual hand re-aimed on fresh lanes, in this pin model: those inside that box against the other balls "
         "in the pocket.",
         (Part("more strikes in the box", "at least ten points more of them strike, and the two intervals from the counts of "
               "racks do not overlap", _STRIKES, pins.published_box, 10.0),),
         "P. Ridenour (USBC), known second-hand.", pins.box_note),
    Rule(20, "A tenth of the bowler",
         "A ball should weigh a tenth of the bowler.", "Any bowler.",
         (Part("a tenth of the body", "nothing in this model has a back, a wrist or a grip", Unit("lb", "more", "less"), None),),
         "On many pages, nowhere with a source.",
         _at_all("A ball weighs 16 lb at most. A child's ball is one that can be swung without gripping hard; strength and "
                 "hand come first.")),
)  # fmt: skip

"""What was noted in the made-up cases, written by tests/studies/make_cases.py."""

from bowlcore.coaching.seen import Seen

SEEDS = {1: 1008, 2: 2006, 3: 3002, 4: 4018, 5: 5026, 6: 6126, 7: 7076, 8: 8038}
SEEN = {
    1: [
        Seen(hit="high", finish="still skidding", leave=(3, 6, 7, 10), target_hit=False, arrow_board=17.0),
        Seen(hit="other side", finish="unsteady", leave=(9, 10), target_hit=False, arrow_board=17.0),
        Seen(hit="other side", finish="unsteady", leave=(5, 6, 10), target_hit=False, arrow_board=13.0),
        Seen(hit="other side", finish="stood up", leave=(6, 10), target_hit=False, arrow_board=15.0),
    ],
    2: [
        Seen(hit="high", finish="early", leave=(4, 7, 9), target_hit=True, arrow_board=17.0),
        Seen(hit="high", finish="still skidding", leave=(4,), target_hit=True, arrow_board=18.0),
        Seen(hit="other side", finish="still skidding", leave=(5,), target_hit=True, arrow_board=16.0),
        Seen(hit="other side", finish="early", leave=(), target_hit=True, arrow_board=17.0),
    ],
    3: [
        Seen(hit="light", finish="still skidding", leave=(3, 9), target_hit=True, arrow_board=17.0),
        Seen(hit="missed", finish="still skidding", leave=(1, 2, 4, 8), target_hit=False, arrow_board=22.0),
        Seen(hit="light", finish="still skidding", leave=(3, 5, 6, 9, 10), target_hit=True, arrow_board=17.0),
        Seen(hit="light", finish="still skidding", leave=(3, 5, 6, 9, 10), target_hit=True, arrow_board=16.0),
    ],
    4: [
        Seen(hit="light", leave=(2, 4, 5, 7, 8), target_hit=True, arrow_board=15.0),
        Seen(hit="flush", leave=(), target_hit=True, arrow_board=14.0),
        Seen(hit="light", leave=(2, 4, 5, 7, 8), target_hit=True, arrow_board=14.0),
        Seen(hit="missed", finish="stood up", leave=(1, 2, 7, 9), target_hit=True, arrow_board=12.0),
    ],
    5: [
        Seen(
            hit="light",
            finish="still skidding",
            leave=(4, 7, 8),
            target_hit=True,
            arrow_board=14.0,
            breakpoint_board=9.0,
        ),
        Seen(
            hit="nose",
            finish="early",
            leave=(4, 6, 10),
            target_hit=False,
            arrow_board=14.0,
            breakpoint_board=10.0,
        ),
        Seen(
            hit="light",
            finish="stood up",
            leave=(8, 10),
            target_hit=True,
            arrow_board=14.0,
            breakpoint_board=10.0,
        ),
        Seen(
            hit="light",
            finish="still skidding",
            leave=(2, 4, 5, 7, 8),
            target_hit=True,
            arrow_board=14.0,
            breakpoint_board=8.0,
        ),
        Seen(
            hit="light", finish="unsteady", leave=(), target_hit=True, arrow_board=14.0, breakpoint_board=12.0
        ),
        Seen(
            hit="nose",
            finish="unsteady",
            leave=(3, 6, 10),
            target_hit=True,
            arrow_board=12.0,
            breakpoint_board=11.0,
        ),
    ],
    6: [
        Seen(hit="high", finish="early", leave=(4, 6, 7, 10), target_hit=True, arrow_board=8.0),
        Seen(hit="nose", leave=(3, 6, 7, 10), target_hit=True, arrow_board=8.0),
        Seen(hit="flush", finish="still skidding", leave=(), target_hit=True, arrow_board=9.0),
        Seen(hit="high", leave=(3, 6, 7, 10), target_hit=True, arrow_board=7.0),
        Seen(hit="light", finish="early", leave=(2, 4, 5), target_hit=True, arrow_board=8.0),
    ],
    7: [
        Seen(hit="high", finish="early", leave=(6, 10), target_hit=True, arrow_board=14.0, lane="left"),
        Seen(hit="light", finish="early", leave=(2, 8), target_hit=True, arrow_board=13.0, lane="right"),
        Seen(hit="flush", leave=(4, 7), target_hit=True, arrow_board=15.0, lane="left"),
        Seen(
            hit="missed",
            finish="still skidding",
            leave=(1, 2, 4, 8),
            target_hit=True,
            arrow_board=13.0,
            lane="right",
        ),
        Seen(hit="other side", finish="unsteady", leave=(5,), target_hit=True, arrow_board=15.0, lane="left"),
        Seen(hit="flush", finish="still skidding", leave=(), target_hit=True, arrow_board=14.0, lane="right"),
    ],
    8: [
        Seen(leave=(10,)),
        Seen(leave=(7,)),
    ],
}

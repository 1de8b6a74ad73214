"""Questions of the lessons: choices, which one holds in this model, a hint, and why.

Which choice is right is checked by simulation in the tests, so that a change of model is noticed.
"""

from typing import NamedTuple


class Question(NamedTuple):
    """`right` counts the choices from 0; the hint comes at a first wrong try."""

    text: str
    choices: tuple[str, ...]
    right: int
    hint: str
    why: str


QUESTIONS = {
    "dried lane": Question(
        "The same hand, the same line, but the lane has dried out. What changes most?",
        ("where the ball turns", "how much it can turn in all", "how fast it rolls in the end"),
        0,
        "Open 'Hand and lane', pick the dried out pattern, and compare the entry angle with the breakpoint.",
        "The oil decides where the ball turns. How much turn it has was decided by the hand and the ball.",
    ),
    "faster": Question(
        "Two miles an hour more speed, all else the same. Where does the ball come in?",
        ("lower: it hooks less", "higher: it hooks more", "on the same board"),
        0,
        "Move only the ball speed and watch the entry board.",
        "The same spin has a faster ball to turn, and friction has less time to do it.",
    ),
    "more rotation": Question(
        "From 45 to 65 degrees of axis rotation, same line. What will the ball do?",
        (
            "skid longer and come in steeper",
            "roll sooner and come in steeper",
            "skid longer and come in flatter",
        ),
        0,
        "Watch two numbers: 'rolls from' and the entry angle.",
        "More of the spin points sideways, so there is more slip to use up (a longer skid) and more turn in all. "
        "Past a best value, which is lower for a high rev rate, a ball that never rolls hooks less again.",
    ),
    "more tilt": Question(
        "From 13 to 30 degrees of axis tilt, same line and rev rate, on the house shape. What will the ball do?",
        ("hook later and finish sharper", "hook less and come in flatter", "nothing that can be seen"),
        1,
        "Look at the entry angle and the entry board, not at what you have been told.",
        "Tilt takes spin away from the roll: the ball has less turn in all. Many coaches say that tilt makes the "
        "finish sharper. This model does not show it; why a real ball may look so is an open question.",
    ),
    "rolled too early": Question(
        "The ball rolls far too early, and you swing it wider so that it still reaches the pocket. Its entry angle is ...",
        ("flatter", "steeper", "the same"),
        0,
        "Find the crosses in the right-hand picture and compare them with the dots.",
        "Once it rolls the turn is used up. The wider you send it, the more of that turn goes into coming back.",
    ),
    "same hit": Question(
        "Twenty balls meet the pins on the same board at the same angle, a good hit. What do they leave?",
        ("different things: strikes, and now and then a pin", "twenty strikes", "the same pin every time"),
        0,
        "Throw twenty others, two or three times, and count.",
        "Pins are set a little differently each time. Even a good hit strikes only so often, so one leave proves nothing.",
    ),
    "light ball": Question(
        "A ball of 6 lb and one of 15 lb hit the pocket alike. Which is thrown further aside by the head pin?",
        ("the light one", "the heavy one", "both alike"),
        0,
        "Compare the two headings in the sentence over the curves.",
        "The pin takes a larger share of a light ball's motion. It then misses pins that a heavy ball would take.",
    ),
}

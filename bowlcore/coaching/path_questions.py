"""Questions of lessons 02 and 03: why a ball stops turning, and what the oil decides."""

from bowlcore.coaching.question import Question

OF_PATHS = {
    "stops turning": Question(
        "A few feet before the pins the ball runs straight, with dry boards under it. Why does it not turn any more?",
        (
            "it has lost its revs",
            "its bottom no longer slips, so nothing pushes it",
            "it has become too slow",
        ),
        1,
        "Look at the lower picture: what has become zero where the path becomes straight?",
        "Friction pushes only against slip. Where the ball rolls there is none, on dry boards or in oil. Its revs are higher "
        "than they ever were.",
    ),
    "revs at the pins": Question(
        "It left the hand at 17 mph and 300 rpm, and it rolls before the pins. How fast does it spin there?",
        ("slower than in the hand", "as in the hand", "a good deal faster"),
        2,
        "Open 'The numbers behind the picture' and read the last column downwards.",
        "The lane spins it up until the cover is as fast as the ball. A ball that looks as if it had lost its spin has lost "
        "its slip.",
    ),
    "only the place": Question(
        "The same ball on the house shape and on the dried out one. It comes to roll on both. What is different at the moment "
        "it begins to roll?",
        ("its speed", "its direction", "only the place"),
        2,
        "Keep the house shot, choose the other pattern, and compare the last two rows of both tables.",
        "The same job is done, sooner on the one and later on the other. Speed, direction, tilt and revs come out the same.",
    ),
    "push and revs": Question(
        "Two bowlers throw 17 mph, one with 200 rpm, one with 500. At which rotation is the sideways push of the skidding ball "
        "largest?",
        ("at 45 degrees for both", "lower for the one with more revs", "higher for the one with more revs"),
        1,
        "Compare the two highest places in the upper row of the coaches' picture.",
        "It is where the cosine of the rotation equals spin speed over ball speed. More revs, a lower angle. It is the largest "
        "push, not yet the steepest ball.",
    ),
    "five oils": Question(
        "The same ball on the same line, on five oil shapes. On all five it rolls before the pins. What is alike there?",
        ("the board it comes in on", "the direction in which it comes in", "nothing"),
        1,
        "Look where the five lines of the lower picture end.",
        "The oil decides where it turns. How far it turns in all was settled in the hand, and so the direction is the same.",
    ),
    "same sheet": Question(
        "Two lanes have the same length, the same volume and the same side ratio on their sheets. The same ball on the same line "
        "comes in ...",
        ("on the same board", "less than a board apart", "perhaps several boards apart"),
        2,
        "In the builder, leave the first three numbers alone and move 'Left at the far end'.",
        "The three numbers do not say how the oil thins out down the lane, and the ball feels that most. So look at a ball "
        "before you believe a sheet.",
    ),
    "side ratio": Question(
        "Volume and length stay. The side ratio goes from 16 to 1 down to 1 to 1. What happens to a ball thrown a board too far "
        "out?",
        ("it comes back as before", "it comes in far too light", "it hooks too much"),
        1,
        "Set the side ratio to 1, and take the target one board out.",
        "There is as much oil outside as in the middle now, and nothing turns it back. One board at the arrows is four at the "
        "pins.",
    ),
    "longer by the rule": Question(
        "The oil grows from 36 to 44 ft, all else the same, and the ball is re-aimed. The rule of 31 moves its exit eight boards "
        "in. This ball's exit moves ...",
        ("by about eight boards in", "by a few boards at most", "by about eight boards out"),
        1,
        "Choose 're-aimed' under the fold of the builder and try both lengths.",
        "On a shape with a dry outside the edge beside the oil decides more than its end. The rule is a place to start looking.",
    ),
}

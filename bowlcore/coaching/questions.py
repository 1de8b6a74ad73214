"""Questions of the lessons: choices, which one holds in this model, a hint, and why.

Which choice is right is checked by simulation in the tests, so that a change of model is noticed.
"""

from bowlcore.coaching.path_questions import OF_PATHS
from bowlcore.coaching.question import Question

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
    "staying put": Question(
        "Six people bowl three games on a fresh house shape, and you never move. Where does your ball come in at last?",
        ("higher than at first", "lower than at first", "on the same board"),
        0,
        "Set 'Played so far' to 1, 2 and 3, and follow the dashes.",
        "The track wears out, the ball meets the dry sooner and turns sooner. Oil that is carried on works against this; "
        "with these shares it is the weaker of the two.",
    ),
    "other side": Question(
        "Five right-handers and one left-hander bowl three games. The others have all moved. What does the left-hander do?",
        ("stay", "move in with the others", "move out"),
        0,
        "Pick 'bowler with the other hand' and look at the steps.",
        "Nobody else rolls over those boards. What the others do on their side is no reason to move.",
    ),
    "which way in": Question(
        "The track has worn and the league one-hander comes in high. Which move brings most balls back to the pocket?",
        ("feet in, the target in a little less", "feet and target in by the same", "feet and target out"),
        0,
        "Read the moves that are written at the steps.",
        "Feet alone cross the ball over the worn boards; feet and target alike leave it the same angle. A little more angle "
        "than before, from further in, keeps it in oil and still brings it back.",
    ),
    "feet or hand": Question(
        "The lane has dried and you come in high. What brings back more, in this model?",
        ("feet further in, the same hand", "the same feet, less rotation and less tilt", "both the same"),
        0,
        "Look at the row 'drying': the filled black dot against the open blue diamond.",
        "The customary hand does help whoever stands still. But it has less turn in all, and it comes in flatter. Feet "
        "that find the oil again keep the turn.",
    ),
    "spare ball": Question(
        "You stand far in and send the ball across the lane at the corner pin on your own side. The strike ball on the "
        "line of a plain ball ...",
        ("bends away and misses", "falls in the gutter", "hits the pin as the plain ball does"),
        0,
        "Look at the dashes: they are the other ball on the same line.",
        "The strike ball hooks where the boards are dry, away from this pin. A plain ball hooks far less there.",
    ),
    "parallel walk": Question(
        "You walk parallel: as far as you move at the start, you slide. Feet 9 out, same target, straight ball, for the "
        "far corner pin. It goes ...",
        ("a little short, but touches", "into the middle of the pin", "far past it"),
        2,
        "Set 'Walk' to parallel and look at the far corner.",
        "3-6-9 counts on a walk that slides half as far as it starts. A parallel walk moves the ball twice as much.",
    ),
    "corner window": Question(
        "A pin in the middle is touched from some width of boards. How wide is it for a corner pin?",
        ("the same", "about seven tenths of it", "a third of it"),
        1,
        "Compare the windows of the 5 and the 10 in the picture.",
        "On the gutter's side the window ends where the lane ends. On the other side it is as wide as for any pin.",
    ),
    "strikes or spares": Question(
        "A league bowler of about 190. Which is worth more pins a game: ten strikes more in a hundred first balls, or ten "
        "points more on each spare?",
        ("the strikes", "the spares", "the same, within a pin"),
        0,
        "Look at the three bars as they start.",
        "A strike adds the next two balls, and this bowler's next two balls are good. Whether ten points of strikes are as "
        "easy to get as ten points of spares is another question.",
    ),
    "late and skidding": Question(
        "On a slick lane your ball skids on and comes in light. You take fifteen degrees of rotation off, same line, same speed. "
        "It rolls sooner. And where does it come in?",
        ("back in the pocket", "lighter still, or no better", "high"),
        1,
        "Pick saying 7 and look at the second strip.",
        "Less rotation leaves less turn. It rolls sooner, but on a lane where nothing turns it that turn is missed at the pins.",
    ),
    "two and one": Question(
        "Your walk drifts two to one: two boards at the start are one at the foul line. You move the feet two boards in and the "
        "target one. On paper, what have you done to the line?",
        ("opened it, so that the ball goes further out", "closed it", "shifted it by one board, parallel"),
        2,
        "What is left of the two boards at the foul line?",
        "Laydown and target both moved by one board. With a parallel walk the same words open the line. So ask which is meant.",
    ),
    "rule of 31": Question(
        "The longest oil here is about eleven feet longer than the shortest, so the rule of 31 moves the exit in by about eleven "
        "boards. How far do the best lines of this model move?",
        ("further in, but much less", "in by eleven boards", "not at all, or out"),
        0,
        "Pick saying 15: the short shape and the long one lie on opposite sides.",
        "Oil has sides as well as an end. A ball can turn where the dry begins beside it, however long the oil is.",
    ),
    "one leave": Question(
        'A bowler comes to you. "Flat ten!" Nobody saw more. What should be changed?',
        ("feet in, for more angle", "a stronger ball", "nothing yet: ask for more"),
        2,
        "Type it into the box of the reading panel, with nothing else filled in.",
        "The same good hit leaves a pin now and then. One leave suits nearly every cause, so the advisor asks before it advises.",
    ),
    "two late balls": Question(
        "Two late balls, on the same board at 50 ft. To look a board and a half further out, with the same feet, helps the one "
        "that still skids. What does it do to the one that has rolled too early?",
        ("it helps that one as well", "it comes in lighter still", "it comes in high"),
        1,
        "Look at the row 'same feet, look 1.5 out' of the last panel, and at its table.",
        "A ball that still turns finds the dry outside and comes back. One that has rolled goes where it points: further out.",
    ),
    "where to look": Question(
        "The ball came in light, over its target. With the next ball you get one look. Which tells most about the cause?",
        ("its last twenty feet", "which pins stay", "whether it was a strike"),
        0,
        "Set 'It hit' to light and 'Over its target' to yes. Then try the finishes, and then what stood.",
        "How it finishes parts the two faces of late. Pins say what the ball met, and much of that is luck.",
    ),
    "earlier and earlier": Question(
        "The lane dries all over. The same hand, the same line: the ball rolls earlier and earlier. Where does it come in?",
        ("further and further in", "lighter and lighter", "always on the same board"),
        0,
        "Look at the table 'If only the lane changes'.",
        "It makes the same turn, only sooner, so it comes back further. Light and rolled too early takes a hand that gave less "
        "turn, or a line that was swung wider.",
    ),
    "where the tape looks": Question(
        "A right-hander comes fully round the ball: 90 degrees of axis rotation, no tilt. There is a strip of tape on the axis. "
        "Where does it look as the ball is let go?",
        ("back at the bowler", "straight to the side", "up at the ceiling"),
        0,
        "Set axis rotation to 90 and look at the ball from above.",
        "At 0 the axis lies across the lane and the tape looks to the side. Each degree of rotation turns it towards the bowler.",
    ),
    "same revs, two speeds": Question(
        "Two bowlers have the same 300 rpm. One throws 12 mph, the other 20. By our limits ...",
        (
            "both are matched",
            "the slower is rev-dominant, the faster speed-dominant",
            "the faster is rev-dominant",
        ),
        1,
        "Leave the rev rate at 300 and move only the ball speed.",
        "It is the ratio that counts. A slow ball with the same spin spins faster for its speed.",
    ),
    "behind the ball": Question(
        "The hand stays behind the ball, the palm open to the target. What is that said to do?",
        ("lower the rotation", "raise the rotation", "raise the tilt"),
        0,
        "Pick it under 'What the hand does' and compare the two balls.",
        "The spin then points more down the lane. That is common practice; how much it does for you, only measuring tells.",
    ),
    "five degrees": Question(
        "Your axis rotation was read 5 degrees wrong. How far off is the model's hit, for this hand on the house shape?",
        ("less than a board", "two to three boards", "more than five boards"),
        0,
        "Look at the bar 'axis rotation' on the right.",
        "On this shape, for such a hand, it is well under a board: less than a good bowler's own scatter. To find out whether "
        "practice has moved your rotation by 5 degrees, the same reading is far too rough.",
    ),
    "one turn at 30": Question(
        "A phone films 30 frames a second and you count the frames of one turn of a ball of 350 rpm. How wrong is that, "
        "give or take?",
        ("about 1 %", "about 5 %", "about 14 %"),
        2,
        "One turn takes about five frames, and each end of the count is half a frame unsure.",
        "Three turns instead of one, or a faster clip, make it several times better.",
    ),
    "wrong side": Question(
        "You lay the measure over the larger side of the track ring by mistake and read 15 in. The formula then says ...",
        ("10 degrees, as it should", "10 degrees below zero", "no tilt at all"),
        1,
        "Half of 27 in is no tilt. Is 15 more or less than that?",
        "The sign is the trap: from the tape the ring lies 90 degrees plus the tilt away, from the far side 90 less the tilt.",
    ),
    "twelve balls": Question(
        "Five good balls of twelve before a change, eight of twelve after it. Did the change help?",
        ("yes: three more are three more", "perhaps; it could well be luck", "no: it made things worse"),
        1,
        "Look where the two bands overlap.",
        "A bowler whose true share never changed does as much often enough. Some sixty balls each would tell.",
    ),
    "where pins go": Question(
        "Six young bowlers play one game a week. Where do most of their pins go?",
        ("misses of the pocket", "pocket hits that do not strike", "missed single pins"),
        0,
        "Look at the longest bar.",
        "In this invented log it is the pocket, by far. Your own log may say something else: that is what it is for.",
    ),
    "when to stop": Question(
        "Nothing has changed. But you look after every pair of balls, up to thirty each, and stop as soon as it says better or "
        "worse. How often will it say so, wrongly?",
        ("in about one case of ten", "in clearly more than one of ten", "never"),
        1,
        "Each look is one more chance for luck.",
        "Looked at once, at the end, it is wrong in about one of ten. Who stops at the first good look gives luck many tries. "
        "So settle the number of balls before the first one.",
    ),
    "near the cause": Question(
        "AK looked at the arrow from week 4 on, and in this invented log it helps. Which number shows it after three weeks?",
        (
            "how near to the meant board it crosses the arrows",
            "how often it is in the pocket",
            "the score of the game",
        ),
        0,
        "Take AK, and change 'Look at'.",
        "What is nearest to the change has the least other luck in it. Pocket and score follow later, if at all.",
    ),
    "balls an evening": Question(
        "Eight children and four parents, two lanes, ninety minutes with talk and paper. How many balls does each one get?",
        ("about a dozen", "about thirty", "about sixty"),
        0,
        "Read the first sentence above the page.",
        "Two lanes give one ball every twenty seconds, and twelve people share them. So nobody may stand about meanwhile.",
    ),
    "what a child lifts": Question(
        "A child bowls twelve balls of 8 lb. How much has the child lifted in all?",
        ("about 10 kg", "about 45 kg", "about 100 kg"),
        1,
        "A ball of 8 lb weighs a little more than three and a half kilograms.",
        "Each delivery lifts the ball once, and it adds up. Short sets and a light ball keep it small.",
    ),
    "a lane less": Question(
        "The same twelve people, and one of the two lanes breaks down. What would still give everyone ten balls?",
        ("one more coach", "a shorter talk", "neither"),
        2,
        "Set 'Centre' to 1 lane and read what would fit; then try more coaches and a talk of five minutes.",
        "A coach more finds no lane, and five minutes are few balls for twelve. So say it: fewer balls each, the same for all.",
    ),
    "a tingling thumb": Question(
        "Three balls before the end a child says that its thumb tingles. What happens?",
        ("it finishes the set", "that is all for today", "it goes on with a lighter ball"),
        1,
        "Look at what is asked at each change of groups.",
        "The child stays, calls and counts. Its adult is told; if it does not pass, a professional looks at it.",
    ),
    **OF_PATHS,
}

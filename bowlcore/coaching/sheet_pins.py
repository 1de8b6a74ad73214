"""Worksheets about the pins: 05 into the pocket, 08 spares."""

from dataclasses import replace

from bowlcore.coaching import words
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.sheet import Ask, Blank, Lane, Line, Pins, Table
from bowlcore.coaching.sheet_numbers import (
    Shot,
    Steps,
    computed_with,
    draw_shot,
    first_pin,
    given_of,
    hit_word,
    plain_first_pin,
    pocket_told,
)
from bowlcore.coaching.sheet_paths import DRAW, WATCH, Made, counted, guess
from bowlcore.coaching.spare_windows import leave_window
from bowlcore.coaching.spares import PLAIN_BALL, lines_to_middle
from bowlcore.motion.release import Release
from bowlcore.rack.carry import leave_shares, strike_odds
from bowlcore.rack.leave import Leave

_BOARDS = Steps(13.5, 22, 0.5)
_ANGLES = Steps(1, 6, 0.5)
_AT_PINS_MPH, _BALL_LB = 14.0, 15.0  # a grown-up's ball on the sheet
_SPARE_PINS = {"8-9": (10, 7, 6, 4), "from 10": (10, 7, 6, 4, 3, 2), "from 14": (10, 7, 6, 4, 3, 2, 9, 8)}
_CHILD_MPH, _TOO_MANY = 9.0, 500
_HIT = "L for light, P for pocket, H for high"
_PLACES = ("my place", "2 boards further in", "2 boards further out")


def into_the_pocket(rng, level, hand) -> Made:
    """05: light, pocket or high; which pin first; and from 14 how often such a hit strikes."""

    def good(one):
        return 2 <= one.path.entry_angle_deg <= 7 and (level != "8-9" or plain_first_pin(one.path, hand))

    shot = draw_shot(rng, level, hand, good=good)
    hits = _hits(rng, 4, level)
    parts = [Lane(DRAW, "house", (Line("", shot),))]
    if level == "8-9":
        rows = tuple((f"board {words.halves(at)}", Blank(hit_word(at))) for at, _ in hits)
        parts += [
            Table(
                f"{pocket_told()} Which are these?",
                ("comes in on", "light, pocket or high"),
                rows,
            ),
            Pins(
                "Which pin does the ball on your lane meet first? Put a ring round it.",
                (first_pin(shot.path.entry_board, shot.path.entry_angle_deg, hand),),
            ),
            _one_leave(),
            counted(_HIT, "hit"),
        ]
        return Made(WATCH, given_of(shot, level), tuple(parts), _told(shot))
    columns = [
        "comes in on board",
        "light, pocket or high",
        "my guess: what stands most often",
    ]
    columns.append("what stands most often, when it does not strike")
    if level == "from 14":
        columns.append("strikes in 100")
    rows = []
    for at, steep in hits:
        cells = [
            f"{words.halves(at)}, at {words.halves(steep)}°",
            Blank(hit_word(at)),
            guess(),
            Blank(_leave(at, steep, hand)),
        ]
        if level == "from 14":
            cells.append(Blank(_strikes(at, steep)))
        rows.append(tuple(cells))
    best = max(hits, key=lambda hit: strike_odds(*hit, _AT_PINS_MPH, _BALL_LB).strike)
    parts += [
        Table(
            f"Four hits of a ball of {_BALL_LB:g} lb, {_AT_PINS_MPH:g} mph at the pins. {pocket_told()}",
            tuple(columns),
            tuple(rows),
        ),
        Ask(
            "Which of the four strikes most often? (Computed: real pins may differ.)",
            f"board {words.halves(best[0])}",
            tuple(f"board {words.halves(at)}" for at, _ in hits),
        ),
        _one_leave(),
        counted(f"{_HIT}, and then the pins that stand", "hit", "stands"),
    ]
    return Made("", given_of(shot, level), tuple(parts), _told(shot))


def _one_leave():
    return Ask(
        "You hit the pocket and one pin stays. What do you change for the next ball?",
        "nothing yet",
        ("the feet", "the hand", "nothing yet"),
    )


def _told(shot):
    return f"{computed_with(shot)} Leaves and strikes: our pin model, {_AT_PINS_MPH:g} mph at the pins, {_BALL_LB:g} lb."


def _hits(rng, count, level):
    """Different hits, light, good and high among them, one of which clearly strikes most often."""
    for _ in range(_TOO_MANY):
        hits = [(_BOARDS.draw(rng), _ANGLES.draw(rng)) for _ in range(count)]
        odds = sorted((strike_odds(*hit, _AT_PINS_MPH, _BALL_LB).strike for hit in hits), reverse=True)
        kinds = {hit_word(at) for at, _ in hits}
        if (
            len({at for at, _ in hits}) == count
            and len(kinds) == 3
            and (level == "8-9" or odds[0] - odds[1] > 0.1)
        ):
            return hits
    raise ValueError("no hits of this level fit this sheet; try another seed")


def _leave(at, steep, hand):
    """What stands most often when something stands."""
    shares = leave_shares(at, steep, _AT_PINS_MPH, _BALL_LB, hand)
    return next((item.leave.text for item in shares if not item.leave.is_strike), "nothing")


def _strikes(at, steep):
    odds = strike_odds(at, steep, _AT_PINS_MPH, _BALL_LB)
    return words.between(odds.low, odds.high).replace(" and ", " to ")


def spares(rng, level, hand) -> Made:
    """08: where to stand for a pin, the target kept."""
    pins = rng.sample(_SPARE_PINS[level], 3)
    for _ in range(_TOO_MANY):
        usual = _straight(rng, hand) if level == "8-9" else _plain(draw_shot(rng, level, hand))
        if level != "8-9":
            usual = usual.but(target_board=float(rng.randint(14, 26)))
        lines = _lines(usual, pins)
        if all(line is not None and 2 <= line.release.laydown_board <= 38 for line in lines):
            break
    else:
        raise ValueError("no target of this level fits this sheet; try another seed")
    columns = ["pin that stands", "my guess", "lay it down on board"]
    rows = []
    for pin, line in zip(pins, lines, strict=True):
        cells = [f"the {pin}-pin", guess(), Blank(words.halves(line.release.laydown_board))]
        if level == "from 14":
            low, high = _window(pin, line)
            cells.append(Blank(f"{words.halves(low)} to {words.halves(high)}"))
        rows.append(tuple(cells))
    if level == "from 14":
        columns.append("at that pin, boards that hit it (centre of the ball)")
    target = words.halves(usual.release.target_board)
    told = f"Only the feet move: each ball is rolled over board {target}. On which board is it laid down?"
    first = pins[0]
    parts = [
        Lane(
            f"Only the {first}-pin stands. Draw a way to it, over board {target}.",
            "house",
            (Line("", lines[0], ()),),
            pin=first,
        ),
        Table(told, tuple(columns), tuple(rows)),
        Ask(
            f"To hit the {pins[1]}-pin, is the ball laid down further in or further out than for the {first}-pin?",
            _where(lines[1], lines[0]),
            ("further in", "on the same board", "further out"),
        ),
    ]
    if level == "8-9":
        straight = rng.choice([at for at in range(4, 37) if _plainly(at, hand)])
        parts.append(
            Pins(
                f"All ten stand. You roll straight down board {straight}. Which pin does it meet first? Put a ring round it.",
                (first_pin(straight, 0.0, hand),),
            )
        )
    given = (
        ("ball", "rolls straight" if level == "8-9" else PLAIN_BALL),
        ("rolled over board (at 15 ft)", target),
    )
    given += (("pins", ", ".join(map(str, pins))),)
    if level != "8-9":
        given = (*given_of(usual, level)[:4], *given)
    table = Table(
        "At the lanes a partner writes: H for a hit, L or R for the side on which it passed.",
        ("three balls from", "slide foot on board", "ball 1", "ball 2", "ball 3"),
        tuple((place, *(guess() for _ in range(4))) for place in _PLACES),
    )
    # the youngest read it under their lane: their page is full
    intro = "" if level == "8-9" else f"All boards are counted from your own side: from the {hand}."
    return Made(intro, given, (*parts, table), computed_with(lines[0]))


def _straight(rng, hand):
    """A child's ball without any turn, over a board near the middle."""
    at = float(rng.randint(13, 27))
    return Shot(Release(_CHILD_MPH, 0, 0, 0, at, at, hand=hand), "house", "house ball 6 lb")


def _plainly(at, hand):
    """True where a straight ball on this board meets the same pin a board further out and in."""
    return len({first_pin(at + off, 0.0, hand) for off in (-1.0, 0.0, 1.0)}) == 1


def _plain(shot):
    return replace(shot, ball_name=PLAIN_BALL)


def _lines(shot, pins):
    """For each pin the shot from where it meets the middle of the window; None where there is no such place."""
    releases = lines_to_middle(
        [shot.release] * len(pins), [Leave.of(pin) for pin in pins], lane_of(shot.pattern), shot.ball
    )
    return [None if found is None else replace(shot, release=found) for found in releases]


def _window(pin, line):
    """Boards at the pin's row from which this ball's direction touches it, kept on the lane."""
    window = leave_window(Leave.of(pin), line.path.entry_angle_deg, line.release.hand)
    return max(float(window.low), 0.5), min(float(window.high), 39.5)


def _where(one, other):
    by = words.to_half(one.release.laydown_board) - words.to_half(other.release.laydown_board)
    return "further in" if by > 0 else "further out" if by < 0 else "on the same board"

"""The reading panel: one ball at a time as it was seen, the balls noted, the likely causes, and both paths."""

from dataclasses import replace

from bowlcore.coaching import reaction_told
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.phrase_book import look_up
from bowlcore.coaching.seen import EXITS, FINISHES, HITS, LANES, Seen, merged
from bowlcore.display.controls import Choice, Words, starting
from bowlcore.display.lane_figure import lanes_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import layer, svg
from bowlcore.display.reaction_figure import LANE, SIZE, bars_background, moving
from bowlcore.display.settings import SETTINGS
from bowlcore.display.spares import bowler_of
from bowlcore.rack.leave import Leave

_NOT = "not seen"
_LEAVES = ((), (10,), (7,), (4,), (9,), (8,), (5,), (4, 9), (5, 7), (8, 10), (2, 8), (2, 4, 5), (2, 4, 5, 8),
           (1, 2, 10), (4, 6, 7, 10), (4, 6, 7, 9, 10), (7, 10))  # fmt: skip
_FIELDS = ("hit", "finish", "target_hit", "exit", "leave", "arrow_board", "breakpoint_board", "lane")
_HITS = [(told, word) for told, word in zip(
    ("light", "flush", "high", "nose: full in the face", "other side: crossed over", "missed the head pin"), HITS,
    strict=True)]  # fmt: skip
_EXITS = [(f"{word} (left-hander: {EXITS[4 - i]})" if i != 2 else word, word) for i, word in enumerate(EXITS)]


def _leave_options():
    pairs = [(Leave.of(*pins), pins) for pins in _LEAVES if pins]
    return [
        ("strike", ()),
        *((f"{leave} (left-hander: {leave.mirror})", pins) for leave, pins in pairs),
    ]


def _boards(low, high):
    return [(f"board {board}", float(board)) for board in range(low, high + 1)]


def reaction_panel(noted=(), **start):
    """What was seen, read: causes by their weights, and the path each lane would give.

    Parameters
    ----------
    noted : list of Seen
        Balls already noted, in a right-hander's words.
    start
        Starting values of the controls.

    Raises
    ------
    ValueError
        When a name or a value does not belong to a control.
    """
    panel = Panel("reaction_panel", draw, *_controls(start), buttons=_BUTTONS, lines=5)
    if noted:
        panel.memory["noted"] = tuple(noted)
        panel.redraw()
    return panel


def _controls(start):
    of_a_ball = []

    def fill(text):
        """A phrase of the book moves the controls of what it says for certain."""
        for name, value in _said(text).told.items():
            next(control for control in of_a_ball if control.name == name).put(value)

    told = _said(start.get("phrase", "")).told
    with starting(start) as at:

        def choice(name, label, options):
            return Choice(name, label, [(_NOT, _NOT), *options], at(name, told.get(name, _NOT)))

        phrase = Words("phrase", "In bowlers' words", _said, "it stood up", at("phrase", ""), fill)
        hit = choice("hit", "It hit", _HITS)
        finish = choice("finish", "The last third of the lane", [(word, word) for word in FINISHES])
        target = choice("target_hit", "Over its target", [("yes", True), ("no", False)])
        more = [
            choice("exit", "Left the deck", _EXITS),
            choice("leave", "What stood", _leave_options()),
            choice("arrow_board", "Crossed the arrows on", _boards(3, 36)),
            choice("breakpoint_board", "Furthest out on", _boards(1, 30)),
            choice("lane", "Lane of the pair", [(lane, lane) for lane in LANES]),
        ]
        of_a_ball += [hit, finish, target, *more]
        folds = {
            "More that was seen": more,
            "Bowler and lane": [
                Choice(
                    "bowler", "Bowler (invented)", list(load_bowlers()), at("bowler", "league one-hander")
                ),
                Choice("pattern", "The lane is believed", pattern_options(), at("pattern", "house")),
            ],
        }
    return [phrase, hit, finish, target], folds


def _said(text):
    """What a text says for certain, in a right-hander's words; ValueError from the book."""
    if not text.strip():
        return Seen()
    return own_side(merged(*(phrase.seen for phrase in look_up(text, SETTINGS.hand))), SETTINGS.hand)


def own_side(seen, hand):
    """A right-hander's words for a left-hander, and back; the lanes of a pair stay where they are."""
    return seen if hand == "right" else replace(seen.mirror, lane=seen.lane)


def balls_of(values, noted, hand):
    """The balls noted and the one on the controls, as this hand's bowler saw them."""
    now = Seen(**{name: values[name] for name in _FIELDS if values[name] != _NOT})
    balls = [*noted, now] if set(now.told) - {"lane"} else noted
    return [own_side(item, hand) for item in balls]


def _note(panel):
    values = {name: panel.values[name] for name in _FIELDS}
    now = balls_of(values, (), "right")
    panel.memory["noted"] = (*panel.memory.get("noted", ()), *now)
    _empty(panel)


def _take_back(panel):
    panel.memory["noted"] = panel.memory.get("noted", ())[:-1]


def _clear(panel):
    panel.memory.pop("noted", None)
    _empty(panel)


def _empty(panel):
    """The controls of a ball back to "not seen"; the lane stays."""
    for name in ("phrase", *_FIELDS):
        if name != "lane":
            panel.controls[name].put("" if name == "phrase" else _NOT)


_BUTTONS = {"Note this ball": _note, "Take the last one back": _take_back, "Clear the list": _clear}


def draw(phrase, bowler, pattern, noted=(), metric=False, hand="right", **seen) -> Drawn:
    """Both paths, the weights, the list of balls; sentence and table."""
    who = bowler_of(bowler, hand)
    balls = balls_of(seen, noted, hand)
    told = reaction_told.answer(who, lane_of(pattern), balls, metric=metric)
    sentence = told.sentence
    if len(balls) == len(noted) and seen["lane"] != _NOT:
        sentence += f" The next ball is one on the {seen['lane']} lane."
    if phrase.strip():
        book = [f'"{one.say}": {one.means} {one.ask}'.strip() for one in look_up(phrase, hand)]
        sentence += f" The book of phrases: {' '.join(book)}{_kept(phrase, seen, hand)}"
    picture = moving()
    names = [*range(1, len(noted) + 1), "now"][: len(balls)]
    picture.show(told.believed, told.readings, balls, names, _title(told.readings), metric)
    alt = (
        f"{sentence} Picture: the lane on its side with the usual ball's path as believed, and in dashes as it would be if "
        "the likeliest cause is true, distance from the foul line against board; beside it a bar for the weight of each cause."
    )
    layers = [
        lanes_background(SIZE, (LANE,), pattern, metric, hand),
        bars_background(),
        layer(picture.figure),
    ]
    return Drawn(svg(layers, *SIZE, alt), sentence, told.rows, told.next_ball)


def _kept(phrase, seen, hand):
    """What the controls of this ball hold besides the words, in a sentence."""
    said = {*_said(phrase).told, "lane"}
    rest = Seen(**{name: value for name, value in seen.items() if value != _NOT and name not in said})
    return f" This ball keeps as well: {reaction_told.seen_words(own_side(rest, hand))}." if rest.told else ""


def _title(readings):
    if not readings:
        return "The usual ball, as the lane is believed"
    if len(readings) == 1:
        return f"Line: as the lane is believed; dashes: if '{readings[0].named.name}' is true"
    names = " and ".join(f"{r.lane}: '{r.named.name}'" for r in readings)
    return f"Line: as believed; if true, {names}"

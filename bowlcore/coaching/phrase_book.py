"""From talk to what was seen: looks up what bowlers say in the book of phrases.

Case, punctuation, small words and small typing errors do not matter.
"""

import re
import unicodedata
from difflib import SequenceMatcher, get_close_matches
from functools import lru_cache

from bowlcore.coaching.phrases import PHRASES, Phrase
from bowlcore.rack.leave import MIRROR

LONGEST = 200  # characters: a few sentences
_NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_SMALL = set("a an and are at been did do does had has have i is it its just me my on our pin pins so that "
             "the then there this to very was were".split())  # fmt: skip
_DENIED = (["not"], ["never"])
_ALIKE = 0.8  # share of letters in common that still counts as the same word, if as long but for one letter
_NEAREST = 3
_LIKE = 0.7  # share of letters in common, of the whole, that is worth naming
# words that say too little for a phrase to be named for their sake
_TELL_LITTLE = set("1 at ball by came for from got in into like no not of off on out over through to too under up with "
                   "would".split())  # fmt: skip
_SUCH_AS = ("light", "high", "it stood up")  # of the book, in either hand


def phrases(hand: str = "right") -> tuple[Phrase, ...]:
    """The whole book; for a left-hander pins and sides are mirrored.

    Raises
    ------
    ValueError
        When hand is neither "right" nor "left".
    """
    if hand not in ("right", "left"):
        raise ValueError(f'hand must be "right" or "left", got {str(hand)[:40]!r}')
    return PHRASES if hand == "right" else _mirrored_book()


def look_up(text: str, hand: str = "right") -> list[Phrase]:
    """The phrases in what somebody said, in the order said; at least one.

    A phrase after "not" or "never" is left out, unless the book knows it with that word.

    Raises
    ------
    ValueError
        When text is no text, empty or longer than 200 characters; and when it holds no phrase of the
        book: the message then names the nearest ones, if there are any.
    """
    book, wordings, vocabulary = _index(hand)
    said = [_known_word(word, vocabulary) for word in _words_of(_checked(text))]
    found, taken = {}, set()
    for words in wordings:
        for first in range(len(said) - len(words) + 1):
            last = first + len(words)
            if tuple(said[first:last]) != words or taken & set(range(first, last)):
                continue
            if _tears_pins(said, first) or _tears_pins(said, last):
                continue
            taken |= set(range(first, last))
            if said[:first][-1:] not in _DENIED:
                found.setdefault(wordings[words][0], first)
    if not found:
        raise ValueError(f"the phrase book does not know {_echo(text)!r}{_instead(said, wordings)}")
    return [book[i] for i in sorted(found, key=found.get)]


def mirrored(phrase: Phrase) -> Phrase:
    """The same phrase as the other hand's bowler says it."""
    return Phrase(
        _swap(phrase.say), tuple(map(_swap, phrase.also)), phrase.seen.mirror, _swap(phrase.means), _swap(phrase.ask)
    )  # fmt: skip


@lru_cache(maxsize=1)
def _mirrored_book():
    return tuple(map(mirrored, PHRASES))


def _swap(text):
    """Pins and sides in a mirror; groups of pins such as 2-4-5 in rising order again."""

    def group(match):
        return "-".join(map(str, sorted(MIRROR[int(pin)] for pin in match[0].split("-"))))

    text = re.sub(r"\b(?:10|[1-9])(?:-(?:10|[1-9]))*\b", group, text)
    return re.sub(r"\b(?:left(?! the\b)|right)\b", lambda m: {"left": "right", "right": "left"}[m[0]], text)


@lru_cache(maxsize=2)
def _index(hand):
    """The book, its wordings (words -> place in the book, as written; the longest first) and all their words."""
    book, wordings = phrases(hand), {}
    for i, phrase in enumerate(book):
        for wording in (phrase.say, *phrase.also):
            wordings.setdefault(tuple(_words_of(wording)), (i, wording))
    longest_first = dict(sorted(wordings.items(), key=lambda item: -len(item[0])))
    return book, longest_first, {word for words in wordings for word in words}


def _tears_pins(said, at):
    """True between two pins: "2-8" is no part of "2-8-10"."""
    return 0 < at < len(said) and said[at - 1].isdecimal() and said[at].isdecimal()


def _checked(text):
    if not isinstance(text, str):
        raise ValueError(f"a phrase must be text, got {type(text).__name__}")
    if len(text) > LONGEST:
        raise ValueError(f"a phrase must be at most {LONGEST} characters long, got {len(text)}")
    if not _words_of(text):
        raise ValueError('a phrase must hold at least one word, such as "flat ten"')
    return text


def _words_of(text):
    """Plain words: small letters, numbers as digits, no small words."""
    text = unicodedata.normalize("NFKC", text).casefold().replace("’", "'")
    text = re.sub(r"n't\b", " not", re.sub(r"\bcan't\b", "can not", text.replace("won't", "would not")))
    words = re.sub(r"[^\w\s]|_", " ", text).split()
    return [_as_digit(word) for word in words if word not in _SMALL]


def _as_digit(word):
    """Pins as digits: "ten", "tens" and "10s" are "10"."""
    bare = word.removesuffix("s") if len(word) > 2 else word
    if bare in _NUMBERS:
        return str(_NUMBERS.index(bare) + 1)
    return bare if bare.isdecimal() else word


def _known_word(word, vocabulary):
    """The book's own spelling of a word with a small typing error; digits and short words as they are."""
    if word in vocabulary or len(word) < 4 or word.isdecimal():
        return word
    same_start = [known for known in vocabulary if known[0] == word[0] and abs(len(known) - len(word)) < 2]
    near = get_close_matches(word, same_start, 1, _ALIKE)
    return near[0] if near else word


def _instead(said, wordings):
    """What to say instead: the nearest wordings, one of a phrase, or that nothing is near."""
    text, telling, best = " ".join(said), set(said) - _TELL_LITTLE, {}
    for words, (i, wording) in wordings.items():
        common = len(telling.intersection(words)) / len(said)
        likeness = SequenceMatcher(None, text, " ".join(words), autojunk=False).ratio()
        if common or likeness >= _LIKE:
            best[i] = max(best.get(i, (0.0, "")), (common + likeness, wording))
    if best:
        nearest = sorted(best.values(), reverse=True)[:_NEAREST]
        return f"; nearest: {_listed(wording for _, wording in nearest)}"
    return f", nor anything like it; it knows talk such as {_listed(_SUCH_AS)}"


def _listed(wordings):
    return ", ".join(f'"{wording}"' for wording in wordings)


def _echo(text):
    """What was typed, short and printable."""
    shown = "".join(c if c.isprintable() else " " for c in text).strip()
    return shown if len(shown) <= 40 else shown[:37] + "..."

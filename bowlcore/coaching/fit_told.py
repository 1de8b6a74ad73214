"""What a fitted lane says to a coach: tight, medium or loose, where the oil ends, and what the shots cannot tell."""

from dataclasses import dataclass
from functools import lru_cache

from bowlcore.coaching import words
from bowlcore.coaching.bowler import Bowler
from bowlcore.coaching.fitting import LaneFit, Watched, fit_lane, fit_lanes
from bowlcore.coaching.seen import LANES

MEDIUM_BOARDS = (
    1.5  # the usual ball comes in within so many boards of the model's: the lane plays as the model
)
_LITTLE, _MUCH = (
    0.15,
    0.6,
)  # share of the doubt gone: less than that is next to nothing, more is much (chosen)
_TIED = 0.5  # correlation from which two numbers cannot be told apart (chosen)
_WHAT = "the friction in the oil", "the friction of the dry", "where the oil ends"
_ALIKE = {
    (0, 2): "a slicker lane from a longer one",
    (1, 2): "a longer lane from one whose dry boards grip less",
    (0, 1): "slicker oil from dry boards that grip less",
}
ORDER = ("laydown", "arrows", "breakpoint", "at ft", "hit", "seconds")
_NAMES = ("laydown_board", "arrow_board", "breakpoint_board", "breakpoint_ft", "hit_board", "time_s")


@dataclass(frozen=True)
class FitAnswer:
    """fits : {None or "left" or "right": LaneFit}; watched, bowler : as given; rows : the numbers behind it"""

    fits: dict
    watched: list
    bowler: object
    sentence: str
    rows: list


def shots_of(text) -> list[Watched]:
    """Shots from lines of text: laydown, arrows, breakpoint, feet, hit, seconds; "-" for what was not seen.

    A line may begin with "left" or "right". Empty lines are passed over.

    Raises
    ------
    ValueError
        Naming the line, what is wrong with it, and the allowed range.
    """
    found = []
    for number, line in enumerate(text.splitlines(), start=1):
        parts = line.replace(";", " ").replace(",", " ").split()
        if not parts:
            continue
        lane = parts.pop(0).lower() if parts[0].lower() in LANES else None
        try:
            if not 2 <= len(parts) <= len(_NAMES):
                raise ValueError(f"2 to 6 numbers are wanted ({', '.join(ORDER)}), got {len(parts)}")
            values = [None if part in ("-", "–") else _number(part) for part in parts]
            found.append(Watched(**dict(zip(_NAMES, values, strict=False)), lane=lane))
        except ValueError as problem:
            raise ValueError(f"line {number}: {problem}") from None
    return found


def _number(part):
    try:
        return float(part)
    except ValueError:
        raise ValueError(
            f'{part[:20]!r} is no number; write 12.5 with a point, or "-" for not seen'
        ) from None


def answer(watched, bowler, believed, title="model’s lane", metric=False) -> FitAnswer:
    """How the lane or the pair plays, in words.

    Parameters
    ----------
    watched : list of Watched
    bowler : Bowler; believed : OiledLane
    title : str
        What the believed lane is called.

    Raises
    ------
    ValueError
        From `fit_lane`, in words.
    """
    fits = _fits(tuple(watched), bowler.release, bowler.spread, bowler.ball, believed)
    parts = [_lane_words(name, fit, title, metric) for name, fit in fits.items()]
    if len(fits) == 2:
        parts.append(_apart(fits))
    rows = [row for name, fit in fits.items() for row in _rows(name, fit, metric)]
    return FitAnswer(fits, watched, bowler, " ".join(parts), rows)


@lru_cache(maxsize=8)
def _fits(watched, release, spread, ball, believed):
    """Kept, so that naming a lane or switching units does not fit it again."""
    bowler = Bowler(release, spread, ball)
    pair = any(one.lane for one in watched)
    return fit_lanes(watched, bowler, believed) if pair else {None: fit_lane(watched, bowler, believed)}


def plays(fit: LaneFit) -> str:
    """ "tight", "medium", "loose", or two of them when the shots do not decide."""
    low, middle, high = fit.boards
    kinds = [_kind(value) for value in (0.5 * (low + middle), middle, 0.5 * (middle + high))]
    return " to ".join(dict.fromkeys(kinds))


def _kind(boards):
    return "tight" if boards < -MEDIUM_BOARDS else ("loose" if boards > MEDIUM_BOARDS else "medium")


def _lane_words(name, fit, title, metric):
    low, middle, high = fit.boards
    where = f"{name.capitalize()} lane, {fit.shots} shots" if name else f"{fit.shots} shots"
    off = words.to_half(middle)
    as_model = f"as high as on the {title}" if off == 0 else (
        f"{words.count(abs(off), 'board')} {'higher' if off > 0 else 'lower'} than on the {title}"
    )  # fmt: skip
    near, end, far = (words.distance(feet, metric) for feet in fit.ends_ft)
    told = (
        f"{where}: it plays {plays(fit)}; the usual ball comes in {as_model} ({_way(low)} to {_way(high)}). "
        f"The oil ends about {end} ({near} to {far})."
    )
    return " ".join([told, *_cannot(fit), *_odd(fit)])


def _way(boards):
    off = words.to_half(boards)
    return "no higher" if off == 0 else f"{words.halves(abs(off))} {'higher' if off > 0 else 'lower'}"


def _cannot(fit):
    """What these shots leave open."""
    pair = max(_ALIKE, key=lambda pair: abs(fit.correlations[pair]))
    if abs(fit.correlations[pair]) > _TIED and max(fit.learnt[i] for i in pair) < _MUCH:
        yield f"These shots cannot tell {_ALIKE[pair]}."
    nothing = [what for what, share in zip(_WHAT, fit.learnt, strict=True) if share < _LITTLE]
    if nothing:
        yield f"They say next to nothing about {' or '.join(nothing)}."


def _odd(fit):
    for shot in fit.odd:
        yield f"Shot {shot} does not go with the others: look at what was written; it was still used."


def _apart(fits):
    left, right = (fits[lane].boards for lane in LANES)
    gap = words.to_half(right[1] - left[1])
    wide = ((right[2] - right[0]) ** 2 + (left[2] - left[0]) ** 2) ** 0.5 / 2.0
    if abs(right[1] - left[1]) < wide:
        return "Whether the two lanes differ cannot be told from these shots."
    return f"The right lane lets the ball come in {words.count(abs(gap), 'board')} {'higher' if gap > 0 else 'lower'}."


def _rows(name, fit, metric):
    """The table: each number, its range, what was learnt, and how it hangs together with the others."""
    titles = [f"{what}, times the model's" for what in _WHAT[:2]] + ["end of the oil"]
    ranges = (fit.oil, fit.dry, fit.ends_ft)
    for i, (title, (low, middle, high)) in enumerate(zip(titles, ranges, strict=True)):
        show = (lambda feet: words.distance(feet, metric)) if i == 2 else (lambda factor: f"{factor:.2f}")
        row = {"lane": name} if name else {}
        yield row | {
            "number": title,
            "fitted": show(middle),
            "90 % between": f"{show(low)} and {show(high)}",
            "doubt gone": words.percent(max(fit.learnt[i], 0.0)),
            "correlation with oil / dry / end": " / ".join(
                f"{value + 0.0:.1f}" for value in fit.correlations[i].round(1)
            ),
        }

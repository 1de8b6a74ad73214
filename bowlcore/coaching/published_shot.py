"""A published shot replayed: which oil end the model needs for it, and the angle that follows unfitted.

AIP Advances 15, 045222 (2025): 17.9 mph, 416 rpm, 45 degrees of rotation, laid down on board 12 from the
right (28 from the left) and sent 1.8 degrees out, said to reach about board 17.5. The numbers were read
second-hand in a news summary of 20 May 2025; oil pattern, friction and tilt of that work were not seen.
"""

from dataclasses import dataclass
from functools import lru_cache

from bowlcore.coaching import telling, words
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.ball import Ball
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import FrictionLaw, ZonedLane

ENDS_FT = (28.0, 40.0)


def published_release(axis_tilt_deg=0.0, hand="right") -> Release:
    """The published launch; its tilt is not published."""
    return Release(17.9, 416, 45, axis_tilt_deg, 12, 12, hand=hand).with_heading(-1.8)


def two_zones(end_ft) -> ZonedLane:
    """Full oil to `end_ft`, bare lane after it, with the two ends of this course's friction law."""
    law = FrictionLaw()
    return ZonedLane([(end_ft, law.oil), (60, law.dry)])


@lru_cache(maxsize=64)
def fitting_end_ft(axis_tilt_deg=0.0, entry_board=words.POCKET_BOARD) -> float:
    """The end of the oil [ft] with which the shot reaches `entry_board`, by halving.

    Raises ValueError when it lies outside ENDS_FT.
    """
    release = published_release(axis_tilt_deg)

    def entry(end_ft):
        return simulate(release, two_zones(end_ft)).entry_board

    low, high = ENDS_FT  # a longer oil brings the ball in lower
    if not entry(low) >= entry_board >= entry(high):
        raise ValueError(
            f"no oil end between {low:g} and {high:g} ft brings this shot to board {entry_board:g}"
        )
    for _ in range(40):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if entry(middle) > entry_board else (low, middle)
    return 0.5 * (low + high)


def _end(oil_end_ft, metric):
    """The end of the oil, as fine as its control."""
    return words.distance(oil_end_ft, True) if metric else f"{words.halves(oil_end_ft)} ft"


@dataclass(frozen=True)
class PublishedAnswer:
    release: Release
    path: BallPath
    fitting_end_ft: float
    flat_board: float
    sentence: str
    rows: list


def answer(oil_end_ft=36.0, axis_tilt_deg=0.0, *, metric=False, hand="right") -> PublishedAnswer:
    """The shot on two zones that meet at `oil_end_ft`, and on this course's flat shape for contrast."""
    release = published_release(axis_tilt_deg, hand)
    path = simulate(release, two_zones(oil_end_ft))
    flat = simulate(release, lane_of("flat"), Ball())
    law = FrictionLaw()
    rows = [telling.row(f"oil to {_end(oil_end_ft, metric)}", release, path, metric)]
    try:
        fits = fitting_end_ft(axis_tilt_deg)
    except ValueError:
        fits = float("nan")
        low, high = (words.distance(end, metric) for end in ENDS_FT)
        meets = f"With this tilt no oil end between {low} and {high} brings it to board 17.5."
    else:
        if abs(path.entry_board - words.POCKET_BOARD) <= 0.75:
            exactly = words.distance(fits, True) if metric else f"{fits:.1f} ft"
            meets = f"Near enough: board 17.5 itself asks for oil up to {exactly}."
            fitted = simulate(release, two_zones(fits))
            rows.append(telling.row(f"oil to {exactly} (board 17.5 itself)", release, fitted, metric))
        else:
            high = path.entry_board > words.POCKET_BOARD
            meets = f"That is too {'high: let the oil end later' if high else 'low: let the oil end sooner'}."
    rows.append(telling.row("flat shape of this course", release, flat, metric))
    sentence = (
        f"With friction {law.oil:g} up to {_end(oil_end_ft, metric)} and {law.dry:g} beyond, the published "
        f"shot {telling.tell(path, metric)}. {meets}"
    )
    return PublishedAnswer(release, path, fits, flat.entry_board, sentence, rows)

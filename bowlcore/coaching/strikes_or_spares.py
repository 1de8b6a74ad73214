"""Strikes or spares? What ten points more of each are worth to a bowler, in pins a game.

The frame model of `odds`: ten frames that are all alike, the rules of play, spare chances by class.
"""

from dataclasses import dataclass

from bowlcore.coaching import words
from bowlcore.coaching.odds import SHOWN, mean_first_ball, pins_per_game, spare_chances
from bowlcore.motion.checks import number_in
from bowlcore.motion.many import sweep_columns

_CLASSES = ("lone", "corner", "cluster", "split")
_FIRST_AFTER = ("strike", "pinfall")


@dataclass(frozen=True)
class StrikesOrSpares:
    """Pins a game now, with more strikes, and with more spares; shares of strikes and of spares made now."""

    now: float
    more_strikes: float
    more_spares: float
    strike: float
    spare: float
    sentence: str
    rows: list


def answer(bowler, surface, points=10.0) -> StrikesOrSpares:
    """What `points` percentage points more of each are worth.

    Parameters
    ----------
    bowler : Bowler
    surface : as for `simulate`
    points : float
        1 to 20. Strikes: the other first balls become rarer in proportion. Spares: the chance of each
        class of leave rises by as much, to 100 % at most.

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """
    number_in("points", points, 1, 20, "points")
    mean, chances = first_balls(bowler, surface), spare_chances(bowler.spread)
    better = {name: min(chance + points / 100.0, 1.0) for name, chance in chances.items()}
    now = pins_per_game(mean, chances)
    strikes = pins_per_game(with_more_strikes(mean, points / 100.0), chances)
    spares = pins_per_game(mean, better)
    share, then = spares_made(mean, chances), spares_made(mean, better)
    gains = strikes - now, spares - now
    sentence = (
        f"{points:.0f} points more strikes are worth about {gains[0]:.0f} pins a game to this bowler, {points:.0f} points "
        f"more on each spare about {gains[1]:.0f}. {_verdict(*gains)}"
    )
    rows = [
        _row("now", mean["strike"], share, now, now),
        _row(
            f"{points:.0f} points more strikes", min(mean["strike"] + points / 100, 1.0), share, strikes, now
        ),
        _row(f"{points:.0f} points more on each spare", mean["strike"], then, spares, now),
    ]
    return StrikesOrSpares(now, strikes, spares, mean["strike"], share, sentence, rows)


def first_balls(bowler, surface) -> dict[str, float]:
    """Mean first ball of a bowler: shares of strikes and of the classes of leave, pins down, pins left."""
    marks, _ = sweep_columns(bowler.shots(SHOWN), surface, bowler.ball)
    return mean_first_ball(marks, bowler.ball)


def with_more_strikes(mean, share) -> dict[str, float]:
    """The same first balls with `share` more strikes; what else happened becomes rarer in proportion."""
    strike = min(mean["strike"] + share, 1.0)
    kept = (1.0 - strike) / (1.0 - mean["strike"]) if mean["strike"] < 1.0 else 0.0
    other = {name: kept * value for name, value in mean.items() if name not in _FIRST_AFTER}
    pinfall = 10.0 * strike + kept * (mean["pinfall"] - 10.0 * mean["strike"])
    return {"strike": strike, "pinfall": pinfall} | other


def spares_made(mean, chances) -> float:
    """Share of the first balls without a strike whose spare is made."""
    left = sum(mean[name] for name in _CLASSES)
    return sum(mean[name] * chances[name] for name in _CLASSES) / left if left else 1.0


def _verdict(strikes, spares):
    if abs(strikes - spares) < 0.15 * max(strikes, spares):
        return "About the same."
    if strikes > spares:
        return "A point of strikes is worth more; which of the two is easier to get, a model cannot say."
    return "A point of spares is worth more, and spares need no new hand."


def _row(what, strike, spare, pins, now):
    gain = pins - now
    return {
        "what": what,
        "strikes, this pin model": words.percent(strike),
        "spares made": words.percent(spare),
        "pins a game": f"{pins:.0f}",
        "gained": "" if gain == 0 else f"{gain:.0f}",
    }

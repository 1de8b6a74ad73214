"""What a log shows: pins lost by cause, leaves, pocket and carry, scatter at the arrows, left and right lane."""

from collections import Counter
from dataclasses import dataclass, field

import numpy as np

from bowlcore.coaching import did_it_help, words
from bowlcore.coaching.log_games import CAUSES, POCKET, games_of, leave_class, pins_lost
from bowlcore.coaching.log_source import shots_of
from bowlcore.coaching.luck import band_of_mean, band_of_share, bootstrap_means, in_hundred
from bowlcore.rack.leave import Leave

LOST, LEAVES, CARRY = "pins a game lost by cause", "leaves", "pocket and carry"
SCATTER, LANES = "scatter at the arrows", "left and right lane"
VIEWS = (LOST, LEAVES, CARRY, SCATTER, LANES)
_MOST_LEAVES = 8
_FEW = 3  # games or balls below which no band is drawn


@dataclass(frozen=True)
class Bar:
    """A bar of a picture; low and high are the band, or both None."""

    label: str
    value: float
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True)
class View:
    """One view of a log: bars along `axis`, or misses at the arrows in boards (out negative)."""

    sentence: str
    rows: list = field(default_factory=list)
    axis: str = ""
    bars: tuple = ()
    misses: tuple = ()


def answer(log, bowler, view) -> View:
    """One view of one log.

    Parameters
    ----------
    log : one of `log_source.LOGS`
    bowler : initials, or "everybody"
    view : one of VIEWS

    Returns
    -------
    View
        Without bars or misses, and with a sentence that says why, where the log holds nothing for it.

    Raises
    ------
    ValueError
        For a file that is no log.
    """
    shots = shots_of(log, bowler)
    if isinstance(shots, str):
        return View(shots)
    return _MAKERS[view](shots)


def _lost(kept):
    games = games_of(kept)
    done = [game for game in games if game.score is not None]
    if not done:
        return View(f"There is no finished game with all counts noted in this log ({len(games)} begun).")
    lost = {cause: [pins_lost(game)[cause] for game in done] for cause in CAUSES}
    order = sorted((cause for cause in CAUSES if any(lost[cause])), key=lambda cause: -np.mean(lost[cause]))
    bars = tuple(Bar(cause, float(np.mean(lost[cause])), *_band(lost[cause])) for cause in order)
    mean = np.mean([game.score for game in done])
    biggest = bars[0] if bars else None
    second = f", then {bars[1].label} ({bars[1].value:.0f})" if len(bars) > 1 else ""
    told = f" Most pins went with: {biggest.label} ({biggest.value:.0f} a game){second}." if biggest else ""
    low, high = (f"{f([game.score for game in done])}" for f in (min, max))
    sentence = f"{_games(len(done))}, mean {mean:.0f}, from {low} to {high}, so {300 - mean:.0f} pins a game were lost.{told}"
    rows = [
        {"cause": bar.label, "pins a game": f"{bar.value:.0f}", "could be": _could_be(bar),
         "least and most in one game": f"{min(lost[bar.label]):.0f} to {max(lost[bar.label]):.0f}"}
        for bar in bars
    ]  # fmt: skip
    return View(sentence, rows, "pins a game", bars)


def _leaves(kept):
    left = [shot.entry for shot in kept if shot.entry.standing]
    if not left:
        return View("No leave is noted in this log.")
    counts = Counter(shot.standing for shot in left)
    rows, bars = [], []
    for standing, times in counts.most_common(_MOST_LEAVES):
        made = [shot.made for shot in left if shot.standing == standing and shot.made is not None]
        name = Leave.of(*standing).text
        rows.append(_spares_row(name, times, made))
        bars.append(Bar(name if len(standing) > 1 else f"{name}-pin", times))
    for kind in ("single pins", "several pins", "splits"):
        of_kind = [shot for shot in left if leave_class(shot.standing) == kind]
        rows.append(_spares_row(f"all {kind}", len(of_kind), [s.made for s in of_kind if s.made is not None]))
    first = bars[0]
    singles = [
        shot.made for shot in left if leave_class(shot.standing) == "single pins" and shot.made is not None
    ]
    spares = f"Single pins made: {_of(singles)}." if singles else "No second ball at a single pin is noted."
    sentence = f"{len(left)} leaves. Most often stood: {first.label} ({first.value:.0f} of them). {spares}"
    return View(sentence, rows, "times left", tuple(bars))


def _carry(kept):
    seen = [shot for shot in kept if shot.entry.hit is not None and shot.entry.standing is not None]
    if not seen:
        return View("No ball with both its hit and its pins is noted in this log.")
    pocket = [shot.entry.hit == POCKET for shot in seen]
    struck = [not shot.entry.standing for shot in seen]
    inside = [strike for strike, hit in zip(struck, pocket, strict=True) if hit]
    outside = [strike for strike, hit in zip(struck, pocket, strict=True) if not hit]
    shares = {"in the pocket": pocket, "strike from the pocket": inside, "strike from elsewhere": outside}
    for day in sorted({shot.day for shot in seen}):
        shares[f"pocket, {day:%d %b %Y}"] = [shot.entry.hit == POCKET for shot in seen if shot.day == day]
    bars = tuple(_share_bar(label, hits) for label, hits in shares.items())
    rows = [_share_row(label, hits) for label, hits in shares.items()]
    carry = f"{_of(inside)} of these struck" if inside else "none to carry"
    return View(
        f"In the pocket: {_of(pocket)}; {carry}. Elsewhere {_of(outside)} struck.", rows, "in 100 balls", bars
    )


def _scatter(kept):
    aimed = [s.entry for s in kept if s.entry.arrow_board is not None and s.entry.over_board is not None]
    if len(aimed) < _FEW:
        return View(
            "Fewer than three balls have both boards noted: the one meant and the one crossed at the arrows."
        )
    miss = np.array([shot.arrow_board - shot.over_board for shot in aimed])
    mean, wide = float(miss.mean()), float(miss.std(ddof=1))
    low, high = band_of_mean(bootstrap_means(miss))
    side = (
        f"{words.count(abs(mean), 'board')} {'out' if mean < 0 else 'in'} of" if words.to_half(mean) else "on"
    )
    sentence = (
        f"{len(miss)} balls at the arrows: on average {side} the board meant, and about two in three within "
        f"{words.count(wide, 'board')} of that."
    )
    rows = [
        {"what": "mean miss", "boards": _side(mean), "could be": f"{_side(low)} to {_side(high)}"},
        {"what": "scatter (one standard deviation)", "boards": words.halves(wide), "could be": ""},
        {"what": "half the balls missed by less than", "boards": words.halves(float(np.median(np.abs(miss)))), "could be": ""},
    ]  # fmt: skip
    return View(sentence, rows, "boards from the one meant", misses=tuple(miss))


def _lanes(kept):
    told = {lane: [shot.entry for shot in kept if shot.entry.lane == lane] for lane in ("left", "right")}
    seen = {lane: [shot for shot in shots if shot.hit is not None] for lane, shots in told.items()}
    if not all(seen.values()):
        return View("This log does not have balls with a noted hit on both lanes.")
    bars, rows = [], []
    kinds = {
        "pocket": (POCKET,),
        "light": ("light",),
        "high": ("high", "nose", "other side"),
        "missed": ("missed",),
    }
    for kind, hits in kinds.items():
        for lane, shots in seen.items():
            good = [shot.hit in hits for shot in shots]
            bars.append(_share_bar(f"{kind}, {lane} lane", good))
            rows.append(_share_row(f"{' or '.join(hits)}, {lane} lane", good))
    high = [[shot.hit in kinds["high"] for shot in seen[lane]] for lane in ("left", "right")]
    better = did_it_help.chance_better(sum(high[0]), len(high[0]), sum(high[1]), len(high[1]))
    verdict = "The right lane plays higher" if better > did_it_help.SURE else "The left lane plays higher"
    if 1 - did_it_help.SURE < better < did_it_help.SURE:
        verdict = "Whether one lane plays higher, these balls cannot tell"
    sentence = f"High or further: left lane {_of(high[0])}, right lane {_of(high[1])}. {verdict}."
    return View(sentence, rows, "in 100 balls", tuple(bars))


_MAKERS = {LOST: _lost, LEAVES: _leaves, CARRY: _carry, SCATTER: _scatter, LANES: _lanes}


def _band(values):
    return band_of_mean(bootstrap_means(values)) if len(values) >= _FEW else (None, None)


def _share_bar(label, good):
    if not good:
        return Bar(label, 0.0)
    return Bar(
        label, 100 * sum(good) / len(good), *(100 * edge for edge in band_of_share(sum(good), len(good)))
    )


def _share_row(label, good):
    band = in_hundred(*band_of_share(sum(good), len(good))) if good else ""
    share = f"{100 * sum(good) / len(good):.0f}" if good else ""
    return {
        "what": label,
        "balls": len(good),
        "of these": sum(good),
        "in 100": share,
        "could be, in 100": band,
    }


def _spares_row(label, times, made):
    band = in_hundred(*band_of_share(sum(made), len(made))) if made else ""
    return {
        "stood": label,
        "times": times,
        "second balls": len(made),
        "made": sum(made),
        "could be, in 100": band,
    }


def _of(good):
    return f"{sum(good)} of {len(good)}"


def _games(count):
    return f"{count} game{'' if count == 1 else 's'}"


def _could_be(bar):
    return "" if bar.low is None else f"{bar.low:.0f} to {bar.high:.0f}"


def _side(miss):
    half = words.to_half(miss)
    return "0" if not half else f"{words.halves(abs(half))} {'out' if half < 0 else 'in'}"

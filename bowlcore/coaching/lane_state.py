"""Fresh, drying, carrydown or wet-dry: read from the oil under one bowler's track, now against the start.

The four words are the trade's; what exactly they mean here is our own choice. What counts is how bare a
board feels to the ball, exp(-oil / scale) of the lane's friction law: 0 under thick oil, 1 without oil.
"""

from typing import NamedTuple

import numpy as np

STATES = ("fresh", "drying", "carrydown", "wet-dry")
NOTICED_FT = 0.5  # feet of dry boards won or lost below which a lane is still fresh: our choice
SHARP = 2.0  # times the step from board to board at the start that makes it wet-dry: our choice
_FEET = np.linspace(0.0, 60.0, 61)
_TRACK = np.arange(-2.0, 2.1, 0.5)  # boards either side that are counted as the track
_BESIDE = np.arange(-4.0, 4.1, 1.0)  # boards either side where a miss goes
_STEP_FT = slice(15, 46)  # where a step across the boards turns a ball


class LaneState(NamedTuple):
    """What has become of the lane under one track.

    name : one of STATES
    drier_ft : as if so many feet more of it were dry boards
    wetter_ft : as if so many feet fewer were dry, mostly past the old end of the oil
    sharper : largest step from one board to the next beside the track, against that of the start
    """

    name: str
    drier_ft: float
    wetter_ft: float
    sharper: float


def read_lane(start, now, path, hand="right") -> LaneState:
    """The state of a lane under a track.

    Parameters
    ----------
    start, now : OiledLane
        The lane as it was and as it is.
    path : BallPath
        The track, of a ball that stays on the lane.
    hand : "right" or "left"
        Whose boards the path counts.

    Notes
    -----
    Wet-dry: the largest step between neighbouring boards, 15 to 45 ft, within four boards of the track,
    is at least SHARP times that of the start. Otherwise fresh, while less than NOTICED_FT was won or lost;
    otherwise drying or carrydown, whichever is larger.
    """
    before, after = (_bare(lane, path, hand, _TRACK).mean(axis=0) for lane in (start, now))
    change = after - before
    drier, wetter = float(change[change > 0].sum()), float(-change[change < 0].sum())
    steps = [
        float(np.abs(np.diff(_bare(lane, path, hand, _BESIDE), axis=0))[:, _STEP_FT].max())
        for lane in (start, now)
    ]
    sharper = steps[1] / steps[0] if steps[0] > 0 else (np.inf if steps[1] > 0 else 1.0)
    if sharper >= SHARP:
        name = "wet-dry"
    elif max(drier, wetter) < NOTICED_FT:
        name = "fresh"
    else:
        name = "drying" if drier > wetter else "carrydown"
    return LaneState(name, drier, wetter, float(sharper))


def _bare(lane, path, hand, beside):
    """How bare the boards beside a track are, 0 to 1: array (beside, feet)."""
    own = np.interp(_FEET, path.distance_ft, np.where(np.isfinite(path.board), path.board, 0.5))
    boards = own[None, :] + beside[:, None]
    oil = lane.pattern.oil_um(boards if hand == "right" else 40.0 - boards, _FEET[None, :])
    return np.exp(-oil / lane.law.scale_um)

"""The demo clip, clicked with a chosen care: what the fit makes of it, beside what is true."""

from functools import lru_cache
from typing import NamedTuple

from bowlcore.coaching import words
from bowlcore.coaching.clip_fit import CannotTell, Fitted, fit_clip
from bowlcore.coaching.clip_marks import ClickedClip
from bowlcore.coaching.clip_render import Clip, demo_clip

_LENGTH_S = 0.5
_NAMES = {"axis_rotation_deg": "axis rotation", "axis_tilt_deg": "axis tilt", "rev_rate_rpm": "rev rate"}


class DemoAnswer(NamedTuple):
    """clip, clicks : what was drawn and clicked; fitted : None where the frames cannot tell"""

    clip: Clip
    clicks: ClickedClip
    fitted: Fitted | None
    sentence: str
    rows: list


@lru_cache(maxsize=8)
def _clip(radius_px, frames_per_s, camera):
    frames = int(round(_LENGTH_S * frames_per_s))
    return demo_clip(radius_px=radius_px, frames_per_s=frames_per_s, frames=frames, camera=camera)


def answer(count=12, noise_px=1.5, radius_px=80.0, frames_per_s=120.0, camera="behind") -> DemoAnswer:
    """Half a second of the made-up delivery, clicked in some frames.

    Parameters
    ----------
    count : int
        Clicked frames; as many as show the tape, if that is fewer.
    noise_px : float
        One standard deviation of a click.
    radius_px, frames_per_s, camera : as in `Scene`
    """
    clip = _clip(radius_px, frames_per_s, camera)
    seen = int((clip.tape_seen()[:, 2] > 0.2).sum())
    clicks = clip.careful_clicks(min(int(count), seen), noise_px)
    frames = [click.frame for click in clicks.clicks]
    truth = clip.truth((frames[0] + frames[-1]) / 2.0)
    try:
        fitted = fit_clip(clicks)
    except CannotTell as reason:
        return DemoAnswer(clip, clicks, None, cannot_tell(reason), beside_truth(truth, None))
    found = fitted.by_name
    inside = [name for name, one in found.items() if one.low <= truth[name] <= one.high]
    missed = [_NAMES[name] for name in found if name not in inside]
    verdict = "All three truths lie inside." if not missed else f"Outside here: {' and '.join(missed)}."
    return DemoAnswer(
        clip,
        clicks,
        fitted,
        f"{len(frames)} frames clicked. {fitted.sentence} {verdict}",
        beside_truth(truth, fitted),
    )


def cannot_tell(reason) -> str:
    """The sentence when a fit declines."""
    return f"The frames cannot tell: {reason}."


def beside_truth(truth, fitted) -> list[dict]:
    """What is true of the drawn clip, and what the clicks say (None: they cannot tell), as rows.

    truth : dict, as from `Clip.truth`
    """
    rows, found = [], fitted.by_name if fitted else {}
    for name, label in _NAMES.items():
        show = words.revs if name == "rev_rate_rpm" else words.degrees
        one = found.get(name)
        rows.append(
            {
                "number": label,
                "true in mid-clip (made up)": show(truth[name]),
                "from the clicks": show(one.value) if one else "cannot tell",
                "nine times of ten between": f"{show(one.low)} and {show(one.high)}" if one else "",
            }
        )
    return rows

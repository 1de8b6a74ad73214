"""One ordinary shot on one lane, told in a sentence."""

from dataclasses import dataclass

from bowlcore.coaching import telling, words
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import Release


@dataclass(frozen=True)
class ShotAnswer:
    release: Release
    path: BallPath
    sentence: str
    rows: list


def answer(release, surface, ball=None, *, metric=False) -> ShotAnswer:
    """The shot, and where it meets the pins."""
    path = simulate(release, surface, ball)
    lost = path.gutter_ft == path.gutter_ft
    sentence = f"The ball {telling.tell(path, metric)}" + (
        "." if lost else f": {words.hit(path.entry_board)}."
    )
    return ShotAnswer(release, path, sentence, [telling.row("this shot", release, path, metric)])

"""What a question of the lessons is."""

from typing import NamedTuple


class Question(NamedTuple):
    """`right` counts the choices from 0; the hint comes at a first wrong try."""

    text: str
    choices: tuple[str, ...]
    right: int
    hint: str
    why: str

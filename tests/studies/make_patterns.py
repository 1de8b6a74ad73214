"""Writes the shipped, invented oil shapes into data/patterns. Run: python tests/studies/make_patterns.py

Each shape is a product of a slope across the boards and a fall down the lane, in um of oil; what
they must show is tested in tests/motion/test_lanes_behave.py. No lane was measured.
"""

from pathlib import Path

import numpy as np

from bowlcore.motion.oil import OilPattern
from bowlcore.motion.shapes import BOARDS, DISTANCES, across, down

FOLDER = Path(__file__).parents[2] / "data" / "patterns"


def worn(oil):
    """The track used up: most at the front, most about board 10 of either side, a little everywhere."""
    from_edge = np.minimum(BOARDS, 40.0 - BOARDS)
    track = np.exp(-0.5 * ((from_edge - 10.0) / 3.5) ** 2)
    at_front = np.clip(1.15 - DISTANCES / 70.0, 0.0, 1.0)
    return 0.95 * oil * (1.0 - 0.85 * np.outer(at_front, track))


HOUSE = 4.5 * np.outer(down(48.5), across())

SHAPES = {
    "house": ("House shape: 40 ft, oiled in the middle, dry outside about board 9", HOUSE),
    "flat": ("Flat shape: 40 ft, the same oil on every board", 2.2 * np.outer(down(48.5), np.ones(39))),
    "short": (
        "Short shape: 34 ft, a gentle side slope, played from outside",
        3.7 * np.outer(down(40.5, 18, 0.66, 34, 13), across(1.4, 0.0, 7.5)),
    ),
    "long_heavy": ("Long and heavy shape: 45 ft", 4.9 * np.outer(down(53.5, 25, 0.7, 45, 17), across())),
    "wet_dry": (
        "Wet-dry shape: 40 ft, a sharp edge beside board 11",
        5.4 * np.outer(down(46, 24, 0.7, 40, 12), across(0.35, 0.0, 11.0)),
    ),
    "carried_down": (
        "Carried down: the house shape with its end moved on and softened",
        4.5 * np.outer(down(56, 20, 0.6, 40, 24), across()),
    ),
    "dried_out": ("Dried out: the house shape with its front and track used up", worn(HOUSE)),
}


def text_of(title, oil):
    """The CSV text of one shape."""
    boards = [f"b{int(board):02d}" for board in BOARDS]
    head = [
        f"# title:   {title}",
        "# version: 1",
        "# source:  invented for teaching; no lane was measured",
        "# licence: CC0-1.0",
        "# frame:   boards from the right edge, distance from the foul line",
        "# column:  distance_ft [ft] where the row applies",
        *(f"# column:  {name} [um] oil on board {int(name[1:])}" for name in boards),
        ",".join(["distance_ft", *boards]),
    ]
    rows = [
        ",".join([f"{x:g}", *(f"{v:.4f}".rstrip("0").rstrip(".") for v in row)])
        for x, row in zip(DISTANCES, oil, strict=True)
    ]
    return "\n".join(head + rows) + "\n"


if __name__ == "__main__":
    for name, (title, oil) in SHAPES.items():
        (FOLDER / f"{name}.csv").write_text(text_of(title, oil), encoding="utf-8")
        pattern = OilPattern(DISTANCES, BOARDS, oil)
        print(
            f"{name:13} {pattern.length_ft:5.1f} ft {pattern.volume_ml:5.1f} mL  {pattern.side_ratio:8.1f} to 1"
        )

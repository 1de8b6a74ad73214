"""How long an evening takes: 6 bowlers, 3 games, a pair of lanes. Run: python tests/benchmarks/evening.py

Prints wall and processor seconds, the first time (lines to begin on are looked for) and again with other
shares, and one redraw of the panel when the evening is already there. Target: an evening under 2 s.
"""

import time
from statistics import median

from bowlcore import a_lane_that_changes_panel, evening, load_bowlers
from bowlcore.coaching.evening_told import NAMES
from bowlcore.coaching.path_lab import lane_of


def took(call):
    """Wall and processor seconds of one call."""
    wall, processor = time.perf_counter(), time.process_time()
    call()
    return time.perf_counter() - wall, time.process_time() - processor


def main():
    bowlers = [load_bowlers()[name] for name in NAMES]
    lanes = {"left": lane_of("house"), "right": lane_of("house", 5)}
    bowlers[0].shots(256)  # scipy and the accidents are loaded once
    rows = {
        "6 bowlers, 3 games, first time": took(lambda: evening(bowlers, lanes, 3)),
        "the same with another share": took(lambda: evening(bowlers, lanes, 3, taken_up=0.07)),
    }
    panel = a_lane_that_changes_panel()
    redraws = [took(lambda games=games: panel.set(games=games)) for games in (1, 2, 3) * 7]
    rows["panel, another game looked at"] = tuple(median(values) for values in zip(*redraws, strict=True))
    for name, (wall, processor) in rows.items():
        print(f"{name:34} {wall:7.3f} s   processor {processor:7.3f} s")


if __name__ == "__main__":
    main()

"""How fast, how large: prints one table. Run: python tests/benchmarks/bench.py [words of the rows wanted]

Each row is a function that returns (figure, unit, target); add one to ROWS for another measurement. No
test depends on these figures. scipy is needed for one row, Chromium and the extra 'browser' for the last.
"""

import gc
import platform
import subprocess
import sys
import time
from pathlib import Path
from statistics import median

import numpy as np
import pandas as pd
from processor import processor

sys.path.insert(0, str(Path(__file__).parents[1] / "motion"))

from bowlcore import OiledLane, Release, aim, load_pattern, simulate, simulate_many  # noqa: E402

LINE = Release(17, 300, 45, 13, 17, 13)


def seconds(call, repeats, batch=1):
    """Median seconds of one call, over repeats of a batch of calls."""
    call()
    took = []
    gc.disable()
    try:
        for _ in range(repeats):
            begin = time.perf_counter()
            for _ in range(batch):
                call()
            took.append((time.perf_counter() - begin) / batch)
    finally:
        gc.enable()
    return median(took)


def house():
    return OiledLane(load_pattern("house"))


def releases(count, seed=0):
    """Releases as people throw them: 16-18 mph, 250-350 rpm, rotation 30-60."""
    rng = np.random.default_rng(seed)
    return pd.DataFrame(
        {
            "speed_mph": rng.uniform(16, 18, count),
            "rev_rate_rpm": rng.uniform(250, 350, count),
            "axis_rotation_deg": rng.uniform(30, 60, count),
            "axis_tilt_deg": rng.uniform(8, 18, count),
            "laydown_board": rng.uniform(15, 22, count),
            "target_board": rng.uniform(11, 15, count),
        }
    )


def in_fresh_process(code):
    """What a fresh process prints, as a number."""
    return float(
        subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    )


def one_shot():
    lane = house()
    return seconds(lambda: simulate(LINE, lane), 15, 20) * 1e3, "ms", "under 1"


def one_shot_scipy():
    from rigid_body import follow

    from bowlcore import Ball

    lane, ball = house(), Ball()
    read = lane.for_ball(ball).one_shot("right")  # the same table, the fast way of reading it
    metres, feet = 41.5 / 39 * 0.0254, 0.3048

    def friction(board, ft, slip):
        return read(ft * feet, (board - 20) * metres, slip)

    def shot():
        follow(LINE, friction, ball, rtol=1e-8, atol=1e-10, outermost=False)

    return seconds(shot, 9) * 1e3, "ms", ""


def scipy_ratio():
    return one_shot_scipy()[0] / one_shot()[0], "times", "at least 10"


def many(count, repeats):
    lane, table = house(), releases(count)
    return seconds(lambda: simulate_many(table, lane), repeats)


def map_of_shots():
    return many(41 * 41, 15) * 1e3, "ms", "under 30"


def hundred_thousand():
    return many(100_000, 5), "s", "under 0.6"


def aiming():
    lane = house()
    return seconds(lambda: aim(LINE, lane), 9) * 1e3, "ms", ""


def import_time():
    code = "import time; t = time.perf_counter(); import bowlcore; print(time.perf_counter() - t)"
    return median(in_fresh_process(code) for _ in range(7)), "s", "under 0.1"


def first_shot():
    code = (
        "import time; t = time.perf_counter()\n"
        "from bowlcore import OiledLane, Release, load_pattern, simulate\n"
        "simulate(Release(17, 300, 45, 13, 17, 13), OiledLane(load_pattern('house')))\n"
        "print(time.perf_counter() - t)"
    )
    return median(in_fresh_process(code) for _ in range(5)), "s", ""


def peak_memory():
    code = (
        f"import sys; sys.path.insert(0, {str(Path(__file__).parent)!r})\n"
        "import resource, bench\n"
        "bench.simulate_many(bench.releases(100_000), bench.house())\n"
        "peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss\n"
        "print(peak / (1e6 if sys.platform == 'darwin' else 1e3))"
    )
    return in_fresh_process(code), "MB", "under 400"


def look_ups():
    from bowlcore import strike_odds

    rng = np.random.default_rng(0)
    entries = rng.uniform(14, 22, 100_000), rng.uniform(0, 8, 100_000), rng.uniform(6, 17, 100_000)
    return seconds(lambda: strike_odds(*entries, 15.0), 9) * 1e3, "ms", "under 150"


def odds_of_a_bowler():
    from bowlcore import Bowler, bowler_odds

    bowler, lane = Bowler(LINE), house()
    return seconds(lambda: bowler_odds(bowler, lane), 15) * 1e3, "ms", "under 60"


def changes():
    from bowlcore import load_bowlers, suggest_changes

    bowler, lane = load_bowlers()["league one-hander"], OiledLane(load_pattern("dried_out"))
    return seconds(lambda: suggest_changes(bowler, lane), 9), "s", "under 0.3"


def changes_on_a_mixture():
    from bowlcore import Seen, believed_lane, load_bowlers, read_reaction, suggest_changes

    bowler = load_bowlers()["league one-hander"]
    lane = believed_lane(read_reaction(Seen(hit="high", target_hit=True), bowler, house()))
    return seconds(lambda: suggest_changes(bowler, lane), 9), "s", "under 0.3"


def reading():
    from bowlcore import Seen, load_bowlers, read_reaction

    bowler, lane = load_bowlers()["league one-hander"], house()
    seen = [Seen(hit="high", target_hit=True, arrow_board=13)] * 3
    return seconds(lambda: read_reaction(seen, bowler, lane), 9) * 1e3, "ms", ""


def panel_redraw():
    from bowlcore import path_lab_panel

    panel, rotation = path_lab_panel(), iter(range(20, 1000))
    return seconds(lambda: panel.set(axis_rotation_deg=20 + next(rotation) % 60), 25) * 1e3, "ms", ""


def key_to_picture(command="open"):
    from key_to_picture import measure

    took = sorted(measure(command=command))
    print(f"{'key press to picture, 95 % of 60':40} {took[int(0.95 * len(took))]:10.3g} ms     target 100")
    return median(took), "ms", "60"


ROWS = {
    "one shot on the house lane": one_shot,
    "the same by scipy, full equations": one_shot_scipy,
    "scipy's time over ours": scipy_ratio,
    "1,681 shots (41 x 41)": map_of_shots,
    "100,000 shots": hundred_thousand,
    "aim, one release": aiming,
    "import bowlcore, fresh process": import_time,
    "import and first shot, fresh process": first_shot,
    "peak memory of 100,000 shots": peak_memory,
    "100,000 look-ups of an entry": look_ups,
    "odds of a bowler, 256 shots": odds_of_a_bowler,
    "changes for one bowler": changes,
    "the same on what a reading leaves": changes_on_a_mixture,
    "a reading, lanes known": reading,
    "path lab, one redraw": panel_redraw,
    "key press to picture, path lab, median": key_to_picture,
    "the same, shown to a group": lambda: key_to_picture("show"),
}


def main(words):
    print(
        f"{processor()}; Python {platform.python_version()}, numpy {np.__version__}, pandas {pd.__version__}"
    )
    for name, row in ROWS.items():
        if not words or any(word in name for word in words):
            figure, unit, target = row()
            print(f"{name:40} {figure:10.3g} {unit:6} {target and 'target ' + target}", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])

"""How far hook_start_ft moves when one control moves by one step. Run: python tests/studies/hook_start_steps.py

Prints the largest move and the share of shots above one foot, for random ordinary releases on every
shipped pattern, and writes hook_start_steps.csv beside it (seed and machine in its header).
"""

import platform
from pathlib import Path

import numpy as np
import pandas as pd

from bowlcore.motion.many import simulate_many
from bowlcore.motion.oil import load_pattern, pattern_names
from bowlcore.motion.surface import OiledLane

SEED = 1
STEPS = {
    "axis_rotation_deg": 1.0,
    "axis_tilt_deg": 1.0,
    "speed_mph": 0.1,
    "rev_rate_rpm": 10.0,
    "laydown_board": 0.5,
    "target_board": 0.5,
}
HAND = ("axis_rotation_deg", "axis_tilt_deg", "speed_mph", "rev_rate_rpm")


def releases(count, seed=SEED):
    """Rotation 0-90, tilt 0-40, 12-21 mph, 0-550 rpm, laydown 8-32, sent 1 board in to 9 boards out."""
    rng = np.random.default_rng(seed)
    laydown = rng.uniform(8, 32, count)
    return pd.DataFrame(
        {
            "speed_mph": rng.uniform(12, 20.5, count),
            "rev_rate_rpm": rng.uniform(0, 540, count),
            "axis_rotation_deg": rng.uniform(0, 89, count),
            "axis_tilt_deg": rng.uniform(0, 40, count),
            "laydown_board": laydown,
            "target_board": np.clip(laydown - rng.uniform(-1, 9, count), 1, 38.5),
        }
    )


def moves(shots, lane, control, step):
    """|change| of hook_start_ft [ft] for one step, gutter balls left out."""
    before = simulate_many(shots, lane)
    after = simulate_many(shots.assign(**{control: shots[control] + step}), lane)
    stays = before.gutter_ft.isna() & after.gutter_ft.isna()
    return (after.hook_start_ft - before.hook_start_ft).abs()[stays]


def table(count, names=None, factor=1.0):
    """One row for each pattern and control."""
    shots, rows = releases(count), []
    for name in names or pattern_names():
        lane = OiledLane(load_pattern(name))
        for control, step in STEPS.items():
            moved = moves(shots, lane, control, step * factor)
            rows.append((name, control, step * factor, moved.max(), (moved > 1).mean()))
    return pd.DataFrame(rows, columns=["pattern", "control", "step", "largest_ft", "share_above_1_ft"])


if __name__ == "__main__":
    figures = table(10_000)
    print(figures.round(4).to_string(index=False))
    text = (
        "# title:   how far hook_start_ft moves with one step of a control\n# version: 1\n"
        f"# source:  our own calculation; seed {SEED}; 10000 shots; {platform.machine()}, Python {platform.python_version()}\n"
        "# licence: CC0-1.0\n# frame:   none\n"
        "# column:  pattern [text] shipped shape\n# column:  control [text] which control\n"
        "# column:  step [unit of the control] one step\n# column:  largest_ft [ft] largest move\n"
        "# column:  share_above_1_ft [fraction] of the shots that stay on the lane\n"
    )
    path = Path(__file__).with_name("hook_start_steps.csv")
    path.write_text(text + figures.round(4).to_csv(index=False, lineterminator="\n"), encoding="utf-8")

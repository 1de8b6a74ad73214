"""Study: are clicked marks good to 2 degrees and 3 %, and honest?  python tests/studies/measuring_clips.py [cases] [seed]

Made-up releases on demo lanes, drawn by the project's own renderer's geometry, clicked with an error of 1.5 pixels in
every coordinate (mark, centre, radius). "plain": radius 80 pixels or more, 250 rpm or more, 120 frames a second, 8 to 16
clicked frames. "hard": slow spins and small balls, which must widen or be declined. One row a case goes to
measuring_clips.csv; a second call goes on where the first stopped (the same seed only).
"""

import csv
import platform
import sys
from pathlib import Path

import numpy as np

from bowlcore.coaching.clip_fit import CannotTell, fit_clip
from bowlcore.coaching.clip_render import Clip, Scene
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spin_axis import CAMERAS
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release

NUMBERS = {"rotation": "axis_rotation_deg", "tilt": "axis_tilt_deg", "rev_rate": "rev_rate_rpm"}
COLUMNS = ["seed", "kind", "camera", "radius_px", "frames", "declined"]
COLUMNS += [f"{name}_{what}" for name in NUMBERS for what in ("true", "value", "low", "high")]
FILE = Path(__file__).with_suffix(".csv")
NOISE_PX = 1.5


def one_case(seed, kind="plain"):
    """One clip, clicked and fitted, as a row."""
    rng = np.random.default_rng(seed)
    plain = kind == "plain"
    while True:
        rpm, radius = (
            (rng.uniform(250, 500), rng.uniform(80, 140))
            if plain
            else (rng.uniform(60, 200), rng.uniform(20, 60))
        )
        release = Release(rng.uniform(14, 19), rpm, rng.uniform(10, 80), rng.uniform(0, 30), 20, 18)
        lane = lane_of(("house", "flat", "dried_out")[rng.integers(3)])
        scene = Scene(
            120.0, int(rng.integers(45, 76)), radius, CAMERAS[rng.integers(3)], "right",
            rng.uniform(30, 110), rng.uniform(-180, 180),
        )  # fmt: skip
        clip = Clip(simulate(release, lane), scene, -release.launch_heading_deg)
        in_view = np.flatnonzero(clip.tape_seen()[:, 2] > 0.2)
        count = int(rng.integers(8, 17))
        if len(in_view) >= count:
            break
    frames = rng.choice(in_view, count, replace=False)
    row = {
        "seed": seed,
        "kind": kind,
        "camera": scene.camera,
        "radius_px": round(radius),
        "frames": count,
        "declined": "",
    }
    try:
        found = fit_clip(clip.clicks(frames, NOISE_PX, rng))
    except CannotTell as reason:
        return row | {"declined": str(reason)}
    truth = clip.truth(found.middle_frame)
    for name, field in NUMBERS.items():
        one = getattr(found, name)
        values = truth[field], one.value, one.low, one.high
        row |= dict(
            zip((f"{name}_{w}" for w in ("true", "value", "low", "high")), np.round(values, 3), strict=True)
        )
    return row


def figures(rows):
    """Median errors, coverage and widths of the rows that were not declined."""
    told = [row for row in rows if not row["declined"]]
    out = {"cases": len(rows), "declined": len(rows) - len(told)}
    for name in NUMBERS if told else ():
        true, value, low, high = (
            np.array([float(r[f"{name}_{w}"]) for r in told]) for w in ("true", "value", "low", "high")
        )
        size = true if name == "rev_rate" else 1.0
        out[f"{name} median error"] = round(float(np.median(np.abs(value - true) / size)), 4)
        out[f"{name} 90 % interval covers"] = round(float(np.mean((low <= true) & (true <= high))), 3)
        out[f"{name} median half width"] = round(float(np.median((high - low) / 2 / size)), 4)
    return out


def main(cases=300, seed=1):
    done = []
    if FILE.exists():
        with open(FILE, newline="") as file:
            done = list(csv.DictReader(line for line in file if not line.startswith("#")))
    done = [row for row in done if seed * 100_000 <= int(row["seed"]) < (seed + 1) * 100_000]
    known = {(int(row["seed"]), row["kind"]) for row in done}
    with open(FILE, "w", newline="") as file:
        file.write(
            f"# seed {seed}, {platform.machine()}, Python {platform.python_version()}, numpy {np.__version__}\n"
        )
        writer = csv.DictWriter(file, COLUMNS, restval="")
        writer.writeheader()
        writer.writerows(done)
        for kind, count in (("plain", cases), ("hard", cases // 3)):
            for i in range(count):
                if (seed * 100_000 + i, kind) not in known:
                    done.append(one_case(seed * 100_000 + i, kind))
                    writer.writerow(done[-1])
                    file.flush()
    for kind in ("plain", "hard"):
        print(kind, figures([row for row in done if row["kind"] == kind]))
    for camera in CAMERAS:
        print(camera, figures([row for row in done if row["kind"] == "plain" and row["camera"] == camera]))


if __name__ == "__main__":
    main(*(int(text) for text in sys.argv[1:3]))

"""A demo clip drawn by our own code: a ball with a tape and its track ring, spinning as a simulated path says.

The camera is far away, so the ball keeps its size and shape. What is drawn is known exactly, so that the
fit of clicked marks can be tested against it. Every release shown this way is made up.
"""

from dataclasses import dataclass

import numpy as np

from bowlcore.coaching.clip_marks import Click, ClickedClip
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spin_axis import axis_point, turned_along, view
from bowlcore.motion.checks import number_in
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release

_TAPE_DEG, _RING_DEG = 9.0, 1.6  # half widths on the ball
_LIGHT = np.array([-0.35, 0.65, 0.68])  # from where it shines: right, up, towards the camera
_COVER, _TAPE, _RING = np.array([(46, 74, 120), (250, 246, 225), (150, 176, 210)], float)
_WALL, _LANE, _EDGE = np.array([(206, 208, 212), (214, 186, 146), (150, 124, 92)], float)
_BLUR_STEPS = 7
DEMO_SEED = 11  # of the demo clip's clicks


@dataclass(frozen=True)
class Scene:
    """What the camera is like, and where the tape sits.

    frames_per_s : 20 to 1000
    frames : 2 to 2000
    radius_px : 8 to 300
    camera, hand : as in `ClickedClip`
    tape_from_axis_deg, tape_toward_deg : where the tape is put, from the axis point, and in which direction
        round it, as the ball is let go
    shutter : 0 to 1, share of a frame's time that the shutter stays open: 0 is sharp, 1 blurs a whole frame
    """

    frames_per_s: float = 120.0
    frames: int = 60
    radius_px: float = 80.0
    camera: str = "behind"
    hand: str = "right"
    tape_from_axis_deg: float = 55.0
    tape_toward_deg: float = 0.0
    shutter: float = 0.0

    def __post_init__(self):
        number_in("frames_per_s", self.frames_per_s, 20, 1000)
        number_in("frames", self.frames, 2, 2000)
        number_in("radius_px", self.radius_px, 8, 300, "pixels")
        number_in("tape_from_axis_deg", self.tape_from_axis_deg, 0, 180, "degrees")
        number_in("tape_toward_deg", self.tape_toward_deg, -360, 360, "degrees")
        number_in("shutter", self.shutter, 0, 1)
        view(self.camera, self.hand)

    @property
    def times_s(self):
        return np.arange(self.frames) / self.frames_per_s

    @property
    def size_px(self):
        """Height and width of a frame."""
        return int(2.6 * self.radius_px) + 1, int(3.4 * self.radius_px) + 1

    def centre_px(self, frame):
        """The ball's centre (x, y) in a frame: it drifts a little across the picture."""
        height, width = self.size_px
        share = frame / max(self.frames - 1, 1) - 0.5
        return width / 2.0 + 0.5 * self.radius_px * share, height / 2.0 + 0.1 * self.radius_px * share


class Clip:
    """A drawn delivery: frames on demand, and the truth behind them.

    Parameters
    ----------
    path : BallPath
        As simulated; it lasts as long as the ball is on the lane.
    scene : Scene
    heading_deg : float
        Added to the path's headings; minus the launch heading puts the camera behind the ball's own line.

    Raises
    ------
    ValueError
        When the path is shorter than the clip.
    """

    def __init__(self, path, scene: Scene, heading_deg=0.0):
        there = np.isfinite(path.heading_deg)
        if scene.times_s[-1] > path.time_s[there][-1]:
            raise ValueError(
                f"{scene.frames} frames at {scene.frames_per_s:g} a second last {scene.times_s[-1]:.1f} s, longer than "
                f"the ball is on the lane ({path.time_s[there][-1]:.1f} s)"
            )
        self.path, self.scene, self.heading_deg = path, scene, heading_deg
        self.turned = turned_along(path, heading_deg, scene.times_s)
        self.axis = axis_point(
            path.axis_rotation_deg[0], path.axis_tilt_deg[0], path.heading_deg[0] + heading_deg
        )
        self.tilt_deg = path.axis_tilt_deg[0]
        self.tape = _from_axis(self.axis, scene.tape_from_axis_deg, scene.tape_toward_deg)
        self.view = view(scene.camera, scene.hand)
        self._drawn = {}

    def tape_seen(self):
        """(n, 3) of the tape's middle: right, up, towards the camera, in radii; in view where the last is above 0."""
        return self.turned @ self.tape @ self.view.T

    def clicks(self, frames, noise_px=0.0, rng=None) -> ClickedClip:
        """What a careful person would click in these frames: mark, centre and radius each off by `noise_px`.

        noise_px : one standard deviation; rng : numpy Generator, needed with noise
        """
        seen, made = self.tape_seen(), []
        for frame in frames:
            x, y = self.scene.centre_px(frame)
            r = self.scene.radius_px
            off = rng.normal(0.0, noise_px, 5) if noise_px else np.zeros(5)
            mark = np.array([x + r * seen[frame, 0] + off[0], y - r * seen[frame, 1] + off[1]])
            centre = np.array([x + off[2], y + off[3]])
            away = np.linalg.norm(mark - centre) / (r + off[4])
            if away > 1.1:  # nobody clicks a tape beside the ball
                mark = centre + (mark - centre) * 1.1 / away
            made.append(
                Click(int(frame), tuple(map(float, centre)), float(r + off[4]), tuple(map(float, mark)))
            )
        return ClickedClip(tuple(made), self.scene.frames_per_s, self.scene.camera, self.scene.hand)

    def careful_clicks(self, count=12, noise_px=1.5, seed=DEMO_SEED) -> ClickedClip:
        """Clicks in `count` frames that show the tape well, spread over the clip.

        Raises ValueError when fewer frames show it.
        """
        there = np.flatnonzero(self.tape_seen()[:, 2] > 0.2)
        number_in("count", count, 1, len(there), "frames that show the tape")
        frames = there[np.linspace(0, len(there) - 1, int(count)).round().astype(int)]
        return self.clicks(frames, noise_px, np.random.default_rng(seed))

    def truth(self, frame):
        """Rev rate [rpm], rotation from the camera's line and tilt [deg] at a frame, whole or not."""
        time = frame / self.scene.frames_per_s
        at = {n: float(np.interp(time, self.path.time_s, getattr(self.path, n)))
              for n in ("rev_rate_rpm", "axis_rotation_deg", "axis_tilt_deg", "heading_deg")}  # fmt: skip
        at["axis_rotation_deg"] += at.pop("heading_deg") + self.heading_deg
        return at

    def frame(self, number) -> np.ndarray:
        """One frame as (height, width, 3) bytes; drawn when it is first asked for."""
        if number not in self._drawn:
            self._drawn[number] = self._draw(number)
        return self._drawn[number]

    def _draw(self, number):
        scene = self.scene
        if not scene.shutter:
            return draw_ball(scene, self.turned[number], self.tape, self.axis, self.tilt_deg, number)
        times = scene.times_s[number] + np.linspace(0.0, scene.shutter / scene.frames_per_s, _BLUR_STEPS)
        turned = turned_along(self.path, self.heading_deg, times)
        drawn = [draw_ball(scene, one, self.tape, self.axis, self.tilt_deg, number) for one in turned]
        return np.mean(drawn, axis=0).round().astype(np.uint8)


DEMO_RELEASE = Release(16.5, 320, 50, 15, 18, 15)  # made up; no bowler was filmed


def demo_clip(**scene) -> Clip:
    """The made-up delivery of the lessons on the house shape, seen along the ball's own line; keywords as for Scene."""
    return Clip(simulate(DEMO_RELEASE, lane_of("house")), Scene(**scene), -DEMO_RELEASE.launch_heading_deg)


def draw_ball(scene, turned, tape, axis, tilt_deg, number=0) -> np.ndarray:
    """A ball that has turned by this matrix: cover, tape and track ring, lit from the upper left.

    tape, axis : unit vectors on the ball as it was let go; the ring lies 90 + tilt degrees from the axis point
    """
    height, width = scene.size_px
    x0, y0 = scene.centre_px(number)
    r = scene.radius_px
    twice = np.arange(2 * max(height, width)) / 2.0 + 0.25 - 0.5  # two samples a pixel, each way
    y, x = np.meshgrid((y0 - twice[: 2 * height]) / r, (twice[: 2 * width] - x0) / r, indexing="ij")
    picture = np.where((y > -0.98)[..., None], _WALL, _LANE)
    picture[np.abs(y + 0.98) < 0.03] = _EDGE
    inside = x * x + y * y < 1.0
    facing = np.stack([x[inside], y[inside], np.sqrt(1.0 - x[inside] ** 2 - y[inside] ** 2)], axis=-1)
    of_axis, of_tape = (facing @ (view(scene.camera, scene.hand) @ turned @ at) for at in (axis, tape))
    colour = np.broadcast_to(_COVER, facing.shape).copy()
    low, high = np.sin(np.radians([-tilt_deg - _RING_DEG, -tilt_deg + _RING_DEG]))
    colour[(of_axis > low) & (of_axis < high)] = _RING
    colour[of_tape > np.cos(np.radians(_TAPE_DEG))] = _TAPE
    light = 0.35 + 0.65 * np.maximum(facing @ _LIGHT, 0.0)
    picture[inside] = colour * light[:, None]
    pairs = picture[::2] + picture[1::2]
    fine = (pairs[:, ::2] + pairs[:, 1::2]) / 4.0
    return np.clip(fine, 0, 255).round().astype(np.uint8)


def _from_axis(axis, away_deg, toward_deg):
    """A point of the ball, so many degrees from the axis point, in a direction round it (0: up)."""
    up = np.array([0.0, 0.0, 1.0]) - axis[2] * axis
    if np.linalg.norm(up) < 1e-6:
        up = np.array([1.0, 0.0, 0.0])
    up /= np.linalg.norm(up)
    side = np.cross(axis, up)
    away, toward = np.radians([away_deg, toward_deg])
    return np.cos(away) * axis + np.sin(away) * (np.cos(toward) * up + np.sin(toward) * side)

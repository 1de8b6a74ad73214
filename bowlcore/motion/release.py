"""What leaves the hand: four numbers of the hand, two of the line, and which hand.

Boards from the bowler's own side; headings positive towards rising boards.
"""

from dataclasses import dataclass, fields, replace
from math import atan2, degrees, radians, tan

from bowlcore.motion import units
from bowlcore.motion.checks import number_in

# Physical sense, not rules: from a child's push to beyond the fastest; (low, high, unit).
RANGES = {
    "speed_mph": (3, 30, "mph"),
    "rev_rate_rpm": (0, 700, "rpm"),
    "axis_rotation_deg": (-180, 180, "degrees"),
    "axis_tilt_deg": (-90, 90, "degrees"),
    "laydown_board": (1, 39, "boards"),
    "target_board": (1, 39, "boards"),
    "loft_ft": (0, 15, "ft"),
}


@dataclass(frozen=True)
class Release:
    """One delivery as it leaves the hand.

    Parameters
    ----------
    speed_mph : float
        Ball speed at release, 3 to 30.
    rev_rate_rpm : float
        Whole spin, 0 to 700.
    axis_rotation_deg : float
        From the direction of travel: 0 end over end, 90 full side roll; negative backs up. -180 to 180.
    axis_tilt_deg : float
        Elevation of the spin axis, -90 to 90.
    laydown_board : float
        Board of the ball's centre at the foul line, from the bowler's own side, 1 to 39.
    target_board : float
        Board the launch direction points at, read 15 ft from the foul line, 1 to 39.
    loft_ft : float
        The lane is first touched here; no friction before, 0 to 15.
    hand : str
        "right" or "left".

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """

    speed_mph: float
    rev_rate_rpm: float
    axis_rotation_deg: float
    axis_tilt_deg: float
    laydown_board: float
    target_board: float
    loft_ft: float = 0.0
    hand: str = "right"

    def __post_init__(self):
        for name, (low, high, unit) in RANGES.items():
            number_in(name, getattr(self, name), low, high, unit)
        if self.hand not in ("right", "left"):
            raise ValueError(f'hand must be "right" or "left", got {self.hand!r}')

    @property
    def launch_heading_deg(self) -> float:
        """Direction of travel at release [deg], positive away from the bowler's own gutter.

        >>> round(Release(17, 300, 45, 13, 17, 16).launch_heading_deg, 3)  # one board in 15 ft
        -0.339
        """
        sideways_m = (self.target_board - self.laydown_board) * units.BOARD_M
        return degrees(atan2(sideways_m, units.TARGET_FT * units.FOOT_M))

    def with_heading(self, deg: float) -> "Release":
        """The same release from the same laydown, sent in another direction [deg, -60 to 60].

        Raises ValueError when the target would lie off the lane.
        """
        number_in("deg", deg, -60, 60, "degrees")
        moved = tan(radians(deg)) * units.TARGET_FT * units.FOOT_M / units.BOARD_M
        return replace(self, target_board=self.laydown_board + moved)


FIELD_NAMES = tuple(field.name for field in fields(Release))

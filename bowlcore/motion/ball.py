"""The ball: weight, size, radius of gyration, and how its cover takes the two ends of friction."""

from dataclasses import dataclass
from functools import lru_cache

from bowlcore.locate import data_folder
from bowlcore.motion import units
from bowlcore.motion.checks import number_in


@dataclass(frozen=True)
class Ball:
    """A bowling ball with equal moments of inertia.

    Parameters
    ----------
    mass_lb : float
        4 to 16 lb (16 is the limit of the rules; no lower limit there).
    diameter_in : float
        8.500 to 8.595 in (the rules' limits).
    rg_in : float
        Radius of gyration, 2.46 to 2.80 in from 13 lb (the rules' limits); 2.40 to 2.95 in below
        13 lb, where the limits were not read and the range is our own.
    cover_in_oil, cover_on_dry : float
        Factors, 0.2 to 2, on the lane's friction where the oil is thick and where there is none.
    name : str
        Shown on screens.

    Raises
    ------
    ValueError
        Naming the field, the value and the range.

    Notes
    -----
    Limits: equipment specifications of 2012, read second-hand in an encyclopedia.
    """

    mass_lb: float = 15.0
    diameter_in: float = 8.545
    rg_in: float = 2.55
    cover_in_oil: float = 1.0
    cover_on_dry: float = 1.0
    name: str = ""

    def __post_init__(self):
        number_in("mass_lb", self.mass_lb, 4, 16, "lb")
        number_in("diameter_in", self.diameter_in, 8.5, 8.595, "in")
        low, high = (2.46, 2.80) if self.mass_lb >= 13 else (2.40, 2.95)
        number_in("rg_in", self.rg_in, low, high, "in")
        number_in("cover_in_oil", self.cover_in_oil, 0.2, 2)
        number_in("cover_on_dry", self.cover_on_dry, 0.2, 2)

    @property
    def radius_m(self) -> float:
        """Radius [m]."""
        return self.diameter_in / 2 * units.INCH_M

    @property
    def inertia_factor(self) -> float:
        """(radius of gyration / radius) squared: 2/5 for a uniform sphere, mostly less for a real ball.

        >>> round(Ball().inertia_factor, 4)
        0.3562
        """
        return (self.rg_in / (self.diameter_in / 2)) ** 2


def load_balls() -> dict[str, Ball]:
    """The invented demo balls by name, described by what they are for (data/balls.csv)."""
    return dict(_shipped())


@lru_cache(maxsize=1)
def _shipped():
    from bowlcore.motion.data_file import read_table

    rows, _ = read_table(data_folder() / "balls.csv", text_columns=("name",))
    return {row["name"]: Ball(**row) for row in rows.to_dict("records")}

"""The shape and the mass properties of one pin, and the simple bodies that stand in for it.

Heights above the base, diameters and radii in inches. The profile is from memory (the USBC table of 15
heights could not be read); a uniform solid of that profile puts the centre of gravity at 5.8 in, inside the
published band of 5 40/64 to 5 60/64 in (USBC, "Bowling pins" specifications, opening read).
"""

import numpy as np

PROFILE_IN = np.array(
    [  # height, diameter: from memory
        (0.0, 2.031),
        (0.75, 2.828),
        (2.25, 3.906),
        (3.375, 4.510),
        (4.5, 4.766),
        (5.875, 4.563),
        (7.25, 3.703),
        (8.625, 2.472),
        (9.375, 1.965),
        (10.0, 1.797),
        (10.875, 1.870),
        (11.75, 2.094),
        (12.625, 2.406),
        (13.5, 2.547),
    ]
)
TOP_RADIUS_IN = 1.273  # copy of an encyclopedia article of 2009
HEIGHT_IN = 15.0

# Frozen numbers used by the deck (a test compares them with the integral below).
MASS_KG = 1.59  # middle of 1.531 to 1.644 kg (a retailer's article "Bowling Pins")
CENTRE_OF_GRAVITY_IN = 5.80  # above the base, our own calculation, inside the published band
GYRATION_ACROSS_IN = 3.62  # about a cross axis through the centre of gravity, our own calculation
GYRATION_ALONG_IN = 1.39  # about the pin's own axis, our own calculation
BASE_RADIUS_IN = 2.031 / 2  # a retailer's article says 2.03 in; other pages 2 1/4 in over the ring

# Stand-ins: kind, sizes [in], height of the middle [in]. Chosen by us to follow the profile within 0.2 in
# of radius (worst at the foot); every kind touches a plane and its like in closed form or nearly so.
PRIMITIVES = (
    ("cylinder", (BASE_RADIUS_IN, 0.25), 0.25),
    ("ellipsoid", (2.383, 2.383, 4.45), 4.5),
    ("sphere", (1.55,), 7.70),
    ("capsule", (0.92, 1.60), 10.40),
    ("sphere", (1.20,), 12.85),
    ("sphere", (TOP_RADIUS_IN,), HEIGHT_IN - TOP_RADIUS_IN),
)


def profile_radius_in(height_in):
    """Radius of the pin at a height above its base [in]: straight between the heights, round on top."""
    height = np.asarray(height_in, float)
    body = np.interp(height, PROFILE_IN[:, 0], PROFILE_IN[:, 1] / 2)
    dome = np.sqrt(np.maximum(TOP_RADIUS_IN**2 - (height - (HEIGHT_IN - TOP_RADIUS_IN)) ** 2, 0.0))
    return np.where(height > HEIGHT_IN - TOP_RADIUS_IN, dome, body)


def primitive_radius_in(height_in):
    """Radius of the stand-in bodies at a height above the base [in]."""
    height = np.asarray(height_in, float)
    radius = np.zeros_like(height)
    for kind, size, middle in PRIMITIVES:
        off = np.abs(height - middle)
        if kind == "cylinder":
            r = np.where(off <= size[1], size[0], 0.0)
        elif kind == "ellipsoid":
            r = size[0] * np.sqrt(np.maximum(1 - (off / size[2]) ** 2, 0.0))
        else:
            half = size[1] if kind == "capsule" else 0.0
            r = np.sqrt(np.maximum(size[0] ** 2 - np.maximum(off - half, 0.0) ** 2, 0.0))
        radius = np.maximum(radius, r)
    return radius


def uniform_solid(count=20001):
    """Mass properties of a uniform solid of the profile, integrated in slices.

    Returns
    -------
    dict
        ``volume_in3``, ``centre_of_gravity_in``, ``gyration_across_in``, ``gyration_along_in``.
    """
    height = np.linspace(0.0, HEIGHT_IN, count)
    area = np.pi * profile_radius_in(height) ** 2
    step = height[1] - height[0]
    weight = np.full(count, step)
    weight[[0, -1]] = step / 2
    volume = float(np.sum(weight * area))
    middle = float(np.sum(weight * area * height)) / volume
    radius_sq = profile_radius_in(height) ** 2
    along = float(np.sum(weight * area * radius_sq / 2)) / volume
    across = float(np.sum(weight * area * (radius_sq / 4 + (height - middle) ** 2))) / volume
    return {
        "volume_in3": volume,
        "centre_of_gravity_in": middle,
        "gyration_across_in": across**0.5,
        "gyration_along_in": along**0.5,
    }


def topple_angle_deg():
    """How far a standing pin may lean before it falls by itself [deg]."""
    return float(np.degrees(np.arctan(BASE_RADIUS_IN / CENTRE_OF_GRAVITY_IN)))

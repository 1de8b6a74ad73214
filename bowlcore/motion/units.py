"""Conversion factors and the lane's fixed sizes, the only place where they are written.

Sources: foul line to head pin 60 ft and lane width 41.5 in are the usual specification, read
second-hand; 39 boards likewise. One unit of oil is 0.0167 mL on a square foot (from memory).
"""

from math import pi

FOOT_M = 0.3048
INCH_M = 0.0254
MPH_MPS = 0.44704
RPM_RADS = 2.0 * pi / 60.0
POUND_KG = 0.45359237
KMH_PER_MPH = 1.609344
G_MPS2 = 9.80665

LANE_FT = 60.0  # foul line to the head pin's centre
LANE_WIDTH_IN = 41.5
BOARDS = 39
BOARD_M = LANE_WIDTH_IN / BOARDS * INCH_M
MIDDLE_BOARD = 20.0
EDGE_LOW_BOARD, EDGE_HIGH_BOARD = 0.5, 39.5  # the lane's two edges
TARGET_FT = 15.0  # where target_board is read

OIL_UNIT_UM = 0.0167e-6 / (12 * INCH_M) ** 2 * 1e6  # 0.0167 mL over one square foot, in micrometres

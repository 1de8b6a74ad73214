"""What an entry leaves: a look-up in the computed table of racks, with its sampling error.

Boards at the door are the path's `entry_board` at 60 ft, from the bowler's own side; inside they are
turned into the board at first touch. Always "in this pin model": a computed rack, fitted to published
totals. Single cells may be 20 points off; use it to compare, not to predict a score.
"""

from dataclasses import dataclass

import numpy as np

from bowlcore.rack.carry_table import ANGLES, OFFSETS, between, carry_table
from bowlcore.rack.leave import Leave
from bowlcore.rack.pins import CENTRE_BOARD, board_at_touch, misses_head_pin

RANGES = {
    "entry_board": (0.5, 39.5, "boards"),
    "entry_angle_deg": (-20, 20, "degrees"),
    "speed_at_pins_mph": (2, 30, "mph"),
    "ball_lb": (6, 16, "lb"),
}
_MIRRORED = np.array([Leave(mask).mirror.mask for mask in range(1024)])


@dataclass(frozen=True)
class StrikeOdds:
    """Odds of one entry or of many (floats, or arrays of one shape).

    strike : share of strikes; low, high : its 95 % interval from the counts alone (Wilson)
    mean_pinfall : pins down with the first ball
    count : racks that stand behind the share
    speed_clamped : the speed lay outside the table and its end was taken
    """

    strike: object
    low: object
    high: object
    mean_pinfall: object
    count: object
    speed_clamped: object


def strike_odds(entry_board, entry_angle_deg, speed_at_pins_mph=15.0, ball_lb=15.0) -> StrikeOdds:
    """How often this entry strikes in the pin model.

    Parameters
    ----------
    entry_board : float or array
        Ball's centre at 60 ft, from the bowler's own side, 0.5 to 39.5.
    entry_angle_deg : float or array
        -20 to 20, positive away from the own gutter. Beyond 8 the table's last column is taken.
    speed_at_pins_mph : float or array
        2 to 30; taken as 5 below 5 and as 17 above 17, and said.
    ball_lb : float or array
        6 to 16; above 15 as 15.

    Raises
    ------
    ValueError
        Naming the value and the range.

    Notes
    -----
    Linear between cells in weight, speed, angle and board. A ball that passes the head pin without
    touching it has racks of its own, with the table's two ordinary balls.
    """
    board, angle, speed, lb = _checked(entry_board, entry_angle_deg, speed_at_pins_mph, ball_lb)
    strike, pinfall, count = mixed(board, angle, speed, lb, ("strike", "pinfall", "racks"))
    strike = np.clip(strike, 0.0, 1.0)
    low, high = wilson(strike, count)
    clamped = (speed < 5.0) | (speed > 17.0)
    parts = (strike, low, high, pinfall, count, clamped)
    return StrikeOdds(*(part if part.ndim else part.item() for part in parts))


def wilson(share, count, z=1.96):
    """95 % interval of a share from `count` trials (E. Wilson 1927, from memory)."""
    count = np.maximum(count, 1e-9)
    middle = (share + z * z / (2 * count)) / (1 + z * z / count)
    half = z / (1 + z * z / count) * np.sqrt(share * (1 - share) / count + z * z / (4 * count * count))
    return np.clip(middle - half, 0.0, 1.0), np.clip(middle + half, 0.0, 1.0)


def _checked(*given):
    values = []
    for (name, (low, high, unit)), value in zip(RANGES.items(), given, strict=True):
        array = np.asarray(value, dtype=float)
        bad = ~((array >= low) & (array <= high))
        if bad.any():
            worst = array[bad].flat[0] if array.ndim else array.item()
            raise ValueError(f"{name} must be a number between {low:g} and {high:g} {unit}, got {worst:g}")
        values.append(array)
    return np.broadcast_arrays(*values)


def mixed(board, angle, speed, lb, columns):
    """Columns of the table at checked entries, linear between cells; the entries as for `corners`."""
    nodes, weights = corners(board, angle, speed, lb)
    return [(weights * node_values(name)[nodes]).sum(axis=0) for name in columns]


def node_values(name):
    """One column of the table at its nodes: strike, pinfall, racks, or a class of leave."""
    return carry_table().columns[name]


def corners(board, angle, speed, lb):
    """Table nodes (corner, ...) and their weights for entries: what every look-up is made of.

    speed, lb : like board and angle, or one number for all of them.
    """
    table = carry_table()
    turned = angle < 0  # a ball that backs up is its mirror image
    own = np.where(turned, 40.0 - board, board)
    angle = np.minimum(np.abs(angle), ANGLES[-1])
    misses = misses_head_pin(own, angle)
    offset = board_at_touch(own, angle) - CENTRE_BOARD
    ball, pace = between(table.balls, lb), between(table.speeds, speed)
    turn, across = between(ANGLES, angle), between(OFFSETS, offset)
    wide = (
        between(table.wide_balls, lb),
        between(table.wide_angles, angle),
        between(table.wide_offsets, offset),
    )
    some_miss = misses.any()
    nodes, weights = [], []
    for pick in range(16):
        b, s, a, o = ((pick >> k) & 1 for k in range(4))
        weight = _share(ball, b) * _share(pace, s) * _share(turn, a) * _share(across, o)
        if some_miss:
            past = _share(wide[0], b) * _share(wide[1], a) * _share(wide[2], o) * (1.0 if s == 0 else 0.0)
            weight = np.where(misses, past, weight)
        if pick and not weight.any():  # a ball or a speed of the table itself
            continue
        node = table.inner[ball[0] + b, pace[0] + s, turn[0] + a, across[0] + o]
        if some_miss:
            node = np.where(misses, table.outer[wide[0][0] + b, wide[1][0] + a, wide[2][0] + o], node)
        nodes.append(node)
        weights.append(weight)
    return np.array(nodes), np.array(weights)


def _share(place, upper):
    return place[1] if upper else 1.0 - place[1]


def sampling_error(nodes, weights):
    """Standard error of a mean strike share from the counts: shots that use the same racks share their luck.

    nodes, weights : of one shape, as from `corners`, the weights adding to 1 over all shots.
    """
    share, racks = node_values("strike"), node_values("racks")
    weight = np.bincount(nodes.ravel(), weights.ravel(), minlength=len(share))
    # a share of 0 or 1 from few racks is not certain: half a success and half a failure are added
    eased = (share * racks + 0.5) / (racks + 1.0)
    return float(np.sqrt((weight**2 * eased * (1.0 - eased) / racks).sum()))


@dataclass(frozen=True)
class LeaveShare:
    """One leave, from the bowler's own side: its share and 95 % interval."""

    leave: Leave
    share: float
    low: float
    high: float


def leave_shares(entry_board, entry_angle_deg, speed_at_pins_mph=15.0, ball_lb=15.0, hand="right"):
    """All leaves of one entry, commonest first (a strike is the leave with no pins).

    For a left-hander pins are named as they stand: his 10-pin is the 7-pin. Raises as `strike_odds`.
    """
    board, angle, speed, lb = _checked(entry_board, entry_angle_deg, speed_at_pins_mph, ball_lb)
    share, count = _mask_shares(board, angle, speed, lb)
    mirror = (angle.item() < 0) != (hand == "left")
    found = []
    for mask in np.flatnonzero(share > 1e-12):
        low, high = wilson(share[mask], count)
        leave = Leave(int(mask))
        found.append(
            LeaveShare(leave.mirror if mirror else leave, float(share[mask]), float(low), float(high))
        )
    return sorted(found, key=lambda item: (-item.share, item.leave.mask))


def _mask_shares(board, angle, speed, lb):
    table = carry_table()
    nodes, weights = corners(board, angle, speed, lb)
    share, count = np.zeros(1024), 0.0
    for node, weight in zip(nodes.ravel(), weights.ravel(), strict=True):
        for row, mix in zip(table.rows[node], table.mixes[node], strict=True):
            if weight * mix > 0:
                share += weight * mix * table.shares[row]
                count += weight * mix * table.racks[row]
    return share, count


def leave_share_at(nodes, weights, leave, hand="right"):
    """Share of one leave (pins that stand) at entries given by `corners`; angles must not be negative."""
    table, mask = carry_table(), Leave.of(*leave).mask
    mask = int(_MIRRORED[mask]) if hand == "left" else mask
    at_node = (table.mixes * table.shares[table.rows, mask]).sum(axis=1)
    return (weights * at_node[nodes]).sum(axis=0)


def leaves_of_many(entry_board, entry_angle_deg, speed_at_pins_mph, ball_lb, hand="right"):
    """Mean shares of all leaves over many entries (arrays), commonest first: list of (Leave, share)."""
    board, angle, speed, lb = _checked(entry_board, entry_angle_deg, speed_at_pins_mph, ball_lb)
    table, share = carry_table(), np.zeros(1024)
    for turned in (False, True):
        some = (angle < 0) == turned
        if not some.any():
            continue
        nodes, weights = corners(board[some], angle[some], speed[some], lb[some])
        at_node = np.bincount(nodes.ravel(), weights.ravel(), minlength=len(table.rows))
        used = np.flatnonzero(at_node)  # few of all nodes, and few of all cells
        parts = at_node[used, None] * table.mixes[used]
        at_row = np.bincount(table.rows[used].ravel(), parts.ravel(), minlength=len(table.shares))
        cells = np.flatnonzero(at_row)
        found = at_row[cells] @ table.shares[cells] / board.size
        share += found[_MIRRORED] if turned != (hand == "left") else found
    order = np.argsort(-share, kind="stable")
    return [(Leave(int(mask)), float(share[mask])) for mask in order if share[mask] > 1e-12]


def standing_odds(entry_board, entry_angle_deg, speed_at_pins_mph=15.0, ball_lb=15.0, hand="right"):
    """Share of racks in which each of pins 1 to 10 stands, array of 10."""
    standing = np.zeros(10)
    for item in leave_shares(entry_board, entry_angle_deg, speed_at_pins_mph, ball_lb, hand):
        for pin in item.leave.pins:
            standing[pin - 1] += item.share
    return standing


def exit_board(entry_board, entry_angle_deg, speed_at_pins_mph=15.0, ball_lb=15.0):
    """Median board where the ball leaves the deck, from the own side (float or array).

    NaN where most balls leave over the side. Raises as `strike_odds`.
    """
    board, angle, speed, lb = _checked(entry_board, entry_angle_deg, speed_at_pins_mph, ball_lb)
    known, total = mixed(board, angle, speed, lb, ("exit known", "exit"))
    middle = total / np.maximum(known, 1e-9)
    out = np.where(known < 0.5, np.nan, np.where(angle < 0, 40.0 - middle, middle))
    return out if out.ndim else float(out)

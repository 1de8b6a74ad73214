"""Drawings for paper: a lane to draw on, the rack, a ball from above. Black on white, few bytes, room for a pencil.

The lane lies as on the screens: foul line left, own gutter below, width stretched. Units of a drawing are points on paper.
"""

from functools import lru_cache
from html import escape

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.feet import mark_distance_ft
from bowlcore.coaching.hand_numbers import ABOVE
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spare_windows import own_pin
from bowlcore.coaching.spin_axis import axis_point
from bowlcore.rack.pins import PIN_DIAMETER_IN, PIN_X_IN, PIN_Y_IN, pin_board, pin_distance_ft

WIDTH = 516.0
_LEFT, _FT, _TOP = 30.0, 7.05, 6.0  # margin, points a foot, margin
_GREYS = ((0.10, "#f0f0f0"), (0.30, "#e2e2e2"), (0.55, "#d4d4d4"), (0.80, "#c6c6c6"))
_OIL_UM = 0.8  # shade as in the pictures on the screen
_CELL_FT = 2.0
_RACK = 2.7  # points an inch


def svg(inside, width, height, alt) -> str:
    """A drawing as wide as it is here, or narrower where the page is."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{escape(alt, quote=True)}" '
        f'viewBox="0 0 {width:g} {height:g}" width="{width:g}pt" height="{height:g}pt" '
        f'font-family="Arial, Helvetica, sans-serif" stroke-linejoin="round">{inside}</svg>'
    )


class LaneDrawing:
    """An empty lane of a height [points a board], and what is drawn on it."""

    def __init__(self, pattern, hand, board_pt=3.3, text_pt=11):
        self.hand, self.board_pt, self.text_pt = hand, board_pt, text_pt
        self.height = _TOP + 39 * board_pt + 2.4 * text_pt
        self.parts, self.entries = [_empty(pattern, hand, board_pt, text_pt)], []

    def x(self, feet):
        return _LEFT + _FT * np.asarray(feet, float)

    def y(self, board):
        return _TOP + (39.5 - np.asarray(board, float)) * self.board_pt

    def pins(self, only=0):
        """The rack, or one pin that stands alone."""
        for pin in (only,) if only else range(1, 11):
            here = own_pin(pin, self.hand)
            x, y = self.x(pin_distance_ft(here)), self.y(pin_board(here))
            self.parts.append(
                f'<circle cx="{x:.1f}" cy="{y:.1f}" r="2.6" fill="#fff" stroke="#000" stroke-width="1.1"/>'
            )
        if only:
            self._text(self.x(64.2), y + 4, f"{only}", bold=True)

    def start(self, release, name=""):
        """Where the ball is laid down and what it is rolled over: given, no answer."""
        x, y = self.x([0.0, 15.0]), self.y([release.laydown_board, release.target_board])
        self.parts.append(f'<circle cx="{x[0]:.1f}" cy="{y[0]:.1f}" r="3.4"/>')
        self.parts.append(
            f'<path d="M{x[1] - 3.5:.1f} {y[1] - 3.5:.1f}l7 7m0 -7l-7 7" stroke="#000" stroke-width="1.6" fill="none"/>'
        )
        if name:
            self._text(x[0] + 5, y[0] - 5, name, bold=True)

    def path(self, path, dashed=False):
        """The way of a ball: thin while it skids, thick while it hooks, dots while it rolls; dashes for a second one."""
        there = np.isfinite(path.board)
        turns = np.ptp(path.heading_deg[there]) > 0.5
        feet, board = path.distance_ft[there], path.board[there]
        hook, roll = (at if at == at else 60.0 for at in (path.hook_start_ft, path.roll_start_ft))
        pieces = ((0.0, hook, 'stroke-width="1.2"'), (hook, roll, 'stroke-width="3"'),
                  (roll, 60.0, 'stroke-width="2.4" stroke-linecap="round" stroke-dasharray="0.1 4.2"'))  # fmt: skip
        if dashed or not turns:
            look = 'stroke-width="1.4"' + (' stroke-dasharray="7 4"' if dashed else "")
            pieces = ((0.0, 60.0, look),)
        for low, high, look in pieces:
            inside = (feet > low) & (feet < high)
            at = np.r_[low, feet[inside], min(high, feet[-1])]
            if high > low:
                self._line(self.x(at), self.y(np.interp(at, feet, board)), look)

    def entry(self, path):
        """The board it comes in on."""
        y = self.y(path.entry_board) + 4
        for other in self.entries:  # two that come in close together are written one above the other
            if abs(y - other) < self.text_pt:
                y = other + (self.text_pt if y >= other else -self.text_pt)
        self.entries.append(y)
        self._text(self.x(63.4), y, words.halves(path.entry_board), bold=True)

    def landmarks(self, path):
        """Where it starts to hook and to roll, in words with the distance."""
        marks = ((path.hook_start_ft, "hooks from", 10), (path.roll_start_ft, "rolls from", 24))
        for feet, told, lift in marks:
            if feet == feet:
                x, y = self.x(feet), self.y(np.interp(feet, path.distance_ft, path.board))
                self.parts.append(
                    f'<path d="M{x:.1f} {y:.1f}V{y - lift:.1f}" stroke="#000" stroke-width="0.8"/>'
                )
                self._text(x, y - lift - 2, f"{told} {feet:.0f} ft", anchor="end" if feet > 20 else "start")

    def marks(self, path, places_ft):
        """Dots along the way."""
        for feet in places_ft:
            if feet <= 60:
                x, y = self.x(feet), self.y(np.interp(feet, path.distance_ft, path.board))
                self.parts.append(f'<circle cx="{x:.1f}" cy="{y:.1f}" r="3.4"/>')

    def svg(self, alt) -> str:
        return svg("".join(self.parts), WIDTH, self.height, alt)

    def _line(self, x, y, look):
        points = " ".join(f"{a:.1f},{b:.1f}" for a, b in zip(x, y, strict=True))
        self.parts.append(f'<polyline points="{points}" fill="none" stroke="#000" {look}/>')

    def _text(self, x, y, text, anchor="start", bold=False):
        weight = ' font-weight="bold"' if bold else ""
        self.parts.append(
            f'<text x="{x:.1f}" y="{y:.1f}" font-size="{self.text_pt}" text-anchor="{anchor}"{weight} '
            f'stroke="#fff" stroke-width="3" paint-order="stroke">{escape(text)}</text>'
        )


@lru_cache(maxsize=64)
def _empty(pattern, hand, board_pt, text_pt):
    """Oil, edges, boards and feet, arrows: the same for every sheet."""
    right, bottom = _LEFT + _FT * 62.9, _TOP + 39 * board_pt
    parts = [_oil(pattern, hand, board_pt)]
    grid, ticks = [], []
    for board in range(5, 40, 5):
        y = _TOP + (39.5 - board) * board_pt
        grid.append(f"M{_LEFT} {y:.1f}H{_LEFT + _FT * 60}")
        if board % 10 == 0 or 5 * board_pt > 1.15 * text_pt:
            ticks.append(
                f'<text x="{_LEFT - 5}" y="{y + 0.35 * text_pt:.1f}" text-anchor="end">{board}</text>'
            )
    for feet in range(0, 61, 10):
        x = _LEFT + _FT * feet
        grid.append(f"M{x:.1f} {_TOP}V{bottom:.1f}")
        ticks.append(f'<text x="{x:.1f}" y="{bottom + text_pt + 1:.1f}" text-anchor="middle">{feet}</text>')
    parts.append(
        f'<path d="{"".join(grid)}" stroke="#777" stroke-width="0.5" stroke-dasharray="1 2.5" fill="none"/>'
    )
    parts.append(
        f'<path d="M{_LEFT} {_TOP}H{right:.1f}M{_LEFT} {bottom:.1f}H{right:.1f}" stroke="#000" stroke-width="1.4"/>'
    )
    parts.append(f'<path d="M{_LEFT} {_TOP}V{bottom:.1f}" stroke="#000" stroke-width="2.2"/>')
    for board in range(5, 40, 5):
        x, y = _LEFT + _FT * float(mark_distance_ft(board)), _TOP + (39.5 - board) * board_pt
        parts.append(
            f'<path d="M{x - 5:.1f} {y - 2.2:.1f}L{x:.1f} {y:.1f}L{x - 5:.1f} {y + 2.2:.1f}z" fill="#555"/>'
        )
    end = bottom + 2.2 * text_pt
    side = "right" if hand == "right" else "left"
    words_below = (
        f'<text x="{_LEFT}" y="{end:.1f}">boards from the {side}, own side</text>'
        f'<text x="{right:.1f}" y="{end:.1f}" text-anchor="end">feet from the foul line; width stretched</text>'
    )
    return f'{parts[0]}{"".join(parts[1:])}<g font-size="{text_pt}">{"".join(ticks)}{words_below}</g>'


def _oil(pattern, hand, board_pt):
    """The oil as a few greys: for each of them one outline of bars along the lane."""
    boards, feet = np.arange(1, 40), np.arange(0.0, 60.0, _CELL_FT) + _CELL_FT / 2
    read = boards if hand == "right" else 40 - boards
    shade = 1.0 - np.exp(-lane_of(pattern).pattern.oil_um(read[:, None], feet[None, :]) / _OIL_UM)
    drawn = []
    for least, grey in _GREYS:
        bars = []
        for board, row in zip(boards, shade >= least, strict=True):
            edges = np.flatnonzero(np.diff(np.r_[False, row, False].astype(int)))
            y = _TOP + (39.0 - board) * board_pt
            for first, last in zip(edges[::2], edges[1::2], strict=True):
                x, width = _LEFT + _FT * _CELL_FT * first, _FT * _CELL_FT * (last - first)
                bars.append(f"M{x:.1f} {y:.1f}h{width:.1f}v{board_pt + 0.05:.2f}h{-width:.1f}z")
        drawn.append(f'<path d="{"".join(bars)}" fill="{grey}"/>')
    return "".join(drawn)


def rack(hand, ringed=(), text_pt=11) -> str:
    """The ten pins from above, the ball coming from the left, own side below; some of them ringed."""
    radius, across, down = _RACK * PIN_DIAMETER_IN / 2, _RACK * PIN_Y_IN, _RACK * PIN_X_IN
    height, left = across.max() - across.min() + 2 * radius + 16, 52.0
    parts = [
        f'<path d="M4 {height / 2:.1f}H38M30 {height / 2 - 4:.1f}L38 {height / 2:.1f}L30 {height / 2 + 4:.1f}" fill="none" '
        'stroke="#000" stroke-width="1.4"/>'
    ]
    for pin in range(1, 11):
        here = own_pin(pin, hand) - 1
        x, y = left + down[here], height / 2 - across[here]
        parts.append(
            f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{radius:.1f}" fill="#fff" stroke="#000" stroke-width="1.2"/>'
        )
        size = text_pt - 1 if pin == 10 else text_pt
        parts.append(
            f'<text x="{x:.1f}" y="{y + 0.36 * size:.1f}" font-size="{size}" text-anchor="middle">{pin}</text>'
        )
        if pin in ringed:
            parts.append(
                f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{radius + 5:.1f}" fill="none" stroke="#000" stroke-width="3"/>'
            )
    told = "The ten pins from above, the ball comes from the left" + (
        f"; ringed: {ringed[0]}" if ringed else ""
    )
    return svg("".join(parts), left + down.max() + radius + 8, height, told)


def ball_above(hand, rotation_deg, tilt_deg) -> str:
    """A ball seen from above, the pins at the top; with its axis unless that is asked for (None)."""
    radius, middle = 34.0, 44.0
    parts = [
        f'<circle cx="{middle}" cy="{middle + 10}" r="{radius}" fill="#fff" stroke="#000" stroke-width="1.4"/>',
        f'<circle cx="{middle}" cy="{middle + 10}" r="1.5"/>',
        f'<path d="M{middle} 16V3M{middle - 4} 8L{middle} 2L{middle + 4} 8" stroke="#000" stroke-width="1.2" fill="none"/>',
    ]
    if rotation_deg is not None:
        eye = np.array(ABOVE, float) * (1.0, 1.0 if hand == "right" else -1.0, 1.0)
        near = eye @ axis_point(rotation_deg, tilt_deg)
        (ax, ay), (bx, by) = ((middle + radius * p[0], middle + 10 - radius * p[1]) for p in (-near, near))
        parts.append(f'<path d="M{ax:.1f} {ay:.1f}L{bx:.1f} {by:.1f}" stroke="#000" stroke-width="2.6"/>')
        parts.append(f'<rect x="{bx - 4.5:.1f}" y="{by - 4.5:.1f}" width="9" height="9"/>')
    told = "A ball from above" + (
        "" if rotation_deg is None else f", its axis at {words.degrees(rotation_deg)} of rotation"
    )
    return svg("".join(parts), 2 * middle, 2 * middle + 2, told)

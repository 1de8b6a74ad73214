"""Sayings under test: one at a time with its cases as dots, and all of them as a table, six first, numbers behind it."""

from math import isfinite, isnan

from bowlcore.coaching import rules_told
from bowlcore.coaching.rules import RULES
from bowlcore.display import style
from bowlcore.display.controls import Choice, starting
from bowlcore.display.folded import Folded
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import in_lines, layer, new_axes, new_figure, svg

_LOOKS = [*zip("osD^vP", [style.BLUE, style.VERMILLION, style.GREEN, style.BLACK] * 2, strict=False)]
_TRUE_AREA, _OTHERS = {"color": "#d9ece4"}, "#858585"
_TIE_AREA = {"facecolor": "white", "edgecolor": "#b0b0b0", "hatch": "///", "linewidth": 0.0}
_SAYINGS = {True: "six sayings", False: "the other sayings"}
_WIDTH_IN, _LEFT_IN, _RIGHT_IN, _GAP_IN = 11.5, 1.75, 0.25, 0.35


def rules_panel(**start):
    """One saying of the trade, tried now: for whom, and by how much.

    Raises ValueError when a name or a value does not belong to a control.
    """
    options = [(f"{rule.number}. {rule.short}", rule.number) for rule in RULES]
    options.sort(key=lambda option: not RULES[option[1] - 1].first)
    with starting(start) as at:
        main = [
            Choice("number", "Saying", options, at("number", options[0][1])),
            Choice("bowler", "For whom (invented)", rules_told.BOWLERS, at("bowler", rules_told.EVERYONE)),
            Choice("tell", "Tell me", rules_told.TELLS, at("tell", rules_told.OUTCOME)),
        ]
    return Panel("rules_panel", draw, main, lines=5)


def draw(number, bowler, tell, metric=False, hand="right") -> Drawn:
    """A strip of dots for each claim, the sentence and the cases."""
    told = rules_told.answer(number, bowler, tell, metric=metric)
    alt = (
        f"{told.sentence} Picture: one row a bowler, one dot a lane, along the number measured; filled where the saying holds, "
        "hollow where not, the shaded part is where it counts as true."
    )
    return Drawn(_strips(told, bowler, metric, alt), told.sentence, told.rows)


def _strips(told, bowler, metric, alt):
    from matplotlib import rc_context

    parts = [pair for pair in zip(told.rule.parts, told.verdicts, strict=True) if pair[1].cases]
    if not parts:
        return svg([], _WIDTH_IN, 0.4, alt)
    names, places = (
        list(dict.fromkeys(getattr(case, key) for _, verdict in parts for case in verdict.cases))
        for key in ("bowler", "where")
    )
    height = 2.0 + 0.3 * len(names)
    figure = new_figure(_WIDTH_IN, height)
    width = min((_WIDTH_IN - _LEFT_IN - _RIGHT_IN - _GAP_IN * (len(parts) - 1)) / len(parts), 5.5)
    with rc_context(style.RC):
        for i, (part, verdict) in enumerate(parts):
            left = (_LEFT_IN + i * (width + _GAP_IN)) / _WIDTH_IN
            axes = new_axes(figure, left, 1.2 / height, width / _WIDTH_IN, 0.3 * len(names) / height)
            _strip(axes, part, verdict, names, places, bowler, metric)
            if not i:
                axes.set_yticks(range(len(names)), names)
        _legend(figure, places, any(part.tie for part, _ in parts))
    return svg([layer(figure)], _WIDTH_IN, height, alt)


def _strip(axes, part, verdict, names, places, bowler, metric):
    unit = part.unit.shown(metric)
    shown = [case for case in verdict.cases if case.true is not None and isfinite(case.number)]
    for case in shown:
        place = places.index(case.where)
        mark, color = _LOOKS[place]
        color = color if bowler in (rules_told.EVERYONE, case.bowler) else _OTHERS
        axes.plot(
            [case.number * unit.factor],
            [names.index(case.bowler) + 0.16 * (place - (len(places) - 1) / 2)],
            marker=mark,
            markersize=5.5,
            color=color,
            markerfacecolor=color if case.true else "white",
            linewidth=0,
        )
    numbers = [case.number * unit.factor for case in shown] or [0.0]
    low, high = (value * unit.factor for value in (part.low, part.high))
    edges = [value for value in (low, high, 0.0) if isfinite(value)]
    least, most = min(numbers + edges), max(numbers + edges)
    room = 0.08 * (most - least or 1.0)
    axes.set_xlim(least - room, most + room)
    axes.set_ylim(len(names) - 0.5, -0.5)
    if part.tie:
        axes.axvspan(-part.tie, part.tie, **_TIE_AREA, zorder=0)
    if not isnan(low):
        axes.axvspan(low, high if isfinite(high) else most + room, **_TRUE_AREA, zorder=0)
    axes.axvline(0.0, color=style.GREY, linewidth=0.8, zorder=1)
    axes.set_yticks([])
    axes.xaxis.set_major_locator(_few_ticks())
    axes.xaxis.set_major_formatter(lambda value, _: f"{abs(value):.3g}")
    plural = unit.noun if unit.noun in ("ft", "m") else f"{unit.noun}s"
    axes.set_xlabel(f"{plural} {unit.what}".rstrip() + f"\n← {unit.less} | {unit.more} →")
    axes.set_title(in_lines(part.claim, axes), loc="left", fontsize=style.TEXT_PT)


def _few_ticks():
    from matplotlib.ticker import MaxNLocator

    return MaxNLocator(5, steps=[1, 2, 5, 10])


def _legend(figure, places, ties):
    """What each mark and each shade stands for, at the foot of the picture."""
    from matplotlib.lines import Line2D
    from matplotlib.patches import Patch

    marks = [
        Line2D([], [], marker=mark, color=color, linewidth=0, markersize=5.5, label=place)
        for (mark, color), place in zip(_LOOKS, places, strict=False)
    ]
    hollow = Line2D(
        [],
        [],
        marker="o",
        color=style.GREY,
        markerfacecolor="white",
        linewidth=0,
        label="hollow: does not hold",
    )
    shades = [Patch(**_TRUE_AREA, label="counts as true")]
    if ties:
        shades.append(Patch(**_TIE_AREA, label="a tie: the angle decides"))
    for row, handles in ((0.24, marks), (0.0, [hollow, *shades])):
        figure.legend(
            handles=handles,
            loc="lower left",
            bbox_to_anchor=(0.0, row / figure.get_figheight()),
            ncols=8,
            columnspacing=4.0,
            frameon=False,
        )


def rules_table_panel():
    """The sayings as a table: say it, and to whom? Six first; the numbers, and the other sayings, behind buttons."""

    def part(first):
        numbers = _table(
            f"The numbers of {_SAYINGS[first]}.", lambda metric: rules_told.overview(first, metric=metric)
        )
        short = _table(
            f"{_SAYINGS[first].capitalize()}, each tried just now: is it safe to say in this model, with invented bowlers on "
            "invented lanes and not on yours?", lambda metric: rules_told.safe_to_say(first),
        )  # fmt: skip
        return Folded(f"The numbers of {_SAYINGS[first]}", numbers, first=short())

    return Folded("The other sayings", lambda: part(False), first=part(True))


def _table(sentence, rows):
    """Makes a panel that is a table."""

    def draw_table(metric=False, hand="right") -> Drawn:
        return Drawn("", sentence, rows(metric))

    return lambda: Panel("rules_table_panel", draw_table, [], open_table=True)

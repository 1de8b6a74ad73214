"""All panels that have controls, each freshly made, and a way to move one control."""

from bowlcore.display.ball_weight import ball_weight_panel
from bowlcore.display.bowler_odds import bowler_odds_panel
from bowlcore.display.first_shot import first_shot_panel
from bowlcore.display.path_lab import path_lab_panel
from bowlcore.display.pocket import pocket_panel
from bowlcore.display.published_shot import published_shot_panel
from bowlcore.display.twenty_balls import twenty_balls_panel

RACK_PANELS = [pocket_panel, twenty_balls_panel, ball_weight_panel, bowler_odds_panel]
ALL_PANELS = [first_shot_panel, published_shot_panel, path_lab_panel]


def drive(panel, name, value):
    """Move one control through its widget, as a person would; the sentence and table that follow."""
    control = panel.controls[name]
    if hasattr(control, "slider"):
        control.slider.value = value
    else:
        control.widget.value = value
    return panel.sentence + str(panel._drawn.rows)

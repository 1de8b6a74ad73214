"""All panels of pictures and tables, each freshly made, and a way to move one control.

ALL_PANELS, RACK_PANELS : with controls and a picture
TABLE_PANELS : a table is the point; some have controls
"""

from bowlcore.display.a_lane_that_changes import a_lane_that_changes_panel
from bowlcore.display.ball_weight import ball_weight_panel
from bowlcore.display.best_rotation import best_rotation_panel
from bowlcore.display.bowler_odds import bowler_odds_panel
from bowlcore.display.carry_map import carry_map_panel
from bowlcore.display.cases import case_panel
from bowlcore.display.changes import changes_panel
from bowlcore.display.clinic import clinic_panel
from bowlcore.display.course import course_panel
from bowlcore.display.customary_hand import customary_hand_panel
from bowlcore.display.demo_clip import demo_clip_panel
from bowlcore.display.did_it_help import did_it_help_panel, luck_or_better_panel
from bowlcore.display.first_shot import first_shot_panel
from bowlcore.display.five_patterns import five_patterns_panel
from bowlcore.display.hand_technique import hand_technique_panel
from bowlcore.display.log_views import log_views_panel
from bowlcore.display.measure_a_release import measure_a_release_panel
from bowlcore.display.miss_room import miss_room_panel
from bowlcore.display.my_lane import my_lane_panel
from bowlcore.display.one_number import one_number_panel
from bowlcore.display.own_numbers import own_numbers_panel
from bowlcore.display.path_lab import path_lab_panel
from bowlcore.display.pattern_builder import pattern_builder_panel
from bowlcore.display.pocket import pocket_panel
from bowlcore.display.published_pins import published_pins_panel
from bowlcore.display.published_shot import published_shot_panel
from bowlcore.display.published_spares import published_spares_panel
from bowlcore.display.push import push_panel
from bowlcore.display.reaction import reaction_panel
from bowlcore.display.response_map import response_map_panel
from bowlcore.display.rules import rules_panel
from bowlcore.display.skid_hook_roll import skid_hook_roll_panel
from bowlcore.display.spares import spares_panel
from bowlcore.display.strikes_or_spares import strikes_or_spares_panel
from bowlcore.display.ten_pin import ten_pin_panel
from bowlcore.display.three_six_nine import three_six_nine_panel
from bowlcore.display.trust import trust_panel
from bowlcore.display.twenty_balls import twenty_balls_panel
from bowlcore.display.two_faces import only_the_lane_panel, two_faces_panel
from bowlcore.display.what_leaves_the_hand import what_leaves_the_hand_panel
from bowlcore.display.which_move import which_move_panel

RACK_PANELS = [pocket_panel, twenty_balls_panel, ball_weight_panel, bowler_odds_panel, carry_map_panel]
RACK_PANELS += [spares_panel, own_numbers_panel, ten_pin_panel, three_six_nine_panel, strikes_or_spares_panel]
RACK_PANELS += [a_lane_that_changes_panel, customary_hand_panel]
RACK_PANELS += [rules_panel]
RACK_PANELS += [reaction_panel, changes_panel, case_panel, two_faces_panel]
RACK_PANELS += [what_leaves_the_hand_panel, hand_technique_panel, measure_a_release_panel, demo_clip_panel]
RACK_PANELS += [my_lane_panel]
RACK_PANELS += [log_views_panel, did_it_help_panel, luck_or_better_panel]
RACK_PANELS += [one_number_panel, push_panel, response_map_panel]
ALL_PANELS = [first_shot_panel, published_shot_panel, miss_room_panel]
ALL_PANELS += [skid_hook_roll_panel, five_patterns_panel, pattern_builder_panel]
ALL_PANELS += [path_lab_panel]

TABLE_PANELS = [
    which_move_panel,
    best_rotation_panel,
    published_pins_panel,
    published_spares_panel,
    only_the_lane_panel,
]
TABLE_PANELS += [clinic_panel, course_panel, trust_panel]


def drive(panel, name, value):
    """Move one control through its widget, as a person would; the sentence and table that follow."""
    control = panel.controls[name]
    if hasattr(control, "slider"):
        control.slider.value = value
    else:
        control.widget.value = value
    return panel.sentence + str(panel._drawn.rows)


def at_both_ends(panel, **also):
    """Each control's name and what the panel says at its ends, the others at their start (or as in `also`).

    Of a long list: the first, the middle and the last. The first end is set together with all others at their
    start, the rest through the widget, so that each end is drawn once.
    """
    start = {name: control.start for name, control in panel.controls.items()} | also
    for name, control in panel.controls.items():
        ends = control.ends
        first, *rest = ends if len(ends) < 5 else (ends[0], ends[len(ends) // 2], ends[-1])
        panel.set(**start | {name: first})
        yield name, {panel.sentence + str(panel._drawn.rows), *(drive(panel, name, end) for end in rest)}

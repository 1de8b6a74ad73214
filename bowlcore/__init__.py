"""Ball motion on an oiled lane, for coaches: the public names, each loaded when first used."""

from importlib import import_module

__version__ = "0.1.0"

_HOME = {
    "Ball": "motion.ball",
    "Release": "motion.release",
    "OilPattern": "motion.oil",
    "load_pattern": "motion.oil",
    "pattern_names": "motion.oil",
    "make_pattern": "motion.shapes",
    "FrictionLaw": "motion.surface",
    "OiledLane": "motion.surface",
    "ZonedLane": "motion.surface",
    "BallPath": "motion.path",
    "simulate": "motion.path",
    "simulate_many": "motion.many",
    "aim": "motion.aiming",
    "load_balls": "motion.ball",
    "strike_odds": "rack.carry",
    "Leave": "rack.leave",
    "Seen": "coaching.seen",
    "Spread": "coaching.bowler",
    "Bowler": "coaching.bowler",
    "load_bowlers": "coaching.bowler",
    "bowler_odds": "coaching.odds",
    "miss_room": "coaching.miss_room",
    "suggest_changes": "coaching.changes",
    "read_reaction": "coaching.reading",
    "believed_lane": "coaching.reading",
    "mean_speed": "coaching.measuring",
    "mean_speed_from_frames": "coaching.measuring",
    "release_speed": "coaching.measuring",
    "display_offset": "coaching.measuring",
    "speed_from_display": "coaching.measuring",
    "rev_rate_from_turns": "coaching.measuring",
    "rev_rate_from_clock": "coaching.measuring",
    "rotation_from_tape": "coaching.measuring",
    "tilt_from_width": "coaching.track_ring",
    "tilt_from_chord": "coaching.track_ring",
    "release_ring": "coaching.track_ring",
    "of_several": "coaching.three_balls",
    "balls_needed": "coaching.three_balls",
    "Click": "coaching.clip_marks",
    "ClickedClip": "coaching.clip_marks",
    "fit_clip": "coaching.clip_fit",
    "demo_clip": "coaching.clip_render",
    "what_leaves_the_hand_panel": "display.what_leaves_the_hand",
    "hand_technique_panel": "display.hand_technique",
    "measure_a_release_panel": "display.measure_a_release",
    "demo_clip_panel": "display.demo_clip",
    "Settings": "display.settings",
    "settings_panel": "display.settings",
    "path_lab_panel": "display.path_lab",
    "miss_room_panel": "display.miss_room",
    "first_shot_panel": "display.first_shot",
    "my_lane_panel": "display.my_lane",
    "fit_lane": "coaching.fitting",
    "fit_lanes": "coaching.fitting",
    "Watched": "coaching.fitting",
    "pocket_panel": "display.pocket",
    "twenty_balls_panel": "display.twenty_balls",
    "carry_map_panel": "display.carry_map",
    "ball_weight_panel": "display.ball_weight",
    "bowler_odds_panel": "display.bowler_odds",
    "play_shots": "coaching.transition",
    "evening": "coaching.evening",
    "a_lane_that_changes_panel": "display.a_lane_that_changes",
    "customary_hand_panel": "display.customary_hand",
    "which_move_panel": "display.which_move",
    "published_pins_panel": "display.published_pins",
    "rules_panel": "display.rules",
    "rules_table_panel": "display.rules",
    "spares_panel": "display.spares",
    "own_numbers_panel": "display.own_numbers",
    "ten_pin_panel": "display.ten_pin",
    "three_six_nine_panel": "display.three_six_nine",
    "strikes_or_spares_panel": "display.strikes_or_spares",
    "published_spares_panel": "display.published_spares",
    "PracticeLog": "coaching.practice_log",
    "log_panel": "display.log_entry",
    "log_views_panel": "display.log_views",
    "did_it_help_panel": "display.did_it_help",
    "luck_or_better_panel": "display.did_it_help",
    "tally_sheet": "display.tally_sheet",
    "reaction_panel": "display.reaction",
    "changes_panel": "display.changes",
    "case_panel": "display.cases",
    "two_faces_panel": "display.two_faces",
    "only_the_lane_panel": "display.two_faces",
    "trust_panel": "display.trust",
    "best_rotation_panel": "display.best_rotation",
    "show_rows": "display.shown",
    "show_words": "display.shown",
    "predict": "display.questions",
    "check": "display.questions",
    "published_shot_panel": "display.published_shot",
}

__all__ = sorted(_HOME)


def __getattr__(name):
    if name in _HOME:
        value = getattr(import_module(f"{__name__}.{_HOME[name]}"), name)
        globals()[name] = value
        return value
    raise AttributeError(f"bowlcore has no name {name!r}")


def __dir__():
    return sorted(set(globals()) | set(_HOME))

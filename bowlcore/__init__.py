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
    "Settings": "display.settings",
    "settings_panel": "display.settings",
    "path_lab_panel": "display.path_lab",
    "miss_room_panel": "display.miss_room",
    "first_shot_panel": "display.first_shot",
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

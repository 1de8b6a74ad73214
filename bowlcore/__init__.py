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
    "Spread": "coaching.bowler",
    "Bowler": "coaching.bowler",
    "load_bowlers": "coaching.bowler",
    "bowler_odds": "coaching.odds",
    "Settings": "display.settings",
    "settings_panel": "display.settings",
    "path_lab_panel": "display.path_lab",
    "first_shot_panel": "display.first_shot",
    "pocket_panel": "display.pocket",
    "twenty_balls_panel": "display.twenty_balls",
    "ball_weight_panel": "display.ball_weight",
    "bowler_odds_panel": "display.bowler_odds",
    "published_pins_panel": "display.published_pins",
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

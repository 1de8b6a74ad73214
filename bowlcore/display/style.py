"""Colours, letter sizes and the few lines of CSS; one place for the look.

Dark Okabe-Ito colours for lines (M. Okabe, K. Ito, "Color universal design"; values from memory), never
colour alone. Oil is one quiet hue, light enough that each of them keeps a contrast of 3 to 1 on it.
"""

BLACK, BLUE, VERMILLION, GREEN = "#000000", "#0072B2", "#B34700", "#00724F"
GREY = "#595959"
LANE, OIL, GUTTER = "#ffffff", "#c3d9ea", "#d8d8d8"
TEXT_PT = 9.0  # 12 px at the picture's own size

CSS = """<style>
.bm-panel, .bm-table-panel { max-width: 1120px; overflow: visible; }
.bm-panel, .bm-question { --jp-widgets-input-border-color: #767676; --jp-widgets-input-focus-border-color: #003f7d; }
.bm-panel .noUi-target, .bm-panel .noUi-connects { background-color: #767676; border-color: #767676; }
.bm-panel .noUi-handle { border: 2px solid #0072B2; }
.bm-panel .bm-picture { container-type: inline-size; }
@container (max-width: 860px) { .bm-picture svg { --bm-letters: 1.2; } }
.bm-panel .bm-picture svg { width: 100%; height: auto; max-width: 1120px; display: block; }
.bm-wide::before { content: "Push the picture sideways →"; position: sticky; left: 0; font-size: 0.9em; color: #404040; }
.bm-busy .bm-picture { opacity: 0.4; }
.bm-sentence { font-size: 1.15em; line-height: 1.45; margin: 6px 0; max-width: 62em; }
.bm-lead { display: block; font-size: 1.2em; }
.bm-message { color: #8a1c00; font-weight: 600; margin: 4px 0; }
.bm-message:empty { display: none; }
.bm-slider .widget-label { display: none; }
@media (max-width: 480px) {
  .bm-panel .widget-dropdown { flex-wrap: wrap; height: auto; }
  .bm-panel .widget-dropdown > .widget-label { width: 100% !important; text-align: left; }
}
.bm-table { border-collapse: collapse; font-size: 0.95em; }
.bm-table th, .bm-table td { border: 1px solid #767676; padding: 3px 8px; line-height: 1.35; }
.bm-table th, .bm-table td { text-align: left !important; vertical-align: top !important; }
.bm-line { font-size: 0.9em; overflow-wrap: anywhere; user-select: all; }
</style>"""

RC = {
    "svg.fonttype": "none",
    "text.parse_math": False,  # dollar signs in own words are no formulas
    "svg.hashsalt": "ball motion",
    "font.family": "sans-serif",
    "font.sans-serif": ["DejaVu Sans", "Arial", "Helvetica", "sans-serif"],
    "font.size": TEXT_PT,
    "axes.linewidth": 0.8,
    "axes.spines.top": False,
    "axes.spines.right": False,
}

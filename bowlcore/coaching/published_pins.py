"""Published counts of first balls beside the model's: what was fitted, and what was not.

Televised finals 2005-10, 7,155 first balls (a web page on ESPN The Magazine's counts, known second-hand).
The model's contact numbers were fitted to strikes and to the shares of the 10-, 7- and 9-pin.
"""

import numpy as np

from bowlcore.coaching import words
from bowlcore.rack import carry
from bowlcore.rack.pins import entry_board_from_touch

PUBLISHED = {"strikes of all first balls": 4374 / 7155, "10": 0.255, "7": 0.120, "9": 0.032, "7-10": 0.019,
             "4-6-7-10": 0.011, "3-10": 0.013}  # fmt: skip
FITTED = ("strikes of all first balls", "10", "7", "9")


def rows(count=400) -> list[dict]:
    """Published and model's shares side by side.

    The model's shots are a good player's: board at first touch 17.4 with 1.12 boards of scatter, 5 degrees with
    0.8, 14 mph at the pins. That mix is our assumption.
    """
    from scipy.special import ndtri
    from scipy.stats import qmc

    points = ndtri(qmc.Sobol(2, scramble=True, seed=9).random(512)[:count].clip(1e-6, 1 - 1e-6))
    touch, angle = 17.4 + 1.12 * points[:, 0], np.clip(5.0 + 0.8 * points[:, 1], 0, 8)
    board = entry_board_from_touch(touch, angle)
    share = {leave.text: part for leave, part in carry.leaves_of_many(board, angle, 14.0, 15.0)}
    table = []
    for name, published in PUBLISHED.items():
        if name == "strikes of all first balls":
            model = share[""]
        else:
            model = share.get(name, 0.0) / (1.0 - share[""])
        table.append(
            {
                "what": name
                if name == "strikes of all first balls"
                else f"the {name}{'-pin' if name.isdecimal() else ''}, of all balls that did not strike",
                "published": f"{100 * published:.1f} %",
                "this model": words.percent(model),
                "fitted to it": "yes" if name in FITTED else "no",
            }
        )
    return table

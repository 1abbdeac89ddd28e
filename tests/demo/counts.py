"""The demo patterns, each counted by hand in its own module; written before the engine could read them.

A pattern's function gives for each piece the finished edge of every round by its number, one a size.
"""

from collections.abc import Callable

from .by_hand import Rounds
from .count_ball import pebble_ball
from .count_bookmark import lighthouse_bookmark
from .count_cap import curlew_cap
from .count_cloth import tide_cloth
from .count_collar import gull_collar
from .count_doily import sea_lavender_doily
from .count_garland import purslane_garland
from .count_pouch import lantern_pouch
from .count_scarf import ebb_scarf
from .count_seal import sandbank_seal
from .count_square import harbour_square
from .count_tray import reed_tray

PATTERNS: dict[str, Callable[[], dict[str, Rounds]]] = {
    "lantern-pouch": lantern_pouch,
    "tide-cloth": tide_cloth,
    "pebble-ball": pebble_ball,
    "harbour-square": harbour_square,
    "gull-collar": gull_collar,
    "reed-tray": reed_tray,
    "ebb-scarf": ebb_scarf,
    "curlew-cap": curlew_cap,
    "purslane-garland": purslane_garland,
    "lighthouse-bookmark": lighthouse_bookmark,
    "sea-lavender-doily": sea_lavender_doily,
    "sandbank-seal": sandbank_seal,
}

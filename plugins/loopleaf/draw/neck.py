"""The edge that a flat piece begins at around an opening in its middle, as a yoke at its neck, measured."""

from .form import Form, about, outline_above
from .lettered import Lettered
from .measuring import DRAWN, split
from .ring_chains import chains_in
from .sketch import WORDS, Sketch
from .subject import Subject

OPENING = 0.3
"""What begins so far from its middle, of how far it reaches, has an opening there that is measured."""


def has_neck(form: Form, subject: Subject) -> bool:
    """Whether a lying piece's first round goes into chains that stay an opening."""
    if form.opening:
        return True
    return not form.spine and chains_in(subject) > 0 and form.rings[0].out0 >= OPENING * form.widest


def drawn_neck(sketch: Sketch, letters: Lettered, form: Form) -> str:
    """Draws the opening, and says how long it is around."""
    scale = DRAWN / (2 * form.widest)
    edge = form.opening or outline_above(form.rings[0].out0, form.corners)
    sketch.line([(x * scale, -y * scale) for x, y in edge], closed=True)
    words = about([form.beginning_mm])
    *lines, last = split(letters.short(words, "around the opening"))
    lines.append(f"{last} around" if len(last) > 1 else last)
    low, tall = max(y for _, y in edge) * scale, 1.2 * WORDS * len(lines)
    below = form.edge[-1][1] if form.opening else form.widest
    room = below * scale - low > tall + WORDS / 2
    first = low + WORDS * 1.3 if room else WORDS * 0.95 - tall / 2
    for index, line in enumerate(lines):
        sketch.words((0.0, first + WORDS * 1.2 * index), line)
    return f"{words} around the opening"

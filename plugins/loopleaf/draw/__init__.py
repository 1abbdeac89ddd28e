"""Drawings made from the stitch graph and from nothing else: the picture of a piece as it comes off the hook,
and its diagram with one sign a stitch. Graph in, SVG text out.
"""

from .diagram import diagram
from .picture import first_picture, piece_picture

__all__ = ["diagram", "first_picture", "piece_picture"]

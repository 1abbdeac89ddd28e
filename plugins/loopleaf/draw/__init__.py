"""Drawings made from the stitch graph and from nothing else: the picture of a piece. Graph in, SVG text
out.
"""

from .picture import first_picture, piece_picture

__all__ = ["first_picture", "piece_picture"]

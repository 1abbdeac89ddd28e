"""A plain list-of-stitches model of crochet, written from the format's own pages and from nothing else.

It shares the reading of a file with the engine (`pattern.load`, `set_out`, `notation.parse`) and not one
line of the working. A round is a list of cells, the hook a number, and every question is answered by going
through the list. Slow on purpose: what is written down twice should not be clever twice.
"""

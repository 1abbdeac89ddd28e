"""Loopleaf: crochet patterns as YAML, worked stitch by stitch, published as a site and as booklets."""

__version__ = "0.1.0"

"""The leaflet of a pattern: from the checked pattern to everything that a page or a booklet prints."""

from .leaflet_parts import Leaflet as Leaflet

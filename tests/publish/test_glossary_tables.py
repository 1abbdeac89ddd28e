"""Hooks and yarns by the names of both countries."""

from loopleaf.publish.glossary_tables import lookup_tables


def test_hooks_by_their_millimetres() -> None:
    """Agrees with printed conversion charts: 5.5 mm is US I-9 and the old British 5."""
    hooks, _ = lookup_tables("US")
    rows = {row[0]: row[1:] for row in hooks.rows}
    assert rows["5.5 mm"] == ("I-9", "5")
    assert rows["7 mm"] == ("–", "2")
    assert rows["4 mm"] == ("G-6", "8")


def test_yarns_by_both_names() -> None:
    """Craft Yarn Council: medium is US worsted, 11 to 14 single crochets in 4 inches, 5.5 to 6.5 mm."""
    _, us = lookup_tables("US")
    _, uk = lookup_tables("UK")
    (medium,) = [row for row in us.rows if row[0] == "4 medium"]
    assert medium == ("4 medium", "worsted, afghan, aran", "aran, 10 ply", "11–14 sc", "5.5–6.5 mm")
    (of_uk,) = [row for row in uk.rows if row[0] == "4 medium"]
    assert of_uk[3] == "11–14 dc"
    assert us.rows[-1][3:] == ("up to 5 sc", "16 mm and up")

"""How many of the chains at a filet row's beginning are its first space, and how many lie beneath that."""

from ..notation.tree import First, Same, Step, Work
from .hand import Hand


def above(hand: Hand, chains: int, follow: Step | None) -> int:
    """Of the chains behind those that stand for a stitch; where the row grows by a mesh, `ch 7, dc in first
    dc`, half of them lie beneath it, by its reading."""
    match follow:
        case Work(places=(First() | Same(),)) if hand.setting.rows and chains % 2 == 0:
            hand.beneath_open = True
            return chains // 2 if hand.setting.reading.beneath else chains
    return chains


def of_space(rest: int) -> int:
    """Of the foundation's, behind the standing ones: half of an even number arch over the others."""
    return rest // 2 if rest % 2 == 0 else rest

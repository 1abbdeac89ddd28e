"""The join is sent to a place that isn't there, or that isn't a top.

What: `join to 3rd ch of ch-4` needs four chains whose third stands for the stitch; `join to top of ch-2`
needs a chain that counts.

Why it matters: The maker joins one chain too high or too low, the next round has one stitch more or less.

Wrong:

    rounds:
      - {round: 1, work: "ch 2 (counts as hdc), 7 hdc in ring, join to 3rd ch of ch-2", count: 8}

Right:

    rounds:
      - {round: 1, work: "ch 2 (counts as hdc), 7 hdc in ring, join to top of ch-2", count: 8}

When to ignore: Never.
"""

from ...pattern import Suggestion
from ..names import arch_name, chain_name, kind_name, ordinal
from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    why = met.facts["why"]
    chains, number, length, stands = why["chains"], why["number"], why["length"], why["stands"]
    first = kind_name(why["first"], met.subject) if why["first"] else "stitch"
    made, arch = chain_name(chains, met.subject), arch_name(chains, met.subject)
    instead = f"join with {kind_name('slip', met.subject)} to first {first}"
    if why["target"]:
        reason = (
            f"The round has no {kind_name(why['target'], met.subject)} to join to; it begins with {first}."
        )
    elif not chains:
        reason = "The round begins without a chain."
    elif not why["counts"]:
        reason = f"The {made} at its start doesn't count as a stitch, so that its top is none to join to."
    elif length and length != chains:
        reason = f"The round begins with {made}, not with {chain_name(length, met.subject)}."
    elif number > chains:
        reason = f"A chain of {chains} has no {ordinal(number)} chain."
    else:
        reason = f"The {ordinal(stands)} of its {chains} chains stands for the stitch."
    if chains and why["counts"]:
        instead = f"join to top of {arch}" if stands == chains else f"join to {ordinal(stands)} ch of {arch}"
    return Words(
        message=f"{met.quoted} in {met.where} doesn't find the place that it names.",
        working=reason,
        suggestion=Suggestion(f"Write “{instead}”, or “join” alone.", instead, "likely"),
    )


RULE = fit_rule(__name__, __doc__, "error", words)

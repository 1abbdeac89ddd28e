"""What a round made, in the plain kinds that a maker counts, and the author's own count beside it."""

from collections import Counter
from collections.abc import Mapping, Sequence

from loopleaf.notation.tree import Stitch, Tally, Target

from .cells import GATHERED, Cell, Misfit, kind_of

Key = str | tuple[str, int]
"""A kind, `picot`, or `("space", chains)`."""

PETAL = "petal"
"""The form of a slip stitch that closes a petal: a count by kind may leave it out."""


def makes(cells: Sequence[Cell]) -> Counter[Key]:
    """By plain kinds; spaces by their chains."""
    tally: Counter[Key] = Counter()
    for cell in cells:
        tally[("space", cell.length) if cell.kind == "space" else cell.kind] += 1
    return tally


def forms(cells: Sequence[Cell]) -> dict[str, Counter[Key]]:
    """What was made of clusters, bobbles and the like, by their form; slip stitches that close petals too."""
    there = {cell.form for cell in cells if cell.form}
    made = {form: makes([cell for cell in cells if cell.form == form]) for form in there}
    return made | {"cluster": makes([cell for cell in cells if cell.clustered])}


def total(made: Mapping[Key, int], chains_counted: bool) -> int:
    """The number of stitches as a plain count states it."""
    number = 0
    for key, times in made.items():
        if isinstance(key, tuple):
            number += key[1] * times if chains_counted else 0
        elif key != "picot":
            number += times
    return number


def compare(
    stated: Tally,
    size: int,
    made: Counter[Key],
    on_leaf: Counter[Key],
    chains_counted: bool,
    opened: Mapping[str, Counter[Key]],
    formed: Mapping[str, Counter[Key]],
) -> None:
    """Raises Misfit where the stated count and the stitches are not the same.

    formed: the kinds of clusters, bobbles and the like, for a count that names no kind.
    """
    if stated.total is not None:
        number = stated.total.of(size)
        if number is not None and number != total(made, chains_counted):
            raise Misfit("count", f"{number} stated, {total(made, chains_counted)} made")
        return
    said: Counter[Key] = Counter()
    any_space = 0
    chains = 0
    inside: Counter[Key] = Counter()
    gathered: Counter[tuple[str, str]] = Counter()
    for amount, thing in stated.entries:
        number = amount.of(size)
        if number is None:
            continue
        if isinstance(thing, Target):
            if thing.kind == "picot":
                said["picot"] += number
            elif thing.length:
                said[("space", thing.length)] += number
            else:
                any_space += number
        elif thing.kind == "chain" and not thing.form:
            chains += number
        elif thing.kind == "" and not thing.form:
            if number != total(made, chains_counted):
                raise Misfit("count", f"{number} stated, {total(made, chains_counted)} made")
        elif thing.kind == "":
            such = formed.get(thing.form, Counter())
            if number != such.total():
                raise Misfit("count", f"{number} {thing.form} stated, {such.total()} made")
            said += such
        else:
            if thing.form in GATHERED and thing.kind != "special":
                gathered[(thing.form, thing.kind)] += number
            for key, times in _opened(thing, opened).items():
                (inside if isinstance(key, tuple) else said)[key] += times * number
    for (form, kind), number in gathered.items():
        if number != formed.get(form, Counter())[kind]:
            raise Misfit("count", f"{number} {kind} {form} stated")
    for key in inside:
        if key in said:
            said[key] += inside[key]
    _same_kinds(said, made, on_leaf, formed.get(PETAL, Counter()))
    spaces = {key: times for key, times in made.items() if isinstance(key, tuple)}
    if any_space and any_space != sum(spaces.values()):
        raise Misfit("count", f"{any_space} spaces stated, {sum(spaces.values())} made")
    if chains and chains != sum(key[1] * times for key, times in spaces.items()):
        raise Misfit("count", f"{chains} chains stated")


def _same_kinds(said: Counter[Key], made: Counter[Key], on_leaf: Counter[Key], unsaid: Counter[Key]) -> None:
    kinds = {key for key in said if isinstance(key, str) and key != "picot"}
    for key, number in said.items():
        if number not in (made[key], made[key] + on_leaf[key]):
            raise Misfit("count", f"{number} {key} stated, {made[key]} made")
    if kinds:
        for key, number in (made - unsaid).items():
            if isinstance(key, str) and key not in said and key != "picot":
                raise Misfit("count", f"{number} {key} made and not stated")


def _opened(stitch: Stitch, opened: Mapping[str, Counter[Key]]) -> Counter[Key]:
    if stitch.kind == "special" and not stitch.form and not stitch.post:
        return opened.get(stitch.name) or Counter({stitch.name: 1})
    if stitch.form == "picot":
        return Counter({"picot": 1})
    if stitch.form == "shell":
        return Counter({kind_of(stitch): max(stitch.number, 1)})
    if stitch.form == "v-stitch":
        return Counter({kind_of(stitch): 2, ("space", stitch.number): 1})
    return Counter({kind_of(stitch): 1})

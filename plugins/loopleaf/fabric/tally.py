"""Counting what a round made, and holding the author's count against it."""

from collections import Counter
from collections.abc import Mapping

from ..notation.tree import Amount, Line, Stitch, Tally, Target, Work
from .blocks import blocks_made
from .edge import is_named
from .grouped import bare_groups, groups_made, is_bare
from .in_words import written_out_groups
from .joined_arch import joined_alone, said_longer
from .worked import NUMBERED, Made, Place, Space, Trouble, WorkedRound

Kind = str | tuple[str, int]


def count_up(
    made: list[Made | Space], edge: list[Place], uses: int, chains_counted: bool, leads: Mapping[str, str]
) -> WorkedRound:
    """The round's figures: by kind (post stitches and gathered ones by their plain kind), and in all.

    leads: the author's stitches that rounds begin with, and those that they are counted among.
    """
    worked = WorkedRound(made, edge, uses, leads=leads)
    makes: Counter[Kind] = Counter()
    stitches = 0
    for (kind, _, _, _, _, role, _, _), number in worked.sorts.items():
        if role in NUMBERED:
            makes[kind] += number
            stitches += number
        elif role == "picot":
            makes["picot"] += number
    chains = 0
    if worked.sorts.total() < len(made):
        for one in made:
            if type(one) is Space and not one.back:
                makes[("space", one.chains)] += 1
                chains += one.chains
    worked.makes = dict(makes)
    worked.count = stitches + (chains if chains_counted else 0)
    return worked


def chains_between(worked: WorkedRound) -> int:
    """All chains of the round's spaces."""
    return sum(one.chains for one in worked.made if isinstance(one, Space) and not one.back)


def compare(stated: Tally, worked: WorkedRound, size: int, chains: str | None) -> Trouble | None:
    """The trouble between the author's count and the worked one; None where they agree.

    chains: the pattern's `chain spaces` (`counted`, `not counted`, None where it doesn't say).
    """
    if stated.total is not None:
        differs = _compare_total(stated.total, worked, size, chains)
        if differs is not None or not stated.entries:
            return differs
    differs = _compare_kinds(stated.entries, worked, size, {})
    longer = said_longer(worked) if differs is not None else {}
    return differs if not longer or _compare_kinds(stated.entries, worked, size, longer) is not None else None


def _compare_total(total: Amount, worked: WorkedRound, size: int, chains: str | None) -> Trouble | None:
    said = total.of(size)
    if said is None or said == worked.count:
        return None
    slips = worked.makes.get("slip", 0)
    if slips and said == worked.count - slips and slips < worked.count:  # `sl st in next st` closes a petal
        return None
    between = chains_between(worked)
    if chains is None and between and said == worked.count + between:
        facts = {"stated": said, "stitches": worked.count, "with_chains": worked.count + between}
        return Trouble("count-unclear", None, facts, size)
    return Trouble(
        "count-differs", None,
        {"stated": said, "worked": worked.count, "kind": None, "difference": worked.count - said}, size,
    )  # fmt: skip


def _compare_kinds(
    entries: tuple[tuple[Amount, Stitch | Target], ...],
    worked: WorkedRound,
    size: int,
    lengths: Mapping[int, int],
) -> Trouble | None:
    """lengths: of the spaces (by id) that are counted as longer than they are."""
    stitches = [one for one in worked.made if isinstance(one, Made) and one.number]
    backs = [one for one in worked.made if isinstance(one, Made) and one.role == "back"]
    spaces = [one for one in worked.made if isinstance(one, Space) and not one.back]
    stated: dict[str, int] = {}
    found: dict[str, int] = {}
    wrong = ""
    for named, said in sorted(_added_up(entries, size).items(), key=lambda entry: _order(entry[0])):
        if isinstance(named, Target):
            number, name = _count_target(named, worked, spaces, lengths)
            if named.kind == "space" and number < said == number + joined_alone(worked, named.length):
                number = said
            if named.kind == "block" and not number:  # those of filet are stitches
                number = said
        else:
            number, stitches, name = _count_stitch(named, stitches, backs, said, worked)
        stated[name], found[name] = said, number
        if number != said and not wrong:
            wrong = name
    plain = any(
        isinstance(named, Stitch) and named.kind != "chain" and not is_bare(named) for _, named in entries
    )
    stitches = [
        one for one in stitches if one.kind != "slip"
    ]  # those that close petals go uncounted in print
    if not wrong and stitches and plain and not _edges_alone(entries, stitches, worked):
        wrong = stitches[0].kind
        stated[wrong] = 0
        found[wrong] = sum(1 for one in stitches if one.kind == wrong)
    if not wrong:
        return None
    return Trouble(
        "count-differs", None,
        {"stated": stated, "worked": found, "kind": wrong, "difference": found[wrong] - stated[wrong]}, size,
    )  # fmt: skip


def _added_up(entries: tuple[tuple[Amount, Stitch | Target], ...], size: int) -> dict[Stitch | Target, int]:
    """What a count says of each kind: `9 dc, 3 sc, 21 dc`, in the order worked, is 30 dc and 3 sc."""
    found: dict[Stitch | Target, int] = {}
    for amount, named in entries:
        said = amount.of(size)
        if said is not None:
            found[named] = found.get(named, 0) + said
    return found


def _edges_alone(
    entries: tuple[tuple[Amount, Stitch | Target], ...], left: list[Made], worked: WorkedRound
) -> bool:
    """Whether a count of groups alone, `7 V-sts`, leaves out just the stitch at either end of the row."""
    groups = all(
        isinstance(named, Stitch) and (named.kind == "special" or named.form in ("shell", "v-stitch"))
        for _, named in entries
    )
    ends = [one for one in worked.made if isinstance(one, Made) and one.number]
    return groups and len(ends) > 2 and [id(one) for one in left] == [id(ends[0]), id(ends[-1])]


def _order(named: Stitch | Target) -> int:
    """The most particular names take their stitches first."""
    if isinstance(named, Target):
        return 2 if named.length else 3
    if named.kind == "special":
        return 0 if named.form or named.post else 1
    return 2 if named.form or named.post or named.loop else 4


def _count_target(
    named: Target, worked: WorkedRound, spaces: list[Space], lengths: Mapping[int, int]
) -> tuple[int, str]:
    if named.kind == "picot":
        return sum(1 for one in worked.made if isinstance(one, Made) and one.role == "picot"), "picot"
    if named.kind == "corner":
        return sum(1 for space in spaces if space.corner), "corner"
    if named.kind == "group":
        return groups_made(worked.made), "group"
    if named.kind == "block":
        return blocks_made(worked.made), "block"
    fits = [space for space in spaces if named.length in (0, lengths.get(id(space), space.chains))]
    for space in fits:
        spaces.remove(space)
    return len(fits), f"space {named.length}" if named.length else "space"


def _count_stitch(
    named: Stitch, stitches: list[Made], backs: list[Made], said: int, worked: WorkedRound
) -> tuple[int, list[Made], str]:
    name = _key(named)
    if named.kind == "chain":
        return chains_between(worked), stitches, "chain"
    if named.kind == "special" and not named.form and not named.post:
        of_it = [one for one in stitches if one.special == named.name]
        units = {one.unit for one in of_it if one.unit}
        alone = sum(1 for one in of_it if not one.unit)
        number = len(units) + alone
        if not number:
            number = sum(1 for one in worked.made if isinstance(one, Made) and one.special == named.name)
        if "picot" in named.name:  # the same in words
            number += sum(1 for one in worked.made if isinstance(one, Made) and _is_picot_in_words(one))
        others = [one for one in stitches if one.special != named.name]
        led = [one for one in others if worked.leads.get(one.special) == named.name]
        if led and number + 1 == said and len({one.unit for one in led}) == 1:
            return said, [one for one in others if one not in led], name
        in_words = [one for one in others if _is_in_words(one, worked.specials.get(named.name))]
        if in_words and number + len(in_words) == said:
            return said, [one for one in others if one not in in_words], name
        groups = written_out_groups(worked.made, worked.specials.get(named.name)) if number != said else []
        if groups:
            taken = {id(one) for group in groups for one in group}
            return number + len(groups), [one for one in others if id(one) not in taken], name
        return number, others, name
    if is_bare(named):
        groups = bare_groups(worked.made, named.form)
        taken = {id(one) for group in groups for one in group}
        return len(groups), [one for one in stitches if id(one) not in taken], name
    if named.form in ("shell", "v-stitch"):
        kind, own = named.name or named.kind, named.name
        units = {one.unit for one in stitches if one.unit and one.kind == kind and one.special == own}
        rest = [one for one in stitches if not (one.unit in units and one.special == own)]
        return len(units), rest, name
    fits = [
        one
        for one in stitches
        if is_named(one, named) and (not named.form or one.legs == named.number or not named.number)
    ]
    taken = {id(one) for one in fits}
    rest = [one for one in stitches if id(one) not in taken]
    if named.kind == "slip" and len(fits) != said:  # those that join to another piece may be counted too
        begun = next((at for at, one in enumerate(worked.made) if isinstance(one, Made) and one.number), 0)
        joining = sum(1 for one in worked.made[begun:] if isinstance(one, Made) and one.role == "travel")
        if len(fits) + joining == said:
            return said, rest, name
    if len(fits) != said:
        with_backs = len(fits) + sum(1 for one in backs if is_named(one, named))
        if with_backs == said:
            return said, rest, name
    return len(fits), rest, name


def _is_in_words(made: Made, own: Line | None) -> bool:
    """Whether a stitch is the author's own though called otherwise: `dc3tog in ring` for a `cl`."""
    match own:
        case Line(steps=(Work(stitch=Stitch(form=form, number=legs) as stitch),)) if form and legs:
            return not made.special and (made.kind, made.form, made.legs) == (stitch.kind, form, legs)
    return False


def _is_picot_in_words(made: Made) -> bool:
    return made.role == "picot" and not made.special


def _key(named: Stitch) -> str:
    post = f"{named.post} post " if named.post else ""
    form = f" {named.form} {named.number}" if named.form else ""
    return f"{post}{named.name or named.kind}{form}"

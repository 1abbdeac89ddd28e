"""Where a file can be mistaken: its lines, counts, numbers and starts, each with its place in the text."""

import json
from collections.abc import Iterator
from dataclasses import dataclass, field

import yaml


@dataclass(frozen=True)
class Site:
    """A value in a file's text. field: `work`, `count`, `start` …; rounds: the labels that it is about."""

    field: str
    value: str
    start: int
    end: int
    piece: str = ""
    rounds: tuple[str, ...] = ()
    entry: int = -1


@dataclass(frozen=True)
class File:
    """A pattern's text and the values in it."""

    name: str
    text: str
    sites: tuple[Site, ...] = field(repr=False)
    entries: tuple[Site, ...] = field(repr=False)

    def with_value(self, site: Site, value: str) -> str:
        """The text with another value in that place."""
        return self.text[: site.start] + _written(value) + self.text[site.end :]

    def with_values(self, *changes: tuple[Site, str]) -> str:
        text = self.text
        for site, value in sorted(changes, key=lambda change: -change[0].start):
            text = text[: site.start] + _written(value) + text[site.end :]
        return text

    def without(self, entry: Site) -> str:
        """The text without one whole round."""
        return self.text[: entry.start] + self.text[entry.end :]


def _written(value: str) -> str:
    plain = value.replace(" ", "").replace("-", "").isalnum()
    return value if plain else json.dumps(value, ensure_ascii=False)


def read(name: str, text: str) -> File:
    """Finds the places of a file; nothing of it is judged."""
    root = yaml.compose(text, yaml.SafeLoader)
    assert isinstance(root, yaml.MappingNode)
    return File(name, text, tuple(_top(root)), tuple(_entries(text, root)))


def _pairs(node: yaml.Node | None) -> Iterator[tuple[str, yaml.Node]]:
    if isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            yield key.value, value


def _get(node: yaml.Node | None, name: str) -> yaml.Node | None:
    return dict(_pairs(node)).get(name)


def _site(name: str, node: yaml.Node, piece: str = "", rounds: tuple[str, ...] = (), entry: int = -1) -> Site:
    return Site(name, node.value, node.start_mark.index, node.end_mark.index, piece, rounds, entry)


def _top(root: yaml.Node) -> Iterator[Site]:
    for name, node in _pairs(_get(root, "turning chains")):
        yield _site(f"turning chain of {name}", node)
    spaces = _get(root, "chain spaces")
    if spaces is not None:
        yield _site("chain spaces", spaces)
    for name, special in _pairs(_get(root, "special stitches")):
        work = _get(special, "work")
        if work is not None:
            yield _site("special work", work, name)
    for piece, body in _pairs(_get(root, "pieces")):
        yield from _piece(piece, body)
    finishing = _get(root, "finishing")
    for step in finishing.value if isinstance(finishing, yaml.SequenceNode) else ():
        for verb, body in _pairs(step):
            yield from _finishing(verb, body)


def _finishing(verb: str, body: yaml.Node) -> Iterator[Site]:
    for name, node in _pairs(body):
        if isinstance(node, yaml.ScalarNode) and name in (
            *("round", "stitches", "under", "over", "to", "through", "across", "down", "piece"),
        ):
            yield _site(f"{verb} {name}", node)
        if name == "from" and isinstance(node, yaml.SequenceNode):
            yield from (_site(f"{verb} from", one) for one in node.value)


def _piece(piece: str, body: yaml.Node) -> Iterator[Site]:
    start = _get(body, "start")
    if isinstance(start, yaml.ScalarNode):
        yield _site("start", start, piece)
    chain = _get(start, "chain")
    if chain is not None:
        yield _site("start chain", chain, piece)
    for name in ("make", "worked"):
        node = _get(body, name)
        if node is not None:
            yield _site(name, node, piece)
    for index, (_, entry, labels) in enumerate(_rounds(body)):
        for name, node in _pairs(entry):
            if isinstance(node, yaml.ScalarNode) and name in (
                *("work", "count", "side", "as", "repeat", "round", "rounds", "row", "rows", "yarn"),
            ):
                yield _site(name, node, piece, labels, index)
            if isinstance(node, yaml.MappingNode) and name in ("n", "count"):
                for part, number in _pairs(node):
                    yield _site(f"{name} {part}", number, piece, labels, index)


def _rounds(body: yaml.Node) -> Iterator[tuple[str, yaml.Node, tuple[str, ...]]]:
    for name in ("rounds", "rows"):
        rounds = _get(body, name)
        for entry in rounds.value if isinstance(rounds, yaml.SequenceNode) else ():
            for field_name, node in _pairs(entry):
                if field_name in ("round", "rounds", "row", "rows"):
                    first, _, last = node.value.partition("-")
                    span = range(int(first), int(last or first) + 1) if first.isdigit() else range(0)
                    yield field_name, entry, tuple(map(str, span))


def _entries(text: str, root: yaml.Node) -> Iterator[Site]:
    """Whole rounds, with the dash before them."""
    for piece, body in _pairs(_get(root, "pieces")):
        rounds = list(_rounds(body))
        for index, (_, entry, labels) in enumerate(rounds if len(rounds) > 1 else ()):
            dash = text.rfind("- ", 0, entry.start_mark.index)
            line = text.rfind("\n", 0, dash) + 1
            if text[line:dash].strip() or dash < 0:
                continue
            end = entry.end_mark.index
            rest = text.find("\n", end) + 1 or len(text)
            if not text[end:rest].strip():
                end = rest
            yield Site("entry", "", line, end, piece, labels, index)

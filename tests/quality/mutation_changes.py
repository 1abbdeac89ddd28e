"""Small changes of the engine's own code, made by mutmut's operators, and a seeded choice among them.

The library says what can become of an expression (a comparison, a number, a word, an argument, a branch);
which expressions of which modules are taken is settled here: each has the same chance, and one of its changes
is tried.
"""

import ast
import difflib
import random
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import libcst as cst
import libcst.matchers as m
from libcst.metadata import CodeRange, MetadataWrapper, PositionProvider
from mutmut.mutation.file_mutation import deep_replace
from mutmut.mutation.mutators import mutation_operators

PACKAGE = Path("plugins/loopleaf")
ROOMS = ("notation", "fabric", "review")
KINDS = {
    "operator_number": "a number one more",
    "operator_string": "other letters in a string",
    "operator_name": "true and false",
    "operator_assignment": "nothing assigned",
    "operator_augmented_assignment": "assigned instead of added to",
    "operator_remove_unary_ops": "a `not` lost",
    "operator_dict_arguments": "a key misspelt",
    "operator_arg_removal": "an argument lost or None",
    "operator_symmetric_string_methods_swap": "a string method's opposite",
    "operator_unsymmetrical_string_methods_swap": "a string method's opposite",
    "operator_lambda": "a lambda that gives nothing",
    "operator_keywords": "`is`, `in`, `break`, `continue` turned round",
    "operator_swap_op": "another operator or comparison",
    "operator_match": "a case lost",
    "operator_if_exp": "one branch always",
}
"""What the library's operators do, in our words."""


@dataclass(frozen=True)
class Change:
    """One change of one module.

    module: its path below the root, with slashes. kind: what was done, from KINDS. line: where the changed
    expression begins. was, now: the lines that differ, without their indentation. text: the module, changed.
    """

    module: str
    kind: str
    line: int
    was: str
    now: str
    text: str

    @property
    def room(self) -> str:
        """`fabric` for plugins/loopleaf/fabric/edge.py."""
        return Path(self.module).relative_to(PACKAGE).parts[0]


@dataclass(frozen=True)
class Place:
    """An expression or statement that can be changed: its line, and what the operators would put there."""

    line: int
    stands: cst.CSTNode
    changed: list[tuple[str, cst.CSTNode]]


class _Finder(cst.CSTVisitor):
    """Collects the places of a module."""

    METADATA_DEPENDENCIES = (PositionProvider,)

    def __init__(self) -> None:
        super().__init__()
        self.found: list[Place] = []

    def on_visit(self, node: cst.CSTNode) -> bool:
        if _does_nothing(node):
            return False
        changed = [
            (KINDS[operator.__name__], new)
            for kind, operator in mutation_operators
            if isinstance(node, kind)
            for new in operator(node)
        ]
        if changed:
            at = self.get_metadata(PositionProvider, node, None)
            self.found.append(Place(at.start.line if isinstance(at, CodeRange) else 1, node, changed))
        return True


def _does_nothing(node: cst.CSTNode) -> bool:
    """Whether it is only there for readers and for the type checker: annotations, literal types, `__all__`.
    (A decorator is left as it is too: its name is no expression to vary.)
    """
    if isinstance(node, cst.Subscript):
        return m.matches(node.value, m.Name("Literal"))
    if isinstance(node, cst.Assign):
        return m.matches(node.targets[0].target, m.Name("__all__"))
    return isinstance(node, cst.Annotation | cst.Decorator)


def modules(root: Path) -> list[str]:
    """The modules of the three rooms below the root, in order."""
    files = (file for room in ROOMS for file in sorted((root / PACKAGE / room).rglob("*.py")))
    return [file.relative_to(root).as_posix() for file in files]


@cache
def _parsed(file: Path) -> cst.Module:
    return cst.parse_module(file.read_text(encoding="utf-8"))


@cache
def places(file: Path) -> list[Place]:
    """What can be changed in a module, from top to bottom."""
    finder = _Finder()
    MetadataWrapper(_parsed(file), unsafe_skip_copy=True).visit(finder)
    return finder.found


def change(root: Path, module: str, place: Place, number: int) -> Change | None:
    """A place's change by its number; None where Python reads the changed text as the same."""
    tree = _parsed(root / module)
    kind, new = place.changed[number]
    changed = deep_replace(tree, place.stands, new)
    assert isinstance(changed, cst.Module)
    if ast.dump(ast.parse(tree.code)) == ast.dump(ast.parse(changed.code)):
        return None
    was, now = _differing(tree.code, changed.code)
    return Change(module, kind, place.line, was, now, changed.code)


def _differing(before: str, after: str) -> tuple[str, str]:
    lines = list(difflib.ndiff(before.splitlines(), after.splitlines()))
    return tuple(  # type: ignore[return-value]
        " ".join(line[2:].strip() for line in lines if line.startswith(sign)) for sign in ("- ", "+ ")
    )


def shares(sizes: dict[str, int], number: int) -> dict[str, int]:
    """How many of `number` fall to each: by size, at least one each (where it has one), whole numbers."""
    some = {name: size for name, size in sizes.items() if size}
    whole = sum(some.values())
    number = min(number, whole)
    exact = {name: number * size / whole for name, size in some.items()}
    given = {name: min(some[name], max(1, int(share))) for name, share in exact.items()}
    for name in sorted(some, key=lambda name: given[name] - exact[name]):
        if sum(given.values()) >= number:
            break
        given[name] = min(some[name], given[name] + 1)
    return given


def sample(root: Path, number: int, seed: int) -> Iterator[Change]:
    """A seeded sample of about `number` changes, spread over the modules by how many places each one has."""
    rng = random.Random(seed)
    sizes = {module: len(places(root / module)) for module in modules(root)}
    for module, share in shares(sizes, number).items():
        there = places(root / module)
        for at in sorted(rng.sample(range(len(there)), share)):
            one = change(root, module, there[at], rng.randrange(len(there[at].changed)))
            if one is not None:
                yield one

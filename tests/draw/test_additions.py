"""What the finishing adds: the moon, the cords."""

from dataclasses import replace

import pytest

from loopleaf.draw import first_picture, piece_picture
from loopleaf.fabric import PatternWork
from tests.measure.worked_patterns import HEAD, worked

from .pieces import MAT, demo, rounds

TUBE = rounds("ch 1, 12 sc in ring, join", *["ch 1, sc in each st around, join"] * 8)
CORD = "cord:\n  yarn: A\n  worked: chain\n  length: 20 cm\n"


def without(work: PatternWork, kind: str) -> PatternWork:
    kept = tuple(step for step in work.pattern.finishing if step.kind != kind)
    return replace(work, pattern=work.pattern.model_copy(update={"finishing": kept}))


def test_the_moon_is_sewn_on_in_its_own_yarn() -> None:
    work, measured = demo("lantern-pouch")
    assert "#e6d9bd" in first_picture(work, measured)
    assert "#e6d9bd" not in first_picture(without(work, "sew"), measured)
    assert "#e6d9bd" not in piece_picture(work, "pouch", measured)


def test_the_cords_run_through_the_casing_and_hang_at_the_sides() -> None:
    work, measured = demo("lantern-pouch")
    whole, bare = first_picture(work, measured), first_picture(without(work, "thread"), measured)
    assert len(whole) > len(bare)
    assert ' stroke-width="5"' in whole
    assert ' stroke-width="5"' not in bare


def test_a_cord_through_a_round_without_spaces() -> None:
    thread = "finishing: [{thread: {piece: cord, through: piece, round: 5, under: 2, over: 2}}]\n"
    assert ' stroke-width="5"' in first_picture(worked(TUBE + CORD, thread))


@pytest.mark.parametrize(
    "step",
    [
        "{thread: {piece: cord, through: piece, round: 99, under: 1, over: 1}}",
        "{sew: {piece: mat, to: piece, text: On the front.}}",
        "{sew: {piece: mat, to: piece, round: 99, stitches: 1-4}}",
        "{text: Weave in the ends.}",
    ],
)
def test_what_cannot_be_placed_is_not_drawn(step: str) -> None:
    bare = first_picture(worked(TUBE + CORD + MAT))
    assert first_picture(worked(TUBE + CORD + MAT, f"finishing: [{step}]\n")) == bare


def test_a_cord_sewn_on_turns_its_place_to_the_front_and_is_not_drawn() -> None:
    sewn = "finishing: [{sew: {piece: cord, to: piece, round: 5, stitches: 1-4}}]\n"
    bare, turned = first_picture(worked(TUBE + CORD)), first_picture(worked(TUBE + CORD, sewn))
    assert turned != bare
    assert turned.count("<path") <= bare.count("<path") + 8


def test_nothing_is_drawn_onto_what_lies_flat() -> None:
    sewn = "finishing: [{sew: {piece: piece, to: mat, round: 3, stitches: 1-4}}]\n"
    bare, turned = first_picture(worked(MAT + TUBE)), first_picture(worked(MAT + TUBE, sewn))
    assert turned.count("<path") == bare.count("<path")


def test_what_is_sewn_to_a_flat_piece_lies_on_it_and_a_cord_is_left_out() -> None:
    sewn = "finishing: [{sew: {piece: dot, to: mat, round: 2, stitches: 3-4}}]\n"
    threaded = "finishing: [{thread: {piece: cord, through: mat, round: 2, under: 1, over: 1}}]\n"
    dot = "dot:\n  yarn: B\n  worked: spiral rounds\n  start: magic ring\n"
    dot += '  rounds: [{round: 1, work: "6 sc in ring"}]\n'
    head = HEAD.replace("B: {weight: 4,", 'B: {weight: 4, colour: "#e6d9bd",')
    bare = first_picture(worked(MAT + dot + CORD, head=head))
    assert "#e6d9bd" not in bare
    assert "#e6d9bd" in first_picture(worked(MAT + dot + CORD, sewn, head=head))
    assert first_picture(worked(MAT + dot + CORD, threaded, head=head)) == bare

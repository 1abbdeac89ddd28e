"""The loop said once for a whole group: `(dc, 2 tr, dc) in FLO of next st`."""

from dataclasses import replace

from .tree import Repeat, Step, Work

_NEVER = frozenset({"slip", "chain"})


def in_loop(steps: tuple[Step, ...], loop: str) -> tuple[Step, ...]:
    """The steps with every stitch in that loop, where it says no other itself."""
    return tuple(_in_loop(step, loop) for step in steps)


def _in_loop(step: Step, loop: str) -> Step:
    if isinstance(step, Repeat):
        return replace(step, steps=in_loop(step.steps, loop))
    if isinstance(step, Work) and _takes_a_loop(step):
        return replace(step, stitch=replace(step.stitch, loop=step.stitch.loop or loop))
    return step


def said_once(steps: tuple[Step, ...]) -> tuple[str, tuple[Step, ...]]:
    """The loop that all stitches of a group are worked in, and the steps without it; "" where they differ."""
    works = [step for step in steps if isinstance(step, Work) and _takes_a_loop(step)]
    loops = {step.stitch.loop for step in works}
    if len(loops) != 1 or any(isinstance(step, Repeat) for step in steps):
        return "", steps
    loop = loops.pop()
    if not loop:
        return "", steps
    bare = [
        replace(step, stitch=replace(step.stitch, loop=""))
        if isinstance(step, Work) and step in works
        else step
        for step in steps
    ]
    return loop, tuple(bare)


def _takes_a_loop(step: Work) -> bool:
    return step.stitch.kind not in _NEVER and not step.stitch.post and step.stitch.form != "picot"

"""The loop or the post said once for a whole group: `(dc, 2 tr, dc) in FLO of next st`, `(FPdc, ch 1, FPdc)
around next dc`.
"""

from dataclasses import replace

from .tree import Here, Repeat, Step, Work

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


def in_post(steps: tuple[Step, ...], post: str) -> tuple[Step, ...]:
    """The steps with every stitch around that post, where it doesn't say itself how it takes it."""
    return tuple(_in_post(step, post) for step in steps)


def _in_post(step: Step, post: str) -> Step:
    if isinstance(step, Repeat):
        return replace(step, steps=in_post(step.steps, post))
    if isinstance(step, Work) and _takes_a_post(step):
        return replace(step, stitch=replace(step.stitch, post=step.stitch.post or post))
    return step


def post_said_once(steps: tuple[Step, ...]) -> tuple[str, tuple[Step, ...]]:
    """The post that all stitches of a group are worked around, and the steps without it where no stitch's own
    name says it; "" where they differ.
    """
    works = [step for step in steps if isinstance(step, Work) and _takes_a_post(step)]
    posts = {step.stitch.post for step in works}
    if len(posts) != 1 or any(isinstance(step, Repeat) for step in steps):
        return "", steps
    post = posts.pop()
    if post != "around":
        return post, steps
    return post, tuple(
        replace(one, stitch=replace(one.stitch, post="")) if isinstance(one, Work) and one in works else one
        for one in steps
    )


def _takes_a_loop(step: Work) -> bool:
    return step.stitch.kind not in _NEVER and not step.stitch.post and step.stitch.form != "picot"


def _takes_a_post(step: Work) -> bool:
    return step.places == (Here(),) and step.stitch.kind != "chain" and step.stitch.form != "picot"

"""Travelling into a space and beginning there, said in one bracket: `(sl st, ch 3, 2 dc) in next ch-2 sp`."""

from dataclasses import replace

from ..notation.tree import ONE, Chain, First, Group, JoinYarn, Next, Same, Skip, Step, Turn, Work, Yarn


def travelled(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The line's steps, where its first bracket travels: the slip stitch before it, the rest `in same sp`.

    The steps themselves where no bracket begins the line so.
    """
    for at, step in enumerate(steps):
        match step:
            case Work(stitch=stitch) if stitch.kind == "slip":
                continue
            case Yarn() | JoinYarn() | Skip() | Turn():
                continue
            case Group(steps=(Work(each=each) as slip, Chain() as chain, *rest), places=(place,)):
                one = isinstance(place, Next | First) and place.count == ONE
                if slip.stitch.kind != "slip" or each != ONE or not rest or not one:
                    return steps
                there = replace(slip, places=(place,))
                return (
                    *steps[:at],
                    there,
                    replace(step, steps=(chain, *rest), places=(Same(),)),
                    *steps[at + 1 :],
                )
        return steps
    return steps

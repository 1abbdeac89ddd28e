"""Forms that a drawing defines once, and how they are put in their places."""

from .canvas import Point, number


class Shapes:
    """Forms that are defined once in an SVG and used by a short name."""

    def __init__(self) -> None:
        self._names: dict[tuple[str, bool, int, str], str] = {}

    def name(self, way: str, filled: bool = False, turned: int = 0, scale: str = "") -> str:
        """The name of a path, to be stroked or to be filled, turned by so many degrees; scale: of a stretched
        one, as in its transform.
        """
        return self._names.setdefault((way, filled, turned, scale), f"s{len(self._names) + 1}")

    def copy(self) -> "Shapes":
        """The same forms, to which others can be added."""
        other = Shapes()
        other._names.update(self._names)
        return other

    def definitions(self) -> str:
        """All of them, defined."""
        paths = (
            f'<path id="{name}" {"stroke" if filled else "fill"}="none"{turning(angle, scale)} d="{way}"/>'
            for (way, filled, angle, scale), name in self._names.items()
        )
        return f"<defs>{''.join(paths)}</defs>"


def turning(angle: int, scale: str) -> str:
    """An attribute that turns and stretches a shape where it is defined."""
    way = (f"rotate({angle})" if angle else "") + scale
    return f' transform="{way.strip()}"' if way else ""


def moved(to: Point) -> str:
    """The way to a place, as in a transform."""
    return f"translate({short(to[0])} {short(to[1])})"


def placed(to: Point, angle: int = 0, scale: str = "") -> str:
    """Attributes that put a shape in its place, turned by whole degrees; as short as they can be."""
    if not angle and not scale:
        return f' x="{short(to[0])}" y="{short(to[1])}"'
    turned = f" rotate({angle})" if angle else ""
    return f' transform="{moved(to)}{turned}{scale}"'


def short(value: float) -> str:
    """To a hundredth of a stitch's width: finer is not seen."""
    return number(round(value, 1))

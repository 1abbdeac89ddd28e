"""A rule's page as text, as `loopleaf explain` prints it."""

from textwrap import fill, indent

from ..review.rule import Rule

_WIDTH = 92


def rule_text(rule: Rule) -> str:
    """What, why it matters, a wrong and a right example, when to ignore."""
    page = rule.page
    parts = [
        f"{rule.name} ({rule.severity})",
        fill(page.summary, _WIDTH),
        fill(page.what, _WIDTH),
        f"Why it matters\n{fill(page.why, _WIDTH)}",
        f"Wrong\n{indent(page.wrong, '    ')}",
        f"Right\n{indent(page.right, '    ')}",
        f"When to ignore\n{fill(page.ignore, _WIDTH)}",
    ]
    return "\n\n".join(parts) + "\n"

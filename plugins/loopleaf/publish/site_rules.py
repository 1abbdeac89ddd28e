"""The page of rules: what each finding means, at the address that findings link to."""

from collections.abc import Iterator, Sequence

from ..review import Rule

_SEVERITIES = {"error": "Error", "warning": "Warning", "note": "Note"}


def rules_page(rules: Sequence[Rule]) -> str:
    """The page's source: one part a rule, each with its own address (`rules/#count-differs`)."""
    return "\n".join(_page(rules))


def _page(rules: Sequence[Rule]) -> Iterator[str]:
    yield "---\ntitle: What the check finds\n---\n"
    yield "# What the check finds\n"
    yield (
        "Every round of every pattern is worked stitch by stitch before it is published. What doesn't add up "
        "is named by one of these rules. An error keeps a pattern from being published, a warning asks for a "
        "look, a note never fails anything.\n"
    )
    for rule in rules:
        page = rule.page
        yield f"## {rule.name}\n"
        yield f"*{_SEVERITIES[rule.severity]}.* {page.summary} {page.what}\n"
        yield f"**Why it matters.** {page.why}\n"
        yield f"**Wrong**\n\n```yaml\n{page.wrong}\n```\n"
        yield f"**Right**\n\n```yaml\n{page.right}\n```\n"
        yield f"**When to ignore.** {page.ignore}\n"

"""The right patterns that mistakes are made in: the demo collection and the passages that agree in print."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import yaml

ROOT = Path(__file__).parents[2]
DEMO = sorted((ROOT / "patterns").glob("*.yml"))


def published() -> Iterator[tuple[str, bytes, dict[str, Any]]]:
    """Each worked example as a pattern file, with what is known of it."""
    data = yaml.safe_load((ROOT / "tests/published/worked_examples.yml").read_text(encoding="utf-8"))
    for example in data["examples"]:
        kept = ("turning chains", "chain spaces", "special stitches")
        file = {
            "title": example["place"],
            "terms": "UK",
            "gauge": "not critical",
            **{key: example[key] for key in kept if key in example},
            "pieces": {"example": example["piece"]},
        }
        text = yaml.safe_dump(file, sort_keys=False, allow_unicode=True, width=1000)
        yield f"{example['passage']} {example['place']}", text.encode(), example


def right_patterns() -> dict[str, str]:
    """Every pattern that is right, by its name."""
    found = {path.stem: path.read_text(encoding="utf-8") for path in DEMO}
    return found | {name: data.decode() for name, data, example in published() if example["agrees"]}

"""The options that stand under the plugin in `mkdocs.yml`."""

from mkdocs.config import config_options as c
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig

from .settings import Settings


class LoopleafOptions(Config):  # type: ignore[no-untyped-call]
    """One option a line; `settings` gives their meaning."""

    collection = c.Type(str, default="")
    terms = c.Choice(("US", "UK"), default="US")
    contact = c.Type(str, default="")
    counts = c.Choice(("plain", "brackets", "sts"), default="plain")
    booklets = c.Type(bool, default=True)
    papers = c.ListOfItems(c.Choice(("a4", "letter")), default=["a4", "letter"])


def settings(options: LoopleafOptions, config: MkDocsConfig) -> Settings:
    """The collection's settings; its name is the site's where it has none of its own."""
    url = config.site_url or ""
    return Settings(
        collection=options.collection or config.site_name,
        terms=options.terms,  # type: ignore[arg-type]  # Choice has made sure
        contact=options.contact,
        counts=options.counts,  # type: ignore[arg-type]  # so here
        booklets=options.booklets,
        papers=tuple(options.papers),
        site_url=f"{url.rstrip('/')}/" if url else "",
    )

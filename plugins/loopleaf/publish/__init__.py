"""From checked patterns to what is read: leaflets as plain values, the site, the booklets.

Nothing here works a stitch. `leaflet` sets out what is printed in one terminology; the site and the
booklet templates both print it. MkDocs is imported in `site*` only, WeasyPrint in `booklet*` only.
"""

"""English, part of its table: finding a comparison."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

FINDING: Mapping[str, str | Forms] = {
    "site.feed": "Feed",
    "page.feed": "Feed",
    "site.lists": "Comparisons by what you look for",
    "site.lists.description": "All comparisons by kind of product, maker, year, method, what was measured and price.",
    "site.lists.kind": "Kind of product",
    "site.lists.maker": "Maker",
    "site.lists.year": "Year",
    "site.lists.method": "Method",
    "site.lists.measured": "What was measured",
    "site.lists.price": "Price",
    "on.lists.by": "Lists by",
    "on.lists.ways": "Lists by what you look for",
    "on.lists.short": "Every comparison stands in each list under all that it has.",
    "site.choose.kind": "Kind of product",
    "site.choose.maker": "Maker",
    "site.choose.year": "Year",
    "site.choose.method": "Method",
    "site.choose.measured": "What was measured",
    "site.choose.option": "{title} ({n})",
    "site.choose.none": "No comparison fits all of that. Take one choice back.",
    "site.choose.some": {
        "one": "{n} comparison of {of} fits.",
        "other": "{n} comparisons of {of} fit.",
    },
    "site.choose.all": {
        "one": "{n} comparison, the newest first.",
        "other": "{n} comparisons, the newest first.",
    },
    "on.choose.title": "Show only some",
    "on.choose.any": "any",
    "on.choose.at-least": "Price, at least",
    "on.choose.at-most": "Price, at most",
    "on.choose.at-least-in": "Price in {currency}, at least",
    "on.choose.at-most-in": "Price in {currency}, at most",
    "on.choose.currency": "Currency",
    "on.choose.back": "Show all again",
    # searching everything
    "site.search": "Search",
    "page.links.search": "Search",
    "on.search.for": "Search all comparisons and the texts around them",
    "on.search.go": "Search",
    "on.search.show-more": "Show more",
    "on.search.instead": "Searching everything needs a script, and the site on a server: opened from a disk, a browser "
    "lets no page look into others. Your browser’s own search finds words on a page, and these lists lead to all "
    "comparisons.",
    "on.search.not-made": "This site was made without its search. Your browser’s own search finds words on a page, and "
    "these lists lead to all comparisons.",
    "site.search.none": "Nothing here has all of these words.",
    "site.search.found": {
        "one": "On {n} page.",
        "other": "On {n} pages, the best first.",
    },
    "site.search.more": "On more than {n} pages, the best first.",
    # names that things had before
    "site.moved.title": "This page has moved",
    "on.moved.says": "It is now at {link}.",
    "site.moved.pair": "{first} and {second}, side by side",
    "page.formerly.pair": "{first} and {second}",
    "on.formerly.title": "Earlier names on this page",
    "on.formerly.says": "Links made under an earlier name end here, and lead on to what it is called now.",
    "on.formerly.was": "{old}, now {new}",
    "on.formerly.figure": "chart",
    "on.formerly.table": "table",
    "on.formerly.pairs": "every pair",
    "on.formerly.claim": "claim of the maker",
}

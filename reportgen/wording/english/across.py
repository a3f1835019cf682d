"""English, part of its table: results by one version of a method, across comparisons."""

from __future__ import annotations

from collections.abc import Mapping

ACROSS: Mapping[str, str] = {
    "chart.across.key.value": "the upright line is the value",
    "chart.across.key.bar": "the bar behind it is its 95\u00a0% range",
    "site.across.group": "{day}: {campaign}",
    "site.across.no-day": "day not noted",
    "site.across.days.one": "All were tested on one day.",
    "site.across.days.unknown": (
        "These comparisons were made on different days. Nothing says how far this method differs from one day to "
        "the next, so a value of one comparison can’t be held against a value of another."
    ),
    "site.across.days.known": (
        "These comparisons were made on different days. The method states that days differ by {sd}, as a standard "
        "deviation: by days alone two results may lie {most} apart, 95 times in 100. Bars allow for that, thin lines "
        "don’t"
    ),
    "site.across.days.known.outside": (
        "These comparisons were made on different days. The method states that days differ by {sd}, as a standard "
        "deviation: by days alone two results may lie {most} apart, 95 times in 100. The ranges don’t allow for that"
    ),
    "site.across.instruments.same": "The same instruments were used in all of them.",
    "site.across.instruments.differ": (
        "Not all were read with the same instruments, and each may be off by something else."
    ),
    "site.across.method.differs": (
        "The comparisons’ own files don’t all say the same of this version; what stands on this page is of the newest."
    ),
    "site.across.not-ranked": (
        "Nobody is ranked across comparisons: what was held the same in one need not be the same in another."
    ),
    "page.across": "All results by this version of the method, in any comparison",
    "site.products": "Products",
    "site.products.says": "Everything that was tested, by its maker, with all comparisons it took part in.",
    "site.products.no-maker": "Maker not noted",
    "site.product.description": "{name} in every comparison it took part in, beside what was measured the same way.",
    "site.product.none": (
        "Nothing of it was measured by a version of a method that another comparison used as well. What was measured "
        "stands on its sheet."
    ),
    "on.product.sheets": "Its sheets",
    "on.product.so": "Measured the same way",
    "on.product.by": "By the method “{method}”.",
    "on.product.all": "All results by this version, with a picture",
    "page.sheet.elsewhere": "This product in other comparisons, and what was measured the same way",
    "on.across.this": "this product",
    "on.across.title": "All results by this version",
    "on.across.contender": "Contender",
    "on.across.result": "Result",
    "on.across.range": "Range",
    "on.across.none": "–",
    "on.across.tested": "Tested {day}",
    "on.across.read-with": "read with: {instruments}",
    "on.across.not-ranked": "not ranked there: {why}",
}

"""Orders that were only seen: what follows, what doesn't, and what can't hold together.

The witness for what follows is SciPy's shortest paths on the same links (`scipy.sparse.csgraph`), and for circles its
strongly connected components; for small cases every possible look is tried.
"""

from __future__ import annotations

from itertools import combinations, pairwise, permutations, product

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.sparse.csgraph import connected_components, shortest_path

from reportgen.judgement.orders.looks import Look, Way, clashes
from reportgen.judgement.orders.partial_order import Ordered, circles, order_of

ABC = ("a", "b", "c")
ABCD = ("a", "b", "c", "d")


def less(*names: str, look: str = "1") -> list[Look]:
    """a < b < c, each less than the next."""
    return [Look(one, other, "less", "", look) for one, other in pairwise(names)]


def told(order: Ordered, first: str, second: str) -> tuple[str, bool]:
    pair = order.of(first, second)
    return pair.told, pair.follows


def test_less_than_is_handed_on_within_a_look() -> None:
    order = order_of(ABC, less("a", "b", "c"))
    assert told(order, "a", "c") == ("less", True)
    assert order.of("a", "c").through == ("b",)
    assert told(order, "c", "a") == ("more", True)
    assert told(order, "a", "b") == ("less", False)


def test_about_like_is_not_handed_on() -> None:
    """Luce 1956: differences too small to notice add up to one that is."""
    order = order_of(ABC, [Look("a", "b", "alike"), Look("b", "c", "alike")])
    assert told(order, "a", "c") == ("never", False)
    order = order_of(ABC, [*less("a", "b"), Look("b", "c", "alike")])
    assert told(order, "a", "c") == ("never", False)


def test_what_one_look_began_another_does_not_finish() -> None:
    order = order_of(ABC, [*less("a", "b"), *less("b", "c", look="2")])
    assert told(order, "a", "c") == ("never", False)


def test_looks_that_disagree_are_told_both_ways() -> None:
    order = order_of(ABC, [*less("a", "b", "c"), *less("c", "a", look="2")])
    assert told(order, "a", "c") == ("both ways", False)
    assert told(order, "a", "b") == ("less", False)


def test_looks_that_agree_but_for_the_degree_keep_the_direction_alone() -> None:
    order = order_of(("a", "b"), [Look("a", "b", "less", "much"), Look("b", "a", "more", "a little", "2")])
    assert (order.pairs[0].told, order.pairs[0].degree, order.pairs[0].looks) == ("less", "", 2)


def test_a_circle_that_only_several_looks_make_is_found_and_gives_no_levels_apart() -> None:
    looks = [*less("a", "b"), *less("b", "c", look="2"), *less("c", "a", look="3"), *less("a", "d", look="4")]
    order = order_of(ABCD, looks)
    assert circles(ABCD, order.pairs) == (("a", "b", "c"),)
    assert {order.levels[n] for n in ABC} == {0}
    assert order.levels["d"] == 1


def test_levels_hand_a_place_on_to_those_about_alike_and_leave_out_the_never_compared() -> None:
    order = order_of((*ABCD, "e"), [*less("a", "b"), Look("b", "c", "alike"), Look("c", "d", "alike")])
    assert dict(order.levels) == {"a": 0, "b": 1, "c": 1, "d": 1}


@pytest.mark.parametrize("ring", list(permutations(ABC)))
def test_every_circle_of_three_in_one_look_clashes(ring: tuple[str, ...]) -> None:
    said = [*less(*ring), Look(ring[2], ring[0], "less")]
    (clash,) = clashes(said)
    assert clash.other == said[2]
    assert set(clash.round_) == set(ABC)


@pytest.mark.parametrize(
    "second", [Look("b", "a", "less"), Look("a", "b", "alike"), Look("a", "b", "less", "much"), Look("a", "b", "more")]
)
def test_a_pair_said_two_ways_in_one_look_clashes(second: Look) -> None:
    first = Look("a", "b", "less")
    assert [(c.one, c.other) for c in clashes([first, second])] == [(first, second)]
    assert not clashes([first, Look("b", "a", "more")])


def test_about_like_across_a_chain_clashes_whichever_was_said_first() -> None:
    alike = Look("a", "c", "alike")
    assert len(clashes([*less("a", "b", "c"), alike])) == 1
    assert len(clashes([alike, *less("a", "b", "c")])) == 1


def _reached(names: tuple[str, ...], said: list[Look]) -> np.ndarray:
    links = np.zeros((len(names), len(names)))
    for one in said:
        low, high = (one.first, one.second) if one.way == "less" else (one.second, one.first)
        if one.way != "alike":
            links[names.index(low), names.index(high)] = 1
    return np.isfinite(shortest_path(links, unweighted=True))


def test_all_looks_at_four_that_hold_together_agree_with_shortest_paths() -> None:
    """Every way to say less, more or nothing of each of six pairs: 3^6 looks."""
    ways: tuple[Way | None, ...] = ("less", "more", None)
    pairs = list(combinations(ABCD, 2))
    checked = 0
    for choice in product(ways, repeat=len(pairs)):
        said = [Look(a, b, way) for (a, b), way in zip(pairs, choice, strict=True) if way]
        reached = _reached(ABCD, said)
        circle = any(reached[i, j] and reached[j, i] for i, j in combinations(range(4), 2))
        assert bool(clashes(said)) == circle, said
        if circle:
            continue
        checked += 1
        order = order_of(ABCD, said)
        for (i, a), (j, b) in combinations(enumerate(ABCD), 2):
            expected = "less" if reached[i, j] else "more" if reached[j, i] else "never"
            assert order.of(a, b).told == expected
    assert checked == 543  # labelled acyclic digraphs on 4 nodes (OEIS A003024)


@given(st.lists(st.tuples(st.sampled_from("abcdef"), st.sampled_from("abcdef"), st.sampled_from("12345")), max_size=14))
def test_circles_over_looks_are_the_strongly_connected_groups(links: list[tuple[str, str, str]]) -> None:
    """The witness: SciPy's strongly connected components of what all looks together set above another."""
    names = tuple("abcdef")
    said = [Look(a, b, "less", "", look) for a, b, look in dict.fromkeys(links) if a != b]
    for look in "12345":  # keep each look free of clashes
        while found := clashes(s for s in said if s.look == look):
            said.remove(found[0].other)
    order = order_of(names, said)
    links_kept = np.zeros((6, 6))
    for p in order.pairs:
        if p.told in ("less", "more"):
            low, high = (p.first, p.second) if p.told == "less" else (p.second, p.first)
            links_kept[names.index(low), names.index(high)] = 1
    _, group = connected_components(links_kept, connection="strong")
    expected = {tuple(n for n, g in zip(names, group, strict=True) if g == each) for each in set(group)}
    assert set(circles(names, order.pairs)) == {g for g in expected if len(g) > 1}
    for p in order.pairs:
        if p.told == "less" and not any({p.first, p.second} <= set(c) for c in circles(names, order.pairs)):
            assert order.levels[p.first] < order.levels[p.second]

"""A formula's text → its tree. The grammar is our own and small, so what it costs and reaches is bounded.

    sum     = product { ("+" | "-") product }
    product = signed { ("*" | "/") signed }
    signed  = "-" signed | "+" signed | power
    power   = atom [ "^" signed ]                 (from right to left)
    atom    = number | name | name "(" sum { "," sum } ")" | "(" sum ")"

Powers bind before a minus in front of them: -x^2 is -(x^2).
"""

from __future__ import annotations

from typing import cast

from reportgen.metrology.errors import FormulaError, did_you_mean
from reportgen.metrology.formulas.grammar import (
    FUNCTIONS,
    OVER_CHANNELS,
    PARTS_OF_CHANNELS,
    PLAIN_NUMBERS,
    SIDED,
    SIDES,
    TAKES,
    Call,
    Expression,
    Name,
    Negated,
    Number,
    Operation,
    Sign,
    Token,
    tokens_of,
)
from reportgen.metrology.formulas.names import parts_of

LONGEST = 500  # characters
DEEPEST = 30  # brackets, signs, powers and calls inside one another


def parse(text: str) -> Expression:
    """The tree of a formula. Raises FormulaError(column, says, do); never anything else, whatever the text.

    >>> parse("before - 2").sign
    '-'
    >>> parse("before -- ")
    Traceback (most recent call last):
    ...
    reportgen.metrology.errors.FormulaError: the formula stops in the middle; something is missing at its end
    """
    if len(text) > LONGEST:
        raise FormulaError(LONGEST + 1, f"a formula of {len(text)} characters", f"split it: {LONGEST} is the most")
    if not text.strip():
        raise FormulaError(1, "an empty formula", "write an expression such as before - after")
    tokens = _Tokens(list(tokens_of(text)))
    tree = _sum(tokens, 0)
    left = tokens.next
    if left.sort == "close":
        raise FormulaError(left.column, "a bracket closes that was never opened", "take it away, or open one before")
    if left.sort == "comma":
        raise FormulaError(left.column, "a comma outside a function", "write a decimal point, not a comma")
    if left.sort != "end":
        raise FormulaError(
            left.column,
            f"a sign is missing before {left.text}",
            "write * to multiply; a name of several words has underscores",
        )
    _check_stretches(tree)
    return tree


class _Tokens:
    """Where the parser stands in the formula."""

    def __init__(self, tokens: list[Token]) -> None:
        self._tokens = tokens
        self._at = 0

    @property
    def next(self) -> Token:
        return self._tokens[self._at]

    def take(self) -> Token:
        token = self.next
        self._at += token.sort != "end"
        return token

    @property
    def behind_a_number(self) -> bool:
        """Whether a name stands next, right behind a number: as a unit would."""
        return self._at > 0 and self._tokens[self._at - 1].sort == "number" and self.next.sort == "name"

    def follows(self, *signs: str) -> bool:
        return self.next.sort == "sign" and self.next.text in signs


def _sum(tokens: _Tokens, depth: int) -> Expression:
    left = _product(tokens, depth)
    while tokens.follows("+", "-"):
        sign = tokens.take()
        left = Operation(sign.column, cast(Sign, sign.text), left, _product(tokens, depth))
    return left


def _product(tokens: _Tokens, depth: int) -> Expression:
    left = _signed(tokens, depth)
    while tokens.follows("*", "/"):
        sign = tokens.take()
        if sign.text == "/" and tokens.follows("/"):
            raise FormulaError(sign.column, "// is no sign of a formula", "write one / to divide")
        left = Operation(sign.column, cast(Sign, sign.text), left, _signed(tokens, depth))
    return left


def _signed(tokens: _Tokens, depth: int) -> Expression:
    _check_depth(tokens.next, depth)
    if tokens.follows("-"):
        return Negated(tokens.take().column, _signed(tokens, depth + 1))
    if tokens.follows("+"):
        tokens.take()
        return _signed(tokens, depth + 1)
    base = _atom(tokens, depth)
    if tokens.follows("^"):
        sign = tokens.take()
        return Operation(sign.column, "^", base, _signed(tokens, depth + 1))
    return base


def _atom(tokens: _Tokens, depth: int) -> Expression:
    token = tokens.take()
    if token.sort == "number":
        return Number(token.column, float(token.text))
    if token.sort == "name":
        return _call(tokens, token, depth) if tokens.next.sort == "open" else Name(token.column, token.text)
    if token.sort == "open":
        inner = _sum(tokens, depth + 1)
        _close(tokens, token)
        return inner
    if token.sort == "end":
        raise FormulaError(token.column, "the formula stops in the middle", "something is missing at its end")
    raise FormulaError(token.column, f"“{token.text}” stands where a value is wanted", "write a name or a number there")


def _call(tokens: _Tokens, name: Token, depth: int) -> Expression:
    if name.text not in FUNCTIONS and name.text not in OVER_CHANNELS:
        near = did_you_mean(name.text, (*FUNCTIONS, *OVER_CHANNELS))
        raise FormulaError(
            name.column,
            f"there is no function {name.text}",
            near or f"write {name.text} * (…) to multiply; the functions are {', '.join((*FUNCTIONS, *OVER_CHANNELS))}",
        )
    opened = tokens.take()
    arguments: list[Expression] = []
    while arguments or tokens.next.sort != "close":
        arguments.append(_sum(tokens, depth + 1))
        if tokens.next.sort != "comma":
            break
        tokens.take()
    _close(tokens, opened)
    return _checked(Call(name.column, name.text, tuple(arguments)))


def _checked(call: Call) -> Call:
    if call.function in OVER_CHANNELS:
        return _checked_channel(call)
    least, most, names_only = FUNCTIONS[call.function]
    count = len(call.arguments)
    if not least <= count <= most:
        wanted = f"{least}" if least == most else f"{least} or more"
        says = f"{call.function} takes {wanted} in its brackets, not {count}"
        raise FormulaError(call.column, says, f"write what it needs between ( and ), {wanted} with commas between")
    for argument in call.arguments if names_only else ():
        if not isinstance(argument, Name):
            raise FormulaError(
                argument.column,
                f"{call.function} takes a name, not an expression",
                "give the expression a quantity of its own and use its name",
            )
    return call


def _checked_channel(call: Call) -> Call:
    wanted, count = OVER_CHANNELS[call.function], len(call.arguments)
    if count != wanted:
        what, example = TAKES.get(call.function, ("the trace", f"{call.function}(light)"))
        says = f"{call.function} takes {wanted} in its brackets, not {count}"
        do = f"name {what}: {example}"
        raise FormulaError(call.column, says, do)
    channel = call.arguments[0]
    if isinstance(channel, Call) and channel.function == "plateau":
        says = f"plateau(…) is the level already, and {call.function} looks along a trace"
        raise FormulaError(channel.column, says, f"leave {call.function}(…) out")
    if not isinstance(channel, Name) and not (isinstance(channel, Call) and channel.function in PARTS_OF_CHANNELS):
        raise FormulaError(
            channel.column,
            f"{call.function} looks along one channel of a logger, named first",
            "write the channel's name there, or during(name, from, to), or smoothed(name, seconds)",
        )
    side = call.arguments[1] if call.function in SIDED else None
    if side is not None and not (isinstance(side, Name) and side.name in SIDES):
        raise FormulaError(
            side.column,
            "which way from the limit must stand second",
            f"write over or under: {call.function}(light, under, 5)",
        )
    return call


def _check_stretches(tree: Expression) -> None:
    """A stretch of a trace is no value, nor a smoothed one: they have their place in another function alone."""
    calls = [part for part in parts_of(tree) if isinstance(part, Call)]
    inside = [call.arguments[0] for call in calls if call.function in OVER_CHANNELS]
    for call in calls:
        if call.function in PARTS_OF_CHANNELS and not any(call is one for one in inside):
            what = {"during": "a stretch of a trace", "smoothed": "a trace, smoothed,"}[call.function]
            example = {"during": "during(light, 0, 60)", "smoothed": "smoothed(light, 10)"}[call.function]
            raise FormulaError(call.column, f"{call.function}(…) is {what} and no value", f"write highest({example})")


def _close(tokens: _Tokens, opened: Token) -> None:
    if tokens.next.sort == "comma":
        raise FormulaError(tokens.next.column, "a comma outside a function", "write a decimal point, not a comma")
    if tokens.behind_a_number:
        says = f"a number in a formula has no unit beside it, and no name: “{tokens.next.text}” stands behind one"
        raise FormulaError(tokens.next.column, says, f"{PLAIN_NUMBERS}; write * to multiply")
    if tokens.next.sort in ("name", "number", "open"):
        raise FormulaError(tokens.next.column, f"a sign is missing before {tokens.next.text}", "write * to multiply")
    if tokens.next.sort != "close":
        raise FormulaError(opened.column, "this bracket is never closed", "close it with )")
    tokens.take()


def _check_depth(token: Token, depth: int) -> None:
    if depth > DEEPEST:
        raise FormulaError(token.column, "too much inside one another", f"{DEEPEST} levels are the most: split it")

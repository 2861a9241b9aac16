"""Derivations, recomputed from their printed text alone by arithmetic of its own."""

from __future__ import annotations

import ast
import copy
import math
import operator
import pickle
import re
from collections.abc import Callable
from dataclasses import dataclass, field
from html.parser import HTMLParser

import edgenail
import pytest
from cases import Case, load

CASES = [
    case
    for case in load()
    if case.operation == "capacity" and case.expect_error is None and case.document["kind"] != "cell"
]

OPERATORS: dict[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: math.pow,
}
FUNCTIONS: dict[str, Callable[..., float]] = {"sqrt": math.sqrt, "min": min, "max": max}

HEAD = re.compile(r"(?P<symbol>[A-Za-z_]\w*): (?P<meaning>.+)")
FORMULA = re.compile(r"  = (?P<formula>.+)")
INPUT = re.compile(
    r"  (?P<symbol>[A-Za-z_]\w*) = (?P<value>[-+.\deE]+)(?P<unit> [^\[\]=]+?)?(?: \[(?P<source>.+)\])?"
)
VALUE = re.compile(r"  = (?P<value>[-+.\deE]+)(?P<unit> \S+)?")
SOURCE = re.compile(r"  source: (?P<source>.+) \((?P<note>two sources|one source|recalled, .+)\)")


@dataclass
class Printed:
    """A step as it is printed."""

    symbol: str
    formula: str
    inputs: dict[str, tuple[float, str]] = field(default_factory=dict)
    value: float = math.nan
    source: str = ""


def read(text: str) -> list[Printed]:
    """The steps of a printed text: a head, a formula, inputs, a value, a source.

    An input without a source is one that an earlier step printed.
    """
    steps: list[Printed] = []
    lines = iter(text.splitlines())
    for line in lines:
        head = HEAD.fullmatch(line)
        formula = FORMULA.fullmatch(next(lines))
        assert head is not None and formula is not None, line
        step = Printed(head["symbol"], formula["formula"])
        line = next(lines)
        while (found := INPUT.fullmatch(line)) is not None:
            step.inputs[found["symbol"]] = (float(found["value"]), found["source"] or "")
            line = next(lines)
        value = VALUE.fullmatch(line)
        assert value is not None, line
        step.value = float(value["value"])
        source = SOURCE.fullmatch(next(lines))
        assert source is not None, step
        step.source = source["source"]
        steps.append(step)
    return steps


def evaluate(node: ast.expr, values: dict[str, float]) -> float:
    """The value of a formula in Python's words."""
    match node:
        case ast.BinOp(left, operation, right):
            return OPERATORS[type(operation)](evaluate(left, values), evaluate(right, values))
        case ast.UnaryOp(ast.USub(), operand):
            return -evaluate(operand, values)
        case ast.Constant(float() | int() as number):
            return float(number)
        case ast.Name(symbol):
            return values[symbol]
        case ast.Call(ast.Name(name), arguments, []):
            return FUNCTIONS[name](*(evaluate(argument, values) for argument in arguments))
    raise ValueError(ast.dump(node))


def recomputed(step: Printed, earlier: dict[str, dict[float, float]] | None = None) -> float:
    """A step's value from its formula and its inputs; those of earlier steps as they were recomputed."""
    values = {}
    for symbol, (value, source) in step.inputs.items():
        if source == "" and earlier is not None:
            assert value in earlier.get(symbol, {}), f"{symbol} of {step.symbol} comes from no earlier step"
            value = earlier[symbol][value]
        values[symbol] = value
    tree = ast.parse(step.formula.replace("^", "**"), mode="eval")
    return evaluate(tree.body, values)


def close(found: float, wanted: float) -> bool:
    return math.isclose(found, wanted, rel_tol=1e-9, abs_tol=1e-300)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_the_printed_steps_lead_to_the_numbers(case: Case) -> None:
    answer = edgenail.capacity(case.document)
    steps = read(answer.derivation.text())
    assert len(steps) == len(answer.derivation) > 0
    reached: dict[str, dict[float, float]] = {}
    for step in steps:
        again = recomputed(step, reached)
        assert close(again, step.value), f"{step.symbol}: {step.formula} gives {again}, not {step.value}"
        assert step.source
        reached.setdefault(step.symbol, {})[step.value] = again
    everything = [value for values in reached.values() for value in values.values()]
    for name, number in results(answer.to_dict()):
        assert any(close(value, number) for value in everything), f"no step gives {name} = {number}"


PLANS = [
    case
    for case in load()
    if case.operation == "plan" and case.expect_error is None and "demand" in case.document
]


@pytest.mark.parametrize("case", PLANS, ids=lambda case: case.name)
def test_the_steps_of_a_plan_lead_to_its_numbers(case: Case) -> None:
    lines = edgenail.plan(case.document).to_dict()["capacity"]["lines"]
    assert lines
    for line in lines:
        everything = []
        for step in line["derivation"]["steps"]:
            printed = Printed(step["symbol"], step["formula"], value=step["value"])
            for one in step["inputs"]:
                printed.inputs[one["symbol"]] = (one["value"], one["source"])
            assert close(recomputed(printed), printed.value), step
            everything.append(printed.value)
        for name, number in results({name: line[name] for name in line if name != "derivation"}):
            assert any(close(value, number) for value in everything), f"no step gives {name} = {number}"


UNITS = ("_plf", "_psf", "_kips_per_in", "_lb", "_lb_per_in", "drift_in", "ratio", "factor")
"""The ends of the names of numbers that steps lead to."""


def results(answer: dict[str, object]) -> list[tuple[str, float]]:
    """The numbers of an answer, and of what stands in it, that steps lead to; nothing has none."""
    found = []
    for name, value in answer.items():
        if isinstance(value, dict) and name != "derivation":
            found.extend(results(value))
        elif isinstance(value, list):
            for item in value:
                if isinstance(item, dict):
                    found.extend(results(item))
        elif isinstance(value, float) and name.endswith(UNITS) and value != 0:
            found.append((name, value))
    return found


@pytest.mark.parametrize("change", ["v * b * h", "v * b"])
def test_a_step_that_says_another_formula_is_found(change: str) -> None:
    question = {"kind": "hold_down", "shear": 250, "length": "4'", "height": "8'", "dead": 10, "inset": "6"}
    text = edgenail.capacity(question).derivation.text()
    steps = {step.symbol: step for step in read(text)}
    assert close(recomputed(steps["T"]), steps["T"].value)
    steps["T"].formula = f"({change} - w * b^2) / d"
    assert not close(recomputed(steps["T"]), steps["T"].value)


def test_a_derivation_shows_itself() -> None:
    answer = edgenail.capacity(CASES[0].document)
    derivation = answer.derivation
    assert derivation._repr_html_() == derivation.html()
    assert derivation.html().startswith("<table>") and answer.caution in answer._repr_html_()
    assert derivation.markdown().startswith("| symbol |")
    assert derivation.markdown().count("\n") == len(derivation) + 2
    assert str(derivation) == derivation.text()
    assert [step.value for step in derivation] == [step.value for step in read(derivation.text())]


class Rows(HTMLParser):
    """The rows of a table as lists of the texts of their cells; tags have to close in order."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.rows: list[list[str]] = []
        self.open: list[str] = []
        self.feed(html)
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: object) -> None:
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th"):
            self.rows[-1].append("")
        if tag != "br":
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if {"td", "th"} & set(self.open):
            self.rows[-1][-1] += data


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_notebook_shows_a_row_for_each_step(case: Case) -> None:
    derivation = edgenail.capacity(case.document).derivation
    head, *rows = Rows(derivation._repr_html_()).rows
    assert head == ["symbol", "what", "formula", "with", "value", "source"]
    assert len(rows) == len(derivation)
    for row, step in zip(rows, derivation, strict=True):
        assert row[:3] == [step.symbol, step.meaning, step.formula]
        assert float(row[4].split(" ")[0]) == step.value and row[5].startswith(step.source)


def test_what_an_answer_says_is_an_attribute_too() -> None:
    answer = edgenail.capacity({"kind": "hold_down", "shear": 250, "length": "4'", "height": "8'", "inset": 0})
    assert answer.tension_lb == answer["tension_lb"] == 2000.0
    assert {"tension_lb", "chord_lb", "derivation", "caution"} <= set(dir(answer))
    assert copy.deepcopy(answer).tension_lb == pickle.loads(pickle.dumps(answer)).tension_lb == 2000.0
    with pytest.raises(AttributeError, match="no 'design_plf'"):
        answer.design_plf  # noqa: B018


def test_a_fault_names_its_field() -> None:
    with pytest.raises(edgenail.InputError) as caught:
        edgenail.capacity({"kind": "hold_down", "shear": -1, "length": "4'", "hight": "8'", "inset": 0})
    assert [(issue.code, issue.path) for issue in caught.value.issues] == [
        ("missing_field", "/height"),
        ("out_of_range", "/shear"),
        ("unknown_field", "/hight"),
    ]
    assert "perhaps `height` is meant" in str(caught.value)

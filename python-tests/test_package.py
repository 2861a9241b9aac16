"""The package as it is installed: its files, its names, the examples of its documentation."""

from __future__ import annotations

import doctest
import importlib
import inspect
import pkgutil
from importlib import metadata

import edgenail

MODULES = ["edgenail", *(f"edgenail.{module.name}" for module in pkgutil.iter_modules(edgenail.__path__))]


def test_the_wheel_holds_what_it_should_and_nothing_else() -> None:
    files = [file for file in metadata.files("edgenail") or [] if file.parts[0] == "edgenail"]
    names = {file.name for file in files if "__pycache__" not in file.parts}
    assert names == {
        "__init__.py",
        "_edgenail.abi3.so",
        "_edgenail.pyi",
        "batch.py",
        "capacity.py",
        "changes.py",
        "columns.py",
        "errors.py",
        "house.py",
        "lengths.py",
        "notebook.py",
        "plan.py",
        "py.typed",
        "question.py",
        "schedule.py",
        "street.py",
        "table.py",
    }


def test_versions_agree() -> None:
    assert edgenail.__version__ == metadata.version("edgenail")


def test_the_examples_of_the_documentation_hold() -> None:
    for name in MODULES:
        assert doctest.testmod(importlib.import_module(name)).failed == 0, name


def test_every_public_name_is_documented() -> None:
    for name in edgenail.__all__:
        thing = getattr(edgenail, name)
        if name.startswith("__"):
            continue
        assert inspect.getdoc(thing), name
        if inspect.isclass(thing):
            for member, value in vars(thing).items():
                if not member.startswith("_") and (callable(value) or isinstance(value, property)):
                    assert inspect.getdoc(value), f"{name}.{member}"

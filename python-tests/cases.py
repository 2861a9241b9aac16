"""The shared cases: read, and compared with what the Python package answers."""

from __future__ import annotations

import hashlib
import json
import os
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parent.parent
FOLDER = ROOT / "tests" / "cases"
OTHER_FORMS = {"changes"}
"""Folders whose files have another form, and tests of their own."""


@dataclass(frozen=True)
class Case:
    """One case, as it is written down."""

    name: str
    operation: str
    source: dict[str, str]
    file: Path
    input: Any = None
    input_file: str | None = None
    expect: dict[str, Any] = field(default_factory=dict)
    expect_error: dict[str, Any] | None = None
    tolerance: dict[str, float] = field(default_factory=dict)

    @property
    def document(self) -> Any:
        """The input, read from its file when the case names one."""
        if self.input_file is None:
            return self.input
        return self.file.with_name(self.input_file).read_text(encoding="utf-8")


@dataclass(frozen=True)
class Answer:
    """What an operation gave: a document of a result or of an error."""

    kind: str
    text: str

    @property
    def digest(self) -> str:
        """SHA-256, as every language's runner writes it."""
        return f"{self.kind} {hashlib.sha256(self.text.encode()).hexdigest()}"


def load() -> list[Case]:
    """Every case, in the order of their files' paths."""
    picked = os.environ.get("EDGENAIL_CASE", "")
    folders = sorted(path for path in FOLDER.iterdir() if path.is_dir() and path.name not in OTHER_FORMS)
    files = [file for folder in folders for file in sorted(folder.glob("*.json"))]
    cases = [
        Case(**case, file=file) for file in files for case in json.loads(file.read_text(encoding="utf-8"))
    ]
    return [case for case in cases if picked in case.name]


def known_failures() -> dict[str, str]:
    """The reason of each case that is known to fail."""
    listed = json.loads((FOLDER / "known_failures.json").read_text(encoding="utf-8"))
    return {failure["name"]: failure["reason"] for failure in listed}


def differences(case: Case, answer: Answer) -> list[str]:
    """Every way in which the answer differs from what the case expects."""
    document = json.loads(answer.text)
    if case.expect_error is not None:
        says: dict[str, Any] = case.expect_error.get("says", {})
        other = any(_difference(case, pointer, wanted, document) for pointer, wanted in says.items())
        if answer.kind == "error" and _has_fault(document, case.expect_error) and not other:
            return []
        return [f"expected {case.expect_error}, found {answer.kind} {answer.text}"]
    if answer.kind != "result":
        return [f"expected a result but got {answer.text}"]
    found = (_difference(case, pointer, wanted, document) for pointer, wanted in case.expect.items())
    return [fault for fault in found if fault is not None]


def _has_fault(document: Any, expected: dict[str, Any]) -> bool:
    if "issues" not in document:
        return bool(document["error"] == expected["code"])
    wanted = {key: value for key, value in expected.items() if key in ("code", "path")}
    return any(all(issue[key] == value for key, value in wanted.items()) for issue in document["issues"])


def _difference(case: Case, pointer: str, wanted: Any, document: Any) -> str | None:
    try:
        found = resolve(document, pointer)
    except (KeyError, IndexError, TypeError, ValueError):
        return f"{pointer}: nothing there, expected {wanted}"
    share = case.tolerance.get(pointer)
    if share is not None:
        equal = abs(found - wanted) <= share * abs(wanted)
    else:
        equal = type(found) is type(wanted) and found == wanted
    return None if equal else f"{pointer}: expected {wanted}, found {found}"


def resolve(document: Any, pointer: str) -> Any:
    """What a JSON pointer (RFC 6901) points at."""
    for step in pointer.split("/")[1:]:
        key = step.replace("~1", "/").replace("~0", "~")
        document = document[int(key)] if isinstance(document, list) else document[key]
    return document

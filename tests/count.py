"""Prints how many tests passed and failed, read off a log of cargo, pytest or a plain program: count.py LOG STATUS.

A log without such lines is one check, passed when its status is 0. A status other than 0 is at least one failure.
"""

import re
import sys

CARGO = re.compile(r"^test result: \S+ (\d+) passed; (\d+) failed;", re.MULTILINE)
PLAIN = re.compile(r"^(\d+) passed$", re.MULTILINE)
PYTEST = re.compile(r"^=+ .*\bin \d[\d.]*s.*=+$", re.MULTILINE)


def count(text: str, status: int) -> tuple[int, int]:
    """The passed and failed tests of a log."""
    results = [(int(passed), int(failed)) for passed, failed in CARGO.findall(text)]
    results += [(int(passed), 0) for passed in PLAIN.findall(text)]
    for line in PYTEST.findall(text):
        found = {word: int(number) for number, word in re.findall(r"(\d+) (passed|failed|error)", line)}
        results.append((found.get("passed", 0), found.get("failed", 0) + found.get("error", 0)))
    if not results:
        results = [(1, 0)] if status == 0 else [(0, 1)]
    passed = sum(result[0] for result in results)
    failed = sum(result[1] for result in results)
    return passed, max(failed, int(status != 0))


if __name__ == "__main__":
    with open(sys.argv[1], encoding="utf-8", errors="replace") as log:
        print(*count(log.read(), int(sys.argv[2])))

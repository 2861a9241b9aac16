"""Batches against the plan of each house alone; ends by an error, an interrupt, another thread."""

from __future__ import annotations

import gc
import itertools
import json
import os
import pickle
import signal
import threading
import time
from collections.abc import Iterator
from decimal import Decimal

import edgenail
import pytest

HOUSES = [edgenail.generated_house(seed)[0] for seed in range(40)]


def test_outcomes_come_in_order_and_say_what_each_house_alone_says() -> None:
    outcomes = list(edgenail.plan_batch(HOUSES[:12], threads=2, plans=True))
    assert [outcome.index for outcome in outcomes] == list(range(12))
    for outcome, house in zip(outcomes, HOUSES, strict=False):
        alone = edgenail.plan(house)
        assert outcome.plan is not None and outcome.figures is not None
        assert outcome.plan.json == alone.json
        assert outcome.figures.nails == sum(int(nails) for nails in alone.walls["nails"])
        assert outcome.figures.panels == len(alone.panels)
        ordered = (line for line in alone.takeoff if line["scope"] == "house" and int(line["ordered"]) >= 0)
        money = sum(int(line["money"]) for line in ordered)
        assert outcome.figures.money == Decimal(money) / 10_000


def test_threads_change_nothing() -> None:
    written = [
        [outcome.json for outcome in edgenail.plan_batch(HOUSES, threads=threads)] for threads in (1, 2, 8)
    ]
    assert written[0] == written[1] == written[2]


def test_a_bad_house_is_told_with_its_place_and_stops_no_other() -> None:
    houses: list[object] = [*HOUSES[:3], {"name": "bad"}, HOUSES[4]]
    outcomes = list(edgenail.plan_batch(houses))  # type: ignore[arg-type]
    assert [outcome.error is None for outcome in outcomes] == [True, True, True, False, True]
    bad = outcomes[3]
    assert (bad.index, bad.house, bad.figures, bad.plan) == (3, "bad", None, None)
    with pytest.raises(edgenail.InputError) as raised:
        edgenail.plan({"name": "bad"})
    assert isinstance(bad.error, edgenail.InputError) and bad.error.issues == raised.value.issues
    assert str(bad.row["fault"]).startswith("/walls") and outcomes[0].row["walls"]


def test_it_is_lazy_and_holds_one_window() -> None:
    taken = 0

    def source() -> Iterator[str]:
        nonlocal taken
        for seed in itertools.count():
            taken += 1
            yield HOUSES[seed % 5]

    with edgenail.plan_batch(source(), threads=1) as batch:
        assert taken == 0
        for handed, _ in enumerate(itertools.islice(batch, 70)):
            assert handed < taken <= handed + 32
    assert next(batch, None) is None


def test_progress_is_told_on_the_thread_that_asks() -> None:
    seen: list[tuple[int, int, int]] = []
    here = threading.get_ident()
    batch = edgenail.plan_batch(
        HOUSES, threads=2, progress=lambda taken, done: seen.append((taken, done, threading.get_ident()))
    )
    assert len(list(batch)) == len(HOUSES)
    assert [done for _, done, _ in seen] == list(range(1, len(HOUSES) + 1))
    assert {thread for _, _, thread in seen} == {here}


def test_what_progress_raises_ends_the_batch() -> None:
    def progress(taken: int, finished: int) -> None:
        if finished == 3:
            raise RuntimeError("enough")

    batch = edgenail.plan_batch(HOUSES, threads=1, progress=progress)
    with pytest.raises(RuntimeError, match="enough"):
        list(batch)
    assert next(batch, None) is None


def test_what_the_iterable_raises_comes_after_the_houses_before_it() -> None:
    def source() -> Iterator[str]:
        yield from HOUSES[:2]
        raise OSError("no more")

    batch = edgenail.plan_batch(source())
    assert [next(batch).index, next(batch).index] == [0, 1]
    with pytest.raises(OSError, match="no more"):
        next(batch)
    with pytest.raises(TypeError):
        list(edgenail.plan_batch([{"name": object()}]))


def test_an_iterable_that_raises_is_not_asked_again() -> None:
    class Wavering(Iterator[str]):
        """Raises once, and would go on for ever."""

        asked = 0

        def __next__(self) -> str:
            self.asked += 1
            if self.asked == 3:
                raise OSError("once")
            return HOUSES[0]

    source = Wavering()
    with pytest.raises(OSError, match="once"):
        for _ in edgenail.plan_batch(source, threads=1):
            pass
    assert source.asked == 3


def test_threads_have_to_be_one_or_more() -> None:
    with pytest.raises(ValueError, match="threads"):
        edgenail.plan_batch([], threads=0)


def test_an_interrupt_ends_the_batch() -> None:
    endless = (HOUSES[seed % 5] for seed in itertools.count())
    batch = edgenail.plan_batch(endless, threads=2)
    timer = threading.Timer(0.3, os.kill, (os.getpid(), signal.SIGINT))
    # A shell that runs the tests in the background has interrupts ignored.
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    timer.start()
    try:
        with pytest.raises(KeyboardInterrupt):
            for _ in batch:
                pass
    finally:
        timer.join()
        signal.signal(signal.SIGINT, before)


def test_other_threads_run_meanwhile_and_may_close_it() -> None:
    endless = (HOUSES[seed % 5] for seed in itertools.count())
    batch = edgenail.plan_batch(endless, threads=1)
    count = 0

    def close() -> None:
        nonlocal count
        until = time.monotonic() + 0.3
        while time.monotonic() < until:
            count += 1
        batch.close()

    other = threading.Thread(target=close)
    other.start()
    for _ in batch:
        pass
    other.join()
    # A thread that waits for the lock of the interpreter comes by some hundred times at most.
    assert count > 10_000


def test_plans_of_a_batch_are_pickled() -> None:
    (outcome,) = edgenail.plan_batch(HOUSES[:1], plans=True)
    assert outcome.plan is not None
    assert pickle.loads(pickle.dumps(outcome.plan)).json == outcome.plan.json
    assert json.loads(outcome.json)["house"] == outcome.house


def test_memory_does_not_grow_with_the_number_of_houses() -> None:
    def most() -> int:
        with open("/proc/self/status", encoding="ascii") as status:
            return next(int(line.split()[1]) for line in status if line.startswith("VmHWM"))

    if not os.path.exists("/proc/self/status"):
        pytest.skip("the system does not tell")
    small = '{"walls": [{"name": "a", "length": "8 ft"}]}'
    assert sum(1 for _ in edgenail.plan_batch([small] * 200, threads=2)) == 200
    gc.collect()
    before = most()
    assert sum(1 for _ in edgenail.plan_batch(itertools.repeat(small, 3000), threads=2)) == 3000
    assert most() - before < 20_000

"""The compiled part of edgenail. Import from `edgenail`."""

from collections.abc import Callable, Iterator
from typing import Final, TypeAlias, final

from typing_extensions import CapsuleType

from edgenail.table import Kind, Values

__all__ = [
    "ArrowTable",
    "Batched",
    "DEBUG",
    "Planned",
    "Scheduled",
    "__version__",
    "capacity",
    "capacity_columns",
    "demo_house",
    "generated_house",
    "length_from_float",
    "length_text",
    "parse_length",
    "plan",
    "show_length",
    "street",
    "what_if",
]

_TableColumn: TypeAlias = tuple[str, Kind, str | None, str, list[int] | list[float] | list[str]]
_PlainTable: TypeAlias = tuple[str, list[_TableColumn], str, ArrowTable]
_Answers: TypeAlias = tuple[str, int, list[tuple[str, tuple[str, bytes] | list[str]]]]

DEBUG: Final[bool]
__version__: Final[str]

@final
class ArrowTable:
    """A table as one batch of Arrow columns; every export hands out the same buffers."""

    def __new__(
        cls, name: str, meaning: str, columns: list[tuple[str, Kind, str | None, str, Values]], /
    ) -> ArrowTable: ...
    def __arrow_c_schema__(self) -> CapsuleType: ...
    def __arrow_c_stream__(self, requested_schema: object | None = None) -> CapsuleType: ...

@final
class Planned:
    """What the core made of a house; `edgenail.Plan` is the typed view of it."""

    def json(self) -> str: ...
    @staticmethod
    def table_names() -> list[str]: ...
    def table(self, name: str) -> _PlainTable: ...
    def wall_svg(self, wall: str) -> str: ...
    def frame_svg(self, wall: str) -> str: ...
    def why(self, wall: str) -> str: ...
    def cut_sheet_pages(self) -> int: ...
    def cut_sheets_svg(self, page: int) -> str: ...

@final
class Scheduled:
    """The rows of a schedule; `edgenail.WallSchedule` is the typed view of it."""

    def __new__(cls, name: str, design: tuple[str, str, str, str, bool, bool] | None, /) -> Scheduled: ...
    def add(
        self,
        name: str,
        length: float,
        plate_height: float,
        stud_spacing: float,
        openings: str,
        practice: str,
        segments: str,
        wind: float,
        seismic: float,
        /,
    ) -> None: ...
    def count(self) -> int: ...
    def house_json(self) -> str: ...

@final
class Batched:
    """Houses being planned; `edgenail.Batch` is the typed view of it."""

    def __new__(
        cls,
        houses: Iterator[bytes],
        threads: int | None,
        plans: bool,
        progress: Callable[[int, int], object] | None,
        /,
    ) -> Batched: ...
    def next(self) -> tuple[str, tuple[str, str] | None, Planned | None] | None: ...
    def close(self) -> None: ...

def capacity(question: bytes, /) -> tuple[str, str, str, str]: ...
def capacity_columns(
    question: bytes, columns: list[tuple[str, list[bool | int | float | str | bytes | None], bool]], /
) -> tuple[_Answers, list[_Answers], _PlainTable, _PlainTable, str]: ...
def plan(house: bytes, /) -> Planned: ...
def parse_length(text: str, unit: str, /) -> tuple[int, bool]: ...
def length_from_float(value: float, unit: str, /) -> tuple[int, bool]: ...
def length_text(units: int, /) -> str: ...
def show_length(units: int, style: str, finest: int, rounding: str, /) -> tuple[str, bool]: ...
def demo_house() -> str: ...
def generated_house(seed: int, /) -> tuple[str, list[str]]: ...
def street(plans: list[Planned], effort_most: int, /) -> tuple[str, _PlainTable]: ...
def what_if(before: Planned, house: bytes, changes: bytes, /) -> tuple[str, Planned, str, _PlainTable]: ...

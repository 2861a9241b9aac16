"""The compiled part of edgenail. Import from `edgenail`."""

from typing import Final, final

__all__ = [
    "DEBUG",
    "Planned",
    "__version__",
    "demo_house",
    "generated_house",
    "length_from_float",
    "length_text",
    "parse_length",
    "plan",
    "show_length",
]

DEBUG: Final[bool]
__version__: Final[str]

@final
class Planned:
    """What the core made of a house; `edgenail.Plan` is the typed view of it."""

    def json(self) -> str: ...
    @staticmethod
    def table_names() -> list[str]: ...
    def table(
        self, name: str
    ) -> tuple[str, list[tuple[str, str | None, str, list[int] | list[float] | list[str]]]]: ...
    def table_csv(self, name: str) -> str: ...
    def wall_svg(self, wall: str) -> str: ...

def plan(house: bytes, /) -> Planned: ...
def parse_length(text: str, unit: str, /) -> tuple[int, bool]: ...
def length_from_float(value: float, unit: str, /) -> tuple[int, bool]: ...
def length_text(units: int, /) -> str: ...
def show_length(units: int, style: str, finest: int, rounding: str, /) -> tuple[str, bool]: ...
def demo_house() -> str: ...
def generated_house(seed: int, /) -> tuple[str, list[str]]: ...

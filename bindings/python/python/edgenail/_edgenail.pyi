"""The compiled part of edgenail. Import from `edgenail`."""

from typing import Final, final

__all__ = ["Planned", "__version__", "plan"]

__version__: Final[str]

@final
class Planned:
    """What the core made of a house; `edgenail.Plan` is the typed view of it."""

    def json(self) -> str: ...
    def table_names(self) -> list[str]: ...
    def table(
        self, name: str
    ) -> tuple[str, list[tuple[str, str | None, str, list[int] | list[float] | list[str]]]]: ...
    def table_csv(self, name: str) -> str: ...
    def wall_svg(self, wall: str) -> str: ...

def plan(house: bytes, /) -> Planned: ...

"""Houses as typed dictionaries: what a type checker accepts is what the library reads."""

from __future__ import annotations

import json
import typing
from typing import Any

import edgenail
import edgenail.house
from edgenail.house import House, Opening, Storey

DOOR: Opening = {"name": "door", "kind": "door", "left": edgenail.Length("4'"), "sill": 0, "width": 36, "height": "82 1/2"}
GROUND: Storey = {
    "kind": "storey",
    "name": "ground",
    "bottom_plates": [{"thickness": "1 1/2", "treated": True}],
    "openings": [DOOR],
}
SHED: House = {
    "name": "shed",
    "walls": [
        {"name": "back", "length": "12'", "sections": [{"bottom": {"bears": "concrete"}, "stack": [GROUND]}]},
    ],
}


def test_a_typed_house_is_planned() -> None:
    plan = edgenail.plan(SHED)
    assert plan.wall_names == ["back"]
    assert list(plan.openings["name"]) == ["door"]


def test_every_field_of_the_demo_house_has_a_type() -> None:
    seen: set[str] = set()
    follow(json.loads(edgenail.demo_house()), House, seen)
    assert {"House", "Wall", "Section", "Storey", "Opening", "Sheet", "Segment"} <= seen


def follow(value: Any, kind: Any, seen: set[str]) -> None:
    """Walks a document along its types: every key is a field, every object one of those that may stand there."""
    if isinstance(value, list):
        (item,) = typing.get_args(next(kind for kind in alternatives(kind) if typing.get_origin(kind) is list))
        for part in value:
            follow(part, item, seen)
    elif isinstance(value, dict):
        fields = next(fields for fields in map(hints, alternatives(kind)) if value.keys() <= fields.keys() and agrees(value, fields))
        seen.update(kind.__name__ for kind in alternatives(kind) if hints(kind) == fields)
        for name, part in value.items():
            follow(part, fields[name], seen)


def alternatives(kind: Any) -> list[Any]:
    if typing.get_origin(kind) is typing.NotRequired:
        (kind,) = typing.get_args(kind)
    return list(typing.get_args(kind)) if typing.get_origin(kind) not in (None, list, typing.Literal) else [kind]


def hints(kind: Any) -> dict[str, Any]:
    return typing.get_type_hints(kind, vars(edgenail.house)) if typing.is_typeddict(kind) else {}


def agrees(value: dict[str, Any], fields: dict[str, Any]) -> bool:
    """The object's field ``kind`` names this type."""
    literal = fields.get("kind")
    return "kind" not in value or value["kind"] in typing.get_args(literal)

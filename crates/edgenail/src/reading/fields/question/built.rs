//! Walls of a planned house: their segments as they were built, and nail by nail.

use super::super::document::HOUSE;
use super::super::{
    COMMON, Field, Kind, Object, along, empty, height, list, name, nullable, required, size, value,
};
use super::unit_shear::{EDITION, ESTIMATE, HIGH_SEISMIC, LOAD, METHOD};
use super::{ACCEPT, number};
use crate::capacity::{AtOpenings, Sharing};
use crate::decimal::Decimal;
use crate::reading::choice::Choice;

pub(in crate::reading) static BUILT: Object = Object {
    name: "built",
    tag: Some("built"),
    meaning: "What the segments of a wall resist as they were built: every value of their construction is read off the nails, \
              edges and members of the plan, whatever was asked for.",
    fields: &[
        THE_HOUSE,
        THE_WALL,
        EDITION,
        LOAD,
        METHOD,
        required(
            "sharing",
            Kind::Choice(Sharing::NAMES),
            "How segments share the shear, which decides what slender ones lose.",
        ),
        HIGH_SEISMIC,
        value(
            "wet_framing",
            Kind::Flag,
            "false",
            COMMON,
            "The framing is wetter than 19 % when it is built.",
        ),
        ESTIMATE,
        ACCEPT,
    ],
};

pub(in crate::reading) static RACKING: Object = Object {
    name: "racking",
    tag: Some("racking"),
    meaning: "A storey of a wall racked nail by nail, for patterns that no table holds: rigid sheets on the plan's nails on a \
              hinged frame. Analysis, not code capacity.",
    fields: &[
        THE_HOUSE,
        THE_WALL,
        nullable(
            "storey",
            &name(),
            "Name of the storey; null takes the wall's only one.",
        ),
        required(
            "force",
            number(0, 100_000_000),
            "Force along the top of the storey in pounds.",
        ),
        required(
            "openings",
            Kind::Choice(AtOpenings::NAMES),
            "Whether pieces over, under and around openings count: then every post beside an opening has to be held down too.",
        ),
        required(
            "nails",
            list(&Kind::Object(&RACKING_NAIL), 1, 1_000),
            "What the nails of the stock hold that the storey is nailed with.",
        ),
        empty(
            "found",
            list(&Kind::Object(&FOUND_NAILS), 0, 1_000),
            "Nails that were found missing or driven too deep.",
        ),
    ],
};

static FOUND_NAILS: Object = Object {
    name: "found_nails",
    tag: None,
    meaning: "A place where nails hold less than they should, in the wall's coordinates.",
    fields: &[
        required("left", along(), "Its left end."),
        required("bottom", height(), "Its lower end."),
        required("width", size(), "Its width."),
        required("height", size(), "Its height."),
        required(
            "holds",
            Kind::Number {
                least: Decimal::ZERO,
                most: Decimal::ONE,
            },
            "What they keep of strength and stiffness: 0 where they are missing or hit no wood.",
        ),
    ],
};

const THE_HOUSE: Field = required(
    "house",
    Kind::Object(&HOUSE),
    "The house, as it is planned from; it says the unit of its lengths itself.",
);

const THE_WALL: Field = required("wall", name(), "Name of the wall.");

static RACKING_NAIL: Object = Object {
    name: "racking_nail",
    tag: None,
    meaning: "What a nail holds.",
    fields: &[
        required("name", name(), "Name of the nail in the house's stock."),
        required(
            "strength",
            FORCE,
            "The most that it carries in pounds, at the level that answers are wanted at.",
        ),
        required(
            "stiffness",
            FORCE,
            "Its force per slip while it is linear, in pounds per inch.",
        ),
    ],
};

const FORCE: Kind = Kind::Number {
    least: Decimal::thousandths(1),
    most: Decimal::whole(10_000_000),
};

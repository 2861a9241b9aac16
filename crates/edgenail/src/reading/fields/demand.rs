//! What the house has to resist.

use super::{Kind, OWN, Object, empty, list, name, nullable, required, size, value};
use crate::decimal::Decimal;
use crate::house::{Acting, DesignMethod, Edition, Interface, LoadLevel, Scheduling, Sharing};
use crate::reading::choice::Choice;

pub(super) static DEMAND: Object = Object {
    name: "demand",
    tag: None,
    meaning: "What the house has to resist, and by which rules. Capacity is read off what was built, never off the schedule.",
    fields: &[
        required(
            "edition",
            Kind::Choice(Edition::NAMES),
            "Edition of the Special Design Provisions for Wind and Seismic.",
        ),
        required(
            "method",
            Kind::Choice(DesignMethod::NAMES),
            "How nominal becomes design: allowable stress or load and resistance factors.",
        ),
        required(
            "high_seismic",
            Kind::Flag,
            "The building is in seismic design category D, E or F.",
        ),
        value(
            "wet_framing",
            Kind::Flag,
            "false",
            OWN,
            "The framing is wetter than 19 % when it is built.",
        ),
        required(
            "sharing",
            Kind::Choice(Sharing::NAMES),
            "How segments of one line share the shear, which decides what slender ones lose.",
        ),
        nullable(
            "spectral_acceleration",
            &Kind::Number {
                least: Decimal::ZERO,
                most: Decimal::whole(10),
            },
            "Design spectral acceleration at short periods (ASCE 7), which dead load loses in an earthquake; asked for where \
             there is seismic and dead load.",
        ),
        value(
            "accept_unverified",
            Kind::Flag,
            "false",
            OWN,
            "Values that were recalled and not checked against the printed standard may be used; results say so.",
        ),
        value(
            "estimate",
            Kind::Flag,
            "false",
            OWN,
            "A nail that the table does not list is taken by an engineering estimate, for wind only; results say so.",
        ),
        value(
            "schedule",
            Kind::Choice(Scheduling::NAMES),
            "as_given",
            OWN,
            "Who says how segments are sheathed and nailed: they themselves, or, as `cheapest`, the demand; then each storey of \
             a wall takes the cheapest sheet category, nail and edge nailing of the stock that carry it, before it is framed.",
        ),
        required(
            "loads",
            list(&Kind::Object(&LOAD), 1, 100_000),
            "What comes into the walls; forces of a storey come down on those below it.",
        ),
        empty(
            "fasteners",
            list(&Kind::Object(&FASTENERS), 0, 100_000),
            "What carries shear where one part of a wall hands it to the next.",
        ),
    ],
};

static LOAD: Object = Object {
    name: "load",
    tag: None,
    meaning: "A load that comes into a wall at the top of a storey.",
    fields: &[
        required("kind", Kind::Choice(Acting::NAMES), "What acts."),
        nullable(
            "level",
            &Kind::Choice(LoadLevel::NAMES),
            "At which level wind or earthquake is given; null for dead load only.",
        ),
        required("wall", name(), "Name of the wall."),
        required("storey", name(), "Name of the storey at whose top it comes in."),
        required(
            "amount",
            Kind::Number {
                least: Decimal::ZERO,
                most: Decimal::whole(100_000_000),
            },
            "Along the wall in pounds; dead load in pounds per foot, down.",
        ),
    ],
};

static FASTENERS: Object = Object {
    name: "fasteners",
    tag: None,
    meaning: "What carries the shear of an interface, by the designer's figures.",
    fields: &[
        required("wall", name(), "Name of the wall."),
        required(
            "storey",
            name(),
            "Name of the storey whose shear it hands on: the one under a roof or a rim, the one over the others.",
        ),
        required("interface", Kind::Choice(Interface::NAMES), "Which interface."),
        required("name", name(), "What they are, such as `16d common`."),
        required(
            "each",
            POUNDS,
            "What one carries along the wall in pounds, at the level of the method.",
        ),
        required("spacing", size(), "From one to the next."),
    ],
};

/// A force that something carries.
pub(super) const POUNDS: Kind = Kind::Number {
    least: Decimal::tenths(1),
    most: Decimal::whole(1_000_000),
};

//! One nail.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, OWN, Object, along, nullable, required, sixteenths, size, value};
use super::{ACCEPT, DURATION, GRAVITY, HEAD, SHANK, number};
use crate::capacity::NailEdition;
use crate::reading::choice::Choice;

pub(in crate::reading) static NAIL: Object = Object {
    name: "nail",
    tag: Some("nail"),
    meaning: "A nail through a side member, such as a panel, into a main member, such as a stud: lateral load, withdrawal, \
              and its head pulled through the side member.",
    fields: &[
        UNIT,
        EXACT,
        required(
            "edition",
            Kind::Choice(NailEdition::NAMES),
            "Edition of the National Design Specification; they differ in what short penetration costs and in pull-through.",
        ),
        required("shank", SHANK, "Shank diameter in inches, such as 0.131."),
        required("length", sixteenths(8, 16 * 12), "Length."),
        nullable(
            "head",
            &HEAD,
            "Head diameter in inches; null asks for no pull-through.",
        ),
        nullable(
            "bending_yield",
            &number(10_000, 300_000),
            "Bending yield strength in pounds per square inch; null takes the one by diameter, which was recalled.",
        ),
        required("side_thickness", size(), "Thickness of the side member."),
        required("side_gravity", GRAVITY, "Specific gravity of the side member."),
        value(
            "between",
            along(),
            "0",
            OWN,
            "Thickness of what lies between the two members, such as floor sheathing below a plate.",
        ),
        required("main_gravity", GRAVITY, "Specific gravity of the main member."),
        nullable(
            "main_depth",
            &size(),
            "Thickness of the main member along the nail; null where the nail ends within it.",
        ),
        DURATION,
        ACCEPT,
    ],
};

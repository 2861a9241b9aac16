//! What resists.

use super::super::{COMMON, Field, Kind, OWN, Object, required, sixteenths, value};
use super::{GRAVITY, HEAD, SHANK};
use crate::capacity::PanelMaterial;
use crate::house::Coating;
use crate::length::Length;
use crate::published::Grade;
use crate::reading::choice::Choice;

pub(super) static ASSEMBLY: Object = Object {
    name: "assembly",
    tag: None,
    meaning: "Panels, nails and framing of one face of a shear wall.",
    fields: &[
        required("grade", Kind::Choice(Grade::NAMES), "Sheathing grade."),
        required(
            "thickness",
            THICKNESS,
            "Nominal panel thickness, as the table lists it.",
        ),
        required(
            "material",
            Kind::Choice(PanelMaterial::NAMES),
            "What the panels are made of: oriented strand board, plywood of three plies, plywood of four or more.",
        ),
        required("nail", Kind::Object(&DRIVEN_NAIL), "The nail."),
        required(
            "edge_spacing",
            SPACING,
            "Spacing of nails along panel edges, as the table lists it.",
        ),
        FIELD_SPACING,
        required("blocked", Kind::Flag, "Every panel edge is backed and nailed."),
        STUD_SPACING,
        ACROSS_STUDS,
        LOWEST_GRAVITY,
        SEAM_MEMBER,
        WET_FRAMING,
        value(
            "inside_hold_downs",
            Kind::Flag,
            "true",
            OWN_NOTHING,
            "Hold-downs sit on the inside faces of the end posts, which in 2021 costs walls with 10d nails 8 %.",
        ),
    ],
};

const FIELD_SPACING: Field = required("field_spacing", SPACING, "Spacing of nails on members between.");

pub(super) const STUD_SPACING: Field = value(
    "stud_spacing",
    SPACING,
    "24",
    OWN_WIDEST,
    "The largest centre distance of studs in the segment.",
);

const ACROSS_STUDS: Field = value(
    "across_studs",
    Kind::Flag,
    "false",
    OWN_NOTHING,
    "The long dimension of the panels runs across the studs.",
);

const LOWEST_GRAVITY: Field = required(
    "specific_gravity",
    GRAVITY,
    "The lowest specific gravity of all members that are nailed, such as 0.50.",
);

pub(super) const SEAM_MEMBER: Field = value(
    "seam_member",
    sixteenths(8, 16 * 12),
    "1 1/2",
    COMMON,
    "The least width of the members that two panels share: a 2x where nobody says more.",
);

const WET_FRAMING: Field = value(
    "wet_framing",
    Kind::Flag,
    "false",
    COMMON,
    "The framing is wetter than 19 % when it is built.",
);

const OWN_WIDEST: &str = "own value: the widest that the standard allows, by which nothing is gained";
const OWN_NOTHING: &str = "own value: nothing is gained by it";

/// A panel's thickness.
pub(super) const THICKNESS: Kind = Kind::Length {
    least: Length::sixteenths(2),
    most: Length::inches(2),
};

/// A spacing of nails or studs: the tables say what of it they list.
pub(super) const SPACING: Kind = sixteenths(8, 16 * 48);

/// What of it is no panel and no edge nailing.
pub(super) static FRAMING: Object = Object {
    name: "framing",
    tag: None,
    meaning: "Framing of a shear wall, and the nails on members between panel edges.",
    fields: &[
        FIELD_SPACING,
        STUD_SPACING,
        ACROSS_STUDS,
        LOWEST_GRAVITY,
        SEAM_MEMBER,
        WET_FRAMING,
    ],
};

static DRIVEN_NAIL: Object = Object {
    name: "driven_nail",
    tag: None,
    meaning: "A nail as it is driven.",
    fields: &[
        required("shank", SHANK, "Shank diameter in inches, such as 0.131."),
        required("head", HEAD, "Head diameter in inches, such as 0.281."),
        required("length", sixteenths(8, 16 * 12), "Length."),
        value(
            "coating",
            Kind::Choice(Coating::NAMES),
            "bright",
            OWN,
            "Coating; the table lets a thinner nail serve where it is hot-dipped.",
        ),
    ],
};

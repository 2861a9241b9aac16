//! The unit shear of a face of another material.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, Object, nullable, required};
use super::assembly::{SEAM_MEMBER, SPACING, STUD_SPACING, THICKNESS};
use super::unit_shear::{HIGH_SEISMIC, LOAD, METHOD};
use super::{ACCEPT, GRAVITY};
use crate::capacity::FacingEdition;
use crate::published::{FacingMaterial, Fastener};
use crate::reading::choice::Choice;

pub(in crate::reading) static FACING: Object = Object {
    name: "facing",
    tag: Some("facing"),
    meaning: "Nominal and design unit shear of a face that is no wood structural panel nailed to the framing: gypsum, \
              plaster, boards, siding, panels over gypsum, stapled panels.",
    fields: &[
        UNIT,
        EXACT,
        required(
            "edition",
            Kind::Choice(FacingEdition::NAMES),
            "Edition of the Special Design Provisions for Wind and Seismic, of which 2008 and 2015 were collected; of stapled \
             panels 780 CMR 2306.3, after the IBC of 2009, which lists allowable values only.",
        ),
        LOAD,
        METHOD,
        HIGH_SEISMIC,
        required("facing", Kind::Object(&FACE), "The face."),
        ACCEPT,
    ],
};

pub(super) static FACE: Object = Object {
    name: "face",
    tag: None,
    meaning: "A face of another material, as its table tells faces apart.",
    fields: &[
        required(
            "material",
            Kind::Choice(FacingMaterial::NAMES),
            "What it is made of.",
        ),
        required(
            "thickness",
            THICKNESS,
            "Nominal thickness, as the table lists it: of two plies that of one, of lath and plaster that of the lath.",
        ),
        nullable(
            "fastener",
            &Kind::Choice(Fastener::NAMES),
            "What holds it, by the name in its table; null only where the collected row names none, as of gypsum sheathing \
             4 ft wide.",
        ),
        required(
            "edge_spacing",
            SPACING,
            "Spacing of fasteners along edges, as the table lists it.",
        ),
        nullable(
            "field_spacing",
            &SPACING,
            "Spacing of fasteners between: of panels of wood and of screws; null elsewhere.",
        ),
        STUD_SPACING,
        required("blocked", Kind::Flag, "All edges are backed and fastened."),
        nullable(
            "specific_gravity",
            &GRAVITY,
            "The lowest specific gravity of all members that are nailed: of panels of wood; null elsewhere, because no factor \
             was collected.",
        ),
        SEAM_MEMBER,
    ],
};

//! Both faces of a wall.

use super::super::document::{EXACT, UNIT};
use super::super::{Field, Kind, OWN, Object, required, value};
use super::assembly::ASSEMBLY;
use super::facing::FACE;
use super::unit_shear::{EDITION, HIGH_SEISMIC, LOAD, METHOD, WALL};
use super::{ACCEPT, number};
use crate::capacity::FaceMaterial;
use crate::reading::choice::Choice;

pub(in crate::reading) static FACES: Object = Object {
    name: "faces",
    tag: Some("faces"),
    meaning: "Unit shear of a wall that is sheathed on both faces, one of them with wood structural panels.",
    fields: &[
        UNIT,
        EXACT,
        EDITION,
        LOAD,
        METHOD,
        HIGH_SEISMIC,
        WALL,
        required("other", OTHER_FACE, "The other face."),
        JOINTS_APART,
        ACCEPT,
    ],
};

/// What the other face of a wall is sheathed with.
pub(super) const OTHER_FACE: Kind = Kind::OneOf(&[&FACE_PANELS, &FACE_FACING, &FACE_MATERIAL]);

pub(super) const JOINTS_APART: Field = value(
    "joints_apart",
    Kind::Flag,
    "false",
    OWN,
    "Joints of the panels of the two faces lie on different members.",
);

pub(in crate::reading) static FACE_PANELS: Object = Object {
    name: "face_panels",
    tag: Some("panels"),
    meaning: "Wood structural panels on the other face.",
    fields: &[required(
        "assembly",
        Kind::Object(&ASSEMBLY),
        "Panels, nails and framing of that face.",
    )],
};

pub(in crate::reading) static FACE_FACING: Object = Object {
    name: "face_facing",
    tag: Some("facing"),
    meaning: "Another material on the other face, looked up in its own table.",
    fields: &[required("facing", Kind::Object(&FACE), "That face.")],
};

static FACE_MATERIAL: Object = Object {
    name: "face_material",
    tag: Some("material"),
    meaning: "Another material on the other face, whose nominal unit shear is given.",
    fields: &[
        required("material", Kind::Choice(FaceMaterial::NAMES), "Which."),
        required(
            "nominal",
            number(0, 10_000),
            "Its nominal unit shear for the load, from its own table, in pounds per foot.",
        ),
    ],
};

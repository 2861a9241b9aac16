//! Both faces of a wall.

use super::facing::facing;
use super::unit_shear::{assembly, listed};
use crate::capacity::{FacesQuery, OtherFace};
use crate::reading::fields::{FACE_FACING, FACE_PANELS};
use crate::reading::record::Record;

pub(super) fn faces(record: &Record<'_, '_>) -> FacesQuery {
    FacesQuery {
        one: listed(record),
        other: record.object("other", other_face),
        joints_apart: record.get("joints_apart"),
    }
}

/// What the other face is sheathed with.
pub(super) fn other_face(record: &Record<'_, '_>) -> OtherFace {
    if record.is(&FACE_PANELS) {
        OtherFace::Panels(record.object("assembly", assembly))
    } else if record.is(&FACE_FACING) {
        OtherFace::Facing(record.object("facing", facing))
    } else {
        OtherFace::Material {
            material: record.get("material"),
            nominal: record.get("nominal"),
        }
    }
}

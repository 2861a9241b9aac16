//! A face of another material.

use crate::capacity::{Facing, FacingQuery};
use crate::reading::record::Record;

pub(super) fn query(record: &Record<'_, '_>) -> FacingQuery {
    FacingQuery {
        edition: record.get("edition"),
        load: record.get("load"),
        method: record.get("method"),
        facing: record.object("facing", facing),
        high_seismic: record.get("high_seismic"),
        accept_unverified: record.get("accept_unverified"),
    }
}

pub(super) fn facing(record: &Record<'_, '_>) -> Facing {
    Facing {
        material: record.get("material"),
        thickness: record.get("thickness"),
        fastener: record.get("fastener"),
        edge_spacing: record.get("edge_spacing"),
        field_spacing: record.get("field_spacing"),
        stud_spacing: record.get("stud_spacing"),
        blocked: record.get("blocked"),
        specific_gravity: record.get("specific_gravity"),
        seam_member: record.get("seam_member"),
    }
}

//! What is asked of the table of unit shears.

use crate::capacity::{Assembly, DrivenNail, UnitShearQuery};
use crate::reading::record::Record;

pub(super) fn query(record: &Record<'_, '_>) -> UnitShearQuery {
    UnitShearQuery {
        estimate: record.get("estimate"),
        ..listed(record)
    }
}

/// Of nails that the table lists only.
pub(super) fn listed(record: &Record<'_, '_>) -> UnitShearQuery {
    UnitShearQuery {
        edition: record.get("edition"),
        load: record.get("load"),
        method: record.get("method"),
        assembly: record.object("assembly", assembly),
        high_seismic: record.get("high_seismic"),
        accept_unverified: record.get("accept_unverified"),
        estimate: false,
    }
}

pub(super) fn assembly(record: &Record<'_, '_>) -> Assembly {
    Assembly {
        grade: record.get("grade"),
        thickness: record.get("thickness"),
        material: record.get("material"),
        nail: record.object("nail", |record| DrivenNail {
            shank: record.get("shank"),
            head: record.get("head"),
            length: record.get("length"),
            coating: record.get("coating"),
        }),
        edge_spacing: record.get("edge_spacing"),
        field_spacing: record.get("field_spacing"),
        blocked: record.get("blocked"),
        stud_spacing: record.get("stud_spacing"),
        across_studs: record.get("across_studs"),
        specific_gravity: record.get("specific_gravity"),
        seam_member: record.get("seam_member"),
        wet_framing: record.get("wet_framing"),
        inside_hold_downs: record.get("inside_hold_downs"),
    }
}

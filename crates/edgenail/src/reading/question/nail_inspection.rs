//! Nails found missing or too deep.

use crate::capacity::{InspectedEdge, NailInspectionQuery};
use crate::reading::record::Record;

pub(super) fn query(record: &Record<'_, '_>) -> NailInspectionQuery {
    NailInspectionQuery {
        edges: record.list("edges", |record| InspectedEdge {
            name: record.get("name"),
            flush: record.get("flush"),
            to_16th: record.get("to_16th"),
            to_8th: record.get("to_8th"),
            deeper: record.get("deeper"),
            missing: record.get("missing"),
        }),
        edge_spacing: record.get("edge_spacing"),
        dry: record.get("dry"),
        design_shear: record.get("design_shear"),
    }
}

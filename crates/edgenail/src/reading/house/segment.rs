//! What the designer relies on.

use crate::house::{Assembly, HoldDown, Segment};
use crate::reading::record::Record;

/// A segment in a wall with perhaps one storey only, built as its practice says.
pub(super) fn segment(record: &Record<'_, '_>, only_storey: Option<&str>, assembly: &Assembly) -> Segment {
    Segment {
        storey: match only_storey {
            Some(only) => record.or("storey", || only.to_owned()),
            None => record.need("storey"),
        },
        from: record.get("from"),
        to: record.get("to"),
        mark: record.get("mark"),
        method: record.get("method"),
        category: record.get("category"),
        nail: record.get("nail"),
        edge_spacing: record.or("edge_spacing", || assembly.edge_spacing),
        field_spacing: record.or("field_spacing", || assembly.field_spacing),
        blocked: record.get("blocked"),
        seam_member_width: record.get("seam_member_width"),
        end_posts: record.get("end_posts"),
        hold_down: record.maybe("hold_down", |record| HoldDown {
            name: record.get("name"),
            capacity: record.get("capacity"),
            elongation: record.get("elongation"),
            offset: record.get("offset"),
        }),
    }
}

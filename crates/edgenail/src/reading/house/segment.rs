//! Shear segments and braced panels.

use crate::house::{Method, Segment};
use crate::reading::object::Object;

const METHODS: [Method; 5] = [
    Method::Segmented,
    Method::Perforated,
    Method::ForceTransfer,
    Method::Portal,
    Method::BracedPanel,
];

/// A segment.
pub(super) fn segment(object: &Object<'_>) -> Segment {
    Segment {
        storey: object.text("storey"),
        from: object.length("from"),
        to: object.length("to"),
        mark: object.text("mark"),
        method: object.choice("method", METHODS),
        category: object.text_or_null("category"),
        nail: object.text_or_null("nail"),
        edge_spacing: object.length("edge_spacing"),
        field_spacing: object.length("field_spacing"),
        blocked: object.flag("blocked"),
        seam_member_width: object.length_or_null("seam_member_width"),
        end_posts: object.count("end_posts"),
    }
}

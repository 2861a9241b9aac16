//! Fields of shear segments and braced panels.

use super::{place, text};
use crate::reading::field::{Field, Kind, Lengths, Numbers, Record};

const METHODS: Kind = Kind::Choice(&[
    "segmented",
    "perforated",
    "force_transfer",
    "portal",
    "braced_panel",
]);

/// A segment.
pub(super) static SEGMENT: Record = Record {
    name: "segment",
    meaning: "A shear segment or braced panel that the designer relies on",
    fields: &[
        text("storey", "Name of the storey that it stands in"),
        place("from", "Left end, outer face of its end post"),
        place("to", "Right end, outer face of its end post"),
        text("mark", "The designer's mark"),
        Field::new("method", METHODS, "How it resists load").usually("\"segmented\""),
        text(
            "category",
            "Performance category that is asked for; null leaves it to practice",
        )
        .or_null(),
        text("nail", "Name of the nail in stock; null leaves it to practice").or_null(),
        Field::new(
            "edge_spacing",
            SPACING,
            "Spacing of nails at panel edges and boundary rows",
        ),
        Field::new("field_spacing", SPACING, "Spacing of nails on members between").usually("\"12\""),
        Field::new("blocked", Kind::Flag, "Every panel edge is backed").usually("true"),
        Field::new(
            "seam_member_width",
            Kind::Length(Lengths::size(24)),
            "Least face width of members that two panels share; null asks for nothing beyond the studs",
        )
        .or_null(),
        Field::new(
            "end_posts",
            Kind::Integer(Numbers::new(1, 10)),
            "Studs in each end post",
        )
        .usually("2"),
    ],
};

/// Spacings of nails.
pub(super) const SPACING: Kind = Kind::Length(Lengths::inches(1, 48));

//! What the designer relies on.

use super::demand::POUNDS;
use super::{COMMON, Kind, OWN, Object, along, computed, name, nullable, required, sixteenths, value, whole};
use crate::house::Method;
use crate::reading::choice::Choice;

pub(super) static SEGMENT: Object = Object {
    name: "segment",
    tag: None,
    meaning: "A shear segment or braced panel.",
    fields: &[
        computed(
            "storey",
            name(),
            "the wall's only storey",
            OWN,
            "Name of the storey that it stands in.",
        ),
        required("from", along(), "Left end, outer face of its end post."),
        required("to", along(), "Right end, outer face of its end post."),
        required("mark", name(), "The designer's mark."),
        required("method", Kind::Choice(Method::NAMES), "How it resists load."),
        nullable(
            "category",
            &name(),
            "Performance category that is asked for, such as `7/16`; null leaves it to practice.",
        ),
        nullable(
            "nail",
            &name(),
            "Name of the nail in stock; null leaves it to practice.",
        ),
        computed(
            "edge_spacing",
            sixteenths(16, 16 * 24),
            "the wall's practice",
            OWN,
            "Spacing of nails at panel edges and boundary rows.",
        ),
        computed(
            "field_spacing",
            sixteenths(16, 16 * 24),
            "the wall's practice",
            OWN,
            "Spacing of nails on members between.",
        ),
        value(
            "blocked",
            Kind::Flag,
            "true",
            COMMON,
            "Every panel edge is backed.",
        ),
        nullable(
            "seam_member_width",
            &sixteenths(8, 16 * 12),
            "Least face width of members that two panels share; null asks for nothing beyond the studs.",
        ),
        value("end_posts", whole(1, 10), "2", COMMON, "Studs in each end post."),
        nullable(
            "hold_down",
            &Kind::Object(&HOLD_DOWN),
            "What holds its ends down; null leaves it to the designer, and drift and its check out.",
        ),
    ],
};

static HOLD_DOWN: Object = Object {
    name: "hold_down",
    tag: None,
    meaning: "A hold-down by its maker's figures, at the level of the demand's method.",
    fields: &[
        required("name", name(), "What it is called."),
        required("capacity", POUNDS, "What it holds in pounds."),
        required(
            "elongation",
            sixteenths(0, 16 * 12),
            "How far it gives under that, with all slip; in proportion under less.",
        ),
        value(
            "offset",
            sixteenths(0, 16 * 24),
            "1 1/2",
            OWN,
            "From the inner face of its post to the middle of its rod.",
        ),
    ],
};

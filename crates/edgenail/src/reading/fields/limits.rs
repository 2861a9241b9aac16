//! Where rules of the standards and of practice begin to hold.

use super::{COMMON, Kind, OWN, Object, inches, sixteenths, value, whole};
use crate::decimal::Decimal;

/// The standard for construction of shear walls.
const SHEAR_WALLS: &str = "SDPWS 2015 4.3.7.1, from memory, not checked against print";

/// The rule for plywood of three plies.
const FEW_PLIES: &str =
    "a prescriptive code's rule for plywood of three plies, from memory, not checked against print";

pub(super) static LIMITS: Object = Object {
    name: "limits",
    tag: None,
    meaning: "Where rules of the standards and of practice begin to hold.",
    fields: &[
        value(
            "weak_upright_thickness",
            sixteenths(1, 64),
            "7/16",
            COMMON,
            "Sheets no thicker than this are weak against wind where they run upright on studs `weak_upright_studs` apart or more.",
        ),
        value(
            "weak_upright_studs",
            inches(1, 96),
            "24",
            COMMON,
            "On-centre spacing of studs from which such sheets are weak upright.",
        ),
        value(
            "few_plies_most",
            whole(0, 30),
            "3",
            FEW_PLIES,
            "Plywood of no more plies than this runs across studs more than `few_plies_studs` apart.",
        ),
        value(
            "few_plies_studs",
            inches(1, 96),
            "16",
            FEW_PLIES,
            "On-centre spacing of studs beyond which plywood of few plies runs across.",
        ),
        value(
            "field_close_thickness",
            sixteenths(1, 64),
            "7/16",
            SHEAR_WALLS,
            "Sheets no thicker than this take closer field nails on studs `field_close_studs` apart or more.",
        ),
        value(
            "field_close_studs",
            inches(1, 96),
            "24",
            SHEAR_WALLS,
            "On-centre spacing of studs from which such sheets take closer field nails.",
        ),
        value(
            "field_close_spacing",
            sixteenths(16, 16 * 24),
            "6",
            SHEAR_WALLS,
            "The most that their field nails may be apart.",
        ),
        value(
            "wide_member",
            sixteenths(8, 16 * 12),
            "2 1/2",
            "common practice, no source: the face of 3 in. lumber",
            "Least face of a member that two panels share where the nailing is close.",
        ),
        value(
            "wide_member_spacing",
            sixteenths(0, 16 * 24),
            "2",
            SHEAR_WALLS,
            "At this edge spacing or closer two panels share a member of `wide_member` or more.",
        ),
        value(
            "wide_member_deep_spacing",
            sixteenths(0, 16 * 24),
            "3",
            SHEAR_WALLS,
            "At this edge spacing or closer they share one where a thick nail goes deep.",
        ),
        value(
            "wide_member_shank",
            Kind::Number {
                least: Decimal::ZERO,
                most: Decimal::whole(1),
            },
            "0.148",
            "ASTM F1667 for a 10d common nail, from memory, not checked against print",
            "Shank from which a nail is thick, inches.",
        ),
        value(
            "wide_member_penetration",
            sixteenths(0, 16 * 12),
            "1 1/2",
            SHEAR_WALLS,
            "Penetration into the member beyond which a nail goes deep.",
        ),
        value(
            "both_faces_spacing",
            sixteenths(0, 16 * 24),
            "6",
            SHEAR_WALLS,
            "Below this edge spacing on either face, joints of two sheathed faces fall on different members, or on one of \
             `wide_member` or more.",
        ),
        value(
            "segment_slenderness_most",
            Kind::Number {
                least: Decimal::ZERO,
                most: Decimal::whole(100),
            },
            "3.5",
            "SDPWS 2015 4.3.4, from memory, not checked against print",
            "Greatest height of a segment over its length; a slenderer one contributes nothing.",
        ),
        value(
            "plate_joint_clear",
            sixteenths(0, 16 * 120),
            "24",
            COMMON,
            "Plumb seams keep so far from butt joints of the topmost plate where it costs nothing.",
        ),
        value(
            "portal_seam_within",
            sixteenths(0, 16 * 240),
            "24",
            "IRC R602.10.6, from memory, not checked against print",
            "The one level seam of a portal's leg lies in so much of the middle of its height.",
        ),
        value(
            "ground_clear",
            sixteenths(0, 16 * 120),
            "6",
            "IRC R317.1, from memory, not checked against print",
            "Sheathing keeps so far from the ground.",
        ),
        value(
            "corner_lap_most",
            sixteenths(0, 16 * 120),
            "24",
            OWN,
            "The most that a given panel may reach past an end of the wall, to lap a corner.",
        ),
        value(
            "header_room_least",
            sixteenths(0, 16 * 120),
            "3",
            OWN,
            "Over an opening with less room than this up to the stud tops, the header is left to the designer.",
        ),
        value(
            "one_person_most",
            inches(0, 1200),
            "110",
            "common practice, no source: up to a 9 ft sheet and what it is over; a 10 ft one takes two",
            "One person sets a piece no longer than this; two set a longer one.",
        ),
    ],
};

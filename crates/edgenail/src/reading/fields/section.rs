//! Sections and what they are stacked of.

use super::storey::{ORIGIN, PLATE, PLATE_FIELDS, STOREY_FIELDS};
use super::top::{TOP_EAVES, TOP_FLAT, TOP_GABLE, TOP_RAKE};
use super::{
    COMMON, Field, Kind, OWN, Object, along, computed, height, inches, list, name, nullable, parts, required,
    sixteenths, value,
};
use crate::house::{Bearing, Direction, MemberKindInBand, RimKind};
use crate::reading::choice::Choice;

pub(super) static SECTION: Object = Object {
    name: "section",
    tag: None,
    meaning: "A stretch of wall with one base, one stack of levels, one top.",
    fields: &[
        computed(
            "from",
            along(),
            "the end of the section before it, or the wall's left end",
            OWN,
            "Left end.",
        ),
        computed(
            "to",
            along(),
            "the wall's right end, for the last section",
            OWN,
            "Right end.",
        ),
        value(
            "base",
            height(),
            "0",
            OWN,
            "Height of the underside of the lowest plate above the wall's own zero line.",
        ),
        parts(
            "bottom",
            Kind::Object(&BOTTOM),
            "{}",
            OWN,
            "Where the sheathing ends at the bottom.",
        ),
        parts(
            "stack",
            list(&Kind::OneOf(&[&LEVEL_STOREY, &LEVEL_BAND]), 1, 40),
            r#"[{"kind": "storey"}]"#,
            OWN,
            "From bottom to top.",
        ),
        parts(
            "top",
            Kind::OneOf(&[&TOP_FLAT, &TOP_RAKE, &TOP_GABLE, &TOP_EAVES]),
            r#"{"kind": "flat"}"#,
            OWN,
            "What is above the uppermost plate.",
        ),
    ],
};

static BOTTOM: Object = Object {
    name: "bottom",
    tag: None,
    meaning: "Where the sheathing ends at the bottom.",
    fields: &[
        value(
            "bears",
            Kind::Choice(Bearing::NAMES),
            "concrete",
            "own value: the careful case",
            "What the lowest plate stands on.",
        ),
        nullable(
            "reach",
            &inches(-120, 240),
            "How far the sheathing reaches below the underside of the lowest plate: 0 flush, above zero overhanging, \
             below zero held up or lapping. Null leaves the choice to the search.",
        ),
        nullable(
            "above_grade",
            &height(),
            "Height of the lowest plate's underside above the ground outside, where it is known.",
        ),
    ],
};

pub(super) static LEVEL_STOREY: Object = Object {
    name: "storey",
    tag: Some("storey"),
    meaning: "Plates and studs of one storey.",
    fields: STOREY_FIELDS,
};

pub(in crate::reading) static LEVEL_BAND: Object = Object {
    name: "floor_band",
    tag: Some("floor_band"),
    meaning: "What lies between two storeys, or between foundation and first storey.",
    fields: &[
        computed(
            "name",
            name(),
            "`floor band` and its number from below",
            OWN,
            "Such as `second floor band`.",
        ),
        required(
            "layers",
            list(&Kind::OneOf(&[&BAND_PLATE, &BAND_MEMBERS, &BAND_SUBFLOOR]), 1, 20),
            "From the lowest up.",
        ),
    ],
};

pub(in crate::reading) static BAND_PLATE: Object = Object {
    name: "band_plate",
    tag: Some("plate"),
    meaning: "A mudsill or other plate lying flat.",
    fields: PLATE_FIELDS,
};

pub(in crate::reading) static BAND_MEMBERS: Object = Object {
    name: "band_members",
    tag: Some("members"),
    meaning: "Joists or trusses of a band.",
    fields: &[
        required(
            "direction",
            Kind::Choice(Direction::NAMES),
            "How they run: across the wall or along it.",
        ),
        value(
            "member",
            Kind::Choice(MemberKindInBand::NAMES),
            "sawn_joist",
            COMMON,
            "What they are.",
        ),
        value(
            "width",
            sixteenths(8, 16 * 12),
            "1 1/2",
            COMMON,
            "Width of one member's end.",
        ),
        required("depth", inches(2, 60), "Height of the members and of the rim."),
        value(
            "chord",
            sixteenths(8, 16 * 12),
            "1 1/2",
            "common practice, no source: chords of floor trusses lie flat",
            "Height of the chords of a truss along the wall.",
        ),
        value(
            "spacing",
            inches(4, 96),
            "16",
            COMMON,
            "On-centre spacing; of a truss along the wall, the spacing of its webs.",
        ),
        parts(
            "origin",
            Kind::Object(&ORIGIN),
            "{}",
            COMMON,
            "Where their layout is pulled from.",
        ),
        Field {
            name: "rim",
            kind: Kind::Maybe(&Kind::Object(&RIM)),
            preset: super::Preset::Computed("a rim where sawn joists run across the wall, else none"),
            source: COMMON,
            meaning: "The board that closes the band; null for none.",
        },
        value(
            "blocking_between",
            Kind::Flag,
            "false",
            OWN,
            "Blocks stand between the members, flush with the wall's face.",
        ),
    ],
};

static RIM: Object = Object {
    name: "rim",
    tag: None,
    meaning: "The board that closes the floor band.",
    fields: &[
        value(
            "kind",
            Kind::Choice(RimKind::NAMES),
            "sawn",
            COMMON,
            "What it is made of.",
        ),
        value(
            "thickness",
            sixteenths(8, 16 * 6),
            "1 1/2",
            COMMON,
            "Thickness, across the wall's face.",
        ),
    ],
};

pub(super) static BAND_SUBFLOOR: Object = Object {
    name: "subfloor",
    tag: Some("subfloor"),
    meaning: "The edge of the subfloor, which holds no nail.",
    fields: &[value(
        "thickness",
        sixteenths(4, 16 * 4),
        "3/4",
        COMMON,
        "Thickness of the floor panel.",
    )],
};

/// Kept beside the sections because plates of bands and of storeys are the same.
pub(super) const PLATES: Kind = Kind::Object(&PLATE);

//! Rules of the standards that are no table: each number with its source.

use crate::decimal::Decimal;
use crate::length::Length;
use crate::published::{Confidence, Pennyweight};

/// A number of a rule.
#[derive(Clone, Copy, Debug)]
pub struct Rule<T> {
    /// The number.
    pub value: T,
    /// Where it stands.
    pub source: &'static str,
    /// How far it may be trusted.
    pub confidence: Confidence,
}

impl<T> Rule<T> {
    pub(super) const fn recalled(value: T, source: &'static str) -> Self {
        Self {
            value,
            source,
            confidence: Confidence::Memory,
        }
    }

    pub(super) const fn seen(value: T, source: &'static str, confidence: Confidence) -> Self {
        Self {
            value,
            source,
            confidence,
        }
    }
}

/// ASD reduction factor of the editions of 2008 and 2015.
pub const ASD_TO_2015: Rule<f64> = Rule::seen(
    2.0,
    "SDPWS 2008/2015 4.3.3; every nominal cell is twice the published ASD cell",
    Confidence::TwoSources,
);
/// LRFD resistance factor of the editions of 2008 and 2015.
pub const LRFD_TO_2015: Rule<f64> = Rule::recalled(0.80, "SDPWS 2008/2015 4.3.3");
/// ASD reduction factor for wind, 2021.
pub const ASD_WIND_2021: Rule<f64> = Rule::recalled(2.0, "SDPWS 2021, reduction factor for wind");
/// ASD reduction factor for earthquake, 2021.
pub const ASD_SEISMIC_2021: Rule<f64> = Rule::recalled(2.8, "SDPWS 2021, reduction factor for seismic");
/// LRFD resistance factor for wind, 2021.
pub const LRFD_WIND_2021: Rule<f64> = Rule::recalled(0.80, "SDPWS 2021, resistance factor for wind");
/// LRFD resistance factor for earthquake, 2021.
pub const LRFD_SEISMIC_2021: Rule<f64> = Rule::recalled(0.50, "SDPWS 2021, resistance factor for seismic");

/// Specific gravity at which the framing factor of table 4.3A is 1: 1 - (0.5 - G), at most 1.
pub const SPECIES: Rule<f64> = Rule::seen(
    0.5,
    "SDPWS Table 4.3A, footnote on framing species",
    Confidence::Source,
);

/// Studs at most so far apart, or panels across them, let 3/8 and 7/16 panels with 8d nails take the 15/32 row.
pub const THICKER_ROW_STUDS: Rule<Length> = Rule::recalled(
    Length::inches(16),
    "SDPWS Table 4.3A, footnote on 3/8 and 7/16 panels with 8d nails",
);
/// The row that they take.
pub const THICKER_ROW: Length = Length::from_units(Length::PER_INCH * 15 / 32);

/// Apparent stiffness of plywood of four or more plies, times.
pub const MORE_PLIES: Rule<f64> = Rule::recalled(1.2, "SDPWS Table 4.3A, footnote on plies");
/// Apparent stiffness with framing wetter than 19 %, times.
pub const WET: Rule<f64> = Rule::recalled(0.5, "SDPWS Table 4.3A, footnote on moisture");

/// Unit shear of walls with 10d nails whose hold-downs sit on the inside faces of the end posts, times; 2021.
pub const INSIDE_HOLD_DOWNS: Rule<f64> = Rule::recalled(
    0.92,
    "SDPWS 2021, 10d common nails and hold-downs on the inside faces of end posts, as a magazine tells of it",
);

/// The widest stud spacing.
pub const STUDS_MOST: Rule<Length> = Rule::recalled(Length::inches(24), "SDPWS 4.3.7.1");
/// The widest edge nailing.
pub const EDGE_MOST: Rule<Length> = Rule::recalled(Length::inches(6), "SDPWS 4.3.7.1");
/// The widest field nailing where panels are thicker than 7/16 or studs closer than 24 in.
pub const FIELD_MOST: Rule<Length> = Rule::recalled(Length::inches(12), "SDPWS 4.3.7.1");
/// The widest field nailing elsewhere.
pub const FIELD_THIN_MOST: Rule<Length> = Rule::recalled(Length::inches(6), "SDPWS 4.3.7.1");
/// Panels above this thickness are not thin.
pub const THIN: Length = Length::sixteenths(7);

/// The widest field nailing that the standard allows panels of this thickness over studs so far apart.
pub(super) fn field_most(thickness: Length, stud_spacing: Length) -> Length {
    if thickness > THIN || stud_spacing < STUDS_MOST.value {
        FIELD_MOST.value
    } else {
        FIELD_THIN_MOST.value
    }
}

/// Edge nailing at or below which members that two panels share have to be 3x.
pub const WIDER_EDGE: Rule<Length> = Rule::recalled(Length::inches(2), "SDPWS 4.3.7.1");
/// The same for 10d nails that go deeper than [`WIDER_DEPTH`].
pub const WIDER_EDGE_10D: Rule<Length> = Rule::recalled(Length::inches(3), "SDPWS 4.3.7.1");
/// Penetration of a 10d nail above which [`WIDER_EDGE_10D`] holds.
pub const WIDER_DEPTH: Length = Length::from_units(Length::PER_INCH * 3 / 2);
/// Nominal unit shear above which the same holds in seismic design categories D to F, in pounds per foot.
pub const WIDER_SHEAR: Rule<f64> = Rule::recalled(700.0, "SDPWS 4.3.7.1, seismic design categories D to F");
/// Width of a 3x.
pub const THREE_X: Length = Length::from_units(Length::PER_INCH * 5 / 2);

/// A shank may be so much thinner than its row says, in inches.
pub const SHANK_UNDER: Rule<Decimal> =
    Rule::recalled(Decimal::thousandths(2), "own value: the tolerance of a gauge");

/// The nails that a row accepts.
#[derive(Clone, Copy, Debug)]
pub struct ListedNail {
    /// Its size.
    pub size: Pennyweight,
    /// Shank of the common nail.
    pub common: Rule<Decimal>,
    /// Shank of the hot-dipped or tumbled galvanized box nail.
    pub galvanized_box: Rule<Decimal>,
    /// Head of the common nail.
    pub head: Rule<Decimal>,
    /// Length of the common nail.
    pub length: Rule<Length>,
}

/// Nails by size.
pub const LISTED_NAILS: [ListedNail; 3] = [
    ListedNail {
        size: Pennyweight::Six,
        common: Rule::seen(
            Decimal::thousandths(113),
            "6d common: 780 CMR Tables 2306.3, 2306.2.1(1)",
            Confidence::TwoSources,
        ),
        galvanized_box: Rule::recalled(Decimal::thousandths(99), "6d galvanized box"),
        head: Rule::recalled(Decimal::thousandths(266), "6d common head"),
        length: Rule::seen(
            Length::inches(2),
            "6d common: 780 CMR Tables 2306.3, 2306.2.1(1)",
            Confidence::TwoSources,
        ),
    },
    ListedNail {
        size: Pennyweight::Eight,
        common: Rule::seen(
            Decimal::thousandths(131),
            "8d common: 780 CMR Tables 2306.3, 2306.2.1(1)",
            Confidence::TwoSources,
        ),
        galvanized_box: Rule::seen(
            Decimal::thousandths(113),
            "8d galvanized box: 780 CMR Table 2306.3",
            Confidence::Source,
        ),
        head: Rule::recalled(Decimal::thousandths(281), "8d common head"),
        length: Rule::seen(
            Length::sixteenths(40),
            "8d common: 780 CMR Tables 2306.3, 2306.2.1(1)",
            Confidence::TwoSources,
        ),
    },
    ListedNail {
        size: Pennyweight::Ten,
        common: Rule::seen(
            Decimal::thousandths(148),
            "10d common: 780 CMR Tables 2306.3, 2306.2.1(1)",
            Confidence::TwoSources,
        ),
        galvanized_box: Rule::seen(
            Decimal::thousandths(128),
            "10d galvanized box: 780 CMR Table 2306.3",
            Confidence::Source,
        ),
        head: Rule::recalled(Decimal::thousandths(312), "10d common head"),
        length: Rule::seen(
            Length::inches(3),
            "10d common: 780 CMR Tables 2306.3, 2306.2.1(1)",
            Confidence::TwoSources,
        ),
    },
];

/// Unblocked walls: (stud spacing in inches, factor with field nails at 6 in., with field nails at 12 in.).
pub const UNBLOCKED: Rule<[(i64, f64, f64); 4]> = Rule::recalled(
    [(12, 1.0, 0.8), (16, 0.8, 0.6), (20, 0.6, 0.5), (24, 0.5, 0.4)],
    "SDPWS 2008/2015 Table 4.3.3.2",
);

//! The drift of a segment.

use crate::capacity::{DriftEquation, DriftQuery, Racked};
use crate::length::Length;
use crate::reading::fields::EQUATION_THREE;
use crate::reading::record::Record;

pub(super) fn drift(record: &Record<'_, '_>) -> DriftQuery {
    let feet = |name: &str| record.get::<Length>(name).as_inches() / 12.0;
    DriftQuery {
        wall: Racked {
            shear: record.get("shear"),
            height: feet("height"),
            length: feet("length"),
            elasticity: record.get("elasticity"),
            post_area: record.get("post_area"),
            anchor: record.get::<Length>("anchor").as_inches(),
        },
        equation: record.object("equation", equation),
        accept_unverified: record.get("accept_unverified"),
    }
}

fn equation(record: &Record<'_, '_>) -> DriftEquation {
    if record.is(&EQUATION_THREE) {
        return DriftEquation::ThreeTerms {
            stiffness: record.get("stiffness"),
        };
    }
    DriftEquation::FourTerms {
        nail: record.get("nail"),
        grade: record.get("grade"),
        material: record.get("material"),
        thickness: record.get("thickness"),
        edge_spacing: record.get("edge_spacing"),
    }
}

//! Capacities against published tables, examples and closed forms.

mod alike;
mod built;
mod cells;
mod facings;
mod limits;
mod lines;
mod look_up;
mod nails;
mod panels;
mod prices;
mod printing;
mod transfer;

use super::*;
use crate::decimal::Decimal;
use crate::house::Coating;
use crate::length::{Length, Unit};
use crate::published::{Grade, Pennyweight};

fn inch(text: &str) -> Length {
    Length::parse_exact(text, Unit::Inch).unwrap()
}

fn common(size: Pennyweight) -> DrivenNail {
    let (shank, head, length) = match size {
        Pennyweight::Six => (113, 266, "2"),
        Pennyweight::Eight => (131, 281, "2 1/2"),
        Pennyweight::Ten => (148, 312, "3"),
    };
    DrivenNail {
        shank: Decimal::thousandths(shank),
        head: Decimal::thousandths(head),
        length: inch(length),
        coating: Coating::Bright,
    }
}

fn assembly(grade: Grade, thickness: &str, size: Pennyweight, edge: i64) -> Assembly {
    Assembly {
        grade,
        thickness: inch(thickness),
        material: PanelMaterial::Osb,
        nail: common(size),
        edge_spacing: Length::inches(edge),
        field_spacing: Length::inches(6),
        blocked: true,
        stud_spacing: Length::inches(24),
        across_studs: false,
        specific_gravity: Decimal::hundredths(50),
        seam_member: inch("2 1/2"),
        wet_framing: false,
        inside_hold_downs: false,
    }
}

fn query(assembly: Assembly) -> UnitShearQuery {
    UnitShearQuery {
        edition: Edition::Sdpws2015,
        load: LoadKind::Seismic,
        method: Method::Asd,
        assembly,
        high_seismic: false,
        accept_unverified: false,
        estimate: false,
    }
}

//! The racking model against its closed forms, statics and laws.

mod forms;
mod laws;
mod plan;

use super::*;
use crate::geometry::{Point, Rect};
use crate::length::Length;

fn place(x: i64, y: i64) -> Point {
    Point::new(Length::inches(x), Length::inches(y))
}

fn nail(x: i64, y: i64, edge: bool) -> RackingNail {
    RackingNail {
        at: place(x, y),
        strength: 1.0,
        stiffness: 1.0,
        edge,
    }
}

fn outline(width: i64, height: i64) -> Rect {
    Rect::new(
        Length::ZERO,
        Length::ZERO,
        Length::inches(width),
        Length::inches(height),
    )
}

/// A sheet nailed on its outline, with inner lines of nails 12 in. apart.
fn sheet(width: i64, height: i64, edge: i64, inner: &[i64]) -> RackingSheet {
    let mut nails = Vec::new();
    for along in 0..=width / edge {
        nails.push(nail(along * edge, 0, true));
        nails.push(nail(along * edge, height, true));
    }
    for up in 1..height / edge {
        nails.push(nail(0, up * edge, true));
        nails.push(nail(width, up * edge, true));
    }
    for x in inner {
        for up in 1..height / 12 {
            nails.push(nail(*x, up * 12, false));
        }
    }
    RackingSheet {
        piece: 0,
        outline: outline(width, height),
        nails,
    }
}

fn wall(sheets: Vec<RackingSheet>, force: f64) -> RackingWall {
    RackingWall {
        height: Length::inches(96),
        sheets,
        force,
    }
}

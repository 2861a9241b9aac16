//! What is above the uppermost plate.

use super::storey::origin;
use crate::house::{EaveTrusses, GableTruss, Pitch, Rake, Top};
use crate::length::Length;
use crate::reading::fields::{TOP_EAVES, TOP_GABLE, TOP_RAKE};
use crate::reading::record::Record;

/// The top of a section from `from` to `to`.
pub(super) fn top(record: &Record<'_, '_>, from: Length, to: Length) -> Top {
    let middle = || (from + to).half();
    if record.is(&TOP_RAKE) {
        let left = record.object("left", pitch);
        Top::Rake(Rake {
            ridge_x: record.or("ridge_x", middle),
            peak: record.get("peak"),
            left,
            right: record.object_or("right", pitch, left, |pitch| {
                format!("{} in {}", inches(pitch.rise), inches(pitch.run))
            }),
            build: record.get("build"),
        })
    } else if record.is(&TOP_GABLE) {
        Top::GableTruss(GableTruss {
            ridge_x: record.or("ridge_x", middle),
            heel: record.get("heel"),
            pitch: record.object("pitch", pitch),
            chord: record.get("chord"),
            web_width: record.get("web_width"),
            web_spacing: record.get("web_spacing"),
            setback: record.get("setback"),
            sheathed: record.get("sheathed"),
            hold_up: record.get("hold_up"),
        })
    } else if record.is(&TOP_EAVES) {
        Top::EaveTrusses(EaveTrusses {
            spacing: record.get("spacing"),
            origin: record.object("origin", origin),
            width: record.get("width"),
            heel: record.get("heel"),
            blocked: record.get("blocked"),
            vent_space: record.get("vent_space"),
            hold_up: record.get("hold_up"),
        })
    } else {
        Top::Flat
    }
}

fn inches(length: Length) -> String {
    crate::reading::value::Value::show(&length)
}

fn pitch(record: &Record<'_, '_>) -> Pitch {
    Pitch {
        rise: record.get("rise"),
        run: record.get("run"),
    }
}

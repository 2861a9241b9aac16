//! A panel under pressure.

use crate::capacity::{PanelQuery, PanelSpans};
use crate::length::Length;
use crate::reading::record::Record;

pub(super) fn panel(record: &Record<'_, '_>) -> PanelQuery {
    let studs: Length = record.get("stud_spacing");
    PanelQuery {
        panel: PanelSpans {
            rating: record.get("rating"),
            plies: record.get("plies"),
            axis: record.get("axis"),
            studs: studs.as_inches(),
            spans: record.get("spans"),
        },
        deflection_ratio: record.get("deflection_ratio"),
        pressure: record.get("pressure"),
        load_duration: record.get("load_duration"),
        accept_unverified: record.get("accept_unverified"),
    }
}

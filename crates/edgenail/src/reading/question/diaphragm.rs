//! A storey's force on its lines.

use crate::capacity::{DiaphragmLine, DiaphragmQuery, StoreyForce};
use crate::reading::record::Record;

pub(super) fn diaphragm(record: &Record<'_, '_>) -> DiaphragmQuery {
    DiaphragmQuery {
        lines: record.list("lines", |record| DiaphragmLine {
            name: record.get("name"),
            along: record.get("along"),
            at: record.get("at"),
            stiffness: record.get("stiffness"),
            tributary: record.get("tributary"),
        }),
        force: record.object("force", |record| StoreyForce {
            size: record.get("size"),
            along: record.get("along"),
            at: record.get("at"),
            accidental: Some(record.get("accidental")),
        }),
    }
}

//! One nail.

use crate::capacity::NailQuery;
use crate::reading::record::Record;

pub(super) fn nail(record: &Record<'_, '_>) -> NailQuery {
    NailQuery {
        edition: record.get("edition"),
        shank: record.get("shank"),
        length: record.get("length"),
        head: record.get("head"),
        bending_yield: record.get("bending_yield"),
        side_thickness: record.get("side_thickness"),
        side_gravity: record.get("side_gravity"),
        between: record.get("between"),
        main_gravity: record.get("main_gravity"),
        main_depth: record.get("main_depth"),
        load_duration: record.get("load_duration"),
        accept_unverified: record.get("accept_unverified"),
    }
}

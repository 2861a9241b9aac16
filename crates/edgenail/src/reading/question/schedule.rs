//! What of a stock carries a demand for the least.

use crate::capacity::{Demand, Framing, ScheduleQuery};
use crate::reading::house::{rates, stock};
use crate::reading::record::Record;

pub(super) fn schedule(record: &Record<'_, '_>) -> ScheduleQuery {
    ScheduleQuery {
        stock: record.object("stock", stock),
        rates: record.object("rates", rates),
        demand: record.object("demand", |record| Demand {
            unit_shear: record.get("unit_shear"),
            height: record.get("height"),
        }),
        edition: record.get("edition"),
        load: record.get("load"),
        method: record.get("method"),
        high_seismic: record.get("high_seismic"),
        framing: record.object("framing", |record| Framing {
            field_spacing: record.get("field_spacing"),
            stud_spacing: record.get("stud_spacing"),
            across_studs: record.get("across_studs"),
            specific_gravity: record.get("specific_gravity"),
            seam_member: record.get("seam_member"),
            wet_framing: record.get("wet_framing"),
        }),
        accept_unverified: record.get("accept_unverified"),
    }
}

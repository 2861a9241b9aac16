//! What the house has to resist.

use crate::house::{Fasteners, LateralDemand, Load};
use crate::reading::record::Record;

pub(super) fn demand(record: &Record<'_, '_>) -> LateralDemand {
    LateralDemand {
        edition: record.get("edition"),
        method: record.get("method"),
        high_seismic: record.get("high_seismic"),
        wet_framing: record.get("wet_framing"),
        sharing: record.get("sharing"),
        spectral_acceleration: record.get("spectral_acceleration"),
        accept_unverified: record.get("accept_unverified"),
        estimate: record.get("estimate"),
        schedule: record.get("schedule"),
        loads: record.list("loads", |record| Load {
            kind: record.get("kind"),
            level: record.get("level"),
            wall: record.get("wall"),
            storey: record.get("storey"),
            amount: record.get("amount"),
        }),
        fasteners: record.list("fasteners", |record| Fasteners {
            wall: record.get("wall"),
            storey: record.get("storey"),
            interface: record.get("interface"),
            name: record.get("name"),
            each: record.get("each"),
            spacing: record.get("spacing"),
        }),
    }
}

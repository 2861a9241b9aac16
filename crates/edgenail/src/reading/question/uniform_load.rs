//! Sheathing under wind across it, by the table of the standard.

use crate::capacity::{UniformLoadQuery, UniformSheathing};
use crate::reading::fields::RATED_PANEL;
use crate::reading::record::Record;

pub(super) fn query(record: &Record<'_, '_>) -> UniformLoadQuery {
    UniformLoadQuery {
        edition: record.get("edition"),
        method: record.get("method"),
        sheathing: record.object("sheathing", |record| {
            if record.is(&RATED_PANEL) {
                UniformSheathing::Panel {
                    rating: record.get("rating"),
                    axis: record.get("axis"),
                }
            } else {
                UniformSheathing::Board {
                    material: record.get("material"),
                    thickness: record.get("thickness"),
                }
            }
        }),
        stud_spacing: record.get("stud_spacing"),
        accept_unverified: record.get("accept_unverified"),
    }
}

//! What a wall does not resist, told with its other findings.

use crate::capacity::{Carrier, CheckKind, LineSchedule, Resists, StoreyLine};
use crate::finding::{Finding, FindingCode, Severity};
use crate::house::LoadKind;

/// Nothing in stock carries what a storey's segments have to.
pub(super) fn unscheduled(wall: &str, schedule: &LineSchedule) -> Finding {
    Finding::of(wall, FindingCode::NotCarried, Severity::Mend).says(format!(
        "{}: no sheet category, nail and edge nailing in stock carry the demand; the segments stay as they were given. The \
         designer has to say what is built.",
        schedule.storey
    ))
}

/// What a storey's line lacks.
pub(super) fn findings(wall: &str, line: &StoreyLine) -> Vec<Finding> {
    let load = match line.load {
        LoadKind::Wind => "wind",
        LoadKind::Seismic => "earthquake",
    };
    let storey = &line.storey;
    let mut found = Vec::new();
    for fault in &line.faults {
        found.push(
            Finding::of(wall, FindingCode::CapacityUnknown, Severity::Mend)
                .against(fault.found.as_str(), fault.allowed.as_str())
                .says(format!("{storey}, {load}: {}.", fault.message)),
        );
    }
    let mut not_carried = |what: &str, demand: f64, carries: f64, unit: &str| {
        found.push(
            Finding::of(wall, FindingCode::NotCarried, Severity::Mend)
                .against(format!("{demand:.0} {unit}"), format!("at most {carries:.0} {unit}"))
                .says(format!(
                    "{storey}, {load}: {what} of {demand:.0} {unit}, and what is there carries {carries:.0} {unit}. The designer \
                     has to say what is added.",
                )),
        );
    };
    match &line.resists {
        Some(Resists::Line { found, .. }) => {
            for check in found.checks.iter().filter(|check| check.ratio > 1.0) {
                let what = match check.check {
                    CheckKind::Shear => "shear",
                    CheckKind::HoldDown => "tension at the end of a segment",
                };
                not_carried(what, check.demand_lb, check.capacity_lb, "lb");
            }
        }
        Some(Resists::Transfer { ratio, forces, .. }) if ratio.ratio > 1.0 => {
            not_carried(
                "unit shear around openings",
                forces.largest(),
                forces.largest() / ratio.ratio,
                "plf",
            );
        }
        _ => {}
    }
    for at in &line.interfaces {
        if let Carrier::Fasteners {
            name,
            capacity_plf,
            ratio,
        } = &at.carrier
            && *ratio > 1.0
        {
            not_carried(&format!("shear on {name}"), at.demand_plf, *capacity_plf, "plf");
        }
    }
    found
}

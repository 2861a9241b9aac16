//! What the wall resists of its demand, as a list.

use super::Canvas;
use crate::capacity::{Resists, StoreyLine};
use crate::drawing::page::Row;
use crate::house::{DesignMethod, LoadKind};
use crate::published::Confidence;

impl Canvas<'_> {
    /// One sentence for each storey and load.
    pub(super) fn resisted_rows(&self) -> Vec<Row> {
        let Some(demand) = &self.input.house.demand else {
            return Vec::new();
        };
        let level = match demand.method {
            DesignMethod::Asd => "ASD",
            DesignMethod::Lrfd => "LRFD",
        };
        let mut rows = vec![Row::Heading(format!(
            "Resists, as built ({level}, {})",
            demand.edition.name()
        ))];
        let of_wall = self
            .input
            .capacity
            .iter()
            .filter(|line| line.wall == self.input.frame.wall);
        let lines: Vec<&StoreyLine> = of_wall.collect();
        if lines.is_empty() {
            return Vec::new();
        }
        rows.extend(lines.iter().map(|line| Row::Text(String::new(), sentence(line))));
        let mut caution = "A licensed design professional has to confirm it.".to_owned();
        if lines.iter().any(|line| line.confidence == Confidence::Memory) {
            caution.push_str(" Some values were not checked against print.");
        }
        rows.push(Row::Text(String::new(), caution));
        rows
    }
}

fn sentence(line: &StoreyLine) -> String {
    let load = match line.load {
        LoadKind::Wind => "wind",
        LoadKind::Seismic => "earthquake",
    };
    let mut parts = vec![format!("{}, {load}: shear {:.0} lb", line.storey, line.demand)];
    match (&line.resists, line.capacity(), line.ratio()) {
        (Some(resists), Some(capacity), Some(ratio)) => {
            parts.push(format!(" of {capacity:.0} lb (ratio {ratio:.2})"));
            if let Some(tension) = line.hold_down().filter(|tension| *tension > 0.0) {
                parts.push(format!(", tension at ends {tension:.0} lb"));
            }
            if let Resists::Line { line: taken, .. } = resists {
                parts.push(match taken.hold_down {
                    Some(held) => format!(" of {:.0} lb", held.capacity),
                    None => ", no hold-down given".to_owned(),
                });
            }
        }
        _ => parts.push(", what resists it is not known: see findings".to_owned()),
    }
    parts.push(".".to_owned());
    parts.concat()
}

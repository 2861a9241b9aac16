//! Changes as one table.

use super::{Changes, LineFigures, PieceFigures, Quantities, Seam, WallChange, WallState, WoodKind};
use crate::amount::Amount;
use crate::finding::Finding;
use crate::geometry::Rect;
use crate::length::{Length, Rounding, Style};
use crate::plan::Figures;
use crate::report::word;
use crate::table::{Field, Schema, Table};

/// A row of the table.
#[derive(Clone, Debug, Default)]
struct Row {
    part: &'static str,
    scope: String,
    item: String,
    change: &'static str,
    quantity: &'static str,
    before: String,
    after: String,
    difference: String,
}

const CHANGED: &str = "changed";
const CAME: &str = "came";
const WENT: &str = "went";

/// All that changed, from the whole to its parts.
pub(super) fn table(changes: &Changes, style: Style) -> Table {
    let mut rows = totals(&changes.before, &changes.after);
    for line in &changes.takeoff {
        let item = [word(&line.what), line.item.as_str()].join(" ");
        rows.extend(quantities(&line.before, &line.after).into_iter().map(|row| Row {
            part: "takeoff",
            scope: line.scope.clone(),
            item: item.trim_end().to_owned(),
            ..row
        }));
    }
    for wall in &changes.walls {
        rows.extend(of_wall(wall, style));
    }
    let finding = |change, finding: &Finding| Row {
        part: "finding",
        scope: finding.wall.clone(),
        item: [word(&finding.code), finding.piece.as_str()]
            .join(" ")
            .trim_end()
            .to_owned(),
        change,
        quantity: "message",
        ..Row::default()
    };
    rows.extend(changes.came.iter().map(|found| Row {
        after: found.message.written(style),
        ..finding(CAME, found)
    }));
    rows.extend(changes.went.iter().map(|found| Row {
        before: found.message.written(style),
        ..finding(WENT, found)
    }));
    for line in &changes.capacity {
        let item = format!("{}, {}", line.storey, word(&line.load));
        let figures = capacity(line.before.as_ref(), line.after.as_ref());
        rows.extend(figures.into_iter().map(|row| Row {
            part: "capacity",
            scope: line.wall.clone(),
            item: item.clone(),
            ..row
        }));
    }
    schema().table(&rows)
}

fn schema() -> Schema<Row> {
    Schema {
        name: "changes",
        meaning: "One thing that is not the same after a change, or a wall that is.",
        fields: vec![
            Field::text(
                "part",
                "What it is part of: total, takeoff, wall, piece, seam, wood, finding or capacity.",
                |row: &Row| row.part.into(),
            ),
            Field::text(
                "scope",
                "The house, the storey or the wall; of a wall's parts, its name.",
                |row| row.scope.as_str().into(),
            ),
            Field::text(
                "item",
                "The line, the piece's mark, the code of a finding.",
                |row| row.item.as_str().into(),
            ),
            Field::text("change", "changed, came, went or unchanged.", |row| {
                row.change.into()
            }),
            Field::text("quantity", "What is told before and after.", |row| {
                row.quantity.into()
            }),
            Field::text("before", "Before; empty where it came.", |row| {
                row.before.as_str().into()
            }),
            Field::text("after", "After; empty where it went.", |row| {
                row.after.as_str().into()
            }),
            Field::text(
                "difference",
                "After less before, of exact numbers; empty for anything else.",
                |row| row.difference.as_str().into(),
            ),
        ],
    }
}

/// A row for a number that is not the same.
fn number(quantity: &'static str, before: u64, after: u64) -> Option<Row> {
    let difference = i128::from(after) - i128::from(before);
    (before != after).then(|| Row {
        change: CHANGED,
        quantity,
        before: before.to_string(),
        after: after.to_string(),
        difference: difference.to_string(),
        ..Row::default()
    })
}

/// A row for an amount that is not the same.
fn amount(quantity: &'static str, before: Amount, after: Amount) -> Option<Row> {
    (before != after).then(|| Row {
        change: CHANGED,
        quantity,
        before: before.to_string(),
        after: after.to_string(),
        difference: after
            .checked_sub(before)
            .map_or_else(String::new, |difference| difference.to_string()),
        ..Row::default()
    })
}

fn totals(before: &Figures, after: &Figures) -> Vec<Row> {
    let rows = [
        number("walls", before.walls, after.walls),
        number("panels", before.panels, after.panels),
        number("sheets", before.sheets, after.sheets),
        number("blocks", before.blocks, after.blocks),
        number("nails", before.nails, after.nails),
        amount("money", before.money, after.money),
        amount("minutes", before.minutes, after.minutes),
        amount("cost", before.cost, after.cost),
        number("findings to refuse", before.refuse, after.refuse),
        number("findings to mend", before.mend, after.mend),
        number("findings to advise", before.advise, after.advise),
    ];
    let total = |row: Row| Row {
        part: "total",
        scope: "house".to_owned(),
        ..row
    };
    rows.into_iter().flatten().map(total).collect()
}

fn quantities(before: &Quantities, after: &Quantities) -> Vec<Row> {
    let used = (before.used != after.used).then(|| Row {
        change: CHANGED,
        quantity: "used",
        before: before.used.to_string(),
        after: after.used.to_string(),
        difference: after
            .used
            .less(before.used)
            .map_or_else(String::new, |less| less.to_string()),
        ..Row::default()
    });
    let ordered = number(
        "ordered",
        before.ordered.unwrap_or(0).into(),
        after.ordered.unwrap_or(0).into(),
    );
    let rows = [
        used,
        ordered,
        amount("money", before.money, after.money),
        amount("minutes", before.minutes, after.minutes),
    ];
    rows.into_iter().flatten().collect()
}

fn of_wall(wall: &WallChange, style: Style) -> Vec<Row> {
    let one = |part, change| Row {
        part,
        scope: wall.wall.clone(),
        change,
        ..Row::default()
    };
    let mut rows = vec![one("wall", word(&wall.state))];
    if wall.state == WallState::Unchanged {
        return rows;
    }
    let figures = [
        number("nails", wall.nails_before, wall.nails_after),
        amount("cost", wall.cost_before.total, wall.cost_after.total),
        number("members that went", wall.members_went, 0),
        number("members that came", 0, wall.members_came),
    ];
    rows.extend(figures.into_iter().flatten().map(|row| Row {
        part: "wall",
        scope: wall.wall.clone(),
        ..row
    }));
    for piece in &wall.pieces {
        let change = match (&piece.before, &piece.after) {
            (None, _) => CAME,
            (_, None) => WENT,
            _ => CHANGED,
        };
        let says = |figures: &Option<PieceFigures>| {
            figures.as_ref().map_or_else(String::new, |figures| {
                let rect = shown(&figures.rect, style);
                format!("{rect}, {}, {} nails", figures.sheet, figures.nails)
            })
        };
        rows.push(Row {
            item: piece.mark.clone(),
            quantity: "place, sheet, nails",
            before: says(&piece.before),
            after: says(&piece.after),
            ..one("piece", change)
        });
    }
    let seam = |seam: &Seam| match seam {
        Seam::Upright { x, y0, y1 } => {
            let [x, y0, y1] = [x, y0, y1].map(|at| length(*at, style));
            format!("x {x}, y {y0} to {y1}")
        }
        Seam::Level { y } => format!("level y {}", length(*y, style)),
    };
    let seams = |change, seams: &[Seam]| -> Vec<Row> {
        let row = |at: &Seam| Row {
            item: seam(at),
            ..one("seam", change)
        };
        seams.iter().map(row).collect()
    };
    rows.extend(seams(CAME, &wall.seams_came));
    rows.extend(seams(WENT, &wall.seams_went));
    for (change, list) in [(CAME, &wall.wood_came), (WENT, &wall.wood_went)] {
        rows.extend(list.iter().map(|wood| Row {
            item: format!("{} {}", wood_name(wood.kind), shown(&wood.rect, style)),
            ..one("wood", change)
        }));
    }
    rows
}

const fn wood_name(kind: WoodKind) -> &'static str {
    match kind {
        WoodKind::Block => "block",
        WoodKind::Stud => "stud",
        WoodKind::Widening => "widening",
    }
}

fn capacity(before: Option<&LineFigures>, after: Option<&LineFigures>) -> Vec<Row> {
    type Read = fn(&LineFigures) -> Option<f64>;
    let reads: [(&'static str, Read); 5] = [
        ("demand_lb", |line| Some(line.demand_lb)),
        ("capacity_lb", |line| line.capacity_lb),
        ("ratio", |line| line.ratio),
        ("governing_ratio", |line| line.governing_ratio),
        ("hold_down_lb", |line| line.hold_down_lb),
    ];
    let change = match (before, after) {
        (None, _) => CAME,
        (_, None) => WENT,
        _ => CHANGED,
    };
    let written = |line: Option<&LineFigures>, read: Read| {
        line.and_then(read)
            .map_or_else(String::new, |number| number.to_string())
    };
    let rows = reads.into_iter().map(|(quantity, read)| Row {
        change,
        quantity,
        before: written(before, read),
        after: written(after, read),
        ..Row::default()
    });
    rows.filter(|row| row.before != row.after).collect()
}

fn shown(rect: &Rect, style: Style) -> String {
    let [x0, x1, y0, y1] = [rect.x0, rect.x1, rect.y0, rect.y1].map(|at| length(at, style));
    format!("x {x0} to {x1}, y {y0} to {y1}")
}

fn length(length: Length, style: Style) -> String {
    length.show(style, Rounding::Nearest).text
}

//! What a plan says of each panel, to tell which panels a change touches.

use edgenail::Plan;
use edgenail::edges::Support;
use std::collections::{BTreeMap, BTreeSet};

/// What is said of each panel, by wall and mark: its outline, what its edges land on, its nails.
type Panels = BTreeMap<String, Vec<String>>;

fn panels(plan: &Plan) -> Panels {
    let mut panels = Panels::new();
    for wall in plan.walls() {
        let built = &wall.built;
        let kind = |id| built.backed.member(id).map(|member| (member.kind, member.origin));
        for piece in &built.layout.pieces {
            let mut says = vec![format!("{:?} {:?}", piece.running, piece.outline.rings())];
            let runs = built.runs.iter().filter(|run| run.piece == piece.id);
            says.extend(runs.map(|run| {
                let held = match run.support {
                    Support::Member { member } => format!("{:?} {:?}", kind(member), run.inset),
                    Support::Nothing { reason } => format!("{reason:?} {}", run.must_back),
                };
                format!("{:?} {:?} {:?} {held}", run.side, run.from, run.to)
            }));
            let rows = built.nailing.rows.iter().filter(|row| row.piece == piece.id);
            says.extend(rows.map(|row| {
                let nail = &plan.house().stock.nails[row.nail as usize].name;
                let at: Vec<_> = row.positions().collect();
                format!("{nail} {:?} {:?} {at:?}", row.zone, kind(row.member))
            }));
            panels.insert(format!("{}/{}", wall.name, piece.mark), says);
        }
    }
    panels
}

/// Marks of the panels of which two plans do not say the same, wall by wall.
pub fn touched(before: &Plan, after: &Plan) -> BTreeSet<String> {
    let (old, new) = (panels(before), panels(after));
    let names: BTreeSet<&String> = old.keys().chain(new.keys()).collect();
    let changed = names.into_iter().filter(|name| old.get(*name) != new.get(*name));
    changed
        .map(|name| {
            name.rsplit_once('/')
                .map_or(name.as_str(), |(_, mark)| mark)
                .to_owned()
        })
        .collect()
}

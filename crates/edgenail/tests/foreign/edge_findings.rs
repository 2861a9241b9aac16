//! What is said of the edges of layouts that nobody chose, counted a second time.

use crate::edge_shape::is_sloped;
use crate::ground::{Ground, on_every_class};
use crate::slow::{shown, written};
use edgenail::Length;
use edgenail::edges::{EdgeRun, Side, Site, Support, Unsupported, findings, unsupported};
use edgenail::finding::{FindingCode, Severity};
use edgenail::layout::Joint;
use std::cell::Cell;
use std::collections::BTreeSet;

/// By how much a plumb edge would have to be moved for a stud behind all of it to hold it, by trying.
fn off_its_stud(ground: &Ground, run: &EdgeRun) -> Option<Length> {
    let practice = ground.practice();
    let (least, most) = (practice.edge_distance_least, practice.edge_distance_most);
    let wood = practice.member_edge_least;
    let studs = ground.frame.members.iter().filter(|member| member.nailable);
    let studs = studs.map(|member| member.face.bounds());
    let behind = studs.filter(|face| face.y0 <= run.from.y && run.to.y <= face.y1);
    let mut least_move: Option<Length> = None;
    // Only a stud whose face begins within this much of the edge is the seam's own.
    let reach = most + wood * 2;
    let own = behind.filter(|face| face.x0 <= run.from.x + reach && run.from.x - reach <= face.x1);
    for face in own.filter(|face| face.width() >= wood * 2) {
        let held = |x: Length| {
            let (near, far) = match run.side {
                Side::Left => (face.x0 - x, face.x1 - x),
                _ => (x - face.x1, x - face.x0),
            };
            // Past its far side the edge may move on until the line has left the wood.
            (near + wood).max(least) <= most && least + wood <= far
        };
        let steps = (1..=48)
            .flat_map(|step| [step, -step])
            .map(|step| Length::sixteenths(step).half());
        // A wide face that holds the place already is not what the run lacks.
        if held(run.from.x) {
            continue;
        }
        let near = steps
            .filter(|by| held(run.from.x + *by))
            .min_by_key(|by| by.abs());
        // Between the last step that does not hold it and the first that does, to a unit.
        let mine = near.map(|near| {
            let way = near.units().signum();
            let (mut short, mut enough) = (
                near.units().abs() - Length::sixteenths(1).half().units(),
                near.units().abs(),
            );
            while enough - short > 1 {
                let middle = i64::midpoint(short, enough);
                if held(run.from.x + Length::from_units(middle * way)) {
                    enough = middle;
                } else {
                    short = middle;
                }
            }
            Length::from_units(enough)
        });
        least_move = match (least_move, mine) {
            (Some(a), Some(b)) => Some(a.min(b)),
            (a, b) => a.or(b),
        };
    }
    least_move
}

#[test]
fn a_bare_edge_is_told_once_and_a_seam_near_its_stud_as_drift() {
    let seen = Cell::new([0; 3]);
    on_every_class(|ground| {
        let site = Site::new(&ground.house, &ground.frame).ok_or("no site")?;
        let lacking: Vec<&EdgeRun> = ground.runs.iter().filter(|run| run.lacks_backing()).collect();
        let told = unsupported(&site, &ground.layout, &ground.runs);
        if told.len() != lacking.len() {
            return Err(format!("{} findings of {} bare runs", told.len(), lacking.len()));
        }
        for (finding, run) in told.iter().zip(lacking) {
            if finding.severity != Severity::Mend || finding.at != Some((run.from.x, run.from.y)) {
                return Err(format!("{finding:?} of {run:?}"));
            }
            let level = !run.side.is_plumb() || run.joint == Joint::Opening;
            let place = match finding.code {
                FindingCode::EdgeUnsupported if level => 0,
                FindingCode::SeamDrift if !level => 1,
                FindingCode::SeamOffFraming if !level => 2,
                _ => return Err(format!("{finding:?} of {run:?}")),
            };
            // A stud within reach of the line is drift; one further off is no stud of this seam.
            let practice = ground.practice();
            let reach = practice.edge_distance_most + practice.member_edge_least * 2;
            let off = off_its_stud(ground, run);
            let step = Length::sixteenths(1);
            let (near, far) = (
                off.is_some_and(|off| off + step <= reach),
                off.is_none_or(|off| off > reach + step),
            );
            if !level && ((near && place != 1) || (far && place != 2)) {
                return Err(format!("{finding:?} of {run:?}, {off:?} off a stud"));
            }
            let (found, allowed) = (written(&finding.found), written(&finding.allowed));
            let says = match place {
                0 => {
                    found == shown(run.bay.unwrap_or_default())
                        && allowed == format!("a clear bay of {}", shown(practice.clear_bay_most))
                }
                1 => {
                    let stands = practice.edge_distance_least + practice.member_edge_least;
                    let by = off.unwrap_or_default();
                    found == format!("{} off", shown(by))
                        && allowed == format!("{} of wood from the panel's edge", shown(stands))
                }
                _ => found == shown(run.length),
            };
            if !says || !written(&finding.message).contains(&shown(run.length)) {
                return Err(format!("{finding:?} of {run:?}, {off:?} off a stud"));
            }
            let mut counts = seen.get();
            counts[place] += 1;
            seen.set(counts);
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 50), "{seen:?}");
}

#[test]
fn edges_that_stay_unblocked_are_told_level_by_level() {
    let seen = Cell::new([0; 2]);
    on_every_class(|ground| {
        let site = Site::new(&ground.house, &ground.frame).ok_or("no site")?;
        let practice = ground.practice();
        let told = findings(&site, &ground.layout, &ground.runs);
        let open = ground.runs.iter().filter(|run| {
            let long = run.length > practice.free_edge_most;
            run.member().is_none() && !run.must_back && !run.side.is_plumb() && long
        });
        let hangs = Support::Nothing {
            reason: Unsupported::HangsFree,
        };
        let (alone, level): (Vec<&EdgeRun>, Vec<&EdgeRun>) =
            open.partition(|run| run.support == hangs || is_sloped(run));
        let height = |run: &&EdgeRun| match (run.joint, run.side) {
            (Joint::Seam, Side::Top) => run.from.y + practice.gap.half(),
            (Joint::Seam, Side::Bottom) => run.from.y - practice.gap.half(),
            _ => run.from.y,
        };
        let levels: BTreeSet<Length> = level.iter().map(height).collect();
        let unblocked = told
            .iter()
            .filter(|finding| finding.code == FindingCode::EdgeUnblocked);
        let heights: Vec<Length> = unblocked
            .filter(|finding| finding.piece.is_empty())
            .filter_map(|finding| Some(finding.at?.1))
            .collect();
        if heights != levels.into_iter().collect::<Vec<Length>>() {
            return Err(format!("{heights:?} told of {level:?}"));
        }
        // One finding for each level: where it begins, and how much of edge there is.
        let of_levels = told
            .iter()
            .filter(|finding| finding.code == FindingCode::EdgeUnblocked && finding.piece.is_empty());
        for finding in of_levels {
            let (x, y) = finding.at.unwrap_or_default();
            let here = || level.iter().filter(|run| height(run) == y);
            let total: Length = here().map(|run| run.length).sum();
            let from = here().map(|run| run.from.x).min();
            if written(&finding.found) != shown(total)
                || from != Some(x)
                || !written(&finding.message).contains(&shown(total))
            {
                return Err(format!("{finding:?} of {total} from {from:?}"));
            }
        }
        let single = told
            .iter()
            .filter(|finding| finding.code == FindingCode::EdgeUnblocked && !finding.piece.is_empty());
        for (finding, run) in single.clone().zip(&alone) {
            let mark = &ground.layout.pieces[run.piece as usize].mark;
            if written(&finding.found) != shown(run.length) || finding.piece != *mark {
                return Err(format!("{finding:?} of {run:?}"));
            }
        }
        let single: Vec<_> = single.filter_map(|finding| finding.at).collect();
        if single
            != alone
                .iter()
                .map(|run| (run.from.x, run.from.y))
                .collect::<Vec<_>>()
        {
            return Err(format!("{single:?} told of {alone:?}"));
        }
        seen.set([seen.get()[0] + heights.len(), seen.get()[1] + single.len()]);
        Ok(())
    });
    assert!(seen.get()[0] > 100 && seen.get()[1] > 0, "{seen:?}");
}

#[test]
fn seams_that_meet_an_unblocked_edge_too_close_are_told() {
    let seen = Cell::new(0);
    on_every_class(|ground| {
        let site = Site::new(&ground.house, &ground.frame).ok_or("no site")?;
        let practice = ground.practice();
        let (runs, least) = (&ground.runs, practice.stagger_least);
        let gap = practice.rim_gap.max(practice.gap) * 2;
        let plumb: Vec<&EdgeRun> = runs
            .iter()
            .filter(|run| run.side == Side::Right && run.partner.is_some())
            .collect();
        // A seam ends where no run of the same piece goes on from there.
        let goes_on = |run: &EdgeRun, up: bool| {
            plumb.iter().any(|other| {
                other.piece == run.piece
                    && other.from.x == run.from.x
                    && if up {
                        other.from.y == run.to.y
                    } else {
                        other.to.y == run.from.y
                    }
            })
        };
        let mut expected = Vec::new();
        for below in plumb.iter().filter(|run| !goes_on(run, true)) {
            for above in plumb.iter().filter(|run| !goes_on(run, false)) {
                let (a, b) = (below.from.x, above.from.x);
                let meet = below.to.y <= above.from.y && above.from.y <= below.to.y + gap;
                let bare = runs.iter().any(|run| {
                    let open = run.side == Side::Top
                        && run.partner.is_some()
                        && run.member().is_none()
                        && !run.must_back;
                    open && run.from.y == below.to.y
                        && run.from.x < a.max(b) + least
                        && a.min(b) - least < run.to.x
                });
                if meet && (a - b).abs() < least && bare {
                    let mark = ground.layout.pieces[below.piece as usize].mark.clone();
                    expected.push((a, below.to.y, mark, format!("{} apart", shown((a - b).abs()))));
                }
            }
        }
        expected.sort_unstable();
        let told = findings(&site, &ground.layout, runs);
        let told = told
            .iter()
            .filter(|finding| finding.code == FindingCode::SeamsNotStaggered);
        let mut told: Vec<_> = told
            .filter_map(|finding| {
                let (x, y) = finding.at?;
                Some((x, y, finding.piece.clone(), written(&finding.found)))
            })
            .collect();
        told.sort_unstable();
        if told != expected {
            return Err(format!("{told:?} told of {expected:?}"));
        }
        seen.set(seen.get() + told.len());
        Ok(())
    });
    assert!(seen.get() > 50, "{seen:?}");
}

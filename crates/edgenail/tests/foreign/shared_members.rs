//! Members that two panels share, told a second time: which are too narrow, and which get a second one beside them.

use crate::ground::{Ground, on_every_class};
use crate::slow::stands_at;
use edgenail::Length;
use edgenail::blocking::{TooNarrow, blocking, narrow_members, too_narrow};
use edgenail::edges::{EdgeRun, Site, edges};
use edgenail::finding::Severity;
use edgenail::frame::{Axis, Frame, Member, MemberKind};
use edgenail::geometry::{Point, Rect};
use std::cell::Cell;
use std::collections::BTreeMap;

/// The face of a member across its direction, with a stud that is nailed to its whole side.
fn face(frame: &Frame, member: &Member) -> (Length, Length) {
    let bounds = member.face.bounds();
    if member.axis != Axis::Vertical {
        return (bounds.height(), bounds.height());
    }
    let mut widest = Length::ZERO;
    for other in frame
        .members
        .iter()
        .filter(|other| other.nailable && other.id != member.id)
    {
        let beside = other.face.bounds();
        let whole = beside.y0 <= bounds.y0 && bounds.y1 <= beside.y1;
        if whole && (beside.x1 == bounds.x0 || beside.x0 == bounds.x1) {
            widest = widest.max(beside.width());
        }
    }
    (bounds.width(), bounds.width() + widest)
}

fn narrow(ground: &Ground, frame: &Frame, runs: &[EdgeRun]) -> Vec<TooNarrow> {
    let mut by_member: BTreeMap<_, Vec<&EdgeRun>> = BTreeMap::new();
    for run in runs.iter().filter(|run| run.partner.is_some()) {
        let member = run.member().and_then(|id| frame.member(id));
        let along = member.filter(|member| (member.axis == Axis::Vertical) == run.side.is_plumb());
        if let Some(member) = along.filter(|_| ground.face_to_share(run) > Length::ZERO) {
            by_member.entry(member.id).or_default().push(run);
        }
    }
    let found = by_member.into_iter().filter_map(|(id, on_it)| {
        let member = frame.member(id)?;
        let (alone, together) = face(frame, member);
        let needed = on_it.iter().map(|run| ground.face_to_share(run)).max()?;
        let later = on_it.iter().filter(|run| run.partner < Some(run.piece)).count();
        let shared = later > 0 && later < on_it.len();
        (shared && together < needed).then(|| TooNarrow {
            member: id,
            width: alone,
            needed,
            runs: on_it.iter().map(|run| run.id).collect(),
        })
    });
    found.collect()
}

/// By face, then by place: the order of the runs on one member is not part of the law.
fn sorted(mut narrow: Vec<TooNarrow>) -> Vec<TooNarrow> {
    for one in &mut narrow {
        one.runs.sort_unstable();
    }
    narrow
}

#[test]
fn what_is_too_narrow_to_share_is_told() {
    let seen = Cell::new(0);
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let frame = ground.frame.with(&added);
        let runs = edges(&ground.house, &frame, &ground.layout);
        let site = Site::new(&ground.house, &frame).ok_or("no site")?;
        let (ours, theirs) = (
            narrow(ground, &frame, &runs),
            too_narrow(&site, &ground.layout, &runs),
        );
        let (ours, theirs) = (sorted(ours), sorted(theirs));
        if ours != theirs {
            return Err(format!("{theirs:?}, by the slow way {ours:?}"));
        }
        let findings = narrow_members(&site, &ground.layout, &runs);
        if findings.len() != ours.len() {
            return Err(format!("{} findings of {} members", findings.len(), ours.len()));
        }
        for (finding, narrow) in findings.iter().zip(&theirs) {
            let relied_on = narrow
                .runs
                .iter()
                .any(|run| !ground.segments_of(&runs[*run as usize]).is_empty());
            if finding.severity == Severity::Refuse && !relied_on {
                return Err(format!("{finding:?} where no segment is"));
            }
        }
        seen.set(seen.get() + ours.len());
        Ok(())
    });
    assert!(seen.get() > 50, "{seen:?}");
}

#[test]
fn a_narrow_stud_gets_a_second_one_where_there_is_room() {
    let seen = Cell::new(0);
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let backed = ground.frame.with(&added);
        let narrow = narrow(ground, &ground.frame, &ground.runs);
        for widened in &added.widened {
            if !narrow.iter().any(|one| one.member == widened.member) {
                return Err(format!("{widened:?} is wide enough as it is"));
            }
        }
        for one in &narrow {
            let member = ground.frame.member(one.member).ok_or("a member of the frame")?;
            // Ends of joists and trusses are not widened over a band; a plate has nothing beside it.
            let stands = !matches!(
                member.kind,
                MemberKind::JoistEnd | MemberKind::TrussEnd | MemberKind::TrussWeb | MemberKind::Block
            );
            let may = member.axis == Axis::Vertical && member.nailable && stands;
            let widened = added.widened.iter().find(|widened| widened.member == one.member);
            let bounds = member.face.bounds();
            let free = |width: Length| {
                [-width, bounds.width()].into_iter().any(|by| {
                    let place = Rect {
                        x0: bounds.x0 + by,
                        x1: bounds.x0 + by + width,
                        ..bounds
                    };
                    let foot = [place.x0, place.x1].map(|x| Point::new(x, place.y0 - Length::from_units(1)));
                    foot.into_iter().all(|at| stands_at(&backed, at))
                        && !backed
                            .members
                            .iter()
                            .any(|member| member.face.bounds().overlaps(&place))
                })
            };
            let deep = ground
                .house
                .stock
                .sticks
                .iter()
                .filter(|stick| stick.depth == member.depth);
            let thickest = deep.map(|stick| stick.thickness).max();
            match widened {
                None if may && thickest.is_some_and(free) => {
                    return Err(format!("{member:?} stays too narrow"));
                }
                Some(_) if !may => return Err(format!("{member:?} was widened")),
                Some(widened) => {
                    let touches = widened.rect.x0 == bounds.x1 || widened.rect.x1 == bounds.x0;
                    if !touches || widened.rect.y_span() != bounds.y_span() {
                        return Err(format!("{widened:?} does not stand along {member:?}"));
                    }
                    seen.set(seen.get() + 1);
                }
                None => {}
            }
        }
        Ok(())
    });
    assert!(seen.get() > 10, "{seen:?}");
}

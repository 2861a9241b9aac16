//! What is said of the nails of layouts that nobody chose, counted a second time.

use crate::ground::on_every_class;
use crate::nailed::nailed;
use crate::slow::{shown, written};
use edgenail::Length;
use edgenail::edges::Site;
use edgenail::finding::{FindingCode, Severity};
use edgenail::frame::MemberKind;
use edgenail::geometry::Point;
use edgenail::nailing::findings;
use std::cell::Cell;
use std::collections::BTreeSet;

#[test]
fn nails_without_a_place_nails_that_moved_and_nails_that_rust_are_told() {
    let seen = Cell::new([0; 3]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let site = Site::new(&ground.house, &nailed.frame).ok_or("no site")?;
        let told = findings(&site, &ground.layout, &nailed.nailing, &nailed.snags);
        let of = |code: FindingCode, severity: Severity| -> Vec<_> {
            let told = told
                .iter()
                .filter(|finding| finding.code == code && finding.severity == severity);
            told.collect()
        };
        let blocked = of(FindingCode::NailBlocked, Severity::Mend);
        let mark = |piece: u32| ground.layout.pieces[piece as usize].mark.clone();
        let places: Vec<_> = nailed
            .snags
            .iter()
            .map(|snag| (mark(snag.piece), Some((snag.at.x, snag.at.y))))
            .collect();
        if blocked
            .iter()
            .map(|finding| (finding.piece.clone(), finding.at))
            .collect::<Vec<_>>()
            != places
        {
            return Err(format!("{blocked:?} told of {:?}", nailed.snags));
        }
        let moved = of(FindingCode::NailBlocked, Severity::Advise);
        let rows = nailed.nailing.rows.iter().filter(|row| row.moved);
        let at: Vec<_> = rows.map(|row| row.position(row.first)).collect();
        let with_moved = nailed
            .frame
            .segments
            .iter()
            .filter(|place| at.iter().any(|at| place.rect.contains(*at)));
        let counts: Vec<_> = with_moved
            .map(|place| {
                at.iter()
                    .filter(|at| place.rect.contains(**at))
                    .collect::<Vec<_>>()
            })
            .collect();
        let of_segments: Vec<_> = counts
            .iter()
            .map(|at| {
                let word = if at.len() == 1 { "nail" } else { "nails" };
                (Some((at[0].x, at[0].y)), format!("{} {word} moved", at.len()))
            })
            .collect();
        let told_of: Vec<_> = moved
            .iter()
            .map(|finding| (finding.at, written(&finding.found)))
            .collect();
        if told_of != of_segments {
            return Err(format!("{told_of:?} told of {of_segments:?}"));
        }
        let rusts = |row: &&edgenail::nailing::NailRow| {
            let member = nailed.frame.member(row.member);
            let coating = ground.house.stock.nails[row.nail as usize].coating;
            member.is_some_and(|member| member.treated)
                && !ground.practice().treated_coatings.contains(&coating)
        };
        let members: BTreeSet<_> = nailed
            .nailing
            .rows
            .iter()
            .filter(rusts)
            .map(|row| row.member)
            .collect();
        let rust = of(FindingCode::NoCorrosionResistantNail, Severity::Refuse);
        if rust.len() != members.len() {
            return Err(format!("{rust:?} told of {members:?}"));
        }
        seen.set([
            seen.get()[0] + blocked.len(),
            seen.get()[1] + moved.len(),
            seen.get()[2] + rust.len(),
        ]);
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 5), "{seen:?}");
}

#[test]
fn a_plate_of_a_segment_without_a_row_over_it_is_told() {
    let seen = Cell::new([0; 2]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let site = Site::new(&ground.house, &nailed.frame).ok_or("no site")?;
        let told = findings(&site, &ground.layout, &nailed.nailing, &nailed.snags);
        let mut expected = Vec::new();
        for place in &nailed.frame.segments {
            let storey = &nailed.frame.storeys[place.storey as usize];
            for plate in nailed
                .frame
                .members
                .iter()
                .filter(|member| member.storey == Some(place.storey))
            {
                let bounds = plate.face.bounds();
                let code = match plate.kind {
                    MemberKind::BottomPlate if bounds.y0 == storey.base => FindingCode::BottomPlateBare,
                    MemberKind::TopPlate if bounds.y0 == storey.topmost_from => FindingCode::TopPlateBare,
                    _ => continue,
                };
                let Some(shared) = bounds.intersect(&place.rect) else {
                    continue;
                };
                let on_it =
                    |row: &&edgenail::nailing::NailRow| row.member == plate.id && row.from.y == row.to.y;
                let mut over = nailed.nailing.rows.iter().filter(on_it);
                // One level row that reaches over some of what the segment has of the plate.
                let covered = over.any(|row| {
                    let (a, b) = (row.position(row.first).x, row.position(row.last).x);
                    a.min(b) <= shared.x1 && shared.x0 <= a.max(b)
                });
                if !covered {
                    expected.push((code as u32, shared.x0, shared.y0));
                }
            }
        }
        let bare = told.iter().filter(|finding| {
            matches!(
                finding.code,
                FindingCode::BottomPlateBare | FindingCode::TopPlateBare
            )
        });
        let mut found: Vec<(u32, Length, Length)> = bare
            .filter_map(|finding| Some((finding.code as u32, finding.at?.0, finding.at?.1)))
            .collect();
        found.sort_unstable();
        expected.sort_unstable();
        if found != expected {
            return Err(format!("{found:?} told of {expected:?}"));
        }
        seen.set([
            seen.get()[0] + found.len(),
            seen.get()[1] + nailed.frame.segments.len(),
        ]);
        Ok(())
    });
    assert!(seen.get()[0] > 10 && seen.get()[1] > 50, "{seen:?}");
}

/// Panels of 7/16 or less on studs 24 in. apart or more take field nails at 6 in. (SDPWS 2008, section 4.3.7.1, from
/// memory); wider ones are refused where a segment relies on them, and marked elsewhere.
#[test]
fn field_nails_too_wide_for_thin_panels_on_wide_studs_are_told() {
    let seen = Cell::new([0; 3]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let site = Site::new(&ground.house, &nailed.frame).ok_or("no site")?;
        let told = findings(&site, &ground.layout, &nailed.nailing, &nailed.snags);
        let told: Vec<_> = told
            .iter()
            .filter(|finding| finding.code == FindingCode::FieldSpacing)
            .map(|finding| {
                let words = (written(&finding.found), written(&finding.allowed));
                (finding.severity, finding.at, words, written(&finding.message))
            })
            .collect();
        let mut expected = Vec::new();
        for storey in &nailed.frame.storeys {
            for relied_on in [true, false] {
                let pieces = ground.layout.pieces.iter().filter(|piece| {
                    let bounds = piece.outline.bounds();
                    let (low, high) = (Point::new(bounds.x0, bounds.y0), Point::new(bounds.x1, bounds.y1));
                    let wide = ground.field_spacing(low, high) > Length::inches(6);
                    let on_studs = storey.studs_from < bounds.y1 && bounds.y0 < storey.studs_to;
                    wide && on_studs && ground.segments_on(low, high).is_empty() != relied_on
                });
                let marks: Vec<&str> = pieces.clone().map(|piece| piece.mark.as_str()).collect();
                let Some(first) = pieces
                    .clone()
                    .next()
                    .filter(|_| storey.spacing >= Length::inches(24))
                else {
                    continue;
                };
                let bounds = first.outline.bounds();
                let severity = if relied_on {
                    Severity::Refuse
                } else {
                    Severity::Advise
                };
                expected.push((severity, Some((bounds.x0, bounds.y0)), marks.len()));
            }
        }
        let short: Vec<_> = told.iter().map(|(severity, at, ..)| (*severity, *at)).collect();
        if short
            != expected
                .iter()
                .map(|(severity, at, _)| (*severity, *at))
                .collect::<Vec<_>>()
        {
            return Err(format!("{told:?} told of {expected:?}"));
        }
        let words = (shown(Length::inches(12)), shown(Length::inches(6)));
        if let Some(wrong) = told.iter().find(|one| one.2 != words) {
            return Err(format!("{wrong:?} is not {words:?}"));
        }
        let mut counts = seen.get();
        for (severity, ..) in expected {
            counts[usize::from(severity == Severity::Refuse)] += 1;
        }
        counts[2] += usize::from(told.is_empty());
        seen.set(counts);
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 5), "{seen:?}");
}

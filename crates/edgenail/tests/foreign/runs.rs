//! What each run says of its stretch of edge, told a second time from points of the panels, the members and the holes.

use crate::edge_shape::{along as along_edge, depths, ends, is_sloped};
use crate::ground::{Ground, on_every_class};
use edgenail::Length;
use edgenail::edges::{EdgeRun, Side, Support, Unsupported};
use edgenail::frame::Axis;
use edgenail::geometry::{Point, Rect};
use edgenail::house::{BlockedEdges, Top};
use edgenail::layout::Joint;
use std::cell::Cell;

/// The point so far out of the panel from a place on a level or plumb edge.
fn outside(run: &EdgeRun, along: Length, by: Length) -> Point {
    match run.side {
        Side::Left => Point::new(run.from.x - by, along),
        Side::Right => Point::new(run.from.x + by, along),
        Side::Bottom => Point::new(along, run.from.y - by),
        Side::Top => Point::new(along, run.from.y + by),
    }
}

/// What holds a place on an edge, by looking at every member: inset and wood of the nail line, or why there is none.
fn told(ground: &Ground, run: &EdgeRun, along: Length, seam: bool) -> Result<(Length, Length), Unsupported> {
    let practice = ground.practice();
    let (least, most) = (practice.edge_distance_least, practice.edge_distance_most);
    let (wood, free) = (practice.member_edge_least, practice.free_edge_most);
    let (mut on, mut past, mut under) = (None, None, false);
    let mut why = Unsupported::NoMember;
    for member in &ground.frame.members {
        let bounds = member.face.bounds();
        let ((near, far), (lo, hi)) = (depths(run, &bounds), along_edge(run, &bounds));
        if along < lo || hi < along {
            continue;
        }
        under |= near <= Length::ZERO && Length::ZERO <= far;
        let out_of_reach = near >= most && (seam || near >= free);
        if far <= Length::ZERO || out_of_reach {
            continue;
        }
        if !member.nailable {
            why = why.max(Unsupported::NotNailable);
            continue;
        }
        // The nail line has wood on both sides of it, and keeps its distance from the panel's edge.
        let fits = |inset: Length| inset - wood >= near && inset + wood <= far && inset >= least;
        let nearest = least.max(near + wood);
        // A sheet that runs past its member is nailed in the middle of what it covers, or closer to its edge if too
        // much would hang free.
        let middle = (near + far).half().min(free).max(nearest);
        let offer = |inset: Length| Some((inset, member.id, (inset - near).min(far - inset)));
        if fits(nearest) && nearest <= most {
            let mine = offer(nearest);
            on = if on.is_none() || mine < on { mine } else { on };
        }
        let runs_past = !seam && near > Length::ZERO;
        if runs_past && fits(middle) && middle <= free {
            let mine = offer(middle);
            past = if past.is_none() || mine < past { mine } else { past };
        }
        let holds = (fits(nearest) && nearest <= most) || (runs_past && fits(middle) && middle <= free);
        if !holds {
            why = why.max(if runs_past {
                Unsupported::HangsFree
            } else {
                Unsupported::TooLittleWood
            });
        }
    }
    let best = if under { on.or(past) } else { past.or(on) };
    best.map(|(inset, _, wood)| (inset, wood)).ok_or(why)
}

/// A member that does not fill the rectangle around it comes near the edge.
fn near_slope(ground: &Ground, run: &EdgeRun) -> bool {
    let around = Rect::from_spans(
        edgenail::geometry::Interval::new(run.from.x, run.to.x),
        edgenail::geometry::Interval::new(run.from.y, run.to.y),
    )
    .grown(Length::inches(20));
    let mut members = ground.frame.members.iter();
    members.any(|member| member.axis == Axis::Sloped && member.face.bounds().overlaps(&around))
}

fn is_seam(ground: &Ground, run: &EdgeRun) -> bool {
    let mut same = ground
        .runs
        .iter()
        .filter(|other| (other.piece, other.edge) == (run.piece, run.edge));
    same.any(|other| other.partner.is_some())
}

#[test]
fn a_run_names_what_holds_it_or_why_nothing_does() {
    let seen = Cell::new([0; 6]);
    on_every_class(|ground| {
        for run in ground
            .runs
            .iter()
            .filter(|run| !is_sloped(run) && !near_slope(ground, run))
        {
            let (lo, hi) = ends(run);
            let told = told(ground, run, (lo + hi).half(), is_seam(ground, run));
            let said = match run.support {
                Support::Member { .. } => Ok((run.inset.unwrap_or_default(), run.wood.unwrap_or_default())),
                Support::Nothing { reason } => Err(reason),
            };
            if told != said {
                return Err(format!("{run:?} by points {told:?}"));
            }
            let mut counts = seen.get();
            counts[match said {
                Ok(_) if is_seam(ground, run) => 0,
                Ok(_) => 1,
                Err(Unsupported::NoMember) => 2,
                Err(Unsupported::TooLittleWood) => 3,
                Err(Unsupported::NotNailable) => 4,
                Err(Unsupported::HangsFree) => 5,
            }] += 1;
            seen.set(counts);
        }
        Ok(())
    });
    // Sheets seldom hang free beyond a member here.
    assert!(seen.get()[..5].iter().all(|count| *count > 50), "{seen:?}");
}

#[test]
fn a_run_names_the_panel_the_opening_or_the_air_that_it_meets() {
    let seen = Cell::new([0; 4]);
    on_every_class(|ground| {
        let practice = ground.practice();
        let reach = (practice.gap.max(practice.rim_gap) * 2).max(practice.edge_distance_most);
        for run in ground.runs.iter().filter(|run| !is_sloped(run)) {
            let (lo, hi) = ends(run);
            let middle = (lo + hi).half();
            // Panels no further away than the widest joint, by points 1/32 in. apart.
            let mut steps = (0..).map(|step| Length::sixteenths(step).half() + Length::from_units(1));
            let across = steps
                .by_ref()
                .take_while(|by| *by <= reach + Length::from_units(1))
                .find_map(|by| {
                    let at = outside(run, middle, by);
                    let mut others = ground.layout.pieces.iter().filter(|piece| piece.id != run.piece);
                    others
                        .find(|piece| piece.outline.contains(at))
                        .map(|piece| piece.id)
                });
            if across != run.partner {
                return Err(format!("{run:?} meets {across:?}"));
            }
            let back = practice.opening_cut_back.max(practice.gap);
            let in_hole = |rect: &Rect| {
                (0..=16).any(|part| {
                    let by = Length::from_units(back.units() * part / 16);
                    let along = [lo, middle, hi].map(|at| outside(run, at, by));
                    let reached = Rect::from_spans(rect.x_span(), rect.y_span());
                    along.into_iter().any(|at| {
                        let deep = outside(run, if run.side.is_plumb() { at.y } else { at.x }, by + back);
                        reached.grown(back).contains(at) && reached.contains(deep)
                    })
                })
            };
            let opening = ground
                .frame
                .openings
                .iter()
                .position(|place| in_hole(&place.rect));
            let opening = opening
                .filter(|_| run.partner.is_none())
                .and_then(|at| u32::try_from(at).ok());
            if run.opening.is_some() && run.opening != opening {
                return Err(format!("{run:?} lies along opening {opening:?}"));
            }
            // An opening that the edge runs along, no further off than sheets are cut back, is named.
            let beside = |rect: &Rect| {
                let (off, (a, b)) = match run.side {
                    Side::Left => (run.from.x - rect.x1, (rect.y0, rect.y1)),
                    Side::Right => (rect.x0 - run.from.x, (rect.y0, rect.y1)),
                    Side::Bottom => (run.from.y - rect.y1, (rect.x0, rect.x1)),
                    Side::Top => (rect.y0 - run.from.y, (rect.x0, rect.x1)),
                };
                Length::ZERO <= off && off <= back && lo < b && a < hi
            };
            let along = ground.frame.openings.iter().any(|place| beside(&place.rect));
            if along && run.partner.is_none() && run.opening.is_none() {
                return Err(format!("{run:?} runs along an opening"));
            }
            let rim = ground.layout.pieces[run.piece as usize].sides.at(run.side) == Joint::RimSeam;
            let joint = match (run.partner, run.opening) {
                (Some(_), _) if rim => Joint::RimSeam,
                (Some(_), _) => Joint::Seam,
                (None, Some(_)) => Joint::Opening,
                (None, None) => Joint::End,
            };
            // Places without sheathing are joints of openings too; generated walls have none.
            if joint != run.joint {
                return Err(format!("{run:?} is no {joint:?}"));
            }
            let mut counts = seen.get();
            counts[match joint {
                Joint::Seam => 0,
                Joint::RimSeam => 1,
                Joint::Opening => 2,
                Joint::End => 3,
            }] += 1;
            seen.set(counts);
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 50), "{seen:?}");
}

#[test]
fn a_bare_run_tells_its_bay_and_whether_it_has_to_be_backed() {
    let seen = Cell::new([0; 4]);
    on_every_class(|ground| {
        let practice = ground.practice();
        let bare = ground.runs.iter().filter(|run| run.member().is_none());
        for run in bare.filter(|run| !is_sloped(run) && !near_slope(ground, run)) {
            let (lo, hi) = ends(run);
            let seam = is_seam(ground, run);
            let step = Length::sixteenths(4);
            let is_bare = |along: Length| told(ground, run, along, seam).is_err();
            // A plumb edge is looked along as far as it goes, a level one as far as the widest bay beyond its ends.
            let own = ground
                .runs
                .iter()
                .filter(|other| (other.piece, other.edge) == (run.piece, run.edge));
            let (first, last) = own.fold((lo, hi), |(a, b), other| {
                (a.min(ends(other).0), b.max(ends(other).1))
            });
            let beyond = if run.side.is_plumb() {
                Length::ZERO
            } else {
                practice.clear_bay_most
            };
            let (mut from, mut to) = ((lo + hi).half(), (lo + hi).half());
            while from > first - beyond && is_bare(from - step) {
                from -= step;
            }
            while to < last + beyond && is_bare(to + step) {
                to += step;
            }
            let (from, to) = (from.max(first - beyond), to.min(last + beyond));
            // Beyond the last stud of the wall there is no bay: what reaches there hangs free over its own length.
            let wall_ends = ground.frame.lower.span();
            let mut stretch = (lo, hi);
            let mut same: Vec<&EdgeRun> = ground
                .runs
                .iter()
                .filter(|other| (other.piece, other.edge) == (run.piece, run.edge))
                .collect();
            same.sort_by_key(|other| ends(other).0);
            for other in same.iter().filter(|other| other.support == run.support) {
                stretch.1 = if ends(other).0 == stretch.1 {
                    ends(other).1
                } else {
                    stretch.1
                };
            }
            for other in same.iter().rev().filter(|other| other.support == run.support) {
                stretch.0 = if ends(other).1 == stretch.0 {
                    ends(other).0
                } else {
                    stretch.0
                };
            }
            let past_end = stretch.0 <= wall_ends.lo + practice.end_short
                || wall_ends.hi - practice.end_short <= stretch.1;
            let bay = run.bay.unwrap_or_default();
            let told = if past_end && !run.side.is_plumb() {
                stretch.1 - stretch.0
            } else {
                to - from
            };
            if (bay - told).abs() > step * 2 {
                return Err(format!("{run:?} lies in a bay of {told}"));
            }
            let wall = &ground.house.walls[ground.frame.wall as usize];
            let at = Point::new((run.from.x + run.to.x).half(), (run.from.y + run.to.y).half());
            let hangs = ground
                .frame
                .sections
                .iter()
                .zip(&wall.sections)
                .any(|(place, section)| {
                    let open = matches!(section.top, Top::EaveTrusses(_) | Top::Flat);
                    place.x.contains(at.x) && (at.y <= place.base || (open && place.top <= at.y))
                });
            let wanted = run.side.is_plumb()
                || run.joint == Joint::Opening
                || ground.segments_of(run).iter().any(|segment| segment.blocked)
                || match practice.blocked_edges {
                    BlockedEdges::All => true,
                    BlockedEdges::WideBays => bay > practice.clear_bay_most,
                    BlockedEdges::SegmentsOnly => false,
                };
            let must = bay > practice.free_edge_most && wanted && !(run.joint == Joint::End && hangs);
            if run.must_back != must {
                return Err(format!("{run:?} has to be backed: {must}"));
            }
            let mut counts = seen.get();
            counts[usize::from(must) + 2 * usize::from(run.side.is_plumb())] += 1;
            seen.set(counts);
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 50), "{seen:?}");
}

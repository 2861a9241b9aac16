//! Layouts that nobody would choose, for tests: levels and seams anywhere.

use super::trial::{Trial, Under, inch};
use super::{BandSpec, LayoutSpec, Running};
use crate::geometry::Rect;
use crate::house::{BlockedEdges, Pitch, Rake, RakeBuild, RimKind, Top};
use crate::length::Length;
use proptest::prelude::*;

/// A wall and a layout that its frame was not made for. Without a rake every length is a multiple of 1/80 in.
pub(crate) fn foreign() -> impl Strategy<Value = (Trial, LayoutSpec)> {
    let wall = (96i64..360, 0i64..16, 0usize..4, any::<bool>());
    let holes = proptest::collection::vec((0i64..40, 18i64..60, 20i64..50), 0..3);
    let practice = (0usize..3, any::<bool>(), any::<bool>(), any::<bool>());
    let segment = proptest::option::of((0i64..60, 30i64..60));
    let levels = proptest::collection::vec(14i64..60, 0..3);
    let seams = proptest::collection::vec(proptest::collection::vec((9i64..90, 0i64..16), 1..30), 3);
    let ends = (0usize..4, any::<bool>());
    let setting = (
        0usize..4,
        any::<bool>(),
        proptest::option::of((1i64..13, 1i64..13, 0i64..5, any::<bool>())),
    );
    (wall, holes, practice, segment, levels, seams, ends, setting).prop_map(
        |(wall, holes, practice, segment, levels, seams, ends, (band, treated, rake))| {
            let mut trial = trial(wall, &holes, practice, segment);
            trial.band = [
                Under::Nothing,
                Under::OpenBand,
                Under::BandWithRim(RimKind::Sawn),
                Under::BandWithRim(RimKind::Engineered),
            ][band];
            trial.treated = treated;
            if let Some(rake) = rake {
                trial.roof = Top::Rake(raked(&trial, rake));
            }
            let spec = spec(&trial, &levels, &seams, ends);
            (trial, spec)
        },
    )
}

/// A ridge at a quarter of the wall's length, with slopes of so much in twelve that end above the plates.
fn raked(trial: &Trial, (left, right, quarter, plates): (i64, i64, i64, bool)) -> Rake {
    let pitch = |rise: i64| Pitch {
        rise: inch(rise, 0),
        run: inch(12, 0),
    };
    let ridge_x = Length::from_units(trial.length.units() * quarter / 4);
    let fall = |run: Length, rise: i64| Length::from_units(run.units() * rise / 12 + 1);
    let peak = fall(ridge_x, left).max(fall(trial.length - ridge_x, right)) + inch(6, 0);
    let build = if plates {
        RakeBuild::RakedPlates
    } else {
        RakeBuild::Ladder
    };
    Rake {
        ridge_x,
        peak,
        left: pitch(left),
        right: pitch(right),
        build,
    }
}

fn trial(
    (feet, sixteenths, spacing, tall): (i64, i64, usize, bool),
    holes: &[(i64, i64, i64)],
    (blocked, gap, flat, staggered): (usize, bool, bool, bool),
    segment: Option<(i64, i64)>,
) -> Trial {
    let fifth = Length::from_units(Length::PER_INCH / 5);
    let spacing = [inch(12, 0), inch(16, 0), inch(19, 0) + fifth, inch(24, 0)][spacing];
    let stud = if tall { inch(104, 10) } else { inch(92, 10) };
    let mut trial = Trial::new(
        inch(feet, sixteenths),
        stud,
        spacing,
        &[(Length::feet(12), Length::feet(40))],
    );
    let mut left = inch(12, 0);
    for &(before, width, height) in holes {
        let rect = Rect::from_size(
            left + inch(before, 0),
            inch(30, 0),
            inch(width, 0),
            inch(height, 0),
        );
        if rect.x1 + inch(12, 0) < trial.length {
            trial.openings.push(rect);
            left = rect.x1 + inch(8, 0);
        }
    }
    trial.practice.blocked_edges = [
        BlockedEdges::All,
        BlockedEdges::WideBays,
        BlockedEdges::SegmentsOnly,
    ][blocked];
    trial.practice.gap = if gap { inch(0, 2) } else { Length::ZERO };
    trial.practice.blocks_flat = flat;
    trial.practice.staggered_rows = staggered;
    if let Some((from, width)) = segment {
        trial.segment(
            inch(from, 0),
            inch(from + width, 0).min(trial.length),
            inch(4, 0),
            inch(12, 0),
        );
    }
    trial
}

fn spec(
    trial: &Trial,
    levels: &[i64],
    seams: &[Vec<(i64, i64)>],
    (reach, to_top): (usize, bool),
) -> LayoutSpec {
    let reach = [inch(0, 0), inch(0, -8), inch(0, 8), inch(1, 0)][reach];
    let mut y = -reach;
    let mut heights = vec![y];
    for level in levels {
        y += inch(*level, 0);
        if y + inch(8, 0) < trial.top() {
            heights.push(y);
        }
    }
    heights.push(if to_top {
        trial.top()
    } else {
        trial.top() - inch(0, 12)
    });
    let bands = heights
        .windows(2)
        .zip(seams)
        .enumerate()
        .map(|(index, (level, steps))| {
            let mut x = Length::ZERO;
            let mut seams = Vec::new();
            for &(whole, sixteenths) in steps {
                x += inch(whole, sixteenths);
                if x + inch(3, 0) < trial.length {
                    seams.push(x);
                }
            }
            let sheets = vec![0; seams.len() + 1];
            let running = if index % 2 == 0 {
                Running::Upright
            } else {
                Running::Flat
            };
            BandSpec {
                y0: level[0],
                y1: level[1],
                running,
                seams,
                sheets,
            }
        });
    LayoutSpec::Bands {
        reach,
        bands: bands.collect(),
    }
}

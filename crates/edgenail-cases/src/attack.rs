//! What the fuzz targets and the regression tests do with bytes. A broken law panics, with the bytes at hand.

#![expect(
    clippy::panic,
    clippy::missing_panics_doc,
    reason = "a broken law has to end the run"
)]

use edgenail::generate::house_json;
use edgenail::house::House;
use edgenail::layout::{LayoutSpec, PieceSpec, Running};
use edgenail::length::Length;
use edgenail::{evaluate, frame, geometry::Rect, plan_bytes, read_house};
use std::sync::atomic::{AtomicU64, Ordering};

/// How many spoiled houses there were, and how many of them reached nailing.
pub static SPOILED: [AtomicU64; 2] = [AtomicU64::new(0), AtomicU64::new(0)];

/// Any bytes into the reader: a house or issues, each issue with an allowed value and a path that is a pointer.
pub fn read(bytes: &[u8]) {
    match read_house(bytes) {
        Ok(_) => {}
        Err(issues) => {
            assert!(!issues.is_empty(), "refused without an issue");
            for issue in issues {
                assert!(issue.path.is_empty() || issue.path.starts_with('/'), "{issue:?}");
                assert!(!issue.message.is_empty(), "{issue:?}");
            }
        }
    }
}

/// A generated house with one piece of its text replaced: an error or a plan that keeps the laws.
pub fn spoiled(bytes: &[u8]) {
    let Some((seed, rest)) = bytes.split_first_chunk::<2>() else {
        return;
    };
    let (house, _) = house_json(u64::from(u16::from_le_bytes(*seed)));
    let mut house = house.into_bytes();
    if let Some((place, spoil)) = rest.split_first_chunk::<2>() {
        let digits: Vec<usize> = house
            .iter()
            .enumerate()
            .filter(|(_, byte)| byte.is_ascii_digit())
            .map(|(at, _)| at)
            .collect();
        let place = usize::from(u16::from_le_bytes(*place)) % digits.len().max(1);
        if let Some(at) = digits.get(place) {
            house.splice(
                *at..=*at,
                spoil
                    .iter()
                    .take(6)
                    .copied()
                    .filter(|byte| (b' '..=b'~').contains(byte) && *byte != b'"' && *byte != b'\\'),
            );
        }
    }
    SPOILED[0].fetch_add(1, Ordering::Relaxed);
    if let Ok(plan) = plan_bytes(&house) {
        SPOILED[1].fetch_add(1, Ordering::Relaxed);
        for wall in plan.walls() {
            for piece in &wall.built.layout.pieces {
                let runs = wall.built.runs.iter().filter(|run| run.piece == piece.id);
                let around: Length = runs.map(|run| run.length).sum();
                assert_eq!(
                    around,
                    piece.outline.perimeter(),
                    "{}: runs of {} do not go round it",
                    wall.name,
                    piece.mark
                );
            }
            for row in &wall.built.nailing.rows {
                assert!(
                    wall.built
                        .backed
                        .member(row.member)
                        .is_some_and(|member| member.nailable),
                    "a nail into nothing"
                );
            }
        }
        let again = plan_bytes(&house).map(|plan| plan.json()).unwrap_or_default();
        assert_eq!(plan.json(), again, "two plans of one house differ");
    }
    let (asked, reached) = (
        SPOILED[0].load(Ordering::Relaxed),
        SPOILED[1].load(Ordering::Relaxed),
    );
    if asked.is_power_of_two() && asked >= 1024 {
        eprintln!("spoiled: {reached} of {asked} houses reached nailing");
    }
}

/// Panels from bytes on a generated wall: they are judged, never trusted.
pub fn foreign(bytes: &[u8]) {
    let Some((seed, rest)) = bytes.split_first_chunk::<2>() else {
        return;
    };
    let (text, _) = house_json(u64::from(u16::from_le_bytes(*seed)));
    let Ok((house, _)) = read_house(text.as_bytes()) else {
        panic!("a generated house is refused")
    };
    let Some(frame) = frame::frame_wall(&house, 0) else {
        panic!("a generated wall has no frame")
    };
    let pieces: Vec<PieceSpec> = rest
        .chunks_exact(9)
        .take(40)
        .map(|chunk| panel(&house, chunk))
        .collect();
    let built = evaluate::evaluate(&house, &frame, LayoutSpec::Pieces(pieces));
    for piece in &built.layout.pieces {
        let around: Length = built
            .runs
            .iter()
            .filter(|run| run.piece == piece.id)
            .map(|run| run.length)
            .sum();
        assert_eq!(
            around,
            piece.outline.perimeter(),
            "runs of {} do not go round it",
            piece.mark
        );
    }
    for run in built.runs.iter().filter(|run| run.lacks_backing()) {
        let told = built
            .blocking
            .impossible
            .iter()
            .any(|impossible| impossible.run < u32::MAX)
            || !built.findings.is_empty();
        assert!(told, "an edge without backing is not reported: {run:?}");
    }
}

fn panel(house: &House, chunk: &[u8]) -> PieceSpec {
    let number = |at: usize| i64::from(u16::from_le_bytes([chunk[at], chunk[at + 1]]));
    let rect = Rect::from_size(
        Length::sixteenths(number(0) - 500),
        Length::sixteenths(number(2) % 4000 - 200),
        Length::sixteenths(number(4) % 1600 + 1),
        Length::sixteenths(number(6) % 2000 + 1),
    );
    let sheets = u32::try_from(house.stock.sheets.len()).unwrap_or(1).max(1);
    let running = if chunk[8] & 1 == 0 {
        Running::Upright
    } else {
        Running::Flat
    };
    PieceSpec {
        rect,
        running,
        sheet: u32::from(chunk[8] >> 1) % sheets,
    }
}

//! Searches against enumeration: every layout of a small wall goes through the public stages, its cost is read off the
//! take-off, what a framer would rather not have is counted by hand, and the search has to find the cheapest.
//!
//! Nothing of `search` and `price` is used but what the search chose. Minutes of judgement are the defaults of
//! `docs/FIELDS.md`, common practice without a source or invented.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a wall that cannot be planned fails the test"
)]
#![allow(missing_docs, reason = "a test")]

use edgenail::evaluate::{Evaluated, evaluate};
use edgenail::finding::{FindingCode, Severity};
use edgenail::frame::{Axis, Frame, frame_wall};
use edgenail::house::House;
use edgenail::layout::{BandSpec, LayoutSpec, Running};
use edgenail::proof::Proof;
use edgenail::takeoff::{BuiltWall, takeoff};
use edgenail::{Amount, Length, Plan, plan_json, read_house};

/// A wall on a floor, so high that one sheet covers it from plate to plate, or two lie over each other.
fn wall(length: &str, openings: &str, practice: &str) -> String {
    format!(
        r#"{{"name": "h", "walls": [{{"name": "w", "length": "{length}", "sections": [{{"bottom": {{"bears": "floor"}},
        "stack": [{{"kind": "storey", "name": "first", "stud": {{"width": "1 1/2", "depth": "3 1/2", "length": "91 3/8"}},
        "openings": [{openings}]}}]}}]}}],
        "practice": {{"datums": ["flush"], "breaks": ["47 15/16"], "effort_most": 100000000 {practice}}},
        "stock": {{"sheets": [{{"name": "4x8", "width": "47 7/8", "length": "95 7/8", "category": "7/16", "price": "16"}}]}}}}"#
    )
}

/// Refused, to mend, cost, pieces, flat courses, seams.
type Rank = (usize, usize, Amount, usize, usize, Vec<Length>);

/// A wall with what its search found.
struct Trial {
    house: House,
    frame: Frame,
    plan: Plan,
}

impl Trial {
    fn new(text: &str) -> Self {
        let (house, _) = read_house(text.as_bytes()).unwrap();
        let frame = frame_wall(&house, 0).unwrap();
        let plan = plan_json(text).unwrap_or_else(|error| panic!("{error}"));
        Self { house, frame, plan }
    }

    /// The middle of every stud, the ends left out.
    fn supports(&self) -> Vec<Length> {
        let ends = self.frame.lower.span();
        let studs = self
            .frame
            .members
            .iter()
            .filter(|member| member.axis == Axis::Vertical);
        let mut middles: Vec<Length> = studs
            .map(|member| {
                let x = member.face.bounds().x_span();
                (x.lo + x.hi).half()
            })
            .filter(|x| ends.lo + Length::inches(3) <= *x && *x + Length::inches(3) <= ends.hi)
            .collect();
        middles.sort_unstable();
        middles.dedup();
        middles
    }

    /// What is wrong with a layout, what it costs, and what decides between layouts that cost the same.
    fn rank(&self, built: &Evaluated) -> Rank {
        let wall = BuiltWall {
            wall: 0,
            frame: &self.frame,
            layout: &built.layout,
            blocking: &built.blocking,
            nailing: &built.nailing,
        };
        let charged = takeoff(&self.house, &[wall], self.plan.cutting()).charged("w");
        let count = |severity| {
            let found = built.findings.iter();
            let counts =
                found.filter(|found| found.severity == severity && found.code != FindingCode::NailBlocked);
            counts.count()
        };
        let bands = &built.layout.bands;
        let flat = bands.iter().filter(|band| band.running == Running::Flat);
        (
            count(Severity::Refuse),
            count(Severity::Mend),
            charged + self.judged(built),
            built.layout.pieces.len(),
            flat.count(),
            bands
                .iter()
                .flat_map(|band| band.seams.iter().map(|x| -*x))
                .collect(),
        )
    }

    /// What a framer would rather not have, at 0.75 a minute: seams at corners of openings 15 minutes, pieces under 12
    /// and under 24 in. 20 and 5, seams of flat courses offset by other than half a sheet 3.
    fn judged(&self, built: &Evaluated) -> Amount {
        let mut minutes = 0;
        for piece in &built.layout.pieces {
            let blank = piece.blank();
            let narrow = blank.width().min(blank.height()) + Length::sixteenths(4);
            let over = self.frame.openings.iter().any(|opening| {
                opening.rect.x_span().overlaps(blank.x_span())
                    && opening.rect.x0 <= blank.x0
                    && blank.x1 <= opening.rect.x1
            });
            minutes += match narrow {
                _ if over => 0,
                narrow if narrow < Length::inches(12) => 20,
                narrow if narrow < Length::inches(24) => 5,
                _ => 0,
            };
        }
        for band in &built.layout.bands {
            for seam in &band.seams {
                for opening in &self.frame.openings {
                    let near = [opening.rect.x0, opening.rect.x1]
                        .iter()
                        .any(|side| (*side - *seam).abs() < Length::inches(16));
                    let outside = *seam <= opening.rect.x0 || opening.rect.x1 <= *seam;
                    let ends = [opening.rect.y0, opening.rect.y1];
                    let corners = ends.iter().filter(|y| band.y0 < **y && **y < band.y1);
                    minutes += 15 * i32::try_from(corners.count()).unwrap() * i32::from(near && outside);
                }
            }
        }
        for pair in built
            .layout
            .bands
            .windows(2)
            .filter(|pair| pair.iter().all(|band| band.running == Running::Flat))
        {
            for seam in &pair[1].seams {
                let nearest = pair[0].seams.iter().map(|below| (*below - *seam).abs()).min();
                let uneven = nearest
                    .is_some_and(|nearest| (nearest - Length::inches(48)).abs() > Length::sixteenths(2));
                minutes += 3 * i32::from(uneven);
            }
        }
        Amount::whole(minutes).scaled(3, 4).unwrap()
    }

    /// The best of these layouts, and how many there are.
    fn best(&self, specs: impl Iterator<Item = Vec<BandSpec>>) -> (Evaluated, usize) {
        let mut best: Option<(Rank, Evaluated)> = None;
        let mut count = 0;
        for bands in specs {
            count += 1;
            let spec = LayoutSpec::Bands {
                reach: Length::ZERO,
                bands,
            };
            let built = evaluate(&self.house, &self.frame, spec);
            let rank = self.rank(&built);
            if best.as_ref().is_none_or(|(other, _)| rank < *other) {
                best = Some((rank, built));
            }
        }
        (best.unwrap().1, count)
    }

    /// Nothing that enumeration finds is better than what the search found and says is proven; gives back what each costs.
    fn agrees(&self, specs: impl Iterator<Item = Vec<BandSpec>>) -> (Amount, Amount) {
        let (enumerated, count) = self.best(specs);
        let wall = &self.plan.walls()[0];
        let (ours, best) = (self.rank(&wall.built), self.rank(&enumerated));
        assert!(count > 5, "only {count} layouts");
        assert_eq!(
            ours.2, wall.built.cost.total,
            "the cost is not what the take-off and judgement make of it"
        );
        let (before, after) = (
            (ours.0, ours.1, ours.2, ours.3, ours.4),
            (best.0, best.1, best.2, best.3, best.4),
        );
        assert!(
            before <= after,
            "{after:?} of {:?} is better than {before:?} of {:?}",
            enumerated.layout.bands,
            wall.built.layout.bands
        );
        assert_eq!((wall.proof.clone(), wall.bound), (Some(Proof::Proven), ours.2));
        (ours.2, best.2)
    }
}

/// Every choice of seams with strips no wider than a sheet and no narrower than the least strip, or three inches where
/// openings are.
fn seams(places: &[Length], end: Length, widest: Length, least: Length) -> Vec<Vec<Length>> {
    let mut found = Vec::new();
    let mut open = vec![Vec::new()];
    while let Some(seams) = open.pop() {
        let last = seams.last().copied().unwrap_or(Length::ZERO);
        let strip = |at: Length| least <= at - last && at - last <= widest;
        if strip(end) {
            found.push(seams.clone());
        }
        for at in places.iter().filter(|at| strip(**at)) {
            let mut more = seams.clone();
            more.push(*at);
            open.push(more);
        }
    }
    found
}

fn course(y: (Length, Length), running: Running, seams: &[Length]) -> BandSpec {
    BandSpec {
        y0: y.0,
        y1: y.1,
        running,
        seams: seams.to_vec(),
        sheets: vec![0; seams.len() + 1],
    }
}

/// The top of the wall, and where two flat courses meet.
const TOP: Length = Length::sixteenths(95 * 16 + 14);
const BREAK: Length = Length::sixteenths(47 * 16 + 15);

fn upright(trial: &Trial, places: &[Length], least: Length) -> Vec<Vec<BandSpec>> {
    let end = trial.frame.lower.span().hi;
    let widest = Length::inches(48) + Length::sixteenths(2);
    let all = seams(places, end, widest, least);
    all.iter()
        .map(|seams| vec![course((Length::ZERO, TOP), Running::Upright, seams)])
        .collect()
}

fn flat(trial: &Trial, places: &[Length], least: Length) -> Vec<Vec<BandSpec>> {
    let end = trial.frame.lower.span().hi;
    let widest = Length::inches(96) + Length::sixteenths(2);
    let all = seams(places, end, widest, least);
    let over = |below: &Vec<Length>| {
        let lower = course((Length::ZERO, BREAK), Running::Flat, below);
        all.iter()
            .map(move |above| vec![lower.clone(), course((BREAK, TOP), Running::Flat, above)])
            .collect::<Vec<_>>()
    };
    all.iter().flat_map(over).collect()
}

#[test]
fn short_walls_with_seams_wherever_a_stud_carries_them() {
    for (length, running) in [
        ("8'", "either"),
        ("7' 4", "upright"),
        ("6' 5", "either"),
        ("100", "either"),
    ] {
        for blocked in ["all", "segments_only"] {
            let practice = format!(r#", "running": "{running}", "blocked_edges": "{blocked}""#);
            let trial = Trial::new(&wall(length, "", &practice));
            // A stud of 1 1/2 in. carries a seam up to 1/16 in. off its middle.
            let sixteenth = Length::sixteenths(1);
            let near = |x: Length| [x - sixteenth, x, x + sixteenth];
            let middles = trial.supports();
            let places: Vec<Length> = middles.iter().flat_map(|x| near(*x)).collect();
            let least = Length::sixteenths(11 * 16 + 12);
            let mut all = upright(&trial, &places, least);
            if running == "either" {
                all.extend(flat(&trial, &middles, least));
            }
            let (ours, best) = trial.agrees(all.into_iter());
            assert_eq!(ours, best, "{length}, {blocked}: not among what was enumerated");
        }
    }
}

#[test]
fn sixteen_feet_with_two_openings() {
    let openings = r#"{"name": "a", "kind": "window", "left": "40", "sill": "36", "width": "36", "height": "42"},
        {"name": "b", "kind": "door", "left": "120", "sill": "0", "width": "38", "height": "80"}"#;
    let trial = Trial::new(&wall("16'", openings, r#", "running": "upright""#));
    let least = Length::sixteenths(11 * 16 + 12);
    // With seams in the middle of studs alone, rounding of shares may make the best a ten-thousandth dearer.
    let (ours, best) = trial.agrees(upright(&trial, &trial.supports(), least).into_iter());
    assert!(
        best - ours <= Amount::from_ten_thousandths(10),
        "{ours} and {best}"
    );
}

/// Sheets of a true 48 in. with gaps of 1/8 drift an eighth from stud to stud: a chain of whole sheets stands off the middle
/// of the studs that carry it, and costs less than sheets ripped to the middles.
#[test]
fn true_sheets_drift_off_the_middle_of_studs() {
    for (length, origin) in [("13'", "0"), ("12' 4", "8"), ("11'", "-4 1/2")] {
        let storey = format!(r#""origin": {{"offset": "{origin}"}}, "openings": []"#);
        let text = wall(length, "", r#", "running": "upright", "blocked_edges": "all""#)
            .replace("47 7/8", "48")
            .replace(r#""openings": []"#, &storey);
        let trial = Trial::new(&text);
        let eighth = Length::sixteenths(2);
        let middles = trial.supports();
        let near = |x: &Length| [*x - eighth, *x, *x + eighth];
        let places: Vec<Length> = middles.iter().flat_map(near).collect();
        let least = Length::sixteenths(11 * 16 + 12);
        let (ours, best) = trial.agrees(upright(&trial, &places, least).into_iter());
        assert!(ours <= best, "{length} from {origin}: {ours} and {best}");
    }
}

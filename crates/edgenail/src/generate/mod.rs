//! Houses made from a number, valid by construction: what tests, examples and benchmarks are run on.
//!
//! The same number gives the same house on every machine. [`Mix`] tells what a house has in it, so that a test can
//! say that it has seen enough of everything.

mod cuts;
mod random;
mod wall;

pub use cuts::{CutJob, cut_job};
use random::Random;
use serde_json::{Value, json};

/// What a generated house has in it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "each is a class of houses that a test has to have seen"
)]
pub struct Mix {
    /// A wall with two openings or more.
    pub several_openings: bool,
    /// A rake or a gable truss.
    pub sloped_top: bool,
    /// A floor band without a rim.
    pub band_without_rim: bool,
    /// A wall that butts against another.
    pub butting_corner: bool,
    /// A far end off layout.
    pub off_layout: bool,
    /// Studs or joists 19.2 in. apart.
    pub spacing_19_2: bool,
    /// True 48 in. sheets with the gap left.
    pub true_sheets: bool,
    /// Sizes in millimetres.
    pub metric: bool,
    /// Sheathing held up.
    pub held_up: bool,
    /// Two openings closer than one stud bay.
    pub close_openings: bool,
}

impl Mix {
    /// Its classes by name.
    pub const fn classes(self) -> [(&'static str, bool); 10] {
        [
            ("several openings", self.several_openings),
            ("sloped top", self.sloped_top),
            ("band without rim", self.band_without_rim),
            ("butting corner", self.butting_corner),
            ("off layout", self.off_layout),
            ("19.2 in.", self.spacing_19_2),
            ("true 48 in. sheets", self.true_sheets),
            ("metric", self.metric),
            ("held up", self.held_up),
            ("close openings", self.close_openings),
        ]
    }
}

/// A house as JSON, with what it has in it.
///
/// ```
/// let (house, _) = edgenail::generate::house_json(7);
/// assert_eq!(edgenail::generate::house_json(7).0, house);
/// assert!(edgenail::read_house(house.as_bytes()).is_ok());
/// ```
pub fn house_json(seed: u64) -> (String, Mix) {
    let mut random = Random::new(seed);
    let mut mix = Mix {
        metric: random.percent(15),
        true_sheets: random.percent(15),
        butting_corner: random.percent(25),
        ..Mix::default()
    };
    let mut walls = vec![wall::wall(&mut random, &mut mix, "a")];
    let mut corners: Vec<Value> = Vec::new();
    if mix.butting_corner {
        walls.push(wall::wall(&mut random, &mut mix, "b"));
        let (through, butting) = if random.percent(50) {
            ("right", "left")
        } else {
            ("left", "right")
        };
        corners.push(json!({
            "through": {"wall": "a", "end": through},
            "butting": {"wall": "b", "end": butting},
            "turn": if random.percent(85) { "outside" } else { "inside" },
        }));
    }
    let starts = ["either", "left", "right"];
    let blocked = ["wide_bays", "all", "segments_only"];
    let house = json!({
        "name": format!("generated {seed}"),
        "unit": "in",
        "walls": walls,
        "corners": corners,
        "practice": {
            "blocked_edges": blocked[random.below(3)],
            "starting_end": starts[random.below(3)],
        },
        "stock": {"sheets": sheets(&mix), "nails": nails(), "sticks": sticks()},
    });
    (house.to_string(), mix)
}

fn sheets(mix: &Mix) -> Value {
    let sizes: Vec<(&str, String, String, &str)> = if mix.metric {
        vec![
            ("1220", "1220 mm".into(), "2440 mm".into(), "16"),
            ("1220 long", "1220 mm".into(), "3050 mm".into(), "21"),
        ]
    } else {
        let (width, less) = if mix.true_sheets { ("48", 0) } else { ("47 7/8", 1) };
        let length = |feet: i32| {
            if less == 0 {
                format!("{}", feet * 12)
            } else {
                format!("{} 7/8", feet * 12 - 1)
            }
        };
        vec![
            ("4x8", width.into(), length(8), "16"),
            ("4x9", width.into(), length(9), "20"),
            ("4x10", width.into(), length(10), "24"),
        ]
    };
    let sheets = sizes.into_iter().map(|(name, width, length, price)| {
        json!({
            "name": name, "width": width, "length": length, "category": "7/16", "grade": "sheathing",
            "span_rating": "24/16", "price": price, "pounds_per_square_foot": "1.4", "unit_count": 60,
        })
    });
    sheets.collect()
}

fn nails() -> Value {
    json!([
        {"name": "8d bright", "shank": "0.131", "head": "0.281", "length": "2 1/2", "coating": "bright", "tool": "gun", "per_box": 2500, "price": "52"},
        {"name": "8d hot-dipped", "shank": "0.131", "head": "0.281", "length": "2 1/2", "coating": "hot_dipped", "tool": "gun", "per_box": 2000, "price": "68"},
    ])
}

fn sticks() -> Value {
    json!([
        {"name": "2x4 8 ft", "thickness": "1 1/2", "depth": "3 1/2", "length": "8'", "price": "4.10"},
        {"name": "2x6 12 ft", "thickness": "1 1/2", "depth": "5 1/2", "length": "12'", "price": "9.90"},
    ])
}

#[cfg(test)]
mod tests;

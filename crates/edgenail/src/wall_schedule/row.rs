//! One row of a schedule, and the wall that it describes.

use super::list::entries;
use super::{Design, preset};
use crate::error::Error;
use crate::issue::{Code, Issue};
use crate::length::{Length, Unit};
use serde_json::{Value, json};

/// The storey of a row's wall.
const STOREY: &str = "first floor";
/// The thickness of a plate.
const PLATE: &str = "1 1/2";
/// One plate below the studs and two above.
const PLATES: Length = Length::sixteenths(3 * 24);

/// One wall, as the cells of a row hold it. The wall is seen from the sheathed face, x to the right from its left end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row<'t> {
    /// Unique in the schedule.
    pub name: &'t str,
    /// Length of the frame in inches, end stud face to end stud face.
    pub length: f64,
    /// From the underside of the bottom plate to the top of the top plates in inches, all three 1 1/2 in. thick.
    /// It is taken to the nearest 1/40640 in.
    pub plate_height: f64,
    /// On-centre spacing of the studs in inches.
    pub stud_spacing: f64,
    /// Rough openings, `left,sill,width,height; left,sill,width,height`: lengths such as `36`, `5' 2` or `900 mm`, bare
    /// numbers in inches; `sill` is above the underside of the bottom plate. A sill of 0 makes a door, any other a window.
    /// Blank where there are none.
    pub openings: &'t str,
    /// The name of one of the [`super::presets`], then nailing at panel edges and on members between in inches if it is
    /// not the default: `flat blocked 4/12`. Blank takes the library's defaults.
    pub practice: &'t str,
    /// Shear segments of full height, `left,right; left,right`, each between the outer faces of its end posts. Blank where
    /// there are none.
    pub segments: &'t str,
    /// Wind along the wall at its top in pounds; 0 where nothing is asked.
    pub wind: f64,
    /// Earthquake along the wall at its top in pounds; 0 where nothing is asked.
    pub seismic: f64,
}

/// A wall of studs of 92 5/8 in., 16 in. on centre, without a name or a length.
impl Default for Row<'_> {
    fn default() -> Self {
        Self {
            name: "",
            length: 0.0,
            plate_height: 97.125,
            stud_spacing: 16.0,
            openings: "",
            practice: "",
            segments: "",
            wind: 0.0,
            seismic: 0.0,
        }
    }
}

/// A row as the house's JSON has it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Written {
    pub(super) wall: Value,
    pub(super) loads: Vec<Value>,
}

impl Written {
    pub(super) fn name(&self) -> &str {
        self.wall["name"].as_str().unwrap_or_default()
    }
}

impl Row<'_> {
    /// The row in JSON. `taken` are the names of the rows before it.
    pub(super) fn written<'t>(
        &self,
        design: Option<&Design>,
        mut taken: impl Iterator<Item = &'t str>,
    ) -> Result<Written, Error> {
        let mut issues = Vec::new();
        if taken.any(|name| name == self.name) {
            let message = format!("another row is called `{}`", self.name);
            issues.push(self.issue(
                Code::DuplicateName,
                "/name",
                self.name,
                "a name of its own",
                &message,
            ));
        }
        let openings = kept(
            entries(self.openings, "openings", ["left", "sill", "width", "height"]),
            &mut issues,
        );
        let segments = kept(entries(self.segments, "segments", ["left", "right"]), &mut issues);
        let practice = match preset::practice(self.practice) {
            Ok(practice) => practice,
            Err(Error::Issues { issues: faults }) => {
                issues.extend(faults);
                Value::Null
            }
            Err(error) => return Err(error),
        };
        let stud = self.stud(&mut issues);
        let loads = self.loads(design, &mut issues);
        if !issues.is_empty() {
            for issue in &mut issues {
                self.name.clone_into(&mut issue.wall);
            }
            return Err(Error::Issues { issues });
        }
        let wall = json!({
            "name": self.name,
            "length": number(self.length),
            "practice": practice,
            "sections": [{
                "bottom": {"bears": "concrete"},
                "stack": [{
                    "kind": "storey", "name": STOREY,
                    "bottom_plates": [{"thickness": PLATE, "treated": true}],
                    "top_plates": [{"thickness": PLATE}, {"thickness": PLATE}],
                    "stud": {"length": stud},
                    "spacing": number(self.stud_spacing),
                    "openings": openings.iter().zip(1..).map(opening).collect::<Vec<_>>(),
                }],
                "top": {"kind": "flat"},
            }],
            "segments": segments.iter().zip(1..).map(segment).collect::<Vec<_>>(),
        });
        Ok(Written { wall, loads })
    }

    /// The studs of this plate height, as text that is exact.
    fn stud(&self, issues: &mut Vec<Issue>) -> String {
        let height = Length::from_double(self.plate_height, Unit::Inch);
        match height.map(|parsed| (parsed.length - PLATES).units()) {
            // A unit of 1/40640 in. is 1/1600 mm: 625 millionths.
            Ok(units) if units > 0 => {
                format!("{}.{:06} mm", units * 625 / 1_000_000, units * 625 % 1_000_000)
            }
            _ => {
                let found = self.plate_height.to_string();
                let allowed = "inches, more than the 4 1/2 of three plates";
                let message = format!("{found} is no plate height: {allowed}");
                issues.push(self.issue(Code::OutOfRange, "/plate_height", &found, allowed, &message));
                String::new()
            }
        }
    }

    fn loads(&self, design: Option<&Design>, issues: &mut Vec<Issue>) -> Vec<Value> {
        let mut loads = Vec::new();
        for (kind, amount) in [("wind", self.wind), ("seismic", self.seismic)] {
            if amount == 0.0 {
                continue;
            }
            let found = amount.to_string();
            let path = format!("/{kind}");
            let Some(design) = design else {
                let allowed = "0, or a schedule with a design";
                let message = format!("a load of {found} lb needs a schedule that says the rules of design");
                issues.push(self.issue(Code::MissingField, &path, &found, allowed, &message));
                continue;
            };
            if !(amount > 0.0 && amount.is_finite()) {
                let message = format!("{found} lb is no load: 0 or more");
                issues.push(self.issue(Code::OutOfRange, &path, &found, "0 or more", &message));
                continue;
            }
            loads.push(json!({
                "kind": kind, "level": design.level, "wall": self.name, "storey": STOREY, "amount": amount,
            }));
        }
        loads
    }

    fn issue(&self, code: Code, path: &str, found: &str, allowed: &str, message: &str) -> Issue {
        Issue {
            code,
            path: path.to_owned(),
            wall: self.name.to_owned(),
            found: found.to_owned(),
            allowed: allowed.to_owned(),
            message: message.to_owned(),
        }
    }
}

fn kept<T>(entries: Result<Vec<T>, Vec<Issue>>, issues: &mut Vec<Issue>) -> Vec<T> {
    entries.unwrap_or_else(|faults| {
        issues.extend(faults);
        Vec::new()
    })
}

/// A double as JSON; one that JSON cannot write as text, for the reading to refuse.
fn number(value: f64) -> Value {
    if value.is_finite() {
        json!(value)
    } else {
        json!(value.to_string())
    }
}

fn opening((parts, number): (&[&str; 4], u32)) -> Value {
    let [left, sill, width, height] = parts;
    let on_floor = Length::parse(sill, Unit::Inch).is_ok_and(|sill| sill.length == Length::ZERO);
    json!({
        "name": format!("opening {number}"),
        "kind": if on_floor { "door" } else { "window" },
        "left": left, "sill": sill, "width": width, "height": height,
    })
}

fn segment((parts, number): (&[&str; 2], u32)) -> Value {
    let [left, right] = parts;
    json!({"mark": format!("S{number}"), "method": "segmented", "storey": STOREY, "from": left, "to": right})
}

//! The functions for cells, in C, against the answers to the same questions in JSON: every shared case that they can ask.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use edgenail::Length;
use edgenail::answer::capacity_numbers;
use edgenail::length::Unit;
use edgenail_cases::case::load;
use edgenail_cases::library::{Linking, build, compile};
use edgenail_cases::root;
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;

/// A function, its arguments, and where the answer in JSON has its numbers; 0 stands for one that is null there.
struct Call {
    function: &'static str,
    arguments: Vec<String>,
    pointers: [&'static str; 3],
}

/// The fields of a question or of an object in it, and which of them were looked at.
struct Fields<'v> {
    object: &'v Value,
    seen: Vec<&'static str>,
}

impl<'v> Fields<'v> {
    fn of(object: &'v Value) -> Self {
        Self {
            object,
            seen: vec!["kind", "unit"],
        }
    }

    fn at(&mut self, name: &'static str) -> &'v Value {
        self.seen.push(name);
        &self.object[name]
    }

    /// A number, or its default where one is given.
    fn number(&mut self, name: &'static str, default: Option<&str>) -> Option<String> {
        match self.at(name) {
            Value::Null => default.map(ToOwned::to_owned),
            Value::Number(number) => Some(number.to_string()),
            Value::String(text) => Some(text.clone()),
            _ => None,
        }
    }

    /// A length as it is written, bare numbers in inches.
    fn text(&mut self, name: &'static str, default: Option<&str>) -> Option<String> {
        self.number(name, default)
    }

    /// A length in inches.
    fn inches(&mut self, name: &'static str, default: Option<&str>) -> Option<String> {
        let text = self.text(name, default)?;
        Some(
            Length::parse(&text, Unit::Inch)
                .ok()?
                .length
                .as_inches()
                .to_string(),
        )
    }

    /// A length in feet.
    fn feet(&mut self, name: &'static str) -> Option<String> {
        let text = self.text(name, None)?;
        let inches = Length::parse(&text, Unit::Inch).ok()?.length.as_inches();
        Some((inches / 12.0).to_string())
    }

    fn word(&mut self, name: &'static str, default: Option<&str>) -> Option<String> {
        match self.at(name) {
            Value::Null => default.map(ToOwned::to_owned),
            word => word.as_str().map(ToOwned::to_owned),
        }
    }

    fn flag(&mut self, name: &'static str) -> Option<String> {
        match self.at(name) {
            Value::Null | Value::Bool(false) => Some("0".to_owned()),
            Value::Bool(true) => Some("1".to_owned()),
            _ => None,
        }
    }

    /// Nothing where the question says what the function has no argument for.
    fn end(self) -> Option<()> {
        let known = |key: &String| self.seen.contains(&key.as_str());
        self.object.as_object()?.keys().all(known).then_some(())
    }
}

fn call(question: &Value) -> Option<Call> {
    let mut fields = Fields::of(question);
    if !matches!(question["unit"], Value::Null) && question["unit"] != "in" {
        return None;
    }
    let call = match question["kind"].as_str()? {
        "unit_shear" => Call {
            function: "unit_shear",
            arguments: face(&mut fields)?,
            pointers: ["/nominal_plf", "/design_plf", "/stiffness_kips_per_in"],
        },
        "wall_line" => Call {
            function: "wall_line",
            arguments: wall_line(&mut fields)?,
            pointers: ["/capacity_lb", "/ratio", "/hold_down_lb"],
        },
        "hold_down" => Call {
            function: "hold_down",
            arguments: vec![
                fields.number("shear", None)?,
                fields.feet("length")?,
                fields.feet("height")?,
                fields.number("dead", Some("0"))?,
                fields.feet("inset")?,
            ],
            pointers: ["/tension_lb", "", ""],
        },
        "drift" => drift(&mut fields)?,
        "nail" => Call {
            function: "nail",
            arguments: vec![
                fields.word("edition", None)?,
                fields.number("shank", None)?,
                fields.inches("length", None)?,
                fields.number("head", Some("0"))?,
                fields.number("bending_yield", Some("0"))?,
                fields.inches("side_thickness", None)?,
                fields.number("side_gravity", None)?,
                fields.inches("between", Some("0"))?,
                fields.number("main_gravity", None)?,
                fields.inches("main_depth", Some("0"))?,
                fields.number("load_duration", None)?,
                fields.flag("accept_unverified")?,
            ],
            pointers: ["/lateral_lb", "/withdrawal_lb", "/pull_through_lb"],
        },
        "panel" => Call {
            function: "panel_pressure",
            arguments: panel(&mut fields)?,
            pointers: ["/bending_psf", "/stiffness_psf", "/deflection_in"],
        },
        "anchorage" => Call {
            function: "anchorage",
            arguments: vec![
                fields.number("shear", None)?,
                fields.feet("length")?,
                fields.number("each", None)?,
                fields.number("uplift", Some("0"))?,
                fields.number("each_uplift", Some("0"))?,
                fields.number("nominal", Some("0"))?,
                fields.flag("accept_unverified")?,
            ],
            pointers: ["/anchors", "/spacing_in", "/washer_ratio"],
        },
        _ => return None,
    };
    fields.end()?;
    Some(call)
}

fn face(fields: &mut Fields<'_>) -> Option<Vec<String>> {
    let mut assembly = Fields::of(fields.at("assembly"));
    let mut nail = Fields::of(assembly.at("nail"));
    let arguments = vec![
        fields.word("edition", None)?,
        fields.word("load", None)?,
        fields.word("method", None)?,
        assembly.word("grade", None)?,
        assembly.word("material", None)?,
        assembly.inches("thickness", None)?,
        nail.number("shank", None)?,
        nail.number("head", None)?,
        nail.inches("length", None)?,
        nail.word("coating", Some("bright"))?,
        assembly.inches("edge_spacing", None)?,
        assembly.inches("field_spacing", None)?,
        assembly.inches("stud_spacing", Some("24"))?,
        assembly.flag("blocked")?,
        assembly.flag("across_studs")?,
        assembly.number("specific_gravity", None)?,
        assembly.inches("seam_member", Some("1 1/2"))?,
        assembly.flag("wet_framing")?,
        fields.flag("high_seismic")?,
        fields.flag("accept_unverified")?,
    ];
    nail.end()?;
    assembly.end()?;
    Some(arguments)
}

fn wall_line(fields: &mut Fields<'_>) -> Option<Vec<String>> {
    let mut query = Fields::of(fields.at("query"));
    let mut arguments = face(&mut query)?;
    query.end()?;
    let mut openings = Vec::new();
    for opening in fields.at("openings").as_array()? {
        let mut opening = Fields::of(opening);
        let [left, width, height] = ["left", "width", "height"].map(|name| opening.text(name, None));
        openings.push(format!("{},{}, {}", left?, width?, height?));
        opening.end()?;
    }
    arguments.extend([
        fields.word("method", None)?,
        fields.word("sharing", None)?,
        fields.text("length", None)?,
        fields.text("height", None)?,
        openings.join("; "),
        fields.number("demand", None)?,
        fields.number("dead", Some("0"))?,
        fields.text("inset", None)?,
    ]);
    Some(arguments)
}

fn drift(fields: &mut Fields<'_>) -> Option<Call> {
    let mut equation = Fields::of(fields.at("equation"));
    let mut arguments = vec![
        fields.number("shear", None)?,
        fields.feet("height")?,
        fields.feet("length")?,
        fields.number("elasticity", None)?,
        fields.number("post_area", None)?,
        fields.inches("anchor", None)?,
    ];
    let four = equation.object["kind"] == "four_terms";
    if four {
        arguments.extend([
            equation.word("nail", None)?.trim_end_matches('d').to_owned(),
            equation.word("grade", None)?,
            equation.word("material", None)?,
            equation.inches("thickness", None)?,
            equation.inches("edge_spacing", None)?,
        ]);
    } else {
        arguments.push(equation.number("stiffness", None)?);
    }
    arguments.push(fields.flag("accept_unverified")?);
    equation.end()?;
    Some(Call {
        function: if four { "drift_four_terms" } else { "drift" },
        arguments,
        pointers: ["/drift_in", "", ""],
    })
}

fn panel(fields: &mut Fields<'_>) -> Option<Vec<String>> {
    let rating = fields.word("rating", None)?;
    let (roof, floor) = rating.split_once('/')?;
    Some(vec![
        roof.to_owned(),
        floor.to_owned(),
        fields.word("plies", None)?,
        fields.word("axis", None)?,
        fields.inches("stud_spacing", None)?,
        fields.number("spans", None)?,
        fields.number("deflection_ratio", None)?,
        fields.number("pressure", Some("0"))?,
        fields.number("load_duration", None)?,
        fields.flag("accept_unverified")?,
    ])
}

/// Code and field of every fault.
fn faults(document: &str) -> Vec<(String, String)> {
    let document: Value = serde_json::from_str(document).unwrap();
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    let issues = document["issues"].as_array().unwrap();
    issues
        .iter()
        .map(|issue| (text(&issue["code"]), text(&issue["path"])))
        .collect()
}

/// Leaves the calls and their answers for office programs, one a line.
fn keep(lines: &str) {
    let folder = root().join("target/cases");
    fs::create_dir_all(&folder).unwrap();
    fs::write(folder.join("cells.txt"), lines).unwrap();
}

#[test]
fn cells_say_what_the_answers_in_json_say() {
    let program = Path::new(env!("CARGO_TARGET_TMPDIR")).join("cells");
    let libraries = build(&Path::new(env!("CARGO_TARGET_TMPDIR")).join("..")).unwrap();
    compile("tests/c/cells.c", &libraries, Linking::Static, &[], &program).unwrap();
    let mut answered: BTreeMap<&str, usize> = BTreeMap::new();
    let mut refused = 0;
    let mut lines = String::new();
    for case in load(&root().join("tests/cases")).unwrap().cases {
        if case.operation != "capacity" {
            continue;
        }
        let Ok(question) = serde_json::from_str::<Value>(&case.text) else {
            continue;
        };
        let Some(call) = call(&question) else { continue };
        let output = Command::new(&program)
            .arg(call.function)
            .args(&call.arguments)
            .output()
            .unwrap();
        let said = String::from_utf8(output.stdout).unwrap();
        let errors = String::from_utf8(output.stderr).unwrap();
        assert_eq!(errors, "", "{}", case.name);
        let line = [call.function.to_owned()]
            .into_iter()
            .chain(call.arguments.clone());
        let mut line: Vec<String> = line.collect();
        match capacity_numbers(&case.text, call.pointers) {
            Ok(wanted) => {
                assert_eq!(output.status.code(), Some(0), "{}: {said}", case.name);
                let found: Vec<f64> = said.lines().map(|line| line.parse().unwrap()).collect();
                let named = call
                    .pointers
                    .iter()
                    .zip(wanted)
                    .filter(|(pointer, _)| !pointer.is_empty());
                let wanted: Vec<f64> = named.map(|(_, number)| number.unwrap_or(0.0)).collect();
                assert_eq!(found, wanted, "{}", case.name);
                *answered.entry(call.function).or_default() += 1;
                line.push(wanted.iter().map(f64::to_string).collect::<Vec<_>>().join(" "));
            }
            Err(error) => {
                assert_eq!(output.status.code(), Some(100), "{}", case.name);
                assert_eq!(faults(&said), faults(&error.json()), "{}", case.name);
                refused += 1;
                line.push("refused".to_owned());
            }
        }
        lines.push_str(&(line.join("\t") + "\n"));
    }
    keep(&lines);
    let functions = [
        "anchorage",
        "drift",
        "drift_four_terms",
        "hold_down",
        "nail",
        "panel_pressure",
        "unit_shear",
        "wall_line",
    ];
    assert_eq!(
        answered.keys().copied().collect::<Vec<_>>(),
        functions,
        "{answered:?}"
    );
    assert!(refused > 5, "{refused}");
}

//! A question of capacity in JSON as the call of a function for cells that asks the same.

use edgenail::Length;
use edgenail::length::Unit;
use serde_json::Value;

/// A function, its arguments, and where the answer in JSON has its numbers; 0 stands for one that is null there.
pub(super) struct Call {
    pub function: &'static str,
    pub arguments: Vec<String>,
    pub pointers: [&'static str; 3],
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

/// The call that asks a question; nothing for a question that no function for cells can ask.
pub(super) fn call(question: &Value) -> Option<Call> {
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

//! The mutants that `cargo mutants` lists for folders and files.

use serde_json::Value;
use std::path::Path;
use std::process::Command;

/// A line and a column, counted from one.
pub type Place = (u64, u64);

/// One change of one place in the source.
#[derive(Clone, Debug)]
pub struct Mutant {
    /// Its number, from one.
    pub id: u32,
    /// The file, from the top of the repository.
    pub file: String,
    /// The kind of change, in the words of `cargo mutants`.
    pub genre: String,
    /// What is written in its stead.
    pub replacement: String,
    /// Where.
    pub at: Place,
    /// The change in words.
    pub name: String,
}

/// Every mutant of these folders and files of the core.
pub fn mutants(root: &Path, places: &[String]) -> Result<Vec<Mutant>, String> {
    let mut command = Command::new("cargo");
    command
        .args(["mutants", "--list", "--json", "-p", "edgenail"])
        .current_dir(root);
    for place in places {
        let all = if place.ends_with(".rs") { "" } else { "/**" };
        command.args(["-f", &format!("crates/edgenail/src/{place}{all}")]);
    }
    let out = command
        .output()
        .map_err(|error| format!("cargo mutants: {error}"))?;
    let list: Vec<Value> = serde_json::from_slice(&out.stdout)
        .map_err(|error| format!("cargo mutants: {error}: {}", String::from_utf8_lossy(&out.stderr)))?;
    let text = |value: &Value| value.as_str().unwrap_or_default().to_string();
    let mutants = list.iter().zip(1..).map(|(one, id)| {
        let start = &one["span"]["start"];
        Mutant {
            id,
            file: text(&one["file"]),
            genre: text(&one["genre"]),
            replacement: text(&one["replacement"]),
            at: (
                start["line"].as_u64().unwrap_or(0),
                start["column"].as_u64().unwrap_or(0),
            ),
            name: text(&one["name"]),
        }
    });
    let mut mutants: Vec<Mutant> = mutants.collect();
    // In the order in which the places are named.
    let named = |mutant: &Mutant| {
        let within = |place: &String| mutant.file.contains(&format!("edgenail/src/{place}"));
        places.iter().position(within)
    };
    mutants.sort_by_key(named);
    Ok(mutants)
}

//! Writes the generated files of the project, or checks that they are up to date.
//!
//! `cargo dev generate` writes all of them, `cargo dev header` the C header alone, and `cargo dev check` fails
//! when a committed file differs from a fresh one, showing the first line that differs.

mod called;
mod declared;
mod facings;
mod fields;
mod file;
mod header;
mod published;
mod recalled;
mod rows;
mod typed;
mod validation;
mod vba;

use file::Generated;
use std::path::Path;
use std::process::ExitCode;

fn main() -> ExitCode {
    let command = std::env::args().nth(1).unwrap_or_default();
    match run(&command) {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}

fn run(command: &str) -> Result<(), String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    match command {
        "generate" => {
            published::rows(&root)?.write(&root)?;
            // The header is read off the C crate, which the rows are part of.
            rows::generate().write(&root)?;
            rows::list().write(&root)?;
            let header = header::generate(&root)?;
            header.write(&root)?;
            called::table(&header.text).write(&root)?;
            vba::generate(&header.text).write(&root)?;
            fields::table().write(&root)?;
            fields::schema().write(&root)?;
            fields::question_table().write(&root)?;
            fields::question().write(&root)?;
            typed::house()?.write(&root)?;
            typed::question()?.write(&root)?;
            recalled::generate(&root)?.write(&root)?;
            validation::generate(&root)?.write(&root)
        }
        "header" => header::generate(&root)?.write(&root),
        "check" => {
            let stale: Vec<String> = all(&root)?
                .iter()
                .filter_map(|file| file.difference(&root))
                .collect();
            if stale.is_empty() {
                return Ok(());
            }
            Err(format!("{}\nrun: cargo dev generate", stale.join("\n")))
        }
        _ => Err("usage: cargo dev generate | header | check".into()),
    }
}

fn all(root: &Path) -> Result<Vec<Generated>, String> {
    let header = header::generate(root)?;
    Ok(vec![
        published::rows(root)?,
        rows::generate(),
        rows::list(),
        called::table(&header.text),
        vba::generate(&header.text),
        header,
        fields::table(),
        fields::schema(),
        fields::question_table(),
        fields::question(),
        typed::house()?,
        typed::question()?,
        recalled::generate(root)?,
        validation::generate(root)?,
    ])
}

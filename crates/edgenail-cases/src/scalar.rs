//! The shared cases that a function for cells can ask, and what it has to say.
//!
//! One call is one line, its parts separated by tabs. What is asked: the function's name without `edgenail_`, then its
//! arguments, words of sets as words. What is said: the status, then for status 0 the values — a double as the 16
//! hexadecimal digits of its bits, a whole number in decimal, a text as it is — and for status 100 code and path of each
//! fault with a space between. So that programs in any language can be compared byte for byte, each leaves its lines,
//! every one behind its case's name, in `target/cases/scalars-NAME.txt`.

mod call;

use crate::answer::{Answer, LengthInput, ROUNDINGS, STYLES, ShowInput, named, parse, rust};
use crate::case::{Case, load};
use crate::library::run;
use crate::root;
use edgenail::answer::capacity_numbers;
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use std::process::Command;

/// A case, as a call of a function for cells.
#[derive(Clone, Debug)]
pub struct Scalar {
    /// The case's name.
    pub case: String,
    /// The function, without `edgenail_`.
    pub function: &'static str,
    /// What is asked.
    pub asked: String,
    /// What Rust says.
    pub said: String,
}

/// Every shared case that a function for cells can ask, in the order of the cases.
///
/// # Errors
///
/// What is wrong with the cases.
pub fn all() -> Result<Vec<Scalar>, String> {
    let cases = load(&root().join("tests/cases")).map_err(|faults| faults.join("\n"))?;
    let scalars = cases.cases.iter().filter_map(|case| {
        let scalar = scalar(case).transpose()?;
        Some(scalar.map_err(|fault| format!("{}: {fault}", case.name)))
    });
    scalars.collect()
}

fn scalar(case: &Case) -> Result<Option<Scalar>, String> {
    let (function, arguments, said) = match case.operation.as_str() {
        "capacity" => {
            let question = serde_json::from_str(&case.text).unwrap_or(Value::Null);
            let Some(call) = call::call(&question) else {
                return Ok(None);
            };
            let said = match capacity_numbers(&case.text, call.pointers) {
                Ok(numbers) => numbers_said(call.pointers, numbers),
                Err(error) => faults_said(&error.json())?,
            };
            (call.function, call.arguments, said)
        }
        "length" => {
            let input: LengthInput = parse(&case.text)?;
            let said = answer_said(&rust(case)?, ["/units", "/exact"])?;
            ("length_parse", vec![input.text, input.unit], said)
        }
        "show" => {
            let input: ShowInput = parse(&case.text)?;
            let arguments = [
                input.units.to_string(),
                named(&STYLES, &input.style)?.0.to_string(),
                named(&ROUNDINGS, &input.rounding)?.0.to_string(),
            ];
            let said = answer_said(&rust(case)?, ["/text", "/rounded"])?;
            ("length_show", arguments.to_vec(), said)
        }
        _ => return Ok(None),
    };
    Ok(Some(Scalar {
        case: case.name.clone(),
        function,
        asked: format!("{function}\t{}", arguments.join("\t")),
        said,
    }))
}

fn numbers_said(pointers: [&str; 3], numbers: [Option<f64>; 3]) -> String {
    let named = pointers
        .iter()
        .zip(numbers)
        .filter(|(pointer, _)| !pointer.is_empty());
    named.fold("0".to_owned(), |mut said, (_, number)| {
        let _ = write!(said, "\t{:016x}", number.unwrap_or(0.0).to_bits());
        said
    })
}

fn faults_said(document: &str) -> Result<String, String> {
    let document: Value = parse(document)?;
    let issues = document["issues"].as_array().ok_or("no issues")?;
    issues.iter().try_fold("100".to_owned(), |said, issue| {
        let code = issue["code"].as_str().ok_or("no code")?;
        let path = issue["path"].as_str().ok_or("no path")?;
        Ok(format!("{said}\t{code} {path}"))
    })
}

fn answer_said(answer: &Answer, pointers: [&str; 2]) -> Result<String, String> {
    let document = match answer {
        Answer::Error(document) => return faults_said(document),
        Answer::Result(document) => parse::<Value>(document)?,
    };
    pointers.iter().try_fold("0".to_owned(), |said, pointer| {
        let value = match document.pointer(pointer).ok_or("no value")? {
            Value::Bool(flag) => u8::from(*flag).to_string(),
            Value::String(text) => text.clone(),
            number => number.to_string(),
        };
        Ok(format!("{said}\t{value}"))
    })
}

/// What a program says to all calls; it is given the file that they are written to, one a line.
///
/// # Errors
///
/// What went wrong, or every call to which it says something else than Rust.
pub fn ask(scalars: &[Scalar], program: &mut Command, calls: &Path, name: &str) -> Result<String, String> {
    let text = lines(scalars.iter().map(|scalar| scalar.asked.as_str()));
    fs::write(calls, text).map_err(|error| error.to_string())?;
    let output = run(program.arg(calls))?;
    let said = String::from_utf8(output.stdout).map_err(|error| error.to_string())?;
    // A program for Windows ends its lines in its own way.
    let said: Vec<&str> = said.lines().collect();
    if said.len() != scalars.len() {
        return Err(format!("{} calls, {} answers", scalars.len(), said.len()));
    }
    let unlike = scalars
        .iter()
        .zip(&said)
        .filter(|(scalar, said)| scalar.said != **said);
    let unlike: Vec<String> = unlike
        .map(|(scalar, said)| format!("{}: {said:?}, not {:?}", scalar.case, scalar.said))
        .collect();
    if !unlike.is_empty() {
        return Err(unlike.join("\n"));
    }
    leave(name, scalars, &said)
}

/// What Rust says to all calls; what office programs are asked of them is left in `target/cases/cells.txt`.
///
/// # Errors
///
/// A file could not be written.
pub fn own(scalars: &[Scalar]) -> Result<String, String> {
    write("cells.txt", &lines(scalars.iter().filter_map(for_office)))?;
    let said: Vec<&str> = scalars.iter().map(|scalar| scalar.said.as_str()).collect();
    leave("rust", scalars, &said)
}

/// A call that takes and gives numbers, with the numbers in decimal or the word `refused`.
fn for_office(scalar: &Scalar) -> Option<String> {
    if scalar.function.starts_with("length_") {
        return None;
    }
    let said = match scalar.said.strip_prefix("0\t") {
        None => "refused".to_owned(),
        Some(said) => {
            let numbers = said.split('\t').map(|bits| u64::from_str_radix(bits, 16));
            let numbers: Result<Vec<String>, _> = numbers
                .map(|bits| bits.map(|bits| f64::from_bits(bits).to_string()))
                .collect();
            numbers.ok()?.join(" ")
        }
    };
    Some(format!("{}\t{said}", scalar.asked))
}

/// Leaves what was said, and gives its SHA-256.
fn leave(name: &str, scalars: &[Scalar], said: &[&str]) -> Result<String, String> {
    let named = scalars
        .iter()
        .zip(said)
        .map(|(scalar, said)| format!("{}\t{said}", scalar.case));
    let text = lines(named);
    write(&format!("scalars-{name}.txt"), &text)?;
    let digest = Sha256::digest(text.as_bytes());
    Ok(digest.iter().fold(String::new(), |mut hex, byte| {
        let _ = write!(hex, "{byte:02x}");
        hex
    }))
}

/// Writes a file of `target/cases`.
fn write(name: &str, text: &str) -> Result<(), String> {
    let folder = root().join("target/cases");
    fs::create_dir_all(&folder)
        .and_then(|()| fs::write(folder.join(name), text))
        .map_err(|error| format!("{}: {error}", folder.display()))
}

fn lines<T: AsRef<str>>(lines: impl Iterator<Item = T>) -> String {
    lines.fold(String::new(), |text, line| text + line.as_ref() + "\n")
}

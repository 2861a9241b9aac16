//! Mutation testing with every mutant in one library.
//!
//! `cargo mutants` lists the mutants and builds the core once for each, which takes a minute every time. Here all of a
//! few folders are written into one copy of the core, each behind a switch that a test program reads from its
//! environment: the core is built once, and each mutant is run against the tests that come by its place.

mod build;
mod list;
mod run;
mod weave;

use run::Fate;
use std::path::Path;
use std::thread::available_parallelism;

fn main() {
    let (words, places): (Vec<String>, Vec<String>) = std::env::args()
        .skip(1)
        .partition(|word| word.starts_with("tests="));
    let words: Vec<&str> = words
        .iter()
        .filter_map(|word| word.strip_prefix("tests="))
        .collect();
    if places.is_empty() {
        eprintln!("name folders or files of crates/edgenail/src, such as: edges blocking/room.rs");
        eprintln!("with tests=WORD only tests with this word in their program or name are run");
        std::process::exit(2);
    }
    if let Err(error) = survivors(&places, &words) {
        eprintln!("{error}");
        std::process::exit(1);
    }
}

fn survivors(places: &[String], words: &[&str]) -> Result<(), String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mutants = list::mutants(&root, places)?;
    let built = build::build(&root, &root.join("target/mutants"), &mutants)?;
    let threads = available_parallelism().map_or(1, usize::from);
    let fates = run::run(&built, &mutants, words, threads)?;
    let count = |fate: Fate| fates.values().filter(|own| **own == fate).count();
    println!(
        "\n{} listed, {} built: {} caught, {} endless, {} missed, {} reached by no test",
        mutants.len(),
        fates.len(),
        count(Fate::Caught),
        count(Fate::Endless),
        count(Fate::Missed),
        count(Fate::Unreached),
    );
    for mutant in &mutants {
        if let Some(fate @ (Fate::Missed | Fate::Unreached)) = fates.get(&mutant.id) {
            println!("{fate:?} {}", mutant.name);
        }
    }
    Ok(())
}

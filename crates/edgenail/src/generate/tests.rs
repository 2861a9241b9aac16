use super::*;

/// Shares of classes among generated houses, in percent, that tests rely on.
const LEAST: [(&str, usize); 10] = [
    ("several openings", 30),
    ("sloped top", 15),
    ("band without rim", 15),
    ("butting corner", 15),
    ("off layout", 15),
    ("19.2 in.", 10),
    ("true 48 in. sheets", 10),
    ("metric", 10),
    ("held up", 10),
    ("close openings", 5),
];

#[test]
fn every_class_of_house_is_generated_often_enough() {
    let count = 1000;
    let mixes: Vec<Mix> = (0..count).map(|seed| house_json(seed).1).collect();
    for (name, least) in LEAST {
        let has = |mix: &&Mix| mix.classes().iter().any(|(class, has)| *class == name && *has);
        let share = mixes.iter().filter(has).count() * 100 / 1000;
        assert!(share >= least, "{name}: {share} %");
    }
}

#[test]
fn every_generated_house_is_read_without_a_fault() {
    for seed in 0..500 {
        let (house, _) = house_json(seed);
        let read = crate::read_house(house.as_bytes());
        assert!(read.is_ok(), "seed {seed}: {read:#?}\n{house}");
    }
}

//! What the C header declares, read off its text.

/// A function of the header.
#[derive(Clone, Debug)]
pub(crate) struct Function {
    /// What it returns.
    pub(crate) returns: String,
    /// Its name.
    pub(crate) name: String,
    /// Its parameters.
    pub(crate) parameters: Vec<Parameter>,
    /// The first sentence of its documentation.
    pub(crate) meaning: String,
}

/// A parameter of a function.
#[derive(Clone, Debug)]
pub(crate) struct Parameter {
    /// Its type as C writes it, without spaces before a star.
    pub(crate) kind: String,
    /// Its name.
    pub(crate) name: String,
}

/// A number with a name.
#[derive(Clone, Debug)]
pub(crate) struct Constant {
    /// Its name.
    pub(crate) name: String,
    /// Its value.
    pub(crate) value: String,
}

/// The functions, in the order of the header.
pub(crate) fn functions(header: &str) -> Vec<Function> {
    let mut found = Vec::new();
    for part in header.split("/**\n").skip(1) {
        let Some((comment, code)) = part.split_once("*/\n") else {
            continue;
        };
        let Some((declaration, _)) = code.split_once(");") else {
            continue;
        };
        let Some((head, parameters)) = declaration.split_once('(') else {
            continue;
        };
        let Some((returns, name)) = head.trim().rsplit_once(' ') else {
            continue;
        };
        if returns.contains(['{', ';']) {
            continue;
        }
        found.push(Function {
            returns: returns.to_owned(),
            name: name.to_owned(),
            parameters: parameters.split(',').filter_map(parameter).collect(),
            meaning: first_sentence(comment),
        });
    }
    found
}

/// The numbers of the enums.
pub(crate) fn constants(header: &str) -> Vec<Constant> {
    let lines = header.lines().map(str::trim);
    let entries = lines.filter_map(|line| line.strip_suffix(',')?.split_once(" = "));
    let named = entries.filter(|(name, _)| name.starts_with("EDGENAIL_"));
    named
        .map(|(name, value)| Constant {
            name: name.to_owned(),
            value: value.to_owned(),
        })
        .collect()
}

fn parameter(text: &str) -> Option<Parameter> {
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let at = text.rfind([' ', '*'])? + 1;
    let (kind, name) = text.split_at(at);
    Some(Parameter {
        kind: kind.trim().replace(" *", "*"),
        name: name.to_owned(),
    })
}

fn first_sentence(comment: &str) -> String {
    let lines = comment.lines().map(|line| line.trim_start_matches([' ', '*']));
    let text = lines
        .take_while(|line| !line.is_empty())
        .collect::<Vec<_>>()
        .join(" ");
    match text.find(". ") {
        Some(end) => text[..=end].to_owned(),
        None => text,
    }
}

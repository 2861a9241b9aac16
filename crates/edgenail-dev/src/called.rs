//! The functions of the C header as data, for programs that load the library at run time.

use crate::declared::{Function, constants, functions};
use crate::file::Generated;
use serde_json::{Map, Value, json};

/// Whether a cell can call it: no handles, and a status to be read.
pub(crate) fn for_cells(function: &Function) -> bool {
    let mut kinds = function.parameters.iter().map(|parameter| &parameter.kind);
    let handles = kinds.any(|kind| kind.contains("struct"));
    let told = ["edgenail_error_", "edgenail_abi", "edgenail_version"];
    !handles && !told.iter().any(|name| function.name.starts_with(name))
}

/// Functions in UTF-8, each with its parameters; those that fill rows are left out.
pub(crate) fn table(header: &str) -> Generated {
    let constants: Map<String, Value> = constants(header)
        .into_iter()
        .map(|constant| (constant.name, json!(constant.value.parse::<i32>().ok())))
        .collect();
    let lines: Vec<String> = functions(header)
        .iter()
        .filter(|function| !function.name.ends_with("_utf16"))
        .filter(|function| {
            !function
                .parameters
                .iter()
                .any(|parameter| parameter.kind.ends_with("_row*"))
        })
        .map(|function| {
            let parameters = function.parameters.iter();
            let parameters: Vec<Value> = parameters
                .map(|parameter| json!([parameter.kind, parameter.name]))
                .collect();
            let entry = json!({
                "name": function.name, "returns": function.returns, "cell": for_cells(function),
                "meaning": function.meaning, "parameters": parameters,
            });
            format!("    {entry}")
        })
        .collect();
    Generated {
        path: "bindings/spreadsheet/functions.json",
        text: format!(
            "{{\n  \"constants\": {},\n  \"functions\": [\n{}\n  ]\n}}\n",
            Value::Object(constants),
            lines.join(",\n")
        ),
    }
}

//! A derivation in its three forms, by the form that each is said to have.

use crate::capacity::*;
use crate::published::Confidence;

/// One step with a given value, a value of an earlier step, a cell, and marks that the forms have to escape.
fn steps() -> Derivation {
    let mut steps = Derivation::default();
    steps
        .step("v", "shear | along", "min(v_n, w) / R")
        .from("v_n", 480.5, "plf")
        .given("w", 500.0, "plf")
        .cell("R", 2.0, "", "A & B <1>", Confidence::Source)
        .rule("rule 1", Confidence::Memory)
        .gives(240.25, "plf");
    steps
}

#[test]
fn plain_text_has_a_line_for_each_thing() {
    assert_eq!(
        steps().text(),
        "v: shear | along\n  = min(v_n, w) / R\n  v_n = 480.5 plf\n  w = 500 plf [given]\n  R = 2 [A & B <1>]\n  = 240.25 plf\n  \
         source: rule 1 (recalled, not checked against the printed standard)\n"
    );
}

#[test]
fn markdown_has_a_row_for_each_step() {
    let text = steps().markdown();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines[0], "| symbol | what | formula | with | value | source |");
    assert_eq!(lines[1], "| --- | --- | --- | --- | --- | --- |");
    assert_eq!(
        lines[2],
        "| v | shear \\| along | `min(v_n, w) / R` | v_n = 480.5 plf; w = 500 plf [given]; R = 2 [A & B <1>] | 240.25 plf \
         | rule 1 (recalled, not checked against the printed standard) |"
    );
    assert_eq!(lines.len(), 3);
}

#[test]
fn html_has_a_row_for_each_step_and_no_mark_of_its_texts() {
    let text = steps().html();
    assert!(text.starts_with("<table><thead><tr><th>symbol</th>") && text.ends_with("</tr></tbody></table>"));
    assert!(text.contains(
        "<tr><td>v</td><td>shear | along</td><td><code>min(v_n, w) / R</code></td>\
         <td>v_n = 480.5 plf<br>w = 500 plf [given]<br>R = 2 [A &amp; B &lt;1&gt;]</td><td>240.25 plf</td>\
         <td>rule 1 (recalled, not checked against the printed standard)</td></tr>"
    ));
}

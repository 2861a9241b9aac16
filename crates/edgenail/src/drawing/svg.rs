//! A drawing as SVG text. Coordinates are millimetres, written as exact decimals of whole micrometres.

use super::style::{Fill, Hatch, hatch_name, name_of, pen_of};
use super::{Anchor, Drawing, Form, Label, Layer, Mark, Micron, Spot};
use std::fmt::Write;

/// Colour of the paper.
const PAPER: &str = "#fff";

/// The drawing as SVG text.
pub(super) fn write(drawing: &Drawing) -> String {
    let mut out = String::with_capacity(4_096 + 64 * drawing.marks.len() + 160 * drawing.labels.len());
    head(&mut out, drawing);
    hatches(&mut out, drawing);
    let mut order: Vec<&Mark> = drawing.marks.iter().collect();
    order.sort_by_key(|mark| mark.layer);
    for same in order.chunk_by(|a, b| a.layer == b.layer) {
        let Some(first) = same.first() else { continue };
        layer(&mut out, first.layer, same);
    }
    texts(&mut out, &drawing.labels);
    out.push_str("</svg>\n");
    out
}

fn head(out: &mut String, drawing: &Drawing) {
    out.push_str("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"");
    number(out, drawing.width);
    out.push_str("mm\" height=\"");
    number(out, drawing.height);
    out.push_str("mm\" viewBox=\"0 0 ");
    number(out, drawing.width);
    out.push(' ');
    number(out, drawing.height);
    out.push_str("\">\n<title>");
    escaped(out, &drawing.title);
    out.push_str("</title>\n<rect width=\"100%\" height=\"100%\" fill=\"");
    out.push_str(PAPER);
    out.push_str("\"/>\n");
}

/// The patterns that the drawing's layers use.
fn hatches(out: &mut String, drawing: &Drawing) {
    let mut layers: Vec<Layer> = drawing.marks.iter().map(|mark| mark.layer).collect();
    layers.sort_unstable();
    layers.dedup();
    let mut used: Vec<(Layer, Hatch)> = Vec::new();
    for layer in layers {
        if let Fill::Hatch(hatch) = pen_of(layer).fill {
            used.push((layer, hatch));
        }
    }
    if used.is_empty() {
        return;
    }
    out.push_str("<defs>\n");
    for (layer, hatch) in used {
        let (path, width) = match hatch {
            Hatch::Rising => ("M-.5 1.9L1.9 -.5M-.5 .5L.5 -.5M.9 1.9L1.9 .9", ".13"),
            Hatch::Falling => ("M-.5 -.5L1.9 1.9M.9 -.5L1.9 .5M-.5 .9L.5 1.9", ".1"),
            Hatch::Crossed => ("M0 0L1.4 1.4M0 1.4L1.4 0", ".13"),
            Hatch::Upright => ("M.7 0V1.4", ".25"),
            Hatch::Dotted => ("M.7 .7h0", ".35"),
        };
        let _ = writeln!(
            out,
            "<pattern id=\"{}-{}\" width=\"1.4\" height=\"1.4\" patternUnits=\"userSpaceOnUse\"><path d=\"{path}\" \
             stroke=\"{}\" stroke-width=\"{width}\" stroke-linecap=\"round\" fill=\"none\"/></pattern>",
            name_of(layer),
            hatch_name(hatch),
            pen_of(layer).ink,
        );
    }
    out.push_str("</defs>\n");
}

fn layer(out: &mut String, layer: Layer, marks: &[&Mark]) {
    let pen = pen_of(layer);
    let _ = write!(
        out,
        "<g id=\"{}\" stroke=\"{}\" stroke-width=\"",
        name_of(layer),
        pen.ink
    );
    number(out, pen.width);
    out.push('"');
    if !pen.dash.is_empty() {
        out.push_str(" stroke-dasharray=\"");
        for (index, &part) in pen.dash.iter().enumerate() {
            if index > 0 {
                out.push(' ');
            }
            number(out, part);
        }
        out.push('"');
    }
    match pen.fill {
        Fill::None => out.push_str(" fill=\"none\""),
        Fill::Paper => {
            let _ = write!(out, " fill=\"{PAPER}\"");
        }
        Fill::Ink => {
            let _ = write!(out, " fill=\"{}\"", pen.ink);
        }
        Fill::Hatch(hatch) => {
            let _ = write!(out, " fill=\"url(#{}-{})\"", name_of(layer), hatch_name(hatch));
        }
    }
    out.push_str(">\n");
    for mark in marks {
        form(out, &mark.form, pen.ink);
    }
    out.push_str("</g>\n");
}

fn form(out: &mut String, form: &Form, ink: &str) {
    match form {
        Form::Line { through } => {
            out.push_str("<path d=\"");
            polyline(out, through);
            out.push_str("\" fill=\"none\"/>\n");
        }
        Form::Polygon { rings } => {
            out.push_str("<path d=\"");
            for ring in rings {
                polyline(out, ring);
                out.push('Z');
            }
            out.push_str("\" fill-rule=\"evenodd\"/>\n");
        }
        Form::Circle { middle, radius } => {
            out.push_str("<circle cx=\"");
            number(out, middle.x);
            out.push_str("\" cy=\"");
            number(out, middle.y);
            out.push_str("\" r=\"");
            number(out, *radius);
            out.push_str("\"/>\n");
        }
        Form::Tip { corners } => {
            out.push_str("<path d=\"");
            polyline(out, corners);
            let _ = writeln!(out, "Z\" fill=\"{ink}\" stroke=\"none\"/>");
        }
        Form::Nails {
            from,
            to,
            spaces,
            first,
            last,
            dot,
            square,
        } => {
            let nail = |index: u32| {
                Spot::new(
                    share(from.x, to.x, index, *spaces),
                    share(from.y, to.y, index, *spaces),
                )
            };
            out.push_str("<path d=\"");
            polyline(out, &[nail(*first), nail(*last)]);
            out.push_str("\"/><path stroke-dasharray=\"none\" stroke-linecap=\"");
            out.push_str(if *square { "square" } else { "round" });
            out.push_str("\" stroke-width=\"");
            number(out, *dot);
            out.push_str("\" d=\"");
            for index in *first..=*last {
                let at = nail(index);
                out.push('M');
                number(out, at.x);
                out.push(' ');
                number(out, at.y);
                out.push_str("h0");
            }
            out.push_str("\"/>\n");
        }
    }
}

/// The place of one nail along one coordinate of its row.
fn share(from: Micron, to: Micron, index: u32, spaces: u32) -> Micron {
    let spaces = Micron::from(spaces.max(1));
    from + (2 * (to - from) * Micron::from(index) + spaces).div_euclid(2 * spaces)
}

fn polyline(out: &mut String, spots: &[Spot]) {
    for (index, spot) in spots.iter().enumerate() {
        out.push(if index == 0 { 'M' } else { 'L' });
        number(out, spot.x);
        out.push(' ');
        number(out, spot.y);
    }
}

fn texts(out: &mut String, labels: &[Label]) {
    out.push_str("<g id=\"text-backs\" fill=\"");
    out.push_str(PAPER);
    out.push_str("\" fill-opacity=\".85\">\n");
    for label in labels.iter().filter(|label| label.backed) {
        out.push_str("<rect x=\"");
        number(out, label.extent.x0);
        out.push_str("\" y=\"");
        number(out, label.extent.y0);
        out.push_str("\" width=\"");
        number(out, label.extent.width());
        out.push_str("\" height=\"");
        number(out, label.extent.height());
        out.push_str("\"/>\n");
    }
    out.push_str("</g>\n<g id=\"text\" font-family=\"sans-serif\" fill=\"#111\">\n");
    for label in labels {
        text(out, label);
    }
    out.push_str("</g>\n");
}

fn text(out: &mut String, label: &Label) {
    out.push_str("<text x=\"");
    number(out, label.at.x);
    out.push_str("\" y=\"");
    number(out, label.at.y);
    out.push_str("\" font-size=\"");
    number(out, label.size);
    out.push('"');
    if label.bold {
        out.push_str(" font-weight=\"bold\"");
    }
    match label.anchor {
        Anchor::Start => {}
        Anchor::Middle => out.push_str(" text-anchor=\"middle\""),
        Anchor::End => out.push_str(" text-anchor=\"end\""),
    }
    if label.turned {
        out.push_str(" transform=\"rotate(-90 ");
        number(out, label.at.x);
        out.push(' ');
        number(out, label.at.y);
        out.push_str(")\"");
    }
    out.push('>');
    escaped(out, &label.text);
    out.push_str("</text>\n");
}

/// Micrometres as a decimal number of millimetres, without a superfluous digit.
fn number(out: &mut String, value: Micron) {
    let mut digits = [0_u8; 24];
    let mut at = digits.len();
    let mut push = |digit: u8| {
        at -= 1;
        if let Some(place) = digits.get_mut(at) {
            *place = digit;
        }
    };
    let size = value.unsigned_abs();
    let (mut whole, mut part) = (size / 1_000, size % 1_000);
    if part > 0 {
        let mut places = 3;
        while part % 10 == 0 {
            part /= 10;
            places -= 1;
        }
        for _ in 0..places {
            push(digit_of(part));
            part /= 10;
        }
        push(b'.');
    }
    loop {
        push(digit_of(whole));
        whole /= 10;
        if whole == 0 {
            break;
        }
    }
    if value < 0 {
        push(b'-');
    }
    let written = digits.get(at..).unwrap_or_default();
    out.push_str(std::str::from_utf8(written).unwrap_or_default());
}

const fn digit_of(number: u64) -> u8 {
    b'0' + (number % 10) as u8
}

/// Text as it may stand in XML; what XML cannot hold is shown as the replacement character.
fn escaped(out: &mut String, text: &str) {
    let mut plain = 0;
    for (at, c) in text.char_indices() {
        let instead = match c {
            '&' => "&amp;",
            '<' => "&lt;",
            '>' => "&gt;",
            '"' => "&quot;",
            '\'' => "&#39;",
            '\t' | '\n' | '\r' => " ",
            '\0'..='\u{1f}' | '\u{7f}'..='\u{9f}' | '\u{fffe}' | '\u{ffff}' => "\u{fffd}",
            _ => continue,
        };
        out.push_str(text.get(plain..at).unwrap_or_default());
        out.push_str(instead);
        plain = at + c.len_utf8();
    }
    out.push_str(text.get(plain..).unwrap_or_default());
}

#[cfg(test)]
mod tests;

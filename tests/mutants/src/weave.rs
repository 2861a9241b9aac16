//! All mutants of a file written into it, each behind a switch.

use crate::list::{Mutant, Place};
use proc_macro2::Span;
use std::collections::BTreeMap;
use syn::spanned::Spanned;
use syn::visit::{self, Visit};

/// A file with its mutants.
pub struct Woven {
    /// The new source.
    pub text: String,
    /// By mutant, the number under which its place is counted as reached.
    pub sites: BTreeMap<u32, u32>,
}

/// Writes these mutants, all of one file, into its source. Those in functions that are worked out while compiling, and
/// in conditions that bind a name, have no place and are left out.
pub fn weave(source: &str, mutants: &[&Mutant]) -> Result<Woven, String> {
    let file = syn::parse_file(source).map_err(|error| error.to_string())?;
    let mut loom = Loom {
        source,
        mutants,
        edits: Vec::new(),
        sites: BTreeMap::new(),
    };
    loom.visit_file(&file);
    // What encloses goes first, and what is put before a place goes before what stands there.
    loom.edits
        .sort_by_key(|edit| (edit.from, edit.from != edit.to, usize::MAX - edit.to));
    Ok(Woven {
        text: render(source, 0, source.len(), &loom.edits),
        sites: loom.sites,
    })
}

struct Edit {
    from: usize,
    to: usize,
    kind: Kind,
}

enum Kind {
    /// Text put in at a place.
    Insert(String),
    /// The expression, or another in its stead.
    Choose(Vec<(u32, String)>),
    /// The condition of a match arm: not at all, or another in its stead.
    Guard(Vec<u32>, Vec<(u32, String)>),
}

struct Loom<'a> {
    source: &'a str,
    mutants: &'a [&'a Mutant],
    edits: Vec<Edit>,
    sites: BTreeMap<u32, u32>,
}

fn place(span: Span) -> Place {
    let start = span.start();
    (start.line as u64, start.column as u64 + 1)
}

impl Loom<'_> {
    fn at(&self, span: Span, genre: &str) -> Vec<Mutant> {
        let here = self
            .mutants
            .iter()
            .filter(|one| one.at == place(span) && one.genre == genre);
        here.map(|one| (*one).clone()).collect()
    }

    fn text(&self, span: Span) -> &str {
        &self.source[span.byte_range()]
    }

    fn reach(&mut self, site: u32, ids: impl IntoIterator<Item = u32>) {
        self.sites.extend(ids.into_iter().map(|id| (id, site)));
    }

    fn choose(&mut self, span: Span, others: Vec<(u32, String)>) {
        let Some((site, _)) = others.first() else { return };
        self.reach(*site, others.iter().map(|other| other.0).collect::<Vec<u32>>());
        let range = span.byte_range();
        self.edits.push(Edit {
            from: range.start,
            to: range.end,
            kind: Kind::Choose(others),
        });
    }

    fn insert(&mut self, at: usize, text: String) {
        self.edits.push(Edit {
            from: at,
            to: at,
            kind: Kind::Insert(text),
        });
    }

    fn body(&mut self, block: &syn::Block) {
        let Some(first) = block.stmts.first() else { return };
        let others = self.at(first.span(), "FnValue");
        for one in others {
            self.reach(one.id, [one.id]);
            let returns = format!(" if {} {{ return {}; }} ", is_on(one.id), one.replacement);
            self.insert(block.brace_token.span.open().byte_range().end, returns);
        }
    }
}

impl<'a> Visit<'a> for Loom<'_> {
    fn visit_item_fn(&mut self, item: &'a syn::ItemFn) {
        if item.sig.constness.is_none() {
            self.body(&item.block);
            visit::visit_item_fn(self, item);
        }
    }

    fn visit_impl_item_fn(&mut self, item: &'a syn::ImplItemFn) {
        if item.sig.constness.is_none() {
            self.body(&item.block);
            visit::visit_impl_item_fn(self, item);
        }
    }

    fn visit_item_const(&mut self, _: &'a syn::ItemConst) {}
    fn visit_impl_item_const(&mut self, _: &'a syn::ImplItemConst) {}
    fn visit_item_static(&mut self, _: &'a syn::ItemStatic) {}
    fn visit_type(&mut self, _: &'a syn::Type) {}
    fn visit_pat(&mut self, _: &'a syn::Pat) {}

    fn visit_expr_binary(&mut self, whole: &'a syn::ExprBinary) {
        if !binds(&whole.left) && !binds(&whole.right) {
            let (left, right) = (self.text(whole.left.span()), self.text(whole.right.span()));
            let others = self.at(whole.op.span(), "BinaryOperator").into_iter();
            let others = others.map(|one| (one.id, format!("({left}) {} ({right})", one.replacement)));
            let others = others.collect();
            self.choose(whole.span(), others);
        }
        visit::visit_expr_binary(self, whole);
    }

    fn visit_expr_unary(&mut self, whole: &'a syn::ExprUnary) {
        let inner = format!("({})", self.text(whole.expr.span()));
        let others = self
            .at(whole.op.span(), "UnaryOperator")
            .into_iter()
            .map(|one| (one.id, inner.clone()));
        let others = others.collect();
        self.choose(whole.span(), others);
        visit::visit_expr_unary(self, whole);
    }

    fn visit_expr_struct(&mut self, whole: &'a syn::ExprStruct) {
        let range = whole.span().byte_range();
        let mut others = Vec::new();
        for field in &whole.fields {
            let own = field.span().byte_range();
            let comma = self.source[own.end..].trim_start().starts_with(',');
            let after = if comma {
                own.end + self.source[own.end..].find(',').unwrap_or(0) + 1
            } else {
                own.end
            };
            let without = format!(
                "{}{}",
                &self.source[range.start..own.start],
                &self.source[after..range.end]
            );
            others.extend(
                self.at(field.span(), "StructField")
                    .iter()
                    .map(|one| (one.id, without.clone())),
            );
        }
        self.choose(whole.span(), others);
        visit::visit_expr_struct(self, whole);
    }

    fn visit_arm(&mut self, arm: &'a syn::Arm) {
        let gone: Vec<u32> = self.at(arm.span(), "MatchArm").iter().map(|one| one.id).collect();
        let unless: Vec<String> = gone.iter().map(|id| format!("!{}", is_on(*id))).collect();
        match &arm.guard {
            None if !gone.is_empty() => {
                self.insert(
                    arm.pat.span().byte_range().end,
                    format!(" if {}", unless.join(" && ")),
                );
                for id in &gone {
                    self.reach(*id, [*id]);
                }
            }
            Some((_, guard)) if !binds(guard) => {
                let others = self.at(guard.span(), "MatchArmGuard");
                let others: Vec<(u32, String)> =
                    others.into_iter().map(|one| (one.id, one.replacement)).collect();
                let site = others.first().map_or(0, |other| other.0);
                self.reach(site, others.iter().map(|other| other.0).collect::<Vec<u32>>());
                for id in &gone {
                    self.reach(*id, [*id]);
                }
                let range = guard.span().byte_range();
                self.edits.push(Edit {
                    from: range.start,
                    to: range.end,
                    kind: Kind::Guard(gone, others),
                });
            }
            _ => {}
        }
        visit::visit_arm(self, arm);
    }
}

/// A condition of `if let`, whose name would be lost in another expression.
fn binds(condition: &syn::Expr) -> bool {
    match condition {
        syn::Expr::Let(_) => true,
        syn::Expr::Binary(both) => binds(&both.left) || binds(&both.right),
        _ => false,
    }
}

fn is_on(id: u32) -> String {
    format!("(crate::mutant_on({id}) == {id})")
}

/// In each branch but the last stands the source as it was: only one mutant is on at a time.
fn choice(others: &[(u32, String)], own: &str) -> String {
    let Some((site, _)) = others.first() else {
        return own.into();
    };
    let branches: Vec<String> = others
        .iter()
        .map(|(id, text)| format!("{id} => {{ {text} }},"))
        .collect();
    format!(
        "(match crate::mutant_on({site}) {{ {} _ => {own} }})",
        branches.join(" ")
    )
}

fn render(source: &str, from: usize, to: usize, edits: &[Edit]) -> String {
    let (mut out, mut at, mut index) = (String::new(), from, 0);
    while let Some(edit) = edits.get(index) {
        let inside = edits[index + 1..]
            .iter()
            .take_while(|inner| inner.from < edit.to)
            .count();
        let inner = &edits[index + 1..index + 1 + inside];
        out += &source[at..edit.from];
        let own = || format!("({})", render(source, edit.from, edit.to, inner));
        match &edit.kind {
            Kind::Insert(text) => out += text,
            Kind::Choose(others) => out += &choice(others, &own()),
            Kind::Guard(gone, others) => {
                let unless: Vec<String> = gone.iter().map(|id| format!("!{} && ", is_on(*id))).collect();
                out += &unless.concat();
                out += &choice(others, &own());
            }
        }
        (at, index) = (edit.to, index + 1 + inside);
    }
    out + &source[at..to]
}

/// The mutant that a column of a woven line belongs to: what an error of the compiler points at.
pub fn blamed(line: &str, column: usize) -> Option<u32> {
    let before: String = line.chars().take(column.saturating_sub(1)).collect();
    let digits = |text: &str| text.chars().take_while(char::is_ascii_digit).collect::<String>();
    let switches = before
        .match_indices("mutant_on(")
        .map(|(at, mark)| (at, digits(&before[at + mark.len()..])));
    let branches = before.match_indices(" => {").map(|(at, _)| {
        let backwards: String = before[..at].chars().rev().collect();
        (at, digits(&backwards).chars().rev().collect())
    });
    let numbers = switches
        .chain(branches)
        .filter_map(|(at, id)| Some((at, id.parse().ok()?)));
    numbers.max().map(|(_, id)| id)
}

#[cfg(test)]
mod tests {
    use super::{blamed, weave};
    use crate::list::Mutant;

    fn mutant(id: u32, genre: &str, at: (u64, u64), replacement: &str) -> Mutant {
        Mutant {
            id,
            file: String::new(),
            genre: genre.into(),
            replacement: replacement.into(),
            at,
            name: String::new(),
        }
    }

    #[test]
    fn only_the_chosen_mutant_is_another_expression() {
        let source = "fn f(a: i32, b: i32) -> bool { a + 1 < b }";
        let mutants = [
            mutant(1, "FnValue", (1, 32), "true"),
            mutant(2, "BinaryOperator", (1, 34), "-"),
            mutant(3, "BinaryOperator", (1, 38), "<="),
            mutant(4, "BinaryOperator", (1, 38), "=="),
        ];
        let woven = weave(source, &mutants.iter().collect::<Vec<_>>()).unwrap();
        assert_eq!(
            woven.text,
            "fn f(a: i32, b: i32) -> bool { if (crate::mutant_on(1) == 1) { return true; }  \
             (match crate::mutant_on(3) { 3 => { (a + 1) <= (b) }, 4 => { (a + 1) == (b) }, \
             _ => ((match crate::mutant_on(2) { 2 => { (a) - (1) }, _ => (a + 1) }) < b) }) }"
        );
        let column = woven.text.find("(a + 1) == (b)").unwrap() + 1;
        assert_eq!(blamed(&woven.text, column), Some(4));
        assert_eq!(
            woven.sites.into_iter().collect::<Vec<_>>(),
            [(1, 1), (2, 2), (3, 3), (4, 3)]
        );
    }

    #[test]
    fn a_condition_that_binds_a_name_is_left_alone() {
        let source = "fn f(a: Option<i32>) -> bool { if let Some(b) = a && b > 1 { true } else { false } }";
        let woven = weave(source, &[&mutant(1, "BinaryOperator", (1, 51), "||")]).unwrap();
        assert_eq!((woven.text.as_str(), woven.sites.len()), (source, 0));
    }
}

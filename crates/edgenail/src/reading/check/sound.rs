//! Which values were read without a fault: a relation of others is not known.

use crate::issue::{Code, Issue};

/// Places of the faults that reading found, in order.
#[derive(Clone, Debug, Default)]
pub(super) struct Faults {
    paths: Vec<String>,
    /// Places where a thing of another kind stands: nothing below them was read.
    unread: Vec<String>,
}

impl Faults {
    pub(super) fn new(issues: &[Issue]) -> Self {
        let mut paths: Vec<String> = issues.iter().map(|issue| issue.path.clone()).collect();
        paths.sort_unstable();
        let other = issues.iter().filter(|issue| issue.code == Code::WrongKind);
        Self {
            paths,
            unread: other.map(|issue| issue.path.clone()).collect(),
        }
    }

    /// No fault lies at this place or below it, and it was read at all.
    pub(super) fn spare(&self, path: &str) -> bool {
        let below = format!("{path}/");
        let from = self.paths.partition_point(|fault| *fault < below);
        let faulty = self
            .paths
            .get(from)
            .is_some_and(|fault| fault.starts_with(&below));
        !faulty
            && self
                .paths
                .binary_search_by(|fault| fault.as_str().cmp(path))
                .is_err()
            && !self.unread.iter().any(|unread| is_below(path, unread))
    }
}

fn is_below(path: &str, parent: &str) -> bool {
    path.strip_prefix(parent)
        .is_some_and(|rest| rest.starts_with('/'))
}

#[cfg(test)]
mod tests {
    use super::Faults;
    use crate::issue::{Code, Issue};

    fn faults(paths: &[(Code, &str)]) -> Faults {
        let issues: Vec<Issue> = paths
            .iter()
            .map(|(code, path)| Issue {
                code: *code,
                path: (*path).to_owned(),
                wall: String::new(),
                found: String::new(),
                allowed: String::new(),
                message: String::new(),
            })
            .collect();
        Faults::new(&issues)
    }

    #[test]
    fn a_fault_spoils_what_it_lies_in_and_nothing_beside_it() {
        let faults = faults(&[
            (Code::OutOfRange, "/walls/1/length"),
            (Code::UnknownField, "/walls/0/a b"),
        ]);
        for (path, spared) in [
            ("", false),
            ("/walls/1", false),
            ("/walls/1/length", false),
            ("/walls/10", true),
            ("/walls/1/len", true),
            ("/walls/0", false),
            ("/walls/0/a", true),
        ] {
            assert_eq!(faults.spare(path), spared, "{path}");
        }
    }

    #[test]
    fn nothing_is_known_below_a_thing_of_another_kind() {
        let faults = faults(&[(Code::WrongKind, "/walls/0/sections/0")]);
        assert!(!faults.spare("/walls/0/sections/0/from"));
        assert!(faults.spare("/walls/0/sections/1"));
    }
}

//! One generated file: written, or compared with what is committed.

use std::fs;
use std::path::Path;

/// A generated file.
#[derive(Debug)]
pub(crate) struct Generated {
    /// Where it lies, from the root of the project.
    pub(crate) path: &'static str,
    /// What it says.
    pub(crate) text: String,
}

impl Generated {
    /// Writes the file.
    pub(crate) fn write(&self, root: &Path) -> Result<(), String> {
        let path = root.join(self.path);
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
        }
        fs::write(&path, &self.text).map_err(|error| format!("{}: {error}", self.path))
    }

    /// The first difference from the committed file, or nothing when they are equal.
    pub(crate) fn difference(&self, root: &Path) -> Option<String> {
        let committed = match fs::read_to_string(root.join(self.path)) {
            Ok(text) => text,
            Err(error) => return Some(format!("{}: {error}", self.path)),
        };
        if committed == self.text {
            return None;
        }
        let mut fresh = self.text.lines();
        let mut old = committed.lines();
        let mut number = 0;
        loop {
            number += 1;
            match (old.next(), fresh.next()) {
                (None, None) => return Some(format!("{}: line ends differ", self.path)),
                (old, fresh) if old != fresh => {
                    let (old, fresh) = (old.unwrap_or("(end)"), fresh.unwrap_or("(end)"));
                    return Some(format!(
                        "{}:{number}\n  committed: {old}\n  fresh:     {fresh}",
                        self.path
                    ));
                }
                _ => {}
            }
        }
    }
}
